/**
 * How do the parts of a card become rows on one page? Each text beside its label; where rows are too many, the parts with most to
 * spare lose their last ones, and say so.
 */
import type { CardPart } from './card.js';
import { textWidth, truncated, wrapped } from './fit-text.js';

/** A row of a card: `label` is empty but in the first one of a part that has one. */
export interface CardRow {
  label: string;
  text: string;
}

/** Room for rows: columns of text beside the label, and how many rows. */
export interface RowRoom {
  columns: number;
  rows: number;
  ascii: boolean;
}

interface Block {
  part: CardPart;
  lines: string[];
  keptCount: number;
}

/** A text in lines; a list divided by commas without spaces, as in a command, breaks behind a comma. */
function linesOf(text: string, columns: number): string[] {
  if (!/\S,\S+,\S/.test(text)) return wrapped(text, columns);
  const pieces = text
    .split(/(?<= )(?! )/)
    .flatMap((word) => word.match(/[^,]+,* ?|,+ ?/g) ?? [])
    .flatMap((piece) => (textWidth(piece.trimEnd()) > columns ? wrapped(piece, columns) : [piece]));
  const lines: string[] = [];
  let line = '';
  for (const piece of pieces) {
    if (line !== '' && textWidth((line + piece).trimEnd()) > columns) {
      lines.push(line.trimEnd());
      line = '';
    }
    line += piece;
  }
  return line.trim() === '' ? lines : [...lines, line.trimEnd()];
}

/** Rows that a block can lose: those beyond its least where only the first to yield are asked, else all but one. */
function spareOf({ part, keptCount }: Block, asked: 'first' | 'last'): number {
  if (part.yields === 'never' || (asked === 'first' && part.yields === 'last')) return 0;
  return keptCount - (asked === 'first' ? part.leastRows : 1);
}

/** Takes rows away, always from the block with most to spare, until so many are gone; answers how many are not. */
function shorten(blocks: readonly Block[], excess: number, asked: 'first' | 'last'): number {
  let left = excess;
  while (left > 0) {
    const [longest] = blocks.toSorted((a, b) => spareOf(b, asked) - spareOf(a, asked));
    if (longest === undefined || spareOf(longest, asked) <= 0) break;
    longest.keptCount -= 1;
    left -= 1;
  }
  return left;
}

/** How many rows the parts take where nothing is cut. */
export function rowCount(parts: readonly CardPart[], columns: number): number {
  return parts.reduce((sum, part) => sum + linesOf(part.text, columns).length, 0);
}

/** The parts as rows, no more than there is room for as long as there is something to cut; a cut text ends with an ellipsis. */
export function cardRows(parts: readonly CardPart[], { columns, rows, ascii }: RowRoom): CardRow[] {
  const blocks = parts.map((part): Block => {
    const lines = linesOf(part.text, columns);
    return { part, lines, keptCount: lines.length };
  });
  const excess = blocks.reduce((sum, { lines }) => sum + lines.length, 0) - rows;
  shorten(blocks, shorten(blocks, excess, 'first'), 'last');
  const ellipsis = ascii ? '...' : '…';
  return blocks.flatMap(({ part, lines, keptCount }) =>
    lines.slice(0, keptCount).map((line, index) => ({
      label: index === 0 ? part.label : '',
      text: index < keptCount - 1 || keptCount === lines.length ? line : cutOff(line, { columns, ellipsis }),
    })),
  );
}

/** A line that ends in an ellipsis, inside its columns. */
function cutOff(line: string, { columns, ellipsis }: { columns: number; ellipsis: string }): string {
  return `${truncated(line, columns - ellipsis.length, '').trimEnd()}${ellipsis}`;
}
