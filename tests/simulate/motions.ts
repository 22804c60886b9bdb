/** Plants let go by themselves, with one integrator or the other, and where their centre of mass is. */
import { MOTOR_CURRENT } from '../../src/model/battery.js';
import { derive } from '../../src/model/derive.js';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import type { Road } from '../../src/scenario/road.js';
import { fixedStep, type Integrator } from '../../src/simulate/fixed-step.js';
import { solveReference } from '../../src/simulate/reference.js';
import { momentWith } from '../rigs.js';

/** A start: state and inputs by place, and a motor current [A] that stays. */
export interface Start {
  currentA?: number;
  state: Record<number, number>;
  inputs: Record<number, number>;
}

/** A rig thrown up with everything turning, its height left to the test. */
export const THROWN = {
  [at.PITCH]: -0.2,
  [at.LEAN]: 0.15,
  [at.LEG]: 0.9,
  [at.X + at.RATE]: 3,
  [at.Z + at.RATE]: 0.5,
  [at.WHEEL + at.RATE]: 25,
  [at.PITCH + at.RATE]: 1,
  [at.LEAN + at.RATE]: -0.7,
  [at.LEG + at.RATE]: 0.2,
};

/** States after every tick [s] of a plant that is let go for a time [s] with its inputs held. */
export function letGo(
  integrator: Integrator,
  { state, inputs, currentA = 0 }: Start,
  { tickS, forS }: { tickS: number; forS: number },
): Float64Array[] {
  const moment = momentWith(state, inputs);
  moment.motion[MOTOR_CURRENT] = currentA;
  moment.followed[0] = currentA;
  const states = [moment.state.slice()];
  for (let tick = 0; tick < Math.round(forS / tickS); tick++) {
    const stopped = integrator.advance(moment);
    if (stopped !== undefined) throw new Error(stopped);
    states.push(moment.state.slice());
  }
  return states;
}

/** State after a time [s] by odex in one go at a tolerance. */
export function exactly(
  plant: Plant,
  road: Road,
  { start, forS, tolerance }: { start: Start; forS: number; tolerance: number },
): number[] {
  const { state, inputs } = momentWith(start.state, start.inputs);
  const now = new Float64Array(at.STATE_SIZE);
  const rates = new Float64Array(at.DERIVE_SIZE);
  const derivative = (_timeS: number, y: number[]) => {
    now.set(y);
    derive(plant, road, inputs, now, rates);
    return rates.subarray(0, at.STATE_SIZE);
  };
  const end = solveReference(derivative, Array.from(state), { xEnd: forS, tolerance });
  if (end === undefined) throw new Error('odex did not converge');
  return end;
}

/** State after a time [s] by the fixed step at a step [s]. */
export function quickly(
  plant: Plant,
  road: Road,
  { start, forS, stepS }: { start: Start; forS: number; stepS: number },
): Float64Array {
  const integrator = fixedStep(plant, road, { tickS: stepS, stepsPerTick: 1 });
  return letGo(integrator, start, { tickS: stepS, forS }).at(-1)!;
}

/** Largest difference of two states. */
export function gap(a: ArrayLike<number>, b: ArrayLike<number>): number {
  return Array.from({ length: a.length }, (_, index) => Math.abs(a[index]! - b[index]!)).reduce(
    (most, difference) => Math.max(most, difference),
    0,
  );
}

interface Part {
  massKg: number;
  x: number;
  z: number;
  xRate: number;
  zRate: number;
}

function partsOf(plant: Plant, state: Float64Array): Part[] {
  const read = (place: number) => state[place]!;
  const rate = (place: number) => state[place + at.RATE]!;
  const { deckForwardM: a, deckAboveAxleM: b, ankleAboveAxleM: hf } = plant;
  const [theta, phi, leg] = [read(at.PITCH), read(at.LEAN), read(at.LEG)];
  const axle = { x: read(at.X), z: read(at.Z), xRate: rate(at.X), zRate: rate(at.Z) };
  const onDeck = (forward: number, above: number) => {
    const dx = forward * Math.cos(theta) + above * Math.sin(theta);
    const dz = above * Math.cos(theta) - forward * Math.sin(theta);
    const turn = rate(at.PITCH);
    return {
      x: axle.x + dx,
      z: axle.z + dz,
      xRate: axle.xRate + turn * dz,
      zRate: axle.zRate - turn * dx,
    };
  };
  const ankles = onDeck(0, hf);
  const [dx, dz] = [leg * Math.sin(phi), leg * Math.cos(phi)];
  const rider = {
    x: ankles.x + dx,
    z: ankles.z + dz,
    xRate: ankles.xRate + rate(at.LEG) * Math.sin(phi) + rate(at.LEAN) * dz,
    zRate: ankles.zRate + rate(at.LEG) * Math.cos(phi) - rate(at.LEAN) * dx,
  };
  return [
    { massKg: plant.wheelMassKg, ...axle },
    { massKg: plant.deckMassKg, ...onDeck(a, b) },
    { massKg: plant.riderMassKg, ...rider },
  ];
}

/** The whole as one body: place and velocity of its centre of mass, spin about it (rolling forward is positive). */
export function wholeOf(plant: Plant, state: Float64Array) {
  const parts = partsOf(plant, state);
  const massKg = parts.reduce((sum, part) => sum + part.massKg, 0);
  const mean = (key: 'x' | 'z' | 'xRate' | 'zRate') =>
    parts.reduce((sum, part) => sum + part.massKg * part[key], 0) / massKg;
  const centre = { x: mean('x'), z: mean('z'), xRate: mean('xRate'), zRate: mean('zRate') };
  const orbit = parts.reduce(
    (sum, part) =>
      sum +
      part.massKg *
        ((part.z - centre.z) * (part.xRate - centre.xRate) -
          (part.x - centre.x) * (part.zRate - centre.zRate)),
    0,
  );
  const spinKgM2PerS =
    orbit +
    plant.wheelInertiaKgM2 * state[at.WHEEL + at.RATE]! +
    plant.deckInertiaKgM2 * state[at.PITCH + at.RATE]! +
    plant.riderInertiaKgM2 * state[at.LEAN + at.RATE]!;
  return { massKg, ...centre, spinKgM2PerS };
}
