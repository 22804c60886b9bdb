/**
 * How are rows of cells laid out in columns? Widths are what a terminal shows; numbers stand to the
 * right; where the table would be too wide, the columns that may shrink are cut with an ellipsis.
 * No line ends in spaces.
 */
import { paintedLine } from './cell-grid.js';
import type { Piece } from './cell-grid.js';
import type { Paint } from './colour.js';
import { textWidth, truncated } from './fit-text.js';
import { plainText } from './plain-text.js';

/**
 * A cell: a text, or pieces of text in styles. Escape sequences inside a text are taken out: style
 * pieces instead.
 */
export type TableCell = string | readonly Piece[];

/**
 * A column. Left out, `align` is right where every cell begins like a number. A column that may shrink
 * is cut, but not below `leastWidth`, 6 unless stated. Uncut it has `fullWidth` columns even where its cells need fewer.
 */
export interface TableColumn {
  header: string;
  align?: 'left' | 'right';
  shrinks?: boolean;
  leastWidth?: number;
  fullWidth?: number;
}

/** A table to be laid out; `maxWidth` in columns. */
export interface TableSpec {
  columns: readonly TableColumn[];
  rows: readonly (readonly TableCell[])[];
  paint: Paint;
  maxWidth?: number;
  ellipsis?: string;
}

const GAP = 2;
const LEAST_WIDTH = 6;

/** A cell as pieces of plain text. */
function piecesOf(cell: TableCell): Piece[] {
  const pieces = typeof cell === 'string' ? [{ text: cell, style: null }] : cell;
  return pieces.map(({ text, style }) => ({ text: plainText(text), style }));
}

function widthOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, { text }) => sum + textWidth(text), 0);
}

/** Pieces cut to a width; the ellipsis takes the style of the piece it cuts. */
function cut(pieces: readonly Piece[], width: number, ellipsis: string): Piece[] {
  if (widthOf(pieces) <= width) return [...pieces];
  const kept: Piece[] = [];
  let room = width;
  for (const { text, style } of pieces) {
    const rest = textWidth(text) < room ? text : truncated(`${text}${ellipsis}`, room, ellipsis);
    kept.push({ text: rest, style });
    room -= textWidth(rest);
    if (rest !== text) break;
  }
  return kept;
}

/** True where every cell with text begins like a number, and one does. */
function looksNumeric(cells: readonly Piece[][]): boolean {
  const texts = cells.map((pieces) => pieces.map(({ text }) => text).join('')).filter((text) => text !== '');
  return texts.length > 0 && texts.every((text) => /^[-+]?\d/.test(text));
}

/** Takes what is too wide from the columns that may shrink, always from the widest. */
function shrunk(widths: readonly number[], spec: TableSpec): number[] {
  const result = [...widths];
  const { maxWidth, columns } = spec;
  if (maxWidth === undefined) return result;
  let excess = result.reduce((sum, width) => sum + width, 0) + GAP * (result.length - 1) - maxWidth;
  while (excess > 0) {
    const widest = columns
      .map((column, index) => ({ column, index, width: result[index] ?? 0 }))
      .filter(({ column, width }) => column.shrinks && width > (column.leastWidth ?? LEAST_WIDTH))
      .sort((a, b) => b.width - a.width)[0];
    if (widest === undefined) break;
    result[widest.index] = widest.width - 1;
    excess -= 1;
  }
  return result;
}

/** One cell filled to its column's width. */
function filled(pieces: readonly Piece[], width: number, align: 'left' | 'right'): Piece[] {
  const space = { text: ' '.repeat(Math.max(0, width - widthOf(pieces))), style: null };
  return align === 'right' ? [space, ...pieces] : [...pieces, space];
}

/** Header and rows in pieces, and the width that each column takes uncut. */
function measured({ columns, rows: given }: Pick<TableSpec, 'columns' | 'rows'>) {
  const header = columns.map((column) => [{ text: plainText(column.header), style: 'bold' as const }]);
  const rows = given.map((row) => columns.map((_, index) => piecesOf(row[index] ?? '')));
  const natural = columns.map(({ fullWidth = 0 }, index) =>
    Math.max(fullWidth, ...[header, ...rows].map((row) => widthOf(row[index] ?? []))),
  );
  return { header, rows, natural };
}

/**
 * The lines of a table, header first. None is wider than `maxWidth`: where shrinking is not enough,
 * the lines themselves are cut.
 */
export function table(spec: TableSpec): string[] {
  const { columns, paint, ellipsis = '…' } = spec;
  const { header, rows, natural } = measured(spec);
  const columnCells = columns.map((_, index) => rows.map((row) => row[index] ?? []));
  const widths = shrunk(natural, spec);
  const aligns = columns.map(
    (column, index) => column.align ?? (looksNumeric(columnCells[index] ?? []) ? 'right' : 'left'),
  );
  return [header, ...rows].map((row) => {
    const pieces = row.flatMap((cell, index): Piece[] => {
      const width = widths[index] ?? 0;
      const gap = { text: index === 0 ? '' : ' '.repeat(GAP), style: null };
      return [gap, ...filled(cut(cell, width, ellipsis), width, aligns[index] ?? 'left')];
    });
    const line = withoutEnd(pieces);
    return paintedLine(spec.maxWidth === undefined ? line : cut(line, spec.maxWidth, ellipsis), paint);
  });
}

/** Pieces without the spaces at the end of the line. */
function withoutEnd(pieces: readonly Piece[]): Piece[] {
  const last = pieces.findLastIndex(({ text }) => text.trim() !== '');
  return pieces
    .slice(0, last + 1)
    .map((piece, index) => (index === last ? { ...piece, text: piece.text.trimEnd() } : piece));
}
