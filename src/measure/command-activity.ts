/**
 * How busy is the controller? Total variation of the requested current, sum |u[k+1] - u[k]|, over time:
 * the measure of input usage in S. Skogestad, "Simple analytic rules for model reduction and PID
 * controller tuning", J. Process Control 13 (2003) 291-309 (from memory); per second so that windows compare.
 */
import type { Span } from './window.js';

/** Total variation of the request a second [A/s]; 0 with fewer than two rows. */
export function commandActivityAPerS({ samples, first, end, tickS }: Span): number {
  if (end - first < 2) return 0;
  let variation = 0;
  for (let row = first + 1; row < end; row += 1) {
    variation += Math.abs((samples[row] as number) - (samples[row - 1] as number));
  }
  return variation / ((end - first - 1) * tickS);
}
