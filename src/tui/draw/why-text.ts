/**
 * Why in words: as much of the whole answer as the body has room for, and below it which lines these are.
 */
import type { BenchState } from '../bench/state.js';
import { textLines, textPage } from '../bench/why-text.js';
import { sayInOne, type Area } from './say.js';

/** The lines in sight with their place in the whole; no rows where the lists are shown. */
export function whyTextRows(state: BenchState, { width, height }: Area): string[] {
  const page = textPage(state);
  if (page === null) return [];
  const { options } = state;
  const { top, count } = page;
  const shown = textLines(state, options.paint).slice(top, top + page.height);
  const space = Array.from({ length: page.height - shown.length }, () => '');
  const place = sayInOne(`lines ${top + 1}-${top + shown.length} of ${count}`, width, options);
  return [...shown, ...space, options.paint.dim(place)].slice(0, height);
}
