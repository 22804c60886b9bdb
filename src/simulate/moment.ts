/**
 * All that a run remembers from one tick to the next, in flat arrays: a copy of it is a run that can be
 * taken up again at that tick.
 */
import { CEILINGS_SIZE } from '../control/ceilings.js';
import { ESTIMATOR_SIZE, READING_SIZE } from '../control/estimator.js';
import { CONTROLLER_SIZE } from '../control/law.js';
import { RIDER_SIZE, SENSED_SIZE } from '../control/rider-feedback.js';
import { MOTION_SIZE, PACK_SIZE } from '../model/battery.js';
import { DERIVE_SIZE, INPUT_SIZE, STATE_SIZE } from '../model/state.js';

/** The memory of a run; sizes and places are named where each array is used. */
export interface Moment {
  tick: number;
  /** Index of the road piece under the axle. */
  piece: number;
  /** State of the plant, its held inputs, and its derivative under them. */
  state: Float64Array;
  inputs: Float64Array;
  rates: Float64Array;
  /** Motor current [A] and speed [rad/s]; pack; request that the motor follows until the next tick [A]. */
  motion: Float64Array;
  pack: Float64Array;
  followed: Float64Array;
  /** Nose and tail tip, x and z each, m. */
  tips: Float64Array;
  reading: Float64Array;
  estimator: Float64Array;
  ceilings: Float64Array;
  controller: Float64Array;
  rider: Float64Array;
  sensed: Float64Array;
  /** Requests on their way to the motor, a ring over the delay ticks. */
  requests: Float64Array;
  /** Lean, lean rate and speed on their way through the rider's nerves, rings of one length. */
  pastLean: Float64Array;
  pastLeanRate: Float64Array;
  pastSpeed: Float64Array;
}

/** A memory with everything at zero. */
export function createMoment(delayTicks: number, riderDelayTicks: number): Moment {
  const past = Math.ceil(riderDelayTicks) + 2;
  return {
    tick: 0,
    piece: 0,
    state: new Float64Array(STATE_SIZE),
    inputs: new Float64Array(INPUT_SIZE),
    rates: new Float64Array(DERIVE_SIZE),
    motion: new Float64Array(MOTION_SIZE),
    pack: new Float64Array(PACK_SIZE),
    followed: new Float64Array(1),
    tips: new Float64Array(4),
    reading: new Float64Array(READING_SIZE),
    estimator: new Float64Array(ESTIMATOR_SIZE),
    ceilings: new Float64Array(CEILINGS_SIZE),
    controller: new Float64Array(CONTROLLER_SIZE),
    rider: new Float64Array(RIDER_SIZE),
    sensed: new Float64Array(SENSED_SIZE),
    requests: new Float64Array(delayTicks + 1),
    pastLean: new Float64Array(past),
    pastLeanRate: new Float64Array(past),
    pastSpeed: new Float64Array(past),
  };
}
