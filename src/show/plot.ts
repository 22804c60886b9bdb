/**
 * How do lines over time look in a terminal? A panel is a grid of cells with a fixed scale, labels
 * with units, event marks, and a strip of letters below it for what happened at single ticks. Every
 * column shows the whole range of the samples it covers.
 */
import { createCellGrid, gridRow, isLineAt, paintedLine, setCharacter, setDot } from './cell-grid.js';
import type { CellGrid, CellStyle, LineStyle, Piece } from './cell-grid.js';
import { columnExtremes } from './extremes.js';
import type { Extremes, SampledLine } from './extremes.js';
import { columnInSight, columnOf, glyphsOf, gutterPieces, plotColumns } from './plot-frame.js';
import type { PlotFrame } from './plot-frame.js';
import type { Scale } from './scale.js';
import { markNameRows, timeAxisRows } from './time-axis.js';

/**
 * A line of a plot; its values are in the unit of the panel's scale. A `letter`, one column wide, is set on
 * the line here and there, so that several lines are told apart without colour.
 */
export interface PlotLine extends SampledLine {
  line: LineStyle;
  style: CellStyle;
  letter?: string | undefined;
}

/** A row of letters below a panel: `letterAt` says what happened at a sample, or null. */
export interface Strip {
  label: string;
  timeS: ArrayLike<number>;
  letterAt: (index: number) => string | null;
  style: CellStyle;
}

/**
 * One panel: a fixed scale, its lines (later ones lie on top), `rowCount` rows, perhaps a strip. Labels leave a
 * row free between them unless they are tight.
 */
export interface Panel {
  scale: Scale;
  lines: readonly PlotLine[];
  rowCount: number;
  strip?: Strip | undefined;
  tightLabels?: boolean | undefined;
}

/** A panel with its lines drawn: its rows as they stand without a cursor, and the pieces of each row. */
export interface DrawnPanel {
  rows: readonly string[];
  pieces: readonly (readonly Piece[])[];
  /** Whether a line passes through a cell of the plot. */
  isLineAt: (column: number, row: number) => boolean;
}

/** Columns from one letter on a line to the next on any line of its panel. */
const LETTER_STEP = 6;

/** Pieces of a row that stand left of its cells, see gutterPieces. */
const GUTTER_PIECES = 2;

/** The row of dots of a value, counted from the top; values off the scale go to its edge. */
function dotRowOf(value: number, scale: Scale, dotCount: number): number {
  const row = Math.round(((scale.high - value) / (scale.high - scale.low)) * (dotCount - 1));
  return Math.min(dotCount - 1, Math.max(0, row));
}

/** The level line, where zero lies inside the scale. */
function drawZero(grid: CellGrid, scale: Scale): void {
  if (scale.low >= 0 || scale.high <= 0) return;
  const row = Math.floor(dotRowOf(0, scale, grid.rowCount * grid.glyphs.dotsHigh) / grid.glyphs.dotsHigh);
  for (let column = 0; column < grid.columnCount; column += 1) {
    setCharacter(grid, { column, row, layer: 'under' }, { text: grid.glyphs.zero, style: 'dim' });
  }
}

function drawMarks(grid: CellGrid, frame: PlotFrame): void {
  for (const mark of frame.marks) {
    const column = columnOf(mark.timeS, frame);
    for (let row = 0; row < grid.rowCount; row += 1) {
      setCharacter(grid, { column, row, layer: 'under' }, { text: grid.glyphs.mark, style: 'dim' });
    }
  }
}

/**
 * Draws the range of each column and gives it back; a dotted line has one column of dots a cell and gaps in
 * its uprights, a dashed one is left out of every other cell.
 */
function drawLine(grid: CellGrid, line: PlotLine, at: { scale: Scale; frame: PlotFrame }): Extremes {
  const { dotsWide, dotsHigh } = grid.glyphs;
  const dotCount = grid.rowCount * dotsHigh;
  const stride = line.line === 'dotted' ? dotsWide : 1;
  const columnCount = (grid.columnCount * dotsWide) / stride;
  const extremes = columnExtremes(line, { ...at.frame.span, columnCount });
  const { lowest, highest } = extremes;
  for (let index = 0; index < columnCount; index += 1) {
    const low = lowest[index] ?? Infinity;
    const high = highest[index] ?? -Infinity;
    if (low > high || (line.line === 'dashed' && Math.floor(index / dotsWide) % 2 === 1)) continue;
    const top = dotRowOf(high, at.scale, dotCount);
    const bottom = dotRowOf(low, at.scale, dotCount);
    for (let dotRow = top; dotRow <= bottom; dotRow += 1) {
      const gap = line.line === 'dotted' && (dotRow - top) % 2 === 1 && dotRow !== bottom;
      if (!gap) setDot(grid, { dotColumn: index * stride, dotRow }, line);
    }
    drawClipped(grid, Math.floor((index * stride) / dotsWide), {
      above: high > at.scale.high,
      below: low < at.scale.low,
      style: line.style,
    });
  }
  return extremes;
}

/** The letters on the lines of a panel; each letter has columns of its own. */
function drawLetters(
  grid: CellGrid,
  lettered: readonly { line: PlotLine; extremes: Extremes }[],
  scale: Scale,
): void {
  const { dotsHigh } = grid.glyphs;
  lettered.forEach(({ line, extremes }, index) => {
    const perCell = extremes.lowest.length / grid.columnCount;
    const step = LETTER_STEP * Math.max(2, lettered.length);
    for (let column = 2 + index * LETTER_STEP; column < grid.columnCount; column += step) {
      const low = extremes.lowest[column * perCell] ?? Infinity;
      const high = extremes.highest[column * perCell] ?? -Infinity;
      if (low > high) continue;
      const row = Math.floor(dotRowOf((low + high) / 2, scale, grid.rowCount * dotsHigh) / dotsHigh);
      setCharacter(grid, { column, row, layer: 'over' }, { text: line.letter ?? '', style: line.style });
    }
  });
}

/** Arrows at the edge where a line leaves the scale. */
function drawClipped(
  grid: CellGrid,
  column: number,
  off: { above: boolean; below: boolean; style: CellStyle },
): void {
  const { glyphs, rowCount } = grid;
  const { style } = off;
  if (off.above) setCharacter(grid, { column, row: 0, layer: 'over' }, { text: glyphs.above, style });
  if (off.below) {
    setCharacter(grid, { column, row: rowCount - 1, layer: 'over' }, { text: glyphs.below, style });
  }
}

/** The label of each row that has one; a label goes where none stands in its row or, unless tight, next to it. */
function rowLabels({ scale, rowCount, tightLabels }: Panel, dotsHigh: number): Map<number, string> {
  const near = tightLabels === true ? 0 : 1;
  const labels = new Map<number, string>();
  for (const tick of scale.ticks) {
    const row = Math.floor(dotRowOf(tick.value, scale, rowCount * dotsHigh) / dotsHigh);
    const crowded = [row - near, row, row + near].some((taken) => labels.has(taken));
    if (!crowded) labels.set(row, tick.text);
  }
  return labels;
}

/** The letters of a strip: in each column the one that was met most often. */
function stripLetters(strip: Strip, frame: PlotFrame): string[] {
  const counts = Array.from({ length: plotColumns(frame) }, () => new Map<string, number>());
  for (let index = 0; index < strip.timeS.length; index += 1) {
    const letter = strip.letterAt(index);
    const met = letter === null ? undefined : counts[columnOf(strip.timeS[index] ?? NaN, frame)];
    if (letter !== null) met?.set(letter, (met.get(letter) ?? 0) + 1);
  }
  return counts.map((met) => [...met].sort((a, b) => b[1] - a[1])[0]?.[0] ?? ' ');
}

function stripPieces(strip: Strip, frame: PlotFrame): Piece[] {
  const letters: Piece[] = stripLetters(strip, frame).map((text) => ({ text, style: strip.style }));
  return [...gutterPieces(strip.label, glyphsOf(frame).axis, frame), ...letters];
}

/** The grid of a panel with everything on it. */
function drawnGrid(panel: Panel, frame: PlotFrame): CellGrid {
  const grid = createCellGrid(glyphsOf(frame), plotColumns(frame), panel.rowCount);
  drawZero(grid, panel.scale);
  drawMarks(grid, frame);
  const drawn = panel.lines.map((line) => ({
    line,
    extremes: drawLine(grid, line, { scale: panel.scale, frame }),
  }));
  const lettered = drawn.filter(({ line }) => line.letter !== undefined);
  drawLetters(grid, lettered, panel.scale);
  return grid;
}

/** Draws a panel once, so that its rows can be had for many places of the cursor. */
export function drawPanel(panel: Panel, frame: PlotFrame): DrawnPanel {
  const grid = drawnGrid(panel, frame);
  const { glyphs } = grid;
  const labels = rowLabels(panel, glyphs.dotsHigh);
  const pieces = Array.from({ length: panel.rowCount }, (_, row) => {
    const label = labels.get(row);
    const axis = label === undefined ? glyphs.axis : glyphs.labelledAxis;
    return [...gutterPieces(label ?? '', axis, frame), ...gridRow(grid, row)];
  });
  const strip = panel.strip === undefined ? null : stripPieces(panel.strip, frame);
  const all = strip === null ? pieces : [...pieces, strip];
  const isLetterAt = (column: number) => (strip?.[GUTTER_PIECES + column]?.text ?? ' ') !== ' ';
  return {
    rows: all.map((row) => paintedLine(row, frame.paint)),
    pieces: all,
    isLineAt: (column, row) => (row < panel.rowCount ? isLineAt(grid, column, row) : isLetterAt(column)),
  };
}

/** The rows of a drawn panel; the cursor at a time [s] is an upright wherever no line passes. */
export function panelRows(drawn: DrawnPanel, frame: PlotFrame, cursorS: number | null): string[] {
  const column = cursorS === null ? null : columnInSight(cursorS, frame);
  if (column === null) return [...drawn.rows];
  const upright: Piece = { text: glyphsOf(frame).cursor, style: 'bold' };
  return drawn.pieces.map((pieces, row) =>
    drawn.isLineAt(column, row)
      ? (drawn.rows[row] ?? '')
      : paintedLine(pieces.with(GUTTER_PIECES + column, upright), frame.paint),
  );
}

/** The rows of one panel: its grid with labels and axis, then its strip. */
export function plotPanel(panel: Panel, frame: PlotFrame): string[] {
  return panelRows(drawPanel(panel, frame), frame, null);
}

/** One panel as a whole picture: names of the marks above, time axis below. */
export function plot(panel: Panel, frame: PlotFrame): string[] {
  return [...markNameRows(frame), ...plotPanel(panel, frame), ...timeAxisRows(frame)];
}
