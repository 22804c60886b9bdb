/**
 * A view of the Sweep screen in words: as much of it as the body has room for, and below it which lines these are.
 */
import type { BenchState } from '../bench/state.js';
import { sweepPage, sweepTextLines } from '../bench/sweep-text.js';
import type { Area } from './say.js';
import { textRows } from './text-rows.js';

/** The lines in sight with their place in the whole; null where pictures are shown. */
export function sweepTextRows(state: BenchState, area: Area): string[] | null {
  const page = sweepPage(state);
  const { options } = state;
  return page === null ? null : textRows(sweepTextLines(state, options.paint), page, { ...area, options });
}
