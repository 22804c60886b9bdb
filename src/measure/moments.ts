/**
 * Which moments of a run are worth a look? The peak of pitch, the first tick at which a ceiling cut the
 * request, and the events before and after a time.
 */
import { CEILINGS, type Tape } from '../simulate/tape.js';
import type { EventMark } from './marks.js';
import type { MeasureWindow } from './window.js';

/**
 * The row of the largest pitch either way inside a window, the first of equals; the window's first row, or the
 * tape's last, where the window holds none.
 */
export function peakRow(
  { columns, length }: Tape,
  { firstRow, endRow }: Pick<MeasureWindow, 'firstRow' | 'endRow'>,
): number {
  let peak = Math.min(firstRow, length - 1);
  for (let row = firstRow; row < Math.min(endRow, length); row++) {
    if (Math.abs(columns.pitchRad[row]!) > Math.abs(columns.pitchRad[peak]!)) peak = row;
  }
  return peak;
}

/** The first row at which a ceiling cut the request; null where none did. */
export function firstCutRow({ columns, length }: Tape): number | null {
  const row = columns.bindingCeiling.subarray(0, length).findIndex((code) => code !== NOT_CUT);
  return row === -1 ? null : row;
}

const NOT_CUT = CEILINGS.indexOf('none');

/** The earliest mark after a time [s]; null where none is. */
export function nextMark<Mark extends EventMark>(marks: readonly Mark[], timeS: number): Mark | null {
  const later = marks.filter((mark) => mark.timeS > timeS + SAME_TIME_S);
  return later.reduce<Mark | null>(
    (first, mark) => (first === null || mark.timeS < first.timeS ? mark : first),
    null,
  );
}

/** The latest mark before a time [s]; null where none is. */
export function previousMark<Mark extends EventMark>(marks: readonly Mark[], timeS: number): Mark | null {
  const earlier = marks.filter((mark) => mark.timeS < timeS - SAME_TIME_S);
  return earlier.reduce<Mark | null>(
    (last, mark) => (last === null || mark.timeS > last.timeS ? mark : last),
    null,
  );
}

/** Times nearer than this are one moment, s: half a tick of the quickest loop. */
const SAME_TIME_S = 1e-4;
