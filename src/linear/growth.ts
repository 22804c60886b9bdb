/**
 * A motion grows by itself: is the pitch loop lost, or is it something else? The one place where that is decided.
 *
 *   dies out   the motion does not grow
 *   rolls      at rest, slower than 0.25 Hz, nine tenths of its energy travel: rolling resistance about rest against the
 *              rider's lasting lean, a slow to and fro that is not the pitch loop's doing
 *   creeps     it takes more than 5 s to double, time enough to answer with a shift of weight
 *   grows      anything else
 *
 * The limits are ours, without a source.
 */
import type { Mode } from './modes.js';

/** What becomes of a motion. */
export type Fate = 'dies out' | 'rolls' | 'creeps' | 'grows';

/** What becomes of the loop: what the worst of its motions does. */
export type LoopState = 'holds' | 'rolls' | 'creeps' | 'lost';

const LEAST_DOUBLING_S = 5;
const ROLL_HZ = 0.25;
const ROLL_TRAVEL_SHARE = 0.9;

/** Time in which a growing motion doubles, s; infinite for one that does not grow. */
export function doublingS({ growthPerS }: Pick<Mode, 'growthPerS'>): number {
  return growthPerS > 0 ? Math.LN2 / growthPerS : Infinity;
}

/** What becomes of a motion, about standing or about a ride. */
export function fateOf(mode: Mode, isStanding: boolean): Fate {
  if (mode.growthPerS < 0) return 'dies out';
  const isSlowTravel = mode.frequencyHz < ROLL_HZ && mode.shares.travel >= ROLL_TRAVEL_SHARE;
  if (isStanding && isSlowTravel) return 'rolls';
  return doublingS(mode) > LEAST_DOUBLING_S ? 'creeps' : 'grows';
}

/** What becomes of the loop in which these motions are. */
export function loopStateOf(modes: readonly Mode[], isStanding: boolean): LoopState {
  const fates = modes.map((mode) => fateOf(mode, isStanding));
  if (fates.includes('grows')) return 'lost';
  if (fates.includes('creeps')) return 'creeps';
  return fates.includes('rolls') ? 'rolls' : 'holds';
}

/** Whether a loop has margins: a margin is how far a loop that holds is from being lost. */
export function hasMargins(state: LoopState): boolean {
  return state === 'holds' || state === 'rolls';
}
