/**
 * How do points in metres become dots? A canvas is a grid of cells with one scale for both directions: a cell of
 * a terminal is taken as twice as high as it is wide, so a dot has the size that its symbol set gives it.
 */
import { createCellGrid, isLineAt, setCharacter, setDot } from './cell-grid.js';
import type { CellGrid, CellStyle, LineStyle } from './cell-grid.js';
import type { Glyphs } from './glyphs.js';
import type { Point } from './side-view-figure.js';

/** Height of a terminal's cell over its width (common practice, no source). */
const CELL_ASPECT = 2;

/** A grid of cells and where it lies: its top left corner and the width of a cell, m. */
export interface Canvas {
  grid: CellGrid;
  leftM: number;
  topM: number;
  cellWidthM: number;
}

/** How a stroke is drawn. */
export interface Stroke {
  line: LineStyle;
  style: CellStyle;
}

/** The size of a dot, m. */
export function dotSizeM({ grid, cellWidthM }: Canvas): { widthM: number; heightM: number } {
  const { dotsWide, dotsHigh } = grid.glyphs;
  return { widthM: cellWidthM / dotsWide, heightM: (CELL_ASPECT * cellWidthM) / dotsHigh };
}

/**
 * An empty canvas that holds `heightM` and at least `widthM` [m]; the dot in its middle column, `belowM` above
 * its bottom edge or just under that, is centred on `middle`.
 */
export function createCanvas(
  glyphs: Glyphs,
  size: { columnCount: number; rowCount: number },
  field: { widthM: number; heightM: number; belowM: number; middle: Point },
): Canvas {
  const { columnCount, rowCount } = size;
  const cellWidthM = Math.max(field.heightM / (CELL_ASPECT * rowCount), field.widthM / columnCount);
  const grid = createCellGrid(glyphs, columnCount, rowCount);
  const canvas: Canvas = { grid, leftM: 0, topM: 0, cellWidthM };
  const { widthM, heightM } = dotSizeM(canvas);
  const dotsLeft = Math.floor((columnCount * glyphs.dotsWide) / 2);
  const dotsAbove = rowCount * glyphs.dotsHigh - 1 - Math.floor(field.belowM / heightM);
  canvas.leftM = field.middle.x - (dotsLeft + 0.5) * widthM;
  canvas.topM = field.middle.z + (dotsAbove + 0.5) * heightM;
  return canvas;
}

/** The dot that a point falls on, which may lie off the canvas. */
export function dotOf(canvas: Canvas, point: Point): { dotColumn: number; dotRow: number } {
  const { widthM, heightM } = dotSizeM(canvas);
  return {
    dotColumn: Math.floor((point.x - canvas.leftM) / widthM + 1e-9),
    dotRow: Math.floor((canvas.topM - point.z) / heightM + 1e-9),
  };
}

/** The cell that a point falls in. */
export function cellOf(canvas: Canvas, point: Point): { column: number; row: number } {
  const { dotColumn, dotRow } = dotOf(canvas, point);
  const { dotsWide, dotsHigh } = canvas.grid.glyphs;
  return { column: Math.floor(dotColumn / dotsWide), row: Math.floor(dotRow / dotsHigh) };
}

/** Longest straight line that is drawn, in dots: a figure that has come apart ends somewhere. */
const MOST_DOTS = 2000;

/** A straight line between two points; a dotted one leaves out every other dot. */
export function drawStraight(canvas: Canvas, ends: readonly [Point, Point], stroke: Stroke): void {
  const from = dotOf(canvas, ends[0]);
  const to = dotOf(canvas, ends[1]);
  const across = to.dotColumn - from.dotColumn;
  const down = to.dotRow - from.dotRow;
  const dots = Math.max(Math.abs(across), Math.abs(down));
  if (!(dots <= MOST_DOTS)) return;
  const stride = stroke.line === 'solid' ? 1 : 2;
  for (let index = 0; index <= dots; index += stride) {
    const share = dots === 0 ? 0 : index / dots;
    const at = {
      dotColumn: Math.round(from.dotColumn + across * share),
      dotRow: Math.round(from.dotRow + down * share),
    };
    setDot(canvas.grid, at, stroke);
  }
}

/** Lines from point to point. */
export function drawPath(canvas: Canvas, points: readonly Point[], stroke: Stroke): void {
  points.slice(1).forEach((point, index) => {
    drawStraight(canvas, [points[index] ?? point, point], stroke);
  });
}

/** A circle, m. */
export function drawCircle(canvas: Canvas, circle: { centre: Point; radiusM: number }, stroke: Stroke): void {
  const { centre, radiusM } = circle;
  const { widthM, heightM } = dotSizeM(canvas);
  const count = Math.ceil((4 * Math.PI * radiusM) / Math.min(widthM, heightM));
  if (!Number.isFinite(centre.x + centre.z)) return;
  for (let index = 0; index < count; index += 1) {
    const angle = (2 * Math.PI * index) / count;
    const point = { x: centre.x + radiusM * Math.sin(angle), z: centre.z + radiusM * Math.cos(angle) };
    setDot(canvas.grid, dotOf(canvas, point), stroke);
  }
}

/** A word from a cell on, in the first of the rows above it where no line is in its way. */
export function drawWord(canvas: Canvas, at: { column: number; row: number }, word: string): void {
  const letters = [...word];
  const start = Math.max(0, Math.min(at.column, canvas.grid.columnCount - letters.length));
  const isFree = (row: number) => letters.every((_, index) => !isLineAt(canvas.grid, start + index, row));
  const row = [at.row, at.row - 1, at.row - 2].find((candidate) => candidate >= 0 && isFree(candidate));
  if (row === undefined) return;
  letters.forEach((text, index) => {
    setCharacter(canvas.grid, { column: start + index, row, layer: 'over' }, { text, style: 'dim' });
  });
}
