/**
 * What do the panels of one picture share? Width, time axis, event marks, the measured window and the
 * gutter for labels, so that a moment stands in the same column of every panel.
 */
import type { CellStyle, Piece } from './cell-grid.js';
import type { Paint } from './colour.js';
import { padded, textWidth, truncated } from './fit-text.js';
import { GLYPHS } from './glyphs.js';
import type { Glyphs, SymbolSet } from './glyphs.js';

/** A named moment [s], drawn as a dotted upright through every panel. */
export interface PlotMark {
  name: string;
  timeS: number;
}

/** A stretch of time [s]. */
export interface TimeSpan {
  fromS: number;
  toS: number;
}

/** What the panels of one picture share; `gutterWidth` columns of labels stand left of the axis. */
export interface PlotFrame {
  symbols: SymbolSet;
  paint: Paint;
  width: number;
  gutterWidth: number;
  span: TimeSpan;
  marks: readonly PlotMark[];
  window: TimeSpan | null;
}

/** The characters that a frame draws with. */
export function glyphsOf(frame: PlotFrame): Glyphs {
  return GLYPHS[frame.symbols];
}

/** Columns left for the lines, right of gutter and axis; at least one. */
export function plotColumns(frame: PlotFrame): number {
  return Math.max(1, frame.width - frame.gutterWidth - 2);
}

/** The column in which a moment stands, which may lie outside the plot. */
export function columnOf(timeS: number, frame: PlotFrame): number {
  const { fromS, toS } = frame.span;
  const columns = plotColumns(frame);
  const at = Math.floor(((timeS - fromS) / (toS > fromS ? toS - fromS : 1)) * columns);
  return timeS === toS ? columns - 1 : at;
}

/** The column of a moment [s] that the plot shows; null for one outside of it. */
export function columnInSight(timeS: number, frame: PlotFrame): number | null {
  const column = columnOf(timeS, frame);
  return column >= 0 && column < plotColumns(frame) ? column : null;
}

/** A label as the symbol set can write it. */
export function writable(text: string, glyphs: Glyphs): string {
  return text.replaceAll('°', glyphs.degree);
}

/** The gutter that the longest of some labels needs, but never more than half of the width. */
export function gutterFor(labels: readonly string[], at: { width: number; symbols: SymbolSet }): number {
  const glyphs = GLYPHS[at.symbols];
  const widest = Math.max(0, ...labels.map((label) => textWidth(writable(label, glyphs))));
  return Math.min(widest, Math.floor(at.width / 2));
}

/** A label in the gutter, then the character of the axis. */
export function gutterPieces(label: string, axis: string, frame: PlotFrame): Piece[] {
  const glyphs = glyphsOf(frame);
  const text = truncated(writable(label, glyphs), frame.gutterWidth, glyphs.ellipsis);
  const style: CellStyle = 'dim';
  return [
    { text: `${padded(text, frame.gutterWidth, 'right')} `, style: null },
    { text: axis, style },
  ];
}
