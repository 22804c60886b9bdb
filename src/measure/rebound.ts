/**
 * After a disturbance, how far does the signal swing to the other side of where it ends? Percent of
 * the first peak, so that it compares with a step's overshoot: for a second-order system let go from
 * an offset both are exp(-pi zeta / sqrt(1 - zeta^2)) (logarithmic decrement, any vibration textbook).
 *
 * Deviations are taken from the final value. The first peak belongs to the first swing that leaves
 * the band AND reaches at least half of the largest deviation in the span: a kick that precedes the
 * real answer is not taken for it, and a rebound is never above 200 %. A swing is over when the
 * signal has passed to the other side by more than a fifth of the band: smaller swings are noise.
 * (These two shares are ours; common practice, no source.)
 */
import type { Span } from './window.js';

const FIRST_PEAK_SHARE = 1 / 2;
const NOISE_SHARE_OF_BAND = 1 / 5;

/** Rebound [percent of the first peak]; 0 when the signal never leaves the band or does not swing to the other side. */
export function reboundPercent(signal: Span, finalValue: number, band: number): number {
  const largest = largestDeviation(signal, finalValue);
  if (largest <= band) return 0;
  const { samples, first, end } = signal;
  const threshold = Math.max(band, FIRST_PEAK_SHARE * largest);
  const noise = NOISE_SHARE_OF_BAND * band;
  let row = first;
  while (row < end && Math.abs((samples[row] as number) - finalValue) < threshold) row += 1;
  const side = Math.sign((samples[row] as number) - finalValue);
  let peak = 0;
  for (; row < end; row += 1) {
    const away = side * ((samples[row] as number) - finalValue);
    if (away < -noise) break;
    peak = Math.max(peak, away);
  }
  let back = 0;
  for (; row < end; row += 1) {
    const away = side * ((samples[row] as number) - finalValue);
    if (away > noise) break;
    back = Math.max(back, -away);
  }
  return (100 * back) / peak;
}

function largestDeviation({ samples, first, end }: Span, finalValue: number): number {
  let largest = 0;
  for (let row = first; row < end; row += 1) {
    largest = Math.max(largest, Math.abs((samples[row] as number) - finalValue));
  }
  return largest;
}
