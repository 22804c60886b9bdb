/**
 * A view of the Sweep screen in words: as much of it as the body has room for, and below it which lines these are.
 */
import type { BenchState } from '../bench/state.js';
import { sweepPage, sweepTextLines } from '../bench/sweep-text.js';
import { sayInOne, type Area } from './say.js';

/** The lines in sight with their place in the whole; null where pictures are shown. */
export function sweepTextRows(state: BenchState, { width, height }: Area): string[] | null {
  const page = sweepPage(state);
  if (page === null) return null;
  const { options } = state;
  const { top, count } = page;
  const shown = sweepTextLines(state, options.paint).slice(top, top + page.height);
  const space = Array.from({ length: page.height - shown.length }, () => '');
  const place = sayInOne(`lines ${top + 1}-${top + shown.length} of ${count}`, width, options);
  return [...shown, ...space, options.paint.dim(place)].slice(0, height);
}
