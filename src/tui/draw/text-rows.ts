/**
 * A long text that has the whole body: as much of it as there is room for, and below it which lines these are.
 */
import type { TextPage } from '../bench/text-page.js';
import type { BenchOptions } from '../bench/state.js';
import { sayInOne, type Area } from './say.js';

/** The lines of a page with their place in the whole. */
export function textRows(
  lines: readonly string[],
  { top, height: room, count }: TextPage,
  { width, height, options }: Area & { options: BenchOptions },
): string[] {
  const shown = lines.slice(top, top + room);
  const space = Array.from({ length: room - shown.length }, () => '');
  const place = sayInOne(`lines ${top + 1}-${top + shown.length} of ${count}`, width, options);
  return [...shown, ...space, options.paint.dim(place)].slice(0, height);
}
