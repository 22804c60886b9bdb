/**
 * How far did the nose go down, and how far up? Measured from level, so that both answer how near
 * a deck end came to the road.
 */
import type { Span } from './window.js';

/** Largest nose-down and nose-up pitch [rad], both counted upward from 0; 0 when the nose never went that way. */
export interface PeakPitch {
  noseDownRad: number;
  noseUpRad: number;
}

/** Peak pitch each way over the span [rad]; pitch > 0 is nose down. */
export function peakPitch({ samples, first, end }: Span): PeakPitch {
  let noseDownRad = 0;
  let noseUpRad = 0;
  for (let row = first; row < end; row += 1) {
    const pitchRad = samples[row] as number;
    if (pitchRad > noseDownRad) noseDownRad = pitchRad;
    if (-pitchRad > noseUpRad) noseUpRad = -pitchRad;
  }
  return { noseDownRad, noseUpRad };
}
