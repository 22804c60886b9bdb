/**
 * How does a text fit into columns? Widths are what a terminal shows, not the count of characters:
 * a wide character takes two columns, a combining mark none.
 */
import stringWidth from 'string-width';

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** ASCII, the signs of the symbol sets and of verdicts, the degree sign: each takes one column, so they only need counting. */
const ONE_COLUMN_EACH = /^[\u0020-\u007e°·×¦…→─-▟▲▴▸▼▾□■●◐✓✗⠀-⣿]*$/;

/** The columns that a text takes on a terminal; escape sequences take none. */
export function textWidth(text: string): number {
  return ONE_COLUMN_EACH.test(text) ? text.length : stringWidth(text);
}

/** A text of at most `width` columns; what was cut is shown by `ellipsis`. For text without escapes. */
export function truncated(text: string, width: number, ellipsis = '…'): string {
  if (textWidth(text) <= width) return text;
  const room = width - textWidth(ellipsis);
  if (room <= 0) return room === 0 ? ellipsis : ''.padEnd(Math.max(0, width), '.');
  if (ONE_COLUMN_EACH.test(text)) return text.slice(0, room).trimEnd() + ellipsis;
  let kept = '';
  for (const { segment } of graphemes.segment(text)) {
    if (textWidth(kept + segment) > room) break;
    kept += segment;
  }
  return kept.trimEnd() + ellipsis;
}

/** A text filled with spaces to `width` columns; a wider one stays as it is. */
export function padded(text: string, width: number, align: 'left' | 'right' = 'left'): string {
  const space = ' '.repeat(Math.max(0, width - textWidth(text)));
  return align === 'right' ? space + text : text + space;
}

/** One word in pieces of at most `width` columns. */
function pieces(word: string, width: number): string[] {
  if (textWidth(word) <= width) return [word];
  const found: string[] = [];
  let piece = '';
  for (const { segment } of graphemes.segment(word)) {
    if (piece !== '' && textWidth(piece + segment) > width) {
      found.push(piece);
      piece = '';
    }
    piece += segment;
  }
  return [...found, piece];
}

/**
 * Items in lines of at most `width` columns, as many to a line as fit with `separator` between
 * them.
 */
export function flowed(items: readonly string[], separator: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const item of items) {
    const longer = line === '' ? item : `${line}${separator}${item}`;
    if (textWidth(longer) <= width || line === '') {
      line = longer;
    } else {
      lines.push(line);
      line = item;
    }
  }
  return line === '' ? lines : [...lines, line];
}

/**
 * A text in lines of at most `width` columns (two at least), broken at spaces; a number keeps its
 * unit.
 */
export function wrapped(text: string, width: number): string[] {
  const words = text.split(/(?<!\d) +/).filter((word) => word !== '');
  const fitting = words.flatMap((word) => (textWidth(word) <= width ? [word] : word.split(' ')));
  return flowed(
    fitting.flatMap((word) => pieces(word, Math.max(2, width))),
    ' ',
    width,
  );
}
