/**
 * How hard must the rider work to stay up: the torque between the feet, and how long one foot was
 * light because that torque was all the stance could give.
 */
import { rootMeanSquare } from './window.js';
import type { Span } from './window.js';

/** Rms of the rider's torque [Nm]; 0 when the span is empty. */
export function riderTorqueRmsNm(torque: Span): number {
  return rootMeanSquare(torque);
}

/** Time [s] for which |torque| is at its limit; both spans are over the same rows. */
export function oneFootLightS(torque: Span, limit: Span): number {
  let ticks = 0;
  for (let row = torque.first; row < torque.end; row += 1) {
    if (Math.abs(torque.samples[row] as number) >= (limit.samples[row] as number)) ticks += 1;
  }
  return ticks * torque.tickS;
}
