/**
 * Why in words: as much of the whole answer as the body has room for, and below it which lines these are.
 */
import type { BenchState } from '../bench/state.js';
import { textLines, textPage } from '../bench/why-text.js';
import type { Area } from './say.js';
import { textRows } from './text-rows.js';

/** The lines in sight with their place in the whole; no rows where the lists are shown. */
export function whyTextRows(state: BenchState, area: Area): string[] {
  const page = textPage(state);
  const { options } = state;
  return page === null ? [] : textRows(textLines(state, options.paint), page, { ...area, options });
}
