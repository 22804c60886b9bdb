/**
 * Where are wheel, deck and rider, how do they move and how do they speed up? From a state and its derivative, body by
 * body, with none of the algebra by which the equations of motion were solved.
 *
 * Turning is counted as the project counts it: positive rolling forward, so that a spin a about the axle moves a point
 * (dx, dz) away from it with (dz, -dx) a.
 */
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';

/** A rigid body: place [m], velocity and acceleration of its centre, and its own spin [rad/s] and its rate. */
export interface Body {
  massKg: number;
  inertiaKgM2: number;
  x: number;
  z: number;
  xRate: number;
  zRate: number;
  xAcc: number;
  zAcc: number;
  spin: number;
  spinAcc: number;
}

type Point = Omit<Body, 'massKg' | 'inertiaKgM2' | 'spin' | 'spinAcc'>;

/** A point that is fixed to a turning body at (dx, dz) from another one. */
function carried(from: Point, [dx, dz]: readonly [number, number], spin: number, spinAcc: number): Point {
  return {
    x: from.x + dx,
    z: from.z + dz,
    xRate: from.xRate + spin * dz,
    zRate: from.zRate - spin * dx,
    xAcc: from.xAcc + spinAcc * dz - spin * spin * dx,
    zAcc: from.zAcc - spinAcc * dx - spin * spin * dz,
  };
}

/** Wheel, deck and rider under a state and its time derivative. */
export function bodiesOf(
  plant: Plant,
  state: ArrayLike<number>,
  rates: ArrayLike<number>,
): { wheel: Body; deck: Body; rider: Body } {
  const turn = (place: number) => ({ spin: state[place + at.RATE]!, spinAcc: rates[place + at.RATE]! });
  const [theta, phi, leg] = [state[at.PITCH]!, state[at.LEAN]!, state[at.LEG]!];
  const [s, c] = [Math.sin(theta), Math.cos(theta)];
  const [sp, cp] = [Math.sin(phi), Math.cos(phi)];
  const deckTurn = turn(at.PITCH);
  const lean = turn(at.LEAN);
  const axle: Point = {
    x: state[at.X]!,
    z: state[at.Z]!,
    xRate: state[at.X + at.RATE]!,
    zRate: state[at.Z + at.RATE]!,
    xAcc: rates[at.X + at.RATE]!,
    zAcc: rates[at.Z + at.RATE]!,
  };
  const onDeck = (forward: number, above: number) =>
    carried(axle, [forward * c + above * s, above * c - forward * s], deckTurn.spin, deckTurn.spinAcc);
  const deckPoint = onDeck(plant.deckForwardM, plant.deckAboveAxleM);
  const stiff = carried(onDeck(0, plant.ankleAboveAxleM), [leg * sp, leg * cp], lean.spin, lean.spinAcc);
  // The leg also grows: along itself, and across it by twice the spin (Coriolis).
  const grows = state[at.LEG + at.RATE]!;
  const growsAcc = rates[at.LEG + at.RATE]!;
  const riderPoint = {
    ...stiff,
    xRate: stiff.xRate + grows * sp,
    zRate: stiff.zRate + grows * cp,
    xAcc: stiff.xAcc + growsAcc * sp + 2 * grows * lean.spin * cp,
    zAcc: stiff.zAcc + growsAcc * cp - 2 * grows * lean.spin * sp,
  };
  return {
    wheel: {
      massKg: plant.wheelMassKg,
      inertiaKgM2: plant.wheelInertiaKgM2,
      ...axle,
      ...turn(at.WHEEL),
    },
    deck: { massKg: plant.deckMassKg, inertiaKgM2: plant.deckInertiaKgM2, ...deckPoint, ...deckTurn },
    rider: { massKg: plant.riderMassKg, inertiaKgM2: plant.riderInertiaKgM2, ...riderPoint, ...lean },
  };
}

/** Forward speed of the rider's centre of mass, m/s: as above, but alone, for loops that ask for nothing else. */
export function riderSpeed(plant: Plant, state: ArrayLike<number>): number {
  const lean = state[at.LEAN]!;
  return (
    state[at.X + at.RATE]! +
    state[at.PITCH + at.RATE]! * plant.ankleAboveAxleM * Math.cos(state[at.PITCH]!) +
    state[at.LEAN + at.RATE]! * state[at.LEG]! * Math.cos(lean) +
    state[at.LEG + at.RATE]! * Math.sin(lean)
  );
}
