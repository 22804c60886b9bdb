/** At which ticks did a ceiling cut the request, and which letter stands for it below a panel? */
import type { Ceiling, Tape } from '../simulate/tape.js';
import type { Strip } from './plot.js';
import { ceilingAt, recorded } from './run-view.js';

/** Stands left of the strip. */
export const STRIP_LABEL = 'cut by';

/** The letter of each ceiling. */
export const CEILING_LETTERS: Readonly<Record<Exclude<Ceiling, 'none'>, string>> = {
  drive: 'd',
  brake: 'b',
  voltage: 'v',
  'pack out': 'o',
  'pack in': 'i',
};

/** The strip of ticks at which a ceiling cut the request. */
export function ceilingStrip(tape: Tape): Strip {
  return {
    label: STRIP_LABEL,
    timeS: recorded(tape, 'timeS'),
    letterAt: (row) => {
      const ceiling = ceilingAt(tape, row);
      return ceiling === null ? null : CEILING_LETTERS[ceiling];
    },
    style: 'warn',
  };
}
