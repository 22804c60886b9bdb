/**
 * How do lines made of dots become rows of characters? A grid of cells keeps, for every cell, the
 * dots of solid and dotted lines and the character beneath them; what lies on top decides the
 * colour.
 */
import type { Paint, StyleName } from './colour.js';
import type { Glyphs } from './glyphs.js';

/** How a line is drawn; a dashed one is dotted and left out of every other column of cells. */
export type LineStyle = 'solid' | 'dotted' | 'dashed';

/** A style, or null for the terminal's own colour. */
export type CellStyle = StyleName | null;

/** A run of characters in one style. */
export interface Piece {
  text: string;
  style: CellStyle;
}

interface Cell {
  solidDots: number;
  dottedDots: number;
  solidStyle: CellStyle;
  dottedStyle: CellStyle;
  under: Piece | null;
  over: Piece | null;
}

/** A grid of cells, row by row. */
export interface CellGrid {
  glyphs: Glyphs;
  columnCount: number;
  rowCount: number;
  cells: Cell[];
}

/** An empty grid. */
export function createCellGrid(glyphs: Glyphs, columnCount: number, rowCount: number): CellGrid {
  const cells = Array.from({ length: columnCount * rowCount }, () => ({
    solidDots: 0,
    dottedDots: 0,
    solidStyle: null,
    dottedStyle: null,
    under: null,
    over: null,
  }));
  return { glyphs, columnCount, rowCount, cells };
}

function cellAt(grid: CellGrid, column: number, row: number): Cell | undefined {
  const inside = column >= 0 && column < grid.columnCount && row >= 0 && row < grid.rowCount;
  return inside ? grid.cells[row * grid.columnCount + column] : undefined;
}

/** Sets one dot of a line; dots outside the grid are left out. */
export function setDot(
  grid: CellGrid,
  at: { dotColumn: number; dotRow: number },
  line: { line: LineStyle; style: CellStyle },
): void {
  const { dotsWide, dotsHigh } = grid.glyphs;
  const cell = cellAt(grid, Math.floor(at.dotColumn / dotsWide), Math.floor(at.dotRow / dotsHigh));
  if (cell === undefined) return;
  const bit = 1 << ((at.dotColumn % dotsWide) * dotsHigh + (at.dotRow % dotsHigh));
  if (line.line === 'solid') {
    cell.solidDots |= bit;
    cell.solidStyle = line.style;
  } else {
    cell.dottedDots |= bit;
    cell.dottedStyle = line.style;
  }
}

/** Puts a character under or over the lines of a cell. */
export function setCharacter(
  grid: CellGrid,
  at: { column: number; row: number; layer: 'under' | 'over' },
  piece: Piece,
): void {
  const cell = cellAt(grid, at.column, at.row);
  if (cell !== undefined) cell[at.layer] = piece;
}

/** Whether a line, or a character over the lines, stands in a cell. */
export function isLineAt(grid: CellGrid, column: number, row: number): boolean {
  const cell = cellAt(grid, column, row);
  return cell !== undefined && (cell.solidDots !== 0 || cell.dottedDots !== 0 || cell.over !== null);
}

/** What a cell shows. */
function cellPiece(cell: Cell, glyphs: Glyphs): Piece {
  if (cell.over !== null) return cell.over;
  if (cell.solidDots !== 0) {
    return { text: glyphs.solid(cell.solidDots), style: cell.solidStyle };
  }
  if (cell.dottedDots !== 0) return { text: glyphs.dotted(cell.dottedDots), style: cell.dottedStyle };
  return cell.under ?? { text: ' ', style: null };
}

/** The pieces of one row. */
export function gridRow(grid: CellGrid, row: number): Piece[] {
  const start = row * grid.columnCount;
  return grid.cells.slice(start, start + grid.columnCount).map((cell) => cellPiece(cell, grid.glyphs));
}

/** Pieces as one painted line: neighbours of one style share their escapes; no spaces at the end. */
export function paintedLine(pieces: readonly Piece[], paint: Paint): string {
  const runs: Piece[] = [];
  for (const { text, style } of pieces) {
    const last = runs.at(-1);
    if (last !== undefined && (last.style === style || text.trim() === '')) last.text += text;
    else runs.push({ text, style });
  }
  while (runs.length > 0) {
    const last = runs.at(-1) as Piece;
    last.text = last.text.trimEnd();
    if (last.text !== '') break;
    runs.pop();
  }
  return runs.map(({ text, style }) => (style === null ? text : paint[style](text))).join('');
}
