/**
 * How do lines over time look in a terminal? A panel is a grid of cells with a fixed scale, labels
 * with units, event marks, and a strip of letters below it for what happened at single ticks. Every
 * column shows the whole range of the samples it covers.
 */
import { createCellGrid, gridRow, paintedLine, setCharacter, setDot } from './cell-grid.js';
import type { CellGrid, CellStyle, LineStyle, Piece } from './cell-grid.js';
import { columnExtremes } from './extremes.js';
import type { SampledLine } from './extremes.js';
import { columnOf, glyphsOf, gutterPieces, plotColumns } from './plot-frame.js';
import type { PlotFrame } from './plot-frame.js';
import type { Scale } from './scale.js';
import { markNameRows, timeAxisRows } from './time-axis.js';

/** A line of a plot; its values are in the unit of the panel's scale. */
export interface PlotLine extends SampledLine {
  line: LineStyle;
  style: CellStyle;
}

/** A row of letters below a panel: `letterAt` says what happened at a sample, or null. */
export interface Strip {
  label: string;
  timeS: ArrayLike<number>;
  letterAt: (index: number) => string | null;
  style: CellStyle;
}

/** One panel: a fixed scale, its lines (later ones lie on top), `rowCount` rows, perhaps a strip. */
export interface Panel {
  scale: Scale;
  lines: readonly PlotLine[];
  rowCount: number;
  strip?: Strip | undefined;
}

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
 * Draws the range of each column; a dotted line has one column of dots a cell and gaps in its
 * uprights.
 */
function drawLine(grid: CellGrid, line: PlotLine, at: { scale: Scale; frame: PlotFrame }): void {
  const { dotsWide, dotsHigh } = grid.glyphs;
  const dotCount = grid.rowCount * dotsHigh;
  const stride = line.line === 'dotted' ? dotsWide : 1;
  const columnCount = (grid.columnCount * dotsWide) / stride;
  const { lowest, highest } = columnExtremes(line, { ...at.frame.span, columnCount });
  for (let index = 0; index < columnCount; index += 1) {
    const low = lowest[index] ?? Infinity;
    const high = highest[index] ?? -Infinity;
    if (low > high) continue;
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

/** The label of each row that has one; a label goes where none stands in its row or next to it. */
function rowLabels(scale: Scale, rowCount: number, dotsHigh: number): Map<number, string> {
  const labels = new Map<number, string>();
  for (const tick of scale.ticks) {
    const row = Math.floor(dotRowOf(tick.value, scale, rowCount * dotsHigh) / dotsHigh);
    const crowded = [row - 1, row, row + 1].some((near) => labels.has(near));
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

function stripRow(strip: Strip, frame: PlotFrame): string {
  const letters: Piece[] = stripLetters(strip, frame).map((text) => ({ text, style: strip.style }));
  return paintedLine([...gutterPieces(strip.label, glyphsOf(frame).axis, frame), ...letters], frame.paint);
}

/** The rows of one panel: its grid with labels and axis, then its strip. */
export function plotPanel(panel: Panel, frame: PlotFrame): string[] {
  const glyphs = glyphsOf(frame);
  const grid = createCellGrid(glyphs, plotColumns(frame), panel.rowCount);
  drawZero(grid, panel.scale);
  drawMarks(grid, frame);
  for (const line of panel.lines) drawLine(grid, line, { scale: panel.scale, frame });
  const labels = rowLabels(panel.scale, panel.rowCount, glyphs.dotsHigh);
  const rows = Array.from({ length: panel.rowCount }, (_, row) => {
    const label = labels.get(row);
    const axis = label === undefined ? glyphs.axis : glyphs.labelledAxis;
    return paintedLine([...gutterPieces(label ?? '', axis, frame), ...gridRow(grid, row)], frame.paint);
  });
  return panel.strip === undefined ? rows : [...rows, stripRow(panel.strip, frame)];
}

/** One panel as a whole picture: names of the marks above, time axis below. */
export function plot(panel: Panel, frame: PlotFrame): string[] {
  return [...markNameRows(frame), ...plotPanel(panel, frame), ...timeAxisRows(frame)];
}
