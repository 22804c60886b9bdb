/**
 * What is compared, and how are the profiles of a comparison told apart? By a letter and a colour each, in the order in
 * which they were named.
 */
import type { RankedCell } from '../measure/profile-result.js';
import type { StyleName } from './colour.js';
import { plainText } from './plain-text.js';
import type { RunView } from './run-view.js';

/** One profile of a comparison: its run to be drawn, and the cell with the run's metrics and cost. */
export interface ComparedRun {
  name: string;
  view: RunView;
  cell: RankedCell;
}

/** A letter and the style of its line. */
export interface CompareSign {
  letter: string;
  style: StyleName;
}

/** The letters and styles of the profiles, first to last. */
export const COMPARE_SIGNS = [
  { letter: 'A', style: 'lineA' },
  { letter: 'B', style: 'lineB' },
  { letter: 'C', style: 'lineC' },
  { letter: 'D', style: 'lineD' },
] as const satisfies readonly CompareSign[];

/** Most profiles, and fewest, that can be compared at once. */
export const COMPARE_COUNT = { least: 2, most: COMPARE_SIGNS.length } as const;

/** The sign of the profile at an index. */
export function signAt(index: number): CompareSign {
  const sign = COMPARE_SIGNS[index];
  if (sign === undefined) throw new Error(`no more than ${COMPARE_COUNT.most} profiles can be compared`);
  return sign;
}

/** `B linen`: the letter of a profile and its name. */
export function signedName(runs: readonly ComparedRun[], index: number): string {
  return `${signAt(index).letter} ${plainText(runs[index]?.name ?? '')}`;
}
