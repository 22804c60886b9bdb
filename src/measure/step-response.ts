/**
 * How does a signal go from one value to another: how fast, and how far past? Textbook step metrics
 * on samples; initial and final value are given by the caller.
 * Source of both definitions: K. Ogata, Modern Control Engineering, section 5-3 (from memory).
 */
import type { Span } from './window.js';

/** Where a step starts and ends, in the signal's unit. */
export interface Step {
  initial: number;
  final: number;
}

const RISE_FROM_SHARE = 0.1;
const RISE_TO_SHARE = 0.9;

/** Overshoot: farthest the signal goes past the final value, as percent of |final - initial|; 0 if none or no step. */
export function overshootPercent({ samples, first, end }: Span, { initial, final }: Step): number {
  const size = final - initial;
  if (size === 0) return 0;
  const side = Math.sign(size);
  let past = 0;
  for (let row = first; row < end; row += 1) {
    past = Math.max(past, side * ((samples[row] as number) - final));
  }
  return (100 * past) / Math.abs(size);
}

/** Rise time [s]: from first reaching 10 % of the way to first reaching 90 %, with straight lines between rows; null if never. */
export function riseTimeS(signal: Span, { initial, final }: Step): number | null {
  const size = final - initial;
  if (size === 0) return null;
  const side = Math.sign(size);
  const from = firstReach(signal, side, initial + RISE_FROM_SHARE * size);
  const to = firstReach(signal, side, initial + RISE_TO_SHARE * size);
  return from === null || to === null ? null : (to - from) * signal.tickS;
}

/** Row, with its fraction, at which the signal first reaches the level while going to `side`; null if never. */
function firstReach({ samples, first, end }: Span, side: number, level: number): number | null {
  for (let row = first; row < end; row += 1) {
    const sample = samples[row] as number;
    if (side * (sample - level) < 0) continue;
    if (row === first) return row;
    const before = samples[row - 1] as number;
    return row - 1 + (level - before) / (sample - before);
  }
  return null;
}
