/**
 * When does a signal come to stay within the band about its final value? Counted from the start of
 * the span. The band is an absolute value; a textbook's "2 %" is 2 % of |final - initial|.
 * Source: K. Ogata, Modern Control Engineering, section 5-3 (definition, from memory).
 */
import type { Span } from './window.js';

/**
 * Settling time [s]: the last crossing into the band, found by a straight line between rows; 0 when the signal never
 * left the band; null when its last row is outside (not settled) or the span is empty.
 */
export function settlingTimeS(signal: Span, finalValue: number, band: number): number | null {
  const { samples, first, end, tickS } = signal;
  if (end <= first) return null;
  for (let row = end - 1; row >= first; row -= 1) {
    const away = (samples[row] as number) - finalValue;
    if (Math.abs(away) <= band) continue;
    if (row === end - 1) return null;
    const side = Math.sign(away);
    const nextAway = (samples[row + 1] as number) - finalValue;
    const fraction = (side * away - band) / (side * (away - nextAway));
    return (row - first + fraction) * tickS;
  }
  return 0;
}
