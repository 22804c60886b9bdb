/**
 * The control law: from estimated pitch to a request for motor current, with what a profile may shape.
 *
 *   e = est - set-point [deg];  asked = ramp (P e (1 + s |e|) + D rate + I) + share load
 *
 * Positive current drives forward, so a nose that is down (e > 0) is caught. The integral stops while its growth
 * would only push further into a ceiling (conditional integration: K. J. Astrom and T. Hagglund, PID Controllers, 1995).
 */
import type { BoardFile } from '../quantity/board-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { DEG_PER_RAD, RAD_PER_DEG } from '../quantity/units.js';
import {
  LOWER,
  LOWER_CAUSE,
  LOWER_FULL,
  NO_CEILING,
  UPPER,
  UPPER_CAUSE,
  UPPER_FULL,
  type CeilingLaw,
} from './ceilings.js';
import { ESTIMATED_PITCH, ESTIMATED_RATE, estimatorLaw, type EstimatorLaw } from './estimator.js';

/** Where the integral [A] lives in a controller's memory. */
export const INTEGRAL = 0;
/** Rise of the nose for lack of headroom, rad. */
export const LIFT = 1;
/** Filtered load, A. */
export const LOAD = 2;
/** What the law asked for before ceilings, A. */
export const ASKED = 3;
/** What was left of it after them, A. */
export const REQUESTED = 4;
/** Which ceiling cut it; 0 is none. */
export const BINDING = 5;
/** Headroom below the nearest ceiling, share of the full ceiling. */
export const HEADROOM = 6;
/** Set-point, rad. */
export const SET_POINT = 7;
/** Share to which the gains have faded in, 0 to 1; set from outside before each tick. */
export const RAMP = 8;
/** Rise of the nose at which the headroom lift would come to rest, rad. */
export const LIFT_GOAL = 9;
/** Length of a controller's memory. */
export const CONTROLLER_SIZE = 10;

/** A profile on a board as the loop wants it: angles in rad, times in s, gains in A per deg. */
export interface ControlLaw {
  tickS: number;
  delayTicks: number;
  estimator: EstimatorLaw;
  ceilings: CeilingLaw;
  proportionalAPerDeg: number;
  rateAPerDegPerS: number;
  integralAPerDegS: number;
  integralLimitA: number;
  progressivePerDeg: number;
  slewStepA: number;
  restTrimRad: number;
  engageRampS: number;
  loadFollowRatio: number;
  loadCurrentShare: number;
  loadSetPointRadPerA: number;
  liftBelowShare: number;
  liftMostRad: number;
  liftStepRad: number;
}

/** The law of a profile on a board. */
export function controlLaw(profile: ProfileFile, board: BoardFile): ControlLaw {
  const { gains, shaping } = profile;
  const tickS = 1 / board.controller.loopRateHz;
  const { loadFeedForward: load, headroomLift: lift } = shaping;
  return {
    tickS,
    delayTicks: board.controller.delayTicks,
    estimator: estimatorLaw(shaping.blendTimeS, tickS, shaping.gyroLowPassHz),
    ceilings: {
      driveCurrentA: Math.min(board.motor.driveCurrentA, shaping.driveCeilingA ?? Infinity),
      brakeCurrentA: Math.min(board.motor.brakeCurrentA, shaping.brakeCeilingA ?? Infinity),
    },
    proportionalAPerDeg: gains.proportionalAPerDeg,
    rateAPerDegPerS: gains.rateAPerDegPerS,
    integralAPerDegS: gains.integralAPerDegS,
    integralLimitA: shaping.integralLimitA,
    progressivePerDeg: shaping.progressiveStiffnessPerDeg,
    slewStepA: (shaping.slewLimitAPerS ?? Infinity) * tickS,
    restTrimRad: -shaping.restTrimNoseUpDeg * RAD_PER_DEG,
    engageRampS: shaping.engageRampS,
    loadFollowRatio: load ? 1 - Math.exp(-tickS / load.filterTimeS) : 0,
    loadCurrentShare: load?.currentShare ?? 0,
    loadSetPointRadPerA: -(load?.noseUpDegPerA ?? 0) * RAD_PER_DEG,
    liftBelowShare: lift ? lift.belowPercent / 100 : 0,
    liftMostRad: lift ? lift.upToDeg * RAD_PER_DEG : 0,
    liftStepRad: lift ? lift.rateDegPerS * RAD_PER_DEG * tickS : 0,
  };
}

/**
 * One tick: takes the estimate and the ceilings, leaves in the controller's memory what was asked, what is requested and
 * which ceiling cut it.
 */
export function control(
  law: ControlLaw,
  {
    estimator,
    ceilings,
    controller: memory,
  }: { estimator: Float64Array; ceilings: Float64Array; controller: Float64Array },
): void {
  moveSetPoint(law, memory);
  const errorDeg = (estimator[ESTIMATED_PITCH]! - memory[SET_POINT]!) * DEG_PER_RAD;
  const proportional = law.proportionalAPerDeg * errorDeg * (1 + law.progressivePerDeg * Math.abs(errorDeg));
  const rate = law.rateAPerDegPerS * estimator[ESTIMATED_RATE]! * DEG_PER_RAD;
  const gained = memory[RAMP]! * (proportional + rate + memory[INTEGRAL]!);
  const asked = gained + law.loadCurrentShare * memory[LOAD]!;
  const before = memory[REQUESTED]!;
  const slewed = Math.max(before - law.slewStepA, Math.min(before + law.slewStepA, asked));
  memory[ASKED] = slewed;
  cutToCeilings(ceilings, memory);
  const cut = asked - memory[REQUESTED]!;
  if (!(cut * errorDeg > 0)) {
    const grown = memory[INTEGRAL]! + law.integralAPerDegS * errorDeg * law.tickS;
    memory[INTEGRAL] = Math.max(-law.integralLimitA, Math.min(law.integralLimitA, grown));
  }
}

function moveSetPoint(law: ControlLaw, memory: Float64Array): void {
  memory[LOAD]! += law.loadFollowRatio * (memory[REQUESTED]! - memory[LOAD]!);
  if (law.liftMostRad > 0) {
    findLiftGoal(law, memory);
    const gap = memory[LIFT_GOAL]! - memory[LIFT]!;
    memory[LIFT]! += Math.max(-law.liftStepRad, Math.min(law.liftStepRad, gap));
  }
  memory[SET_POINT] = law.restTrimRad + law.loadSetPointRadPerA * memory[LOAD]! - memory[LIFT]!;
}

/** Like the two below it takes and leaves arrays only: a number handed over would be boxed where V8 does not inline. */
function cutToCeilings(ceilings: Float64Array, memory: Float64Array): void {
  const wanted = memory[ASKED]!;
  const upper = ceilings[UPPER]!;
  const lower = ceilings[LOWER]!;
  const requested = wanted > upper ? upper : wanted < lower ? lower : wanted;
  memory[REQUESTED] = requested;
  memory[BINDING] =
    wanted > upper ? ceilings[UPPER_CAUSE]! : wanted < lower ? ceilings[LOWER_CAUSE]! : NO_CEILING;
  findHeadroom(ceilings, memory);
}

/** Finds what is left between the request in `memory` and the nearest of its ceilings, as a share of the full one: 0 to 1. */
export function findHeadroom(ceilings: Float64Array, memory: Float64Array): void {
  const above = (ceilings[UPPER]! - memory[REQUESTED]!) / ceilings[UPPER_FULL]!;
  const below = (memory[REQUESTED]! - ceilings[LOWER]!) / ceilings[LOWER_FULL]!;
  memory[HEADROOM] = Math.max(0, Math.min(1, above, below));
}

/** Finds the rise of the nose at which the headroom lift comes to rest if the headroom in `memory` lasts. */
export function findLiftGoal(law: ControlLaw, memory: Float64Array): void {
  memory[LIFT_GOAL] =
    law.liftMostRad > 0
      ? law.liftMostRad * Math.max(0, Math.min(1, 1 - memory[HEADROOM]! / law.liftBelowShare))
      : 0;
}

/** Error [deg] at which the proportional part alone asks for a current [A], neither below 0: P e (1 + s e) solved for e. */
export function errorForDeg(
  {
    proportionalAPerDeg,
    progressivePerDeg: s,
  }: Pick<ControlLaw, 'proportionalAPerDeg' | 'progressivePerDeg'>,
  currentA: number,
): number {
  const straightDeg = currentA / Math.max(proportionalAPerDeg, 1e-9);
  return s > 0 ? (Math.sqrt(1 + 4 * s * straightDeg) - 1) / (2 * s) : straightDeg;
}

/** A law that needs more error than this to hold a load can't hold it: the deck would stand on its end. */
const MOST_ERROR_DEG = 90;

/**
 * Pitch [rad], before any lift, and integral [A] with which the law asks for just this current [A] when nothing changes
 * any more; with gains too weak for that the deck is on its end.
 */
export function settledPitch(law: ControlLaw, currentA: number): { pitchRad: number; integralA: number } {
  const wanted = (1 - law.loadCurrentShare) * currentA;
  const limit = law.integralAPerDegS > 0 ? law.integralLimitA : 0;
  const integralA = Math.max(-limit, Math.min(limit, wanted));
  const errorDeg =
    Math.sign(wanted) * Math.min(errorForDeg(law, Math.abs(wanted - integralA)), MOST_ERROR_DEG);
  const pitchRad = law.restTrimRad + law.loadSetPointRadPerA * currentA + errorDeg * RAD_PER_DEG;
  return { pitchRad, integralA };
}
