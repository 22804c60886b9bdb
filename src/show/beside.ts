/** How do two blocks of rows stand side by side, quickly enough to be done for every frame? */
import { textWidth } from './fit-text.js';

/** Colour escapes as colour.ts writes them. */
const COLOURS = new RegExp(`${String.fromCodePoint(0x1b)}\\[[\\d;]*m`, 'g');

/**
 * The rows of two blocks side by side, the right one from column `leftWidth + gap` on; no row of the left one
 * may be wider than `leftWidth`. Colour escapes take no room; no spaces at the end.
 */
export function beside(
  left: readonly string[],
  right: readonly string[],
  { leftWidth, gap }: { leftWidth: number; gap: number },
): string[] {
  return Array.from({ length: Math.max(left.length, right.length) }, (_, index) => {
    const [first = '', second = ''] = [left[index], right[index]];
    if (second === '') return first;
    return first + ' '.repeat(Math.max(0, leftWidth + gap - textWidth(first.replace(COLOURS, '')))) + second;
  });
}
