/**
 * Does the simulation lose the loop where the margin says? The very ride is disturbed a little, with that much more delay or
 * gain, and the swing at the frequency in question is watched: it must die out inside the margin and grow outside of it.
 */
import * as at from '../model/state.js';
import { controlLaw } from '../control/law.js';
import { loopPlan, runTicks } from '../simulate/loop.js';
import { startMoment } from '../simulate/start.js';
import { createTape, type Tape } from '../simulate/tape.js';
import type { Margin } from './margins.js';
import { steadyRide, type RidePoint } from './steady-ride.js';

/** What is changed: the delay by ticks, or every gain by a factor. */
export type Change = { kind: 'delay'; ticks: number } | { kind: 'gain'; factor: number };

/** What the simulation does with a change: growth of the swing, 1/s. */
export interface Trial {
  change: Change;
  growthPerS: number;
}

/** A margin tried in the simulation, a little inside and a little outside. */
export interface Confirmation {
  inside: Trial;
  outside: Trial;
  agrees: boolean;
}

/** So far inside and outside the margin it is tried. */
const STEP_RATIO = 0.25;
const DISTURBANCE_RAD = 1e-8;
/** Swings that are watched. */
const SWINGS = 30;

/** Tries a delay margin [s]; null where there is none to try. */
export function confirmDelay(point: RidePoint, { value, radPerS }: Margin): Confirmation | null {
  if (radPerS === null || !Number.isFinite(value)) return null;
  const tickS = 1 / point.board.controller.loopRateHz;
  const ticks = [
    Math.floor(((1 - STEP_RATIO) * value) / tickS),
    Math.ceil(((1 + STEP_RATIO) * value) / tickS),
  ];
  return confirmation(ticks.map((count) => trial(point, { kind: 'delay', ticks: count }, radPerS)));
}

/** Tries a gain margin, upwards (above 1) or downwards (below); null where there is none to try. */
export function confirmGain(point: RidePoint, { value, radPerS }: Margin): Confirmation | null {
  if (radPerS === null || !Number.isFinite(value) || value <= 0) return null;
  const factors = [value ** (1 - STEP_RATIO), value ** (1 + STEP_RATIO)];
  return confirmation(factors.map((factor) => trial(point, { kind: 'gain', factor }, radPerS)));
}

function confirmation([inside, outside]: Trial[]): Confirmation {
  return { inside: inside!, outside: outside!, agrees: inside!.growthPerS < 0 && outside!.growthPerS > 0 };
}

function trial(point: RidePoint, change: Change, radPerS: number): Trial {
  const durationS = (SWINGS * 2 * Math.PI) / radPerS;
  const { plan } = steadyRide(point, durationS + 1);
  const law = changed(controlLaw(point.profile, point.board), change);
  const changedPlan = loopPlan(plan.trial, law, plan.integrator);
  const tickCount = Math.ceil(durationS / plan.trial.tickS);
  const tape = createTape(tickCount + 1, plan.trial.tickS);
  const moment = startMoment(plan.trial, law);
  moment.state[at.PITCH]! += DISTURBANCE_RAD;
  const fallen = runTicks(changedPlan, moment, { tape, untilTick: tickCount }) !== undefined;
  return { change, growthPerS: fallen ? Infinity : growth(tape, radPerS) };
}

function changed(law: ReturnType<typeof controlLaw>, change: Change): ReturnType<typeof controlLaw> {
  if (change.kind === 'delay') return { ...law, delayTicks: law.delayTicks + change.ticks };
  const { factor } = change;
  return {
    ...law,
    proportionalAPerDeg: factor * law.proportionalAPerDeg,
    rateAPerDegPerS: factor * law.rateAPerDegPerS,
    integralAPerDegS: factor * law.integralAPerDegS,
    loadCurrentShare: factor * law.loadCurrentShare,
  };
}

/** Growth [1/s] of the pitch's swing between the second and the last third of a tape, near a frequency [rad/s]. */
function growth({ columns, length, tickS }: Tape, radPerS: number): number {
  const lag = Math.max(1, Math.round(Math.PI / radPerS / tickS));
  const rate = columns.pitchRateRadPerS;
  const third = Math.floor((length - 2 * lag) / 3);
  const swing = (first: number) => {
    let sum = 0;
    for (let row = first; row < first + third; row++) {
      // Over half a swing each: what swings so is four times as large, what is slower almost goes out.
      sum += (rate[row + 2 * lag]! - 2 * rate[row + lag]! + rate[row]!) ** 2;
    }
    return Math.sqrt(sum / third);
  };
  return Math.log(swing(2 * third) / swing(third)) / (third * tickS);
}
