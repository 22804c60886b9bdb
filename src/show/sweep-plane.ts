/**
 * How does a plane of two numbers stand in rows of text? The name of the upright axis on top, labels in a gutter, one character
 * for each place, the axis below with its labels and its name; and on both axes where the cursor stands.
 */
import { paintedLine, type Piece } from './cell-grid.js';
import type { Paint } from './colour.js';
import { padded, textWidth, truncated } from './fit-text.js';
import { GLYPHS, type SymbolSet } from './glyphs.js';

/** Where a plane is drawn, in columns and rows, and with what. */
export interface PlaneOptions {
  width: number;
  height: number;
  symbols: SymbolSet;
  paint: Paint;
}

/** An axis: its name with its unit, and labels at places from 0 to 1. */
export interface PlaneAxis {
  name: string;
  ticks: readonly { place: number; text: string }[];
}

/** The two axes of a plane. */
export interface PlaneAxes {
  x: PlaneAxis;
  y: PlaneAxis;
}

/** A place in the plane, 0 to 1 to the right and upwards. */
export interface PlanePoint {
  x: number;
  y: number;
}

/** Columns and rows of a plane without its axes; none where there is no room for one. */
export interface PlaneSize {
  columns: number;
  rows: number;
}

/** Rows for the name above, the axis, and what stands below it. */
const OTHER_ROWS = 3;

const LEAST_COLUMNS = 8;
const LEAST_ROWS = 2;

const gutterOf = ({ y }: PlaneAxes) => Math.max(0, ...y.ticks.map(({ text }) => textWidth(text)));

/** Columns and rows that are left for places; 0 where these are too few. */
export function planeSize(
  axes: PlaneAxes,
  { width, height }: Pick<PlaneOptions, 'width' | 'height'>,
): PlaneSize {
  const size = { columns: width - gutterOf(axes) - 2, rows: height - OTHER_ROWS };
  return size.columns < LEAST_COLUMNS || size.rows < LEAST_ROWS ? { columns: 0, rows: 0 } : size;
}

/** The column and the row of a point, both counted from 0, rows from the top; points outside stand on the edge. */
export function placeIn({ x, y }: PlanePoint, { columns, rows }: PlaneSize): { column: number; row: number } {
  const within = (at: number, count: number) => Math.min(count - 1, Math.max(0, Math.floor(at * count)));
  return { column: within(x, columns), row: rows - 1 - within(y, rows) };
}

/** The rows of pieces with their axes around them; `cursor` is marked on both. */
export function framedPlane(
  rows: readonly (readonly Piece[])[],
  axes: PlaneAxes,
  { cursor, width, symbols, paint }: Omit<PlaneOptions, 'height'> & { cursor: PlanePoint | null },
): string[] {
  const glyphs = GLYPHS[symbols];
  const ascii = symbols === 'ascii';
  const gutter = gutterOf(axes);
  const columns = width - gutter - 2;
  const size = { columns, rows: rows.length };
  const here = cursor === null ? null : placeIn(cursor, size);
  const labels = new Map(
    axes.y.ticks.map(({ place, text }) => [placeIn({ x: 0, y: place }, size).row, text] as const),
  );
  const body = rows.map((pieces, row) => {
    const label = labels.get(row);
    const axis =
      row === here?.row ? (ascii ? '>' : '▸') : label === undefined ? glyphs.axis : glyphs.labelledAxis;
    const start: Piece[] = [
      { text: `${padded(label ?? '', gutter, 'right')} `, style: null },
      { text: axis, style: row === here?.row ? 'accent' : 'dim' },
    ];
    return paintedLine([...start, ...pieces], paint);
  });
  return [
    paint.dim(truncated(axes.y.name, width, glyphs.ellipsis)),
    ...body,
    paintedLine(axisPieces({ columns, gutter, here: here?.column ?? null, symbols }), paint),
    paint.dim(' '.repeat(gutter + 2) + labelsBelow(axes.x, columns, glyphs.ellipsis)),
  ];
}

function axisPieces(at: {
  columns: number;
  gutter: number;
  here: number | null;
  symbols: SymbolSet;
}): Piece[] {
  const glyphs = GLYPHS[at.symbols];
  const line = Array.from({ length: at.columns }, (_, column): Piece => {
    const isHere = column === at.here;
    return {
      text: isHere ? (at.symbols === 'ascii' ? '^' : '▴') : glyphs.line,
      style: isHere ? 'accent' : 'dim',
    };
  });
  return [{ text: `${' '.repeat(at.gutter + 1)}${glyphs.corner}`, style: 'dim' }, ...line];
}

/** The first label at the left, the last at the right, the name between them as far as there is room. */
function labelsBelow({ name, ticks }: PlaneAxis, columns: number, ellipsis: string): string {
  const inOrder = ticks.toSorted((a, b) => a.place - b.place).map(({ text }) => text);
  const [first = ''] = inOrder;
  const last = inOrder.length > 1 ? inOrder.at(-1)! : '';
  const room = columns - textWidth(first) - textWidth(last) - 2;
  const middle = room < 4 ? '' : truncated(name, room, ellipsis);
  const before = Math.max(1, Math.floor((columns - textWidth(middle)) / 2) - textWidth(first));
  const start = `${first}${' '.repeat(before)}${middle}`;
  const whole = `${padded(start, columns - textWidth(last))}${last}`;
  return truncated(whole, columns, ellipsis);
}
