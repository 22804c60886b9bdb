/**
 * A cart with a pendulum, described to the project as a rig: wheel and a deck that cannot turn are the cart, the rider,
 * his ankles in the axle, is the pendulum. The force on the cart is the motor's, through the tread; its friction is the
 * rolling resistance, which is proportional to speed near rest.
 *
 * Gravity is ours and cannot be set. Pendulums sway alike when length over gravity is the same, so this one is longer by
 * 9.80665 / g, its inertia by the square of that; its top then moves as far, and its angle is smaller by the same factor.
 */
import { Matrix } from 'ml-matrix';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import type { Road } from '../../src/scenario/road.js';
import { planeRoad, plantWith } from '../rigs.js';
import { jacobianOf, type OperatingPoint } from './jacobian.js';
import { rollingRig, type StateSpace } from './state-space.js';

const GRAVITY = 9.80665;

/** A cart and its pendulum as books give them, SI units. */
export interface Cart {
  cartMassKg: number;
  massKg: number;
  /** Pivot to the pendulum's centre of mass. */
  lengthM: number;
  /** About that centre. */
  inertiaKgM2: number;
  /** Friction of the cart; and of the pivot, Nm s/rad. */
  frictionNSPerM: number;
  pivotNmSPerRad?: number;
  gravityMPerS2: number;
}

/** The rig of a cart, upright and at rest; `stretch` is the length of its pendulum over the book's. */
export interface CartRig {
  plant: Plant;
  road: Road;
  rest: OperatingPoint;
  stretch: number;
}

/** Wheel radius, m: large, so that the wheel turns slowly and its resistance stays proportional. */
export const RADIUS_M = 1;

/** Share of the cart's mass that is the wheel's inertia. */
const SPUN_SHARE = 0.1;

/** Describes a cart; the tread [N/m] is damped critically. The motor has no lag and gives 1 N at the tread for 1 A. */
export function cartRig(cart: Cart, treadStiffnessNPerM = 1e8): CartRig {
  const stretch = GRAVITY / cart.gravityMPerS2;
  const spunKg = SPUN_SHARE * cart.cartMassKg;
  const carriedKg = cart.cartMassKg - spunKg;
  const weightN = (carriedKg + cart.massKg) * GRAVITY;
  const usual = plantWith();
  const plant = plantWith({
    wheelRadiusM: RADIUS_M,
    wheelMassKg: carriedKg / 2,
    wheelInertiaKgM2: spunKg * RADIUS_M ** 2,
    deckMassKg: carriedKg / 2,
    deckInertiaKgM2: 1e12,
    deckAboveAxleM: 0,
    ankleAboveAxleM: 0,
    riderMassKg: cart.massKg,
    riderInertiaKgM2: cart.inertiaKgM2 * stretch ** 2,
    legLengthM: cart.lengthM * stretch,
    totalMassKg: carriedKg + cart.massKg,
    halfDragAreaKgPerM: 0,
    halfStanceM: 1e3,
    passiveStiffnessNmPerRad: 0,
    passiveDampingNmSPerRad: (cart.pivotNmSPerRad ?? 0) * stretch ** 2,
    treadStiffnessNPerM,
    treadDampingNSPerM: 2 * Math.sqrt((treadStiffnessNPerM * spunKg * carriedKg) / cart.cartMassKg),
    motor: { ...usual.motor, lagS: 0, torqueConstantNmPerA: RADIUS_M },
  });
  const state = new Float64Array(at.STATE_SIZE);
  state[at.Z] = RADIUS_M - weightN / plant.verticalStiffnessNPerM;
  state[at.LEG] = plant.legLengthM;
  // Near rest the resistance is r C N psi' / 0.5, a force of 2 C N / r for each m/s.
  const rolling = (cart.frictionNSPerM * RADIUS_M) / (2 * weightN);
  return {
    plant,
    road: planeRoad(0, RADIUS_M),
    rest: { state, inputs: Float64Array.of(0, 0, 0, 1e6, rolling) },
    stretch,
  };
}

/**
 * The linear cart in the book's variables x, x', phi, phi' and for a force on the cart, its tread rigid; `sense` is 1 where the
 * book's phi grows with a lean towards +x, as ours does, and -1 where it has the other sign.
 */
export function linearCart({ plant, road, rest, stretch }: CartRig, sense: 1 | -1): StateSpace {
  const { A, B } = rollingRig(jacobianOf(plant, road, rest), RADIUS_M, [at.X, at.LEAN]);
  // x, lean, x', lean' to x, x', phi, phi', where phi = sense stretch lean.
  const scale = sense * stretch;
  const order = [0, 2, 1, 3];
  const turn = Matrix.zeros(4, 4);
  const back = Matrix.zeros(4, 4);
  order.forEach((from, to) => {
    const by = to < 2 ? 1 : scale;
    turn.set(to, from, by);
    back.set(from, to, 1 / by);
  });
  return { A: turn.mmul(A).mmul(back), B: turn.mmul(B.getColumnVector(0)).mul(RADIUS_M) };
}
