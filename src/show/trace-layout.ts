/**
 * How is the room of a trace shared out? Plots on the left, board and rider with the read-out on the right where
 * there is width for both; panels get rows by weight, and the least telling go first where rows are short.
 */
import type { Paint } from './colour.js';
import type { SymbolSet } from './glyphs.js';
import type { TimeSpan } from './plot-frame.js';
import type { SpeedUnit } from './quantities.js';
import type { TracePanel } from './trace-view.js';

/**
 * How a trace is to be drawn: width and height in columns and rows, and the stretch of time in sight; scales are
 * those of the whole tape whatever the stretch.
 */
export interface TraceOptions {
  width: number;
  height: number;
  symbols: SymbolSet;
  paint: Paint;
  speedUnit: SpeedUnit;
  span: TimeSpan;
}

/** Columns from which on the view from the side stands beside the plots. */
const SIDE_BY_SIDE_WIDTH = 76;

/** Least and most columns of the right side, and its share of the width. */
const SIDE_LEAST = 31;
const SIDE_MOST = 70;
const SIDE_SHARE = 0.36;

/** Columns between the plots and the right side. */
export const SIDE_GAP = 2;

/** Rows from which on the sentences stand above their panels. */
const TALL_ROWS = 34;

/** Rows from which on signs are explained below the plots. */
const LEGEND_ROWS = 20;

/** Fewest rows on the right with a picture among them. */
const PICTURE_LEAST_HEIGHT = 16;

/** The columns of the plots and of the right side, which has none on a narrow screen. */
export function traceWidths(width: number): { plotWidth: number; sideWidth: number } {
  if (width < SIDE_BY_SIDE_WIDTH) return { plotWidth: width, sideWidth: 0 };
  const sideWidth = Math.min(SIDE_MOST, Math.max(SIDE_LEAST, Math.round(width * SIDE_SHARE)));
  return { plotWidth: width - sideWidth - SIDE_GAP, sideWidth };
}

/** Whether there are rows for sentences, and for the meaning of signs. */
export function traceTexts(height: number): { sentences: boolean; legend: boolean } {
  return { sentences: height >= TALL_ROWS, legend: height >= LEGEND_ROWS };
}

/** Rows of the view from the side, of `height` less what stands above it; the read-out gets the others. */
export function pictureRows(height: number, readOutCount: number): number {
  if (height < PICTURE_LEAST_HEIGHT) return 0;
  return Math.max(Math.round(height / 2), height - readOutCount);
}

/** Panels from the most to the least telling, with their least rows and their weight for the others. */
const SHARES: readonly { name: TracePanel['name']; least: number; weight: number }[] = [
  { name: 'pitch', least: 3, weight: 7 },
  { name: 'current', least: 3, weight: 5 },
  { name: 'lean', least: 2, weight: 4 },
  { name: 'speed', least: 2, weight: 3 },
  { name: 'road', least: 2, weight: 2 },
];

/**
 * Rows of each panel that is shown, `rowCount` of them in all; pitch has an odd number, so that level is its
 * middle row, unless it stands alone.
 */
export function panelRowCounts(rowCount: number): Map<TracePanel['name'], number> {
  let spare = rowCount;
  const shown = SHARES.filter(({ least }, index) => {
    const fits = spare >= least || index === 0;
    spare -= fits ? least : 0;
    return fits;
  });
  if (shown.length === 1) return new Map(shown.map(({ name }) => [name, rowCount]));
  const weights = shown.reduce((sum, { weight }) => sum + weight, 0);
  const counts = new Map(
    shown.map(({ name, least, weight }) => [name, least + Math.floor((spare * weight) / weights)]),
  );
  const add = (name: TracePanel['name'], more: number) => counts.set(name, (counts.get(name) ?? 0) + more);
  const over = rowCount - [...counts.values()].reduce((sum, count) => sum + count, 0);
  for (const { name } of shown.slice(1, 1 + over)) add(name, 1);
  const next = shown[1]?.name ?? 'current';
  if ((counts.get('pitch') ?? 1) % 2 === 0) {
    const more = (counts.get(next) ?? 0) > (shown[1]?.least ?? 0) ? 1 : -1;
    add('pitch', more);
    add(next, -more);
  }
  return counts;
}
