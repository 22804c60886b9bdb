/**
 * A plain set of gains that suits a rig, to hold a profile against: proportional to what the motor has to move.
 */
import { torqueConstantOf } from '../quantity/motor-constant.js';
import type { BoardFile } from '../quantity/board-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import { GRAVITY_M_PER_S2 } from '../quantity/units.js';

/**
 * Proportional gain as motor torque per degree of pitch over the weight times the wheel's radius (ours: what rides composed on
 * the starter rigs, no source); rate gain by the time in which pitch would come back; how long the gyro is trusted.
 */
const STIFFNESS_PER_DEG = 0.0982;
const RATE_TIME_S = 0.06;
const BLEND_TIME_S = 4;

/**
 * A headroom lift that begins early and goes far: with a low pack nothing else keeps the board up at speed (ours: what was tried on
 * the starter rigs).
 */
export const EARLY_LIFT = { belowPercent: 45, upToDeg: 12, rateDegPerS: 2 } as const;

/** The reference for a rig. */
export function referenceProfile(board: BoardFile, rider: RiderFile): ProfileFile {
  const { torqueConstantNmPerA, speedConstantRpmPerV } = board.motor;
  const torqueConstant = torqueConstantNmPerA ?? torqueConstantOf(speedConstantRpmPerV!);
  const massKg = board.wheel.massKg + board.deck.massKg + rider.body.massKg;
  const proportionalAPerDeg =
    (STIFFNESS_PER_DEG * massKg * GRAVITY_M_PER_S2 * board.wheel.radiusM) / torqueConstant;
  return {
    summary: 'Reference for this rig.',
    gains: { proportionalAPerDeg, rateAPerDegPerS: RATE_TIME_S * proportionalAPerDeg, integralAPerDegS: 0 },
    shaping: {
      progressiveStiffnessPerDeg: 0,
      integralLimitA: 20,
      blendTimeS: BLEND_TIME_S,
      restTrimNoseUpDeg: 0,
      engageRampS: 0,
    },
  };
}
