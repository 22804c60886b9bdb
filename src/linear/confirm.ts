/**
 * Does the simulation lose the loop where the margin says? The very ride is disturbed a little, with that much more delay or
 * gain, and the swing at the frequency in question is watched: it must die out inside the margin and grow outside of it.
 */
import { ASKED, REQUESTED, controlLaw } from '../control/law.js';
import * as at from '../model/state.js';
import { loopPlan, settle, tickOnce } from '../simulate/loop.js';
import { startMoment } from '../simulate/start.js';
import { createTape, type Tape } from '../simulate/tape.js';
import type { Margin } from './margins.js';
import { steadyRide, type RidePoint } from './steady-ride.js';

/** What is changed: the delay by ticks, or the gain of the whole loop by a factor. */
export type Change = { kind: 'delay'; ticks: number } | { kind: 'gain'; factor: number };

/** What the simulation does with a change: growth of the swing, 1/s; infinite where it is too swift to be measured. */
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

/**
 * So far inside and outside the margin it is tried, the nearer only where the further disagrees: what is lost at a margin may
 * come back a little beyond it. Near to it growth is slow, so the further says more.
 */
const STEP_RATIOS = [0.25, 0.1, 0.03] as const;
const DISTURBANCE_RAD = 1e-7;
/** A request further than this from its resting value is no small deviation any more, A. */
const SMALL_A = 1;
/** Swings that are watched, but no longer than so. */
const SWINGS = 30;
const LONGEST_S = 80;
/** Swings that are left out, for what dies out at once. */
const FIRST_SWINGS = 3;
/** A swing that has fallen to this share has died out; what is left below it is of other motions, or rounding. */
const GONE_SHARE = 1e-5;

/** Tries a delay margin [s]; null where there is none to try. */
export function confirmDelay(point: RidePoint, { value, radPerS }: Margin): Confirmation | null {
  if (radPerS === null || !Number.isFinite(value)) return null;
  const ticks = value * point.board.controller.loopRateHz;
  return confirmation((step) => {
    const counts = [Math.floor((1 - step) * ticks), Math.ceil((1 + step) * ticks)];
    return counts.map((count) => trial(point, { kind: 'delay', ticks: count }, radPerS));
  });
}

/** Tries a gain margin, upwards (above 1) or downwards (below); null where there is none to try. */
export function confirmGain(point: RidePoint, { value, radPerS }: Margin): Confirmation | null {
  if (radPerS === null || !Number.isFinite(value) || value <= 0) return null;
  return confirmation((step) => {
    const factors = [value ** (1 - step), value ** (1 + step)];
    return factors.map((factor) => trial(point, { kind: 'gain', factor }, radPerS));
  });
}

/** The first steps that agree, or the furthest. */
function confirmation(tried: (step: number) => Trial[]): Confirmation {
  let furthest: Confirmation | undefined;
  for (const step of STEP_RATIOS) {
    const [inside, outside] = tried(step);
    const agrees = inside!.growthPerS < 0 && outside!.growthPerS > 0;
    const found = { inside: inside!, outside: outside!, agrees };
    if (agrees) return found;
    furthest ??= found;
  }
  return furthest!;
}

function trial(point: RidePoint, change: Change, radPerS: number): Trial {
  const durationS = Math.min((SWINGS * 2 * Math.PI) / radPerS, LONGEST_S);
  return { change, growthPerS: growth(disturbed(point, change, durationS), radPerS) };
}

/** The tape of a ride that is disturbed at its start, as long as its deviation stays small. */
function disturbed(point: RidePoint, change: Change, durationS: number): Tape {
  const { plan: steady } = steadyRide(point, durationS + 1);
  const { tickS } = steady.trial;
  const law = controlLaw(point.profile, point.board);
  if (change.kind === 'delay') law.delayTicks += change.ticks;
  const factor = change.kind === 'gain' ? change.factor : 1;
  const plan = loopPlan(steady.trial, law, steady.integrator);
  const moment = startMoment(plan.trial, law);
  const { controller, requests } = moment;
  const currentA = controller[REQUESTED]!;
  controller[ASKED] = currentA;
  moment.state[at.PITCH]! += DISTURBANCE_RAD;
  const tickCount = Math.ceil(durationS / tickS);
  const tape = createTape(tickCount + 1, tickS);
  while (moment.tick < tickCount && Math.max(1, factor) * Math.abs(controller[ASKED]! - currentA) < SMALL_A) {
    const slot = moment.tick % requests.length;
    tickOnce(plan, moment, tape);
    // The factor is on the loop where it is broken for its gain: between the law and the motor.
    requests[slot] = currentA + factor * (requests[slot]! - currentA);
    moment.followed[0] = requests[(moment.tick + 1) % requests.length]!;
    plan.integrator.advance(moment);
    settle(plan, moment);
  }
  return tape;
}

/** Growth [1/s] of the pitch's swing near a frequency [rad/s], from swing to swing. */
function growth({ columns, length, tickS }: Tape, radPerS: number): number {
  const lag = Math.max(1, Math.round(Math.PI / radPerS / tickS));
  const rate = columns.pitchRateRadPerS;
  const swings: number[] = [];
  for (let first = 0; first + 4 * lag <= length; first += 2 * lag) {
    let sum = 0;
    for (let row = first; row < first + 2 * lag; row++) {
      // Over half a swing each: what swings so is four times as large, what is slower almost goes out.
      sum += (rate[row + 2 * lag]! - 2 * rate[row + lag]! + rate[row]!) ** 2;
    }
    swings.push(Math.sqrt(sum));
  }
  const start = Math.min(FIRST_SWINGS, swings.length - 2);
  if (start < 0) return Infinity;
  const gone = swings.findIndex((swing, index) => index > start && swing < GONE_SHARE * swings[start]!);
  const end = gone < 0 ? swings.length - 1 : gone;
  return Math.log(swings[end]! / swings[start]!) / ((end - start) * 2 * lag * tickS);
}
