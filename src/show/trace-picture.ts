/**
 * How does one run look with a cursor in it? On the left five panels over one time axis, on the right board and
 * rider from the side and every value at the cursor. What does not depend on the cursor is drawn once.
 */
import { beside } from './beside.js';
import { flowed, padded, truncated, wrapped } from './fit-text.js';
import { GLYPHS } from './glyphs.js';
import { writable } from './plot-frame.js';
import { panelRows } from './plot.js';
import { readOut } from './read-out.js';
import { sideView, sideViewSentence } from './side-view.js';
import { timeAxisRows } from './time-axis.js';
import { pictureRows, SIDE_GAP, traceTexts, traceWidths } from './trace-layout.js';
import type { TraceOptions } from './trace-layout.js';
import { tracePlots } from './trace-plots.js';
import type { TracePlots } from './trace-plots.js';
import { rowAt } from './trace-view.js';
import type { TraceView } from './trace-view.js';

/** A trace with everything drawn that does not depend on the cursor. */
export interface PreparedTrace {
  view: TraceView;
  options: TraceOptions;
  /** Null where nothing was recorded. */
  plots: TracePlots | null;
}

/** Columns of the names in a read-out. */
const NAME_WIDTH = 11;

/** Fewest columns that plots are laid out for; in fewer there are only the values. */
const PLOTS_LEAST_WIDTH = 24;

/** Fewest rows of a narrow trace that has a row of values below it. */
const VALUES_ROW_HEIGHT = 8;

/** Draws what does not depend on the cursor: to be done again for another size, stretch of time or run. */
export function prepareTrace(view: TraceView, options: TraceOptions): PreparedTrace {
  if (view.tape.length === 0) return { view, options, plots: null };
  const { plotWidth, sideWidth } = traceWidths(options.width);
  const hasValuesRow = sideWidth === 0 && options.height >= VALUES_ROW_HEIGHT;
  const height = options.height - (hasValuesRow ? 1 : 0);
  return { view, options, plots: tracePlots(view, { ...options, width: plotWidth, height }) };
}

/** The panels with the cursor in them. */
function plotRows({ parts, frame, below }: TracePlots, cursorS: number): string[] {
  const above = parts.flatMap((part) =>
    'drawn' in part ? panelRows(part.drawn, frame, cursorS) : part.rows,
  );
  return [...above, ...timeAxisRows(frame, cursorS), ...below];
}

/** The values at the cursor, a row each, as many as fit. */
function readOutRows(
  prepared: PreparedTrace,
  row: number,
  size: { width: number; height: number },
): string[] {
  const { view, options } = prepared;
  const glyphs = GLYPHS[options.symbols];
  const rows = readOut(view, row, options.speedUnit).slice(0, Math.max(0, size.height));
  return rows.map(({ name, text }) => {
    const value = truncated(writable(text, glyphs), size.width - NAME_WIDTH, glyphs.ellipsis);
    return options.paint.dim(padded(name, NAME_WIDTH)) + value;
  });
}

/** The right side: its sentence where there is room, board and rider, the values. */
function sideRows(prepared: PreparedTrace, row: number, width: number): string[] {
  const { view, options } = prepared;
  const { symbols, paint, height, speedUnit } = options;
  const sentence = traceTexts(height).sentences
    ? wrapped(writable(sideViewSentence(view, row, speedUnit), GLYPHS[symbols]), width)
    : [];
  // Two rows are kept for a sentence even while it needs one, so that the picture does not jump.
  const said = sentence.length === 1 ? [...sentence, ''] : sentence;
  const room = height - said.length;
  const pictureHeight = pictureRows(room, readOut(view, row, speedUnit).length);
  return [
    ...said,
    ...sideView(view, row, { width, height: pictureHeight, symbols, paint }),
    ...readOutRows(prepared, row, { width, height: room - pictureHeight }),
  ];
}

/** Names of the values that a narrow trace shows in its last row. */
const NARROW_VALUES: ReadonlySet<string> = new Set(['time', 'pitch', 'lean', 'speed', 'current', 'cut by']);

/** The first values at the cursor in one row, as many as fit. */
function valuesRow({ view, options }: PreparedTrace, row: number): string {
  const glyphs = GLYPHS[options.symbols];
  const values = readOut(view, row, options.speedUnit).filter(({ name }) => NARROW_VALUES.has(name));
  const texts = values.map(({ name, text }) => (name === 'cut by' ? `${name} ${text}` : text));
  const [line = ''] = flowed(
    texts.map((text) => writable(text, glyphs)),
    ' | ',
    options.width,
  );
  return truncated(line, options.width, glyphs.ellipsis);
}

/** The rows of a trace with the cursor at a time [s]: at most `height`, none wider than `width`. */
export function traceRows(prepared: PreparedTrace, cursorS: number): string[] {
  const { view, options, plots } = prepared;
  const { width, height } = options;
  if (plots === null) return [truncated('Nothing was recorded.', width)].slice(0, height);
  const row = rowAt(view, cursorS);
  if (width < PLOTS_LEAST_WIDTH) return [valuesRow(prepared, row)].slice(0, height);
  const { plotWidth, sideWidth } = traceWidths(width);
  const left = plotRows(plots, view.tape.columns.timeS[row] ?? cursorS);
  if (sideWidth > 0) {
    const right = sideRows(prepared, row, sideWidth);
    return beside(left, right, { leftWidth: plotWidth, gap: SIDE_GAP }).slice(0, height);
  }
  return (height >= VALUES_ROW_HEIGHT ? [...left, valuesRow(prepared, row)] : left).slice(0, height);
}
