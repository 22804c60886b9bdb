/** How do two blocks of rows stand side by side, quickly enough to be done for every frame? */
import { textWidth } from './fit-text.js';

/** Colour escapes as colour.ts writes them. */
const COLOURS = new RegExp(`${String.fromCodePoint(0x1b)}\\[[\\d;]*m`, 'g');

/** ASCII, the signs of the symbol sets and the degree sign: each takes one column, so they only need counting. */
const ONE_COLUMN_EACH = /^[\u0020-\u007e°·¦…→─-▟▲▼⠀-⣿]*$/;

/** The columns of a painted row. */
function rowWidth(row: string): number {
  const bare = row.replace(COLOURS, '');
  return ONE_COLUMN_EACH.test(bare) ? bare.length : textWidth(bare);
}

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
    return first + ' '.repeat(Math.max(0, leftWidth + gap - rowWidth(first))) + second;
  });
}
