/**
 * What does the rider answer to a small deviation, and how late? The rider's own step of the simulation, differenced about
 * rest in mind, with the delay of his nerves in front.
 */
import { Matrix } from 'ml-matrix';
import * as rider from '../control/rider-feedback.js';
import { plus, power, real, times, type Complex } from './complex.js';
import { solveComplex } from './solve.js';
import type { SteadyRide } from './steady-ride.js';

/** m_next = A m + B s, torque = C m + D s for what is sensed late: lean [rad], lean rate [rad/s], speed [m/s]. */
export interface RiderMap {
  A: Matrix;
  B: Matrix;
  C: Matrix;
  D: Matrix;
  /** Whole and part of the delay, ticks. */
  delayTicks: number;
}

const MEMORY = [rider.SMOOTH_ACCELERATION, rider.SMOOTH_ACCELERATION_RATE, rider.LEAN_TRIM] as const;
const SENSED = [rider.SENSED_LEAN, rider.SENSED_LEAN_RATE, rider.SENSED_SPEED] as const;

/** Small changes of memory (m/s2, m/s3, rad) and of what is sensed (rad, rad/s, m/s). */
const MEMORY_STEPS = [1e-5, 1e-5, 1e-6] as const;
const SENSED_STEPS = [1e-6, 1e-6, 1e-5] as const;

/** The rider's map about a ride. */
export function riderMap({ plan, moment }: SteadyRide): RiderMap {
  const law = plan.trial.riderLaw;
  const step = (memoryChange: readonly number[], sensedChange: readonly number[]) => {
    const memory = moment.rider.slice();
    const sensed = new Float64Array(rider.SENSED_SIZE);
    sensed[rider.SENSED_LEAN] = moment.pastLean[0]!;
    sensed[rider.SENSED_SPEED] = moment.pastSpeed[0]!;
    sensed[rider.WANTED_SPEED] = moment.pastSpeed[0]!;
    MEMORY.forEach((place, index) => (memory[place]! += memoryChange[index] ?? 0));
    SENSED.forEach((place, index) => (sensed[place]! += sensedChange[index] ?? 0));
    rider.riderStep(law, sensed, memory);
    return [...MEMORY.map((place) => memory[place]!), memory[rider.ACTIVE_TORQUE]!];
  };
  const alone = (index: number, size: number) => [0, 1, 2].map((place) => (place === index ? size : 0));
  const slopes = (steps: readonly number[], moved: (change: number[]) => number[]) => {
    const columns = steps.map((size, index) => {
      const [after, before] = [moved(alone(index, size)), moved(alone(index, -size))];
      return after.map((value, row) => (value - before[row]!) / (2 * size));
    });
    return new Matrix(columns).transpose();
  };
  const byMemory = slopes(MEMORY_STEPS, (change) => step(change, []));
  const bySensed = slopes(SENSED_STEPS, (change) => step([], change));
  return {
    A: byMemory.subMatrix(0, 2, 0, 2),
    C: byMemory.subMatrix(3, 3, 0, 2),
    B: bySensed.subMatrix(0, 2, 0, 2),
    D: bySensed.subMatrix(3, 3, 0, 2),
    delayTicks: law.delayTicks,
  };
}

/** Torque [Nm] for one unit of lean, lean rate and speed as they are now, at z. */
export function riderResponse({ A, B, C, D, delayTicks }: RiderMap, z: Complex): Complex[] {
  const whole = Math.floor(delayTicks);
  const part = delayTicks - whole;
  const late = times(power(z, -whole), plus(real(1 - part), times(real(part), power(z, -1))));
  const memory = solveComplex(A, z, B);
  return SENSED.map((_, column) => {
    const ofMemory = memory.map((row) => row[column]!);
    const answer = ofMemory.reduce(
      (sum, value, row) => plus(sum, times(real(C.get(0, row)), value)),
      real(D.get(0, column)),
    );
    return times(late, answer);
  });
}
