/**
 * What has to be sent so that a row of the terminal turns into another? Only the cells that differ,
 * with cursor moves between them; blanks up to the end of the row are erased in one go. Nothing here
 * clears more than the rest of one row, and nothing moves the screen.
 */
import { hasOneColumnEach, type CellRow } from './cells.js';
import type { Look } from './sgr-look.js';

const CONTROL = `${String.fromCodePoint(0x1b)}[`;

/** What is sent in one update, and where it leaves the terminal. */
export interface Pen {
  sent: string;
  look: Look;
  row: number;
  /** The column that the next character goes to; null where that is not certain. */
  column: number | null;
}

/** A pen that has sent nothing yet, on a terminal whose look is plain. */
export function createPen(): Pen {
  return { sent: '', look: '', row: 0, column: null };
}

function moveTo(pen: Pen, row: number, column: number): void {
  if (pen.row === row && pen.column === column) return;
  pen.sent += `${CONTROL}${row + 1};${column + 1}H`;
  pen.row = row;
  pen.column = column;
}

function takeLook(pen: Pen, look: Look): void {
  if (pen.look === look) return;
  pen.sent += look === '' ? `${CONTROL}m` : `${CONTROL}0;${look}m`;
  pen.look = look;
}

/** The columns of the glyph in a column. */
function widthAt({ glyphs }: CellRow, column: number): number {
  let end = column + 1;
  while (glyphs[end] === '') end++;
  return end - column;
}

/**
 * Sends a glyph about whose width terminals may differ: over blanks of the width it should have, and
 * the next one is placed anew.
 */
function sendDoubtful(pen: Pen, to: CellRow, column: number): void {
  const { row } = pen;
  pen.sent += ' '.repeat(widthAt(to, column));
  pen.column = null;
  moveTo(pen, row, column);
  pen.sent += to.glyphs[column]!;
  pen.column = null;
}

/** The column behind the last cell that is not a plain blank. */
function contentEnd({ glyphs, looks }: CellRow): number {
  let end = glyphs.length;
  while (end > 0 && glyphs[end - 1] === ' ' && looks[end - 1] === '') end--;
  return end;
}

/**
 * Adds to a pen what turns row `row` of the terminal into `to`; `from` is what stands there, null
 * where that is unknown. Behind a glyph of doubtful width the rest of the row is sent anew.
 */
export function sendRow(pen: Pen, row: number, { from, to }: { from: CellRow | null; to: CellRow }): void {
  const columnCount = to.glyphs.length;
  const end = contentEnd(to);
  let known = from;
  const differs = (column: number) =>
    known === null || known.glyphs[column] !== to.glyphs[column] || known.looks[column] !== to.looks[column];
  for (let column = 0; column < end; column++) {
    const glyph = to.glyphs[column]!;
    if (glyph === '' || !differs(column)) continue;
    moveTo(pen, row, column);
    takeLook(pen, to.looks[column]!);
    if (hasOneColumnEach(glyph) && glyph.length === 1) {
      pen.sent += glyph;
      pen.column = column + 1;
    } else {
      sendDoubtful(pen, to, column);
      known = null;
    }
  }
  let column = end;
  while (column < columnCount && !differs(column)) column++;
  if (column === columnCount) return;
  moveTo(pen, row, column);
  takeLook(pen, '');
  pen.sent += `${CONTROL}K`;
}
