/**
 * A motion grows by itself: is the pitch loop lost, or does the rig only creep? The one place where that is decided.
 *
 *   dies out   the motion does not grow
 *   creeps     it takes more than 5 s to double; or, at rest, it is slower than 0.25 Hz and nine tenths of its energy are
 *              travel: rolling resistance about rest against the rider's lasting lean, a slow to and fro that stays bounded
 *   grows      anything else: the loop is lost
 *
 * Both limits are ours, without a source: 5 s is time enough to answer with a shift of weight.
 */
import type { Mode } from './modes.js';

/** What becomes of a motion. */
export type Fate = 'dies out' | 'creeps' | 'grows';

/** Whether the pitch loop holds: every motion dies out; some only creep; one grows. */
export type LoopState = 'holds' | 'creeps' | 'lost';

const LEAST_DOUBLING_S = 5;
const CREEP_HZ = 0.25;
const CREEP_TRAVEL_SHARE = 0.9;

/** Time in which a growing motion doubles, s; infinite for one that does not grow. */
export function doublingS({ growthPerS }: Pick<Mode, 'growthPerS'>): number {
  return growthPerS > 0 ? Math.LN2 / growthPerS : Infinity;
}

/** What becomes of a motion, about standing or about a ride. */
export function fateOf(mode: Mode, isStanding: boolean): Fate {
  if (mode.growthPerS < 0) return 'dies out';
  if (doublingS(mode) > LEAST_DOUBLING_S) return 'creeps';
  const isSlowTravel = mode.frequencyHz < CREEP_HZ && mode.shares.travel >= CREEP_TRAVEL_SHARE;
  return isStanding && isSlowTravel ? 'creeps' : 'grows';
}

/** Whether the loop holds in which these motions are. */
export function loopStateOf(modes: readonly Mode[], isStanding: boolean): LoopState {
  const fates = modes.map((mode) => fateOf(mode, isStanding));
  if (fates.includes('grows')) return 'lost';
  return fates.includes('creeps') ? 'creeps' : 'holds';
}
