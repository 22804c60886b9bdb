/**
 * How much does the deck shiver under the feet, apart from the pitching that is the ride itself?
 * The rms of the pitch rate above 3 Hz: riders steer the board below that, ringing and buzz lie above
 * (the 3 Hz is common practice, no source).
 */
import { butterworthHighPass, rootMeanSquareThrough } from './biquad.js';
import type { Span } from './window.js';

const CORNER_HZ = 3;

/** Rms [rad/s] of the pitch rate through a second-order Butterworth high-pass at 3 Hz; 0 when the span is empty. */
export function pitchRateActivityRadPerS(pitchRate: Span): number {
  return rootMeanSquareThrough([butterworthHighPass(CORNER_HZ, 1 / pitchRate.tickS)], pitchRate);
}
