/**
 * A second, independent set of equations of motion: positions of the three bodies written down once,
 * differentiated by jets, assembled by Kane's method (sum of m J^T J) into a full 5 x 5 system and solved by
 * ml-matrix. Source of the method: T. R. Kane and D. A. Levinson, Dynamics: Theory and Applications (1985).
 */
import { Matrix, solve } from 'ml-matrix';
import type { Plant } from '../../src/model/plant.js';
import { cosine, minus, plus, sine, still, times, type Jet } from './jet.js';

/** Coordinates of the system in the order x, z, theta, phi, l, each with its rate. */
export interface Motion {
  at: readonly number[];
  rate: readonly number[];
}

/** Forces on the system: at the axle [N], couples [Nm], along the leg and on the rider's centre of mass [N]. */
export interface Loads {
  axleX: number;
  axleZ: number;
  motorNm: number;
  footNm: number;
  legN: number;
  pushN: number;
}

const G = 9.80665;

type Point = readonly [Jet, Jet];

function bodies(plant: Plant, q: readonly Jet[]): { axle: Point; deck: Point; rider: Point } {
  const [x, z, theta, phi, leg] = q as [Jet, Jet, Jet, Jet, Jet];
  const up = (angle: Jet): Point => [sine(angle), cosine(angle)];
  const ahead = (angle: Jet): Point => [cosine(angle), minus(sine(angle))];
  const far = (length: Jet, [dx, dz]: Point): Point => [times(length, dx), times(length, dz)];
  const sum = (...points: readonly Point[]): Point => [
    plus(...points.map((point) => point[0])),
    plus(...points.map((point) => point[1])),
  ];
  const axle: Point = [x, z];
  const forward = far(still(plant.deckForwardM), ahead(theta));
  const above = far(still(plant.deckAboveAxleM), up(theta));
  const ankles = far(still(plant.ankleAboveAxleM), up(theta));
  return { axle, deck: sum(axle, forward, above), rider: sum(axle, ankles, far(leg, up(phi))) };
}

/** Accelerations x'', z'', theta'', phi'', l'' under those loads and weight. */
export function kaneAccelerations(plant: Plant, { at, rate }: Motion, loads: Loads): number[] {
  const along = (direction: readonly number[]) =>
    bodies(
      plant,
      at.map((value, index): Jet => [value, direction[index]!, 0]),
    );
  const axes = at.map((_, index) => along(at.map((_value, other) => (other === index ? 1 : 0))));
  const drift = along(rate);
  const masses = { axle: plant.wheelMassKg, deck: plant.deckMassKg, rider: plant.riderMassKg };
  const force: Record<keyof typeof masses, readonly [number, number]> = {
    axle: [loads.axleX, loads.axleZ - plant.wheelMassKg * G],
    deck: [0, -plant.deckMassKg * G],
    rider: [loads.pushN, -plant.riderMassKg * G],
  };
  const inertia = [0, 0, plant.deckInertiaKgM2, plant.riderInertiaKgM2, 0];
  const couples = [0, 0, -loads.motorNm - loads.footNm, loads.footNm, loads.legN];
  const mass = Matrix.diag(inertia);
  const right = [...couples];
  for (const body of ['axle', 'deck', 'rider'] as const) {
    for (const side of [0, 1] as const) {
      const jacobian = axes.map((axis) => axis[body][side][1]);
      jacobian.forEach((a, row) => {
        right[row]! += a * (force[body][side] - masses[body] * drift[body][side][2]);
        jacobian.forEach((b, column) => mass.set(row, column, mass.get(row, column) + masses[body] * a * b));
      });
    }
  }
  return solve(mass, Matrix.columnVector(right)).to1DArray();
}
