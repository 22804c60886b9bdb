/**
 * The reference integrator: `odex` (extrapolated midpoint rule with step size and order control), restarted
 * at every tick, because the inputs jump there. The only file that knows odex.
 *
 * odex 2 is a CommonJS package without declarations, so it is required and described here.
 */
import { createRequire } from 'node:module';
import { MOTOR_CURRENT } from '../model/battery.js';
import { derive } from '../model/derive.js';
import { lagDecay } from '../model/motor.js';
import type { Plant } from '../model/plant.js';
import { DERIVE_SIZE, MOTOR_TORQUE, STATE_SIZE } from '../model/state.js';
import type { Road } from '../scenario/road.js';
import type { Integrator } from './fixed-step.js';

interface OdexSolver {
  absoluteTolerance: number | number[];
  relativeTolerance: number | number[];
  initialStepSize: number;
  stabilityCheckCount: number;
  solve(
    derivative: (x: number, y: number[]) => ArrayLike<number>,
    xStart: number,
    yStart: number[],
    xEnd: number,
  ): { y: number[]; outcome: number };
}

const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => OdexSolver };

const CONVERGED = 0;

/** Largest error of a step in every state, m, rad, m/s or rad/s, absolute plus relative. */
export const REFERENCE_TOLERANCE = 1e-12;

/** Solves y' = f(x, y) from `xStart` to `xEnd` with the reference tolerance; undefined when it does not converge. */
export function solveReference(
  derivative: (x: number, y: number[]) => ArrayLike<number>,
  yStart: number[],
  {
    xStart = 0,
    xEnd,
    tolerance = REFERENCE_TOLERANCE,
  }: { xStart?: number; xEnd: number; tolerance?: number },
): number[] | undefined {
  const solver = new Solver(yStart.length);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.initialStepSize = xEnd - xStart;
  // Near rest rates are rounding noise, whose sign changes however short the step: odex would take that for
  // instability and halve for ever. Its error control is all that is needed.
  solver.stabilityCheckCount = 0;
  const { y, outcome } = solver.solve(derivative, xStart, yStart, xEnd);
  return outcome === CONVERGED ? y : undefined;
}

/** The reference integrator for a rig on a road. */
export function referenceStep(plant: Plant, road: Road, { tickS }: { tickS: number }): Integrator {
  const { lagS, torqueConstantNmPerA } = plant.motor;
  const state = new Float64Array(STATE_SIZE);
  const rates = new Float64Array(DERIVE_SIZE);
  const stateRates = rates.subarray(0, STATE_SIZE);

  return {
    advance(moment) {
      const { inputs } = moment;
      const request = moment.followed[0]!;
      const gap = moment.motion[MOTOR_CURRENT]! - request;
      const derivative = (timeS: number, y: number[]) => {
        state.set(y);
        inputs[MOTOR_TORQUE] = torqueConstantNmPerA * (request + gap * lagDecay(timeS, lagS));
        derive(plant, road, inputs, state, rates);
        return stateRates;
      };
      const end = solveReference(derivative, Array.from(moment.state), { xEnd: tickS });
      if (end === undefined) return 'the reference solver did not converge within its steps';
      moment.state.set(end);
      return undefined;
    },
  };
}
