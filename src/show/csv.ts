/**
 * How is a tape written as comma-separated values? A header with the names of its columns, then a
 * line a tick; numbers are the shortest decimals that read back as the same double, the binding
 * ceiling is its word. No field needs quotes (RFC 4180).
 */
import { CEILINGS, TAPE_COLUMNS } from '../simulate/tape.js';
import type { Tape, TapeColumn } from '../simulate/tape.js';

/** One field; a value that is no finite number is an empty field. */
function field(column: TapeColumn, value: number): string {
  if (column !== 'bindingCeiling') return Number.isFinite(value) ? String(value) : '';
  const ceiling = CEILINGS[value];
  if (ceiling === undefined) throw new Error(`no ceiling has the code ${value}`);
  return ceiling;
}

/**
 * The lines of a tape, header first, without line ends; one at a time, so that a long tape can be
 * streamed.
 */
export function* csvLines(tape: Tape): Generator<string, void, undefined> {
  yield TAPE_COLUMNS.join(',');
  for (let row = 0; row < tape.length; row += 1) {
    yield TAPE_COLUMNS.map((column) => field(column, tape.columns[column][row] ?? NaN)).join(',');
  }
}
