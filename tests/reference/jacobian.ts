/**
 * The linear view of the equations of motion: how `derive` changes with its state and its inputs about one point.
 * Central differences at four step sizes; Richardson's extrapolation takes out the errors of order h (air drag v|v| has
 * one where the rider's speed is zero), h^2 and h^4.
 */
import { Matrix } from 'ml-matrix';
import { derive } from '../../src/model/derive.js';
import type { Ground } from '../../src/model/ground.js';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';

/** Where to linearise: a state (STATE_SIZE) and inputs (INPUT_SIZE), SI units. */
export interface OperatingPoint {
  state: Float64Array;
  inputs: Float64Array;
}

/** x' = A x + B u about an operating point: A is 13 x 13 and B 13 x 5, rows and columns in the order of model/state.ts. */
export interface LinearRig {
  A: Matrix;
  B: Matrix;
}

/** First of the step sizes of each state, m, rad, m/s or rad/s: small against squash, grip and the width of rolling's tanh. */
const STATE_STEPS = stepsOf(at.STATE_SIZE, 0.01, {
  [at.X]: 1e-3,
  [at.Z]: 1e-3,
  [at.LEG]: 1e-3,
  [at.TREAD]: 1e-4,
});
/** The same for the inputs, Nm, N or a ratio. */
const INPUT_STEPS = stepsOf(at.INPUT_SIZE, 1, { [at.GRIP]: 0.01, [at.ROLLING]: 1e-3 });

function stepsOf(size: number, usual: number, others: Record<number, number>): Float64Array {
  return Float64Array.from({ length: size }, (_, place) => others[place] ?? usual);
}

/**
 * Jacobians of the equations of motion, to about 1e-9 of each row's largest entry where they are smooth: no clamp (grip,
 * legs, feet, tyre off the road) within a step.
 */
export function jacobianOf(plant: Plant, road: Ground, { state, inputs }: OperatingPoint): LinearRig {
  const rates = (nowState: Float64Array, nowInputs: Float64Array) => {
    const out = new Float64Array(at.DERIVE_SIZE);
    derive(plant, road, nowInputs, nowState, out);
    return out;
  };
  const A = slopes((moved) => rates(moved, inputs), state, STATE_STEPS);
  const B = slopes((moved) => rates(state, moved), inputs, INPUT_STEPS);
  return { A, B };
}

function slopes(
  respond: (moved: Float64Array) => Float64Array,
  about: Float64Array,
  steps: Float64Array,
): Matrix {
  const columns = Array.from(steps, (step, place) => {
    const central = (h: number) => {
      const [after, before] = [about.slice(), about.slice()];
      after[place]! += h;
      before[place]! -= h;
      const width = after[place]! - before[place]!;
      const [high, low] = [respond(after), respond(before)];
      return Array.from({ length: at.STATE_SIZE }, (_, row) => (high[row]! - low[row]!) / width);
    };
    let ladder = [1, 2, 4, 8].map((part) => central(step / part));
    for (const order of [1, 2, 4]) {
      const weight = 2 ** order;
      ladder = ladder
        .slice(1)
        .map((finer, rung) =>
          finer.map((value, row) => (weight * value - ladder[rung]![row]!) / (weight - 1)),
        );
    }
    return ladder[0]!;
  });
  return new Matrix(columns).transpose();
}
