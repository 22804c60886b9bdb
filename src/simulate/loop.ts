/**
 * The sampled loop, in the order of a real controller's tick: sense, estimate, set-point and control, ceilings,
 * delay to the motor, rider, then the plant moves on to the next tick with everything held.
 */
import { findCeilings } from '../control/ceilings.js';
import { ACCELEROMETER_PITCH, estimate, GYRO } from '../control/estimator.js';
import { control, RAMP, REQUESTED, type ControlLaw } from '../control/law.js';
import * as rider from '../control/rider-feedback.js';
import { drawCharge, MOTOR_CURRENT, MOTOR_SPEED, updatePack } from '../model/battery.js';
import { derive } from '../model/derive.js';
import { lagDecay } from '../model/motor.js';
import * as at from '../model/state.js';
import { releaseTread } from '../model/tyre.js';
import { GRAVITY_M_PER_S2 } from '../quantity/units.js';
import { fallOf } from './ending.js';
import type { Integrator } from './fixed-step.js';
import type { Moment } from './moment.js';
import type { Outcome } from './outcome.js';
import { recordRow } from './record.js';
import type { Tape } from './tape.js';
import type { Trial } from './trial.js';

/** Constants of a run that the loop looks up at every tick. */
export interface LoopPlan {
  trial: Trial;
  law: ControlLaw;
  integrator: Integrator;
  /** Share of the current's gap that is left after a tick. */
  lagKeepRatio: number;
}

/** The plan of a run. */
export function loopPlan(trial: Trial, law: ControlLaw, integrator: Integrator): LoopPlan {
  return { trial, law, integrator, lagKeepRatio: lagDecay(trial.tickS, trial.plant.motor.lagS) };
}

/**
 * Runs the ticks from `moment.tick` up to, not including, `untilTick`, writing a row each. Returns how the run
 * ended, or undefined when it is still up and can go on from `moment`.
 */
export function runTicks(
  plan: LoopPlan,
  moment: Moment,
  { tape, untilTick }: { tape: Tape; untilTick: number },
): Outcome | undefined {
  const { trial, integrator } = plan;
  while (moment.tick < untilTick) {
    tickOnce(plan, moment, tape);
    const stopped = integrator.advance(moment);
    settle(plan, moment);
    if (stopped !== undefined) {
      return { kind: 'solver stopped', atS: moment.tick * trial.tickS, detail: stopped };
    }
    const fall = fallOf(trial, moment);
    if (fall !== undefined) return fall;
  }
  return undefined;
}

/** Everything of a tick but the motion that follows: senses, decisions and the row of the tape. */
export function tickOnce(plan: LoopPlan, moment: Moment, tape: Tape): void {
  sense(plan.trial, moment);
  decide(plan, moment);
  feel(plan.trial, moment);
  recordRow(plan.trial, moment, tape);
}

/** 1. Gyro and accelerometer read the plant as it is, inputs still as they were held. */
function sense({ plant, road, noise }: Trial, moment: Moment): void {
  const { state, inputs, rates, reading, motion, tick } = moment;
  derive(plant, road, inputs, state, rates);
  if (releaseTread(plant, inputs, rates, state)) derive(plant, road, inputs, state, rates);
  motion[MOTOR_SPEED] = state[at.WHEEL + at.RATE]! - state[at.PITCH + at.RATE]!;
  const ct = Math.cos(state[at.PITCH]!);
  const st = Math.sin(state[at.PITCH]!);
  const forward = rates[at.X + at.RATE]!;
  const up = rates[at.Z + at.RATE]! + GRAVITY_M_PER_S2;
  const alongDeck = forward * ct - up * st + noise.forward[tick]!;
  const acrossDeck = forward * st + up * ct + noise.up[tick]!;
  reading[GYRO] = state[at.PITCH + at.RATE]! + noise.gyro[tick]!;
  reading[ACCELEROMETER_PITCH] = -Math.atan2(alongDeck, acrossDeck);
}

/** 2 to 6. Estimate, control, ceilings, and the queue to the motor. */
function decide({ law, trial }: LoopPlan, moment: Moment): void {
  const { controller, requests, tick } = moment;
  estimate(law.estimator, moment.reading, moment.estimator);
  updatePack(trial.plant, moment.motion, moment.pack);
  findCeilings(law.ceilings, trial.plant, moment);
  const ramped = trial.scenario.start.takesOver && law.engageRampS > 0;
  controller[RAMP] = ramped ? Math.min(1, (tick * trial.tickS) / law.engageRampS) : 1;
  control(law, moment);
  const slots = requests.length;
  requests[tick % slots] = controller[REQUESTED]!;
  moment.followed[0] = requests[(tick + 1) % slots]!;
}

/** 7. The rider senses late and decides what his feet do until the next tick; the road under the wheel is looked up. */
function feel({ riderLaw, script, noise, road }: Trial, moment: Moment): void {
  const { state, inputs, sensed, tick, pastLean, pastLeanRate, pastSpeed } = moment;
  const slots = pastLean.length;
  const slot = tick % slots;
  pastLean[slot] = state[at.LEAN]!;
  pastLeanRate[slot] = state[at.LEAN + at.RATE]!;
  pastSpeed[slot] = state[at.X + at.RATE]!;
  const whole = Math.floor(riderLaw.delayTicks);
  const part = riderLaw.delayTicks - whole;
  const late = (tick - whole + 2 * slots) % slots;
  const later = (tick - whole - 1 + 2 * slots) % slots;
  sensed[rider.SENSED_LEAN] = pastLean[late]! + part * (pastLean[later]! - pastLean[late]!);
  sensed[rider.SENSED_LEAN_RATE] = pastLeanRate[late]! + part * (pastLeanRate[later]! - pastLeanRate[late]!);
  sensed[rider.SENSED_SPEED] = pastSpeed[late]! + part * (pastSpeed[later]! - pastSpeed[late]!);
  sensed[rider.WANTED_SPEED] = script.wantedSpeedMPerS[tick]!;
  sensed[rider.SCRIPTED_TORQUE] = -script.noseDownTorqueNm[tick]!;
  sensed[rider.RESTLESSNESS] = noise.tremor[tick]!;
  rider.riderStep(riderLaw, sensed, moment.rider);

  const starts = road.pieceStartM;
  while (moment.piece + 1 < starts.length && state[at.X]! >= starts[moment.piece + 1]!) moment.piece++;
  while (moment.piece > 0 && state[at.X]! < starts[moment.piece]!) moment.piece--;
  inputs[at.RIDER_TORQUE] = moment.rider[rider.ACTIVE_TORQUE]!;
  inputs[at.SHOVE] = script.shoveN[tick]!;
  inputs[at.GRIP] = road.gripRatio[moment.piece]!;
  inputs[at.ROLLING] = road.rollingResistanceRatio[moment.piece]!;
}

/** 8, after the plant has moved: current and charge at the new tick. */
export function settle({ trial, lagKeepRatio }: LoopPlan, moment: Moment): void {
  const { motion, followed } = moment;
  drawCharge(trial.plant, trial, moment.pack);
  motion[MOTOR_CURRENT] = followed[0]! + lagKeepRatio * (motion[MOTOR_CURRENT]! - followed[0]!);
  moment.inputs[at.MOTOR_TORQUE] = trial.plant.motor.torqueConstantNmPerA * motion[MOTOR_CURRENT]!;
  moment.tick++;
}
