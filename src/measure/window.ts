/**
 * Which rows of a tape are measured, and what "final value" and "calm" mean there. The tail of a
 * window is its last fifth, at least half a second of it; the final value is the mean over the tail;
 * the signal is calm when it stays inside the band about that mean for the whole tail.
 */
import type { MEASURE_KINDS } from '../quantity/scenario-file.js';
import type { Tape, TapeColumn } from '../simulate/tape.js';

/** Rows `firstRow` up to but not including `endRow` are measured; settled means within `bandRad` of the final pitch [rad]. */
export interface MeasureWindow {
  kind: (typeof MEASURE_KINDS)[number];
  firstRow: number;
  endRow: number;
  bandRad: number;
}

/** Samples `first` up to but not including `end`, `tickS` apart [s]. */
export interface Span {
  samples: ArrayLike<number>;
  first: number;
  end: number;
  tickS: number;
}

/** How a signal ends: its final value (mean over the tail, same unit) and whether it has calmed. */
export interface Ending {
  finalValue: number;
  calm: boolean;
}

const TAIL_SHARE = 1 / 5;
const LEAST_TAIL_S = 0.5;

/** The rows of one column that lie in the window and on the tape; empty when the run ended before the window. */
export function spanOf(tape: Tape, column: TapeColumn, window: MeasureWindow): Span {
  const first = Math.min(window.firstRow, tape.length);
  const end = Math.max(first, Math.min(window.endRow, tape.length));
  return { samples: tape.columns[column], first, end, tickS: tape.tickS };
}

/** Final value and calm of a signal, `band` in the signal's unit; null when the span is empty. */
export function endingOf(signal: Span, band: number): Ending | null {
  const { samples, first, end, tickS } = signal;
  if (end <= first) return null;
  const count = end - first;
  const tailCount = Math.max(Math.ceil(count * TAIL_SHARE), Math.round(LEAST_TAIL_S / tickS));
  const tailFirst = Math.max(first, end - tailCount);
  let sum = 0;
  for (let row = tailFirst; row < end; row += 1) sum += samples[row] as number;
  const finalValue = sum / (end - tailFirst);
  let calm = true;
  for (let row = tailFirst; row < end; row += 1) {
    if (Math.abs((samples[row] as number) - finalValue) > band) calm = false;
  }
  return { finalValue, calm };
}

/** Root mean square over the span, in the signal's unit; 0 when it is empty. */
export function rootMeanSquare({ samples, first, end }: Span): number {
  if (end <= first) return 0;
  let sum = 0;
  for (let row = first; row < end; row += 1) sum += (samples[row] as number) ** 2;
  return Math.sqrt(sum / (end - first));
}

/** The least sample of the span; null when it is empty. */
export function leastOf({ samples, first, end }: Span): number | null {
  let least: number | null = null;
  for (let row = first; row < end; row += 1) {
    const sample = samples[row] as number;
    if (least === null || sample < least) least = sample;
  }
  return least;
}
