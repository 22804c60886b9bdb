/**
 * How does one run look in a terminal? Three panels over one time axis: pitch, current under its
 * ceilings, speed; a sentence above each, the names of the events over the first, what the signs
 * mean at the bottom.
 */
import type { Ceiling } from '../simulate/tape.js';
import { CEILING_LETTERS, ceilingStrip, STRIP_LABEL } from './ceiling-strip.js';
import { verdictMark } from './colour.js';
import type { Paint } from './colour.js';
import { flowed, textWidth, truncated, wrapped } from './fit-text.js';
import { GLYPHS } from './glyphs.js';
import type { SymbolSet } from './glyphs.js';
import { plainText } from './plain-text.js';
import { glyphsOf, gutterFor, writable } from './plot-frame.js';
import type { PlotFrame, TimeSpan } from './plot-frame.js';
import { plotPanel } from './plot.js';
import type { SpeedUnit } from './quantities.js';
import { outcomeText, outcomeVerdict } from './run-sentences.js';
import { ceilingsMet, measuredSpan, runMarks, runPanels, tapeSpan } from './run-view.js';
import type { RunPanel, RunView } from './run-view.js';
import { markNameRows, timeAxisRows } from './time-axis.js';

/** How a run is to be drawn; width and height in columns and rows. */
export interface RunPlotOptions {
  width: number;
  height: number;
  symbols: SymbolSet;
  paint: Paint;
  speedUnit: SpeedUnit;
}

/** Width and height of a run's plot where nothing else is asked for. */
export const RUN_PLOT_SIZE = { width: 78, height: 24 } as const;

/** Fewest columns that a run's plot is laid out for. */
const LEAST_WIDTH = 24;

/** The verdict's shape, the title as far as it fits, the outcome. */
function titleRow(view: RunView, options: RunPlotOptions): string {
  const { paint, symbols, width } = options;
  const verdict = outcomeVerdict(view.outcome);
  const mark = verdictMark(verdict, symbols === 'ascii');
  const { ellipsis } = GLYPHS[symbols];
  const outcome = truncated(outcomeText(view.outcome), width - 2, ellipsis);
  const room = width - 2 - textWidth(outcome) - 2;
  const title = room < 4 ? '' : `${truncated(plainText(view.title), room, ellipsis)}: `;
  return `${paint[verdict](mark)} ${paint.bold(title)}${outcome}`;
}

/** A panel's sentence in rows, its first word bold. */
function sentenceRows(panel: RunPanel, options: RunPlotOptions): string[] {
  const rows = wrapped(writable(panel.sentence, GLYPHS[options.symbols]), options.width);
  return rows.map((row, index) => {
    const end = index === 0 ? row.search(/ |$/) : 0;
    return options.paint.bold(row.slice(0, end)) + row.slice(end);
  });
}

/** What the signs mean. */
function legendRows(ceilings: readonly Exclude<Ceiling, 'none'>[], frame: PlotFrame): string[] {
  const { dottedSample, mark } = glyphsOf(frame);
  const signs = [`${dottedSample} set-point, ceilings`];
  if (frame.marks.length > 0) signs.push(`${mark} event`);
  if (ceilings.length > 0) {
    signs.push(`${STRIP_LABEL}: ${ceilings.map((name) => `${CEILING_LETTERS[name]} ${name}`).join(', ')}`);
  }
  const fitting = signs.flatMap((sign) => wrapped(sign, frame.width));
  return flowed(fitting, ' | ', frame.width).map((row) => frame.paint.dim(row));
}

/**
 * Shares rows among pitch, current and speed; pitch gets an odd number, so that level is its middle
 * row.
 */
function sharedRows(rowCount: number): [number, number, number] {
  const rows = Math.max(8, rowCount);
  const speed = Math.max(2, Math.floor((rows * 3) / 13));
  const half = Math.floor((rows - speed) / 2);
  const pitch = half % 2 === 1 ? half : half + 1;
  return rows - speed - pitch >= 3
    ? [pitch, rows - speed - pitch, speed]
    : [half, rows - speed - half, speed];
}

/** What the panels of a run share, its gutter wide enough for their labels. */
function frameOf(
  view: RunView,
  span: TimeSpan,
  at: { panels: readonly RunPanel[]; options: RunPlotOptions },
): PlotFrame {
  const { width, symbols, paint } = at.options;
  const labels = at.panels.flatMap(({ scale }) => scale.ticks.map(({ text }) => text));
  const gutterWidth = gutterFor([STRIP_LABEL, ...labels], { width, symbols });
  return { symbols, paint, width, gutterWidth, span, marks: runMarks(view), window: measuredSpan(view) };
}

/** The rows below the title: sentences and panels, the names of the events, time axis and legend. */
function bodyRows(view: RunView, span: TimeSpan, options: RunPlotOptions): string[] {
  const panels = runPanels(view, options.speedUnit);
  const frame = frameOf(view, span, { panels, options });
  const ceilings = ceilingsMet(view.tape);
  const strip = ceilings.length > 0 ? ceilingStrip(view.tape) : undefined;
  const names = markNameRows(frame);
  const below = [...timeAxisRows(frame), ...legendRows(ceilings, frame)];
  const sentences = panels.map((panel) => sentenceRows(panel, options));
  const stripCount = strip === undefined ? 0 : 1;
  const taken = 1 + names.length + below.length + sentences.flat().length + stripCount;
  const rowCounts = sharedRows(options.height - taken);
  const drawn = panels.flatMap(({ name, scale, lines }, index) => {
    const rowCount = rowCounts[index] ?? 2;
    const panel = { scale, lines, rowCount, strip: name === 'current' ? strip : undefined };
    return [...(sentences[index] ?? []), ...(index === 0 ? names : []), ...plotPanel(panel, frame)];
  });
  return [...drawn, ...below];
}

/**
 * One run as rows of text: none is wider than `width`, which is taken as 24 at least, and there are
 * `height` of them unless sentences and the smallest panels need more. Scales are fixed by ladders,
 * see scale.ts.
 */
export function runPlot(view: RunView, options: RunPlotOptions): string[] {
  const asked = { ...options, width: Math.max(LEAST_WIDTH, options.width) };
  const span = tapeSpan(view.tape);
  if (span === null) return [titleRow(view, asked), 'Nothing was recorded.'];
  return [titleRow(view, asked), ...bodyRows(view, span, asked)];
}
