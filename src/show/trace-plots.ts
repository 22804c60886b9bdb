/**
 * How do the panels of a trace stand one below the other? Names of the events first, each panel under its
 * sentence where there is room, then time axis and what the signs mean.
 */
import { flowed, truncated, wrapped } from './fit-text.js';
import { glyphsOf, gutterFor, writable } from './plot-frame.js';
import type { PlotFrame } from './plot-frame.js';
import { drawPanel } from './plot.js';
import type { DrawnPanel } from './plot.js';
import { angleText } from './quantities.js';
import { ceilingsMet, measuredSpan, runMarks, tapeSpan } from './run-view.js';
import { markNameRows } from './time-axis.js';
import { panelRowCounts, traceTexts } from './trace-layout.js';
import type { TraceOptions } from './trace-layout.js';
import { CEILING_LETTERS, ceilingStrip, STRIP_LABEL } from './ceiling-strip.js';
import { tracePanels } from './trace-view.js';
import type { TracePanel, TraceView } from './trace-view.js';

/** What stands in the plots from the top down: a drawn panel, or rows of text. */
export type TracePart = { drawn: DrawnPanel } | { rows: readonly string[] };

/** The drawn plots: panels and texts, then a time axis with the frame's cursor, then what is below it. */
export interface TracePlots {
  frame: PlotFrame;
  parts: readonly TracePart[];
  below: readonly string[];
}

/** Most rows in which signs are explained. */
const LEGEND_MOST = 2;

/** What the panels share, the gutter wide enough for their labels. */
function frameOf(view: TraceView, panels: readonly TracePanel[], options: TraceOptions): PlotFrame {
  const { width, symbols, paint, span } = options;
  const labels = panels.flatMap(({ scale }) => scale.ticks.map(({ text }) => text));
  const gutterWidth = gutterFor([STRIP_LABEL, ...labels], { width, symbols });
  return { symbols, paint, width, gutterWidth, span, marks: runMarks(view), window: measuredSpan(view) };
}

/** The names of the events in sight; as many rows as for the whole tape, so that zooming moves nothing. */
function steadyNameRows(view: TraceView, frame: PlotFrame): string[] {
  const count = markNameRows({ ...frame, span: tapeSpan(view.tape) ?? frame.span }).length;
  const seen = markNameRows(frame).slice(-count || Infinity);
  return [...Array.from({ length: Math.max(0, count - seen.length) }, () => ''), ...seen].slice(0, count);
}

/** What the signs mean, the most needed first. */
function legendRows(view: TraceView, frame: PlotFrame): string[] {
  const { dottedSample, dashedSample, mark } = glyphsOf(frame);
  const met = ceilingsMet(view.tape);
  const signs: string[] = [];
  if (met.length > 0)
    signs.push(`${STRIP_LABEL}: ${met.map((name) => `${CEILING_LETTERS[name]} ${name}`).join(', ')}`);
  signs.push(`${dottedSample} set-point, ceilings`);
  if (view.finalPitchRad !== null) {
    const band = writable(angleText(view.facts.bandRad), glyphsOf(frame));
    signs.push(`${dashedSample} ${band} about end`);
  }
  if (frame.marks.length > 0) signs.push(`${mark} event`);
  const fitting = signs.map((sign) => truncated(sign, frame.width, glyphsOf(frame).ellipsis));
  return flowed(fitting, ' | ', frame.width).map((row) => frame.paint.dim(row));
}

/** A panel's sentence in rows, its first word bold. */
function sentenceRows({ sentence }: TracePanel, frame: PlotFrame): string[] {
  return wrapped(writable(sentence, glyphsOf(frame)), frame.width).map((row, index) => {
    const end = index === 0 ? row.search(/ |$/) : 0;
    return frame.paint.bold(row.slice(0, end)) + row.slice(end);
  });
}

/** The plots of a trace in `options.height` rows, drawn but for the cursor. */
export function tracePlots(view: TraceView, options: TraceOptions): TracePlots {
  const panels = tracePanels(view, options.speedUnit);
  const frame = frameOf(view, panels, options);
  const texts = traceTexts(options.height);
  const names = options.height >= 6 ? steadyNameRows(view, frame) : [];
  const strip = ceilingsMet(view.tape).length > 0 ? ceilingStrip(view.tape) : undefined;
  const below = texts.legend ? legendRows(view, frame).slice(0, texts.sentences ? LEGEND_MOST : 1) : [];
  const sentences = panels.map((panel) => (texts.sentences ? sentenceRows(panel, frame) : []));
  const axisCount = 2;
  const taken =
    names.length + axisCount + below.length + sentences.flat().length + (strip === undefined ? 0 : 1);
  const counts = panelRowCounts(Math.max(1, options.height - taken));
  const shown = panels.flatMap((panel, index): TracePart[] => {
    const rowCount = counts.get(panel.name);
    if (rowCount === undefined) return [];
    const withStrip = panel.name === 'current' ? strip : undefined;
    const drawn = drawPanel({ ...panel, rowCount, strip: withStrip, tightLabels: rowCount === 2 }, frame);
    return [{ rows: [...(sentences[index] ?? []), ...(index === 0 ? names : [])] }, { drawn }];
  });
  return { frame, parts: shown, below };
}
