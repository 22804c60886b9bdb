/**
 * How often and for how long was the request cut by a current ceiling, and by which one? And how
 * near did it come to the nearest ceiling?
 */
import { CEILINGS } from '../simulate/tape.js';
import type { Ceiling } from '../simulate/tape.js';
import { leastOf } from './window.js';
import type { Span } from './window.js';

/** Share of ticks whose request was cut by each ceiling; they add up to the saturation share. */
export type CeilingShares = Readonly<Record<Exclude<Ceiling, 'none'>, number>>;

/** Saturation: share of ticks with a cut request (0 to 1), longest unbroken stretch of them [s], shares by ceiling. */
export interface Saturation {
  share: number;
  longestS: number;
  byCeiling: CeilingShares;
}

/** Saturation over the column `bindingCeiling`; nothing is saturated in an empty span. */
export function saturation({ samples, first, end, tickS }: Span): Saturation {
  const ticks = CEILINGS.map(() => 0);
  let stretch = 0;
  let longest = 0;
  for (let row = first; row < end; row += 1) {
    const code = samples[row] as number;
    ticks[code] = (ticks[code] ?? 0) + 1;
    stretch = code === 0 ? 0 : stretch + 1;
    longest = Math.max(longest, stretch);
  }
  const count = end - first;
  const shareOf = (ceiling: Ceiling): number =>
    count > 0 ? (ticks[CEILINGS.indexOf(ceiling)] ?? 0) / count : 0;
  return {
    share: count > 0 ? (count - (ticks[0] ?? 0)) / count : 0,
    longestS: longest * tickS,
    byCeiling: {
      drive: shareOf('drive'),
      brake: shareOf('brake'),
      voltage: shareOf('voltage'),
      'pack out': shareOf('pack out'),
      'pack in': shareOf('pack in'),
    },
  };
}

/** Least headroom over the column `headroomShare` (1 is all of it, 0 none); null when the span is empty. */
export function leastHeadroomShare(headroom: Span): number | null {
  return leastOf(headroom);
}
