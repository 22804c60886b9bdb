/**
 * What does the ride ask of motor and pack: current, energy, and how low the pack voltage sags?
 */
import { leastOf, rootMeanSquare } from './window.js';
import type { Span } from './window.js';

/** Largest |current| [A]; 0 when the span is empty. */
export function peakCurrentA({ samples, first, end }: Span): number {
  let peak = 0;
  for (let row = first; row < end; row += 1) peak = Math.max(peak, Math.abs(samples[row] as number));
  return peak;
}

/** Rms of the motor current [A], which heats the windings; 0 when the span is empty. */
export function rmsCurrentA(current: Span): number {
  return rootMeanSquare(current);
}

/** Energy out of the pack [J], net of what braking gave back: trapezoid rule on voltage times current, over the same rows. */
export function packEnergyJ(voltage: Span, current: Span): number {
  let twice = 0;
  for (let row = voltage.first + 1; row < voltage.end; row += 1) {
    const before = (voltage.samples[row - 1] as number) * (current.samples[row - 1] as number);
    twice += before + (voltage.samples[row] as number) * (current.samples[row] as number);
  }
  return (twice / 2) * voltage.tickS;
}

/** Least pack voltage [V]; null when the span is empty. */
export function leastPackV(voltage: Span): number | null {
  return leastOf(voltage);
}
