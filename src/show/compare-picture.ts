/**
 * How do two to four profiles in one trial look side by side? What there is to say first, then the profiles with
 * their letters, their lines over one another, and the difference table beside the lines or below them. All that
 * does not hang on the cursor is drawn once.
 */
import type { Parting } from '../measure/parting.js';
import { beside } from './beside.js';
import type { Paint } from './colour.js';
import { compareCaptions } from './compare-captions.js';
import { legendRows } from './compare-legend.js';
import {
  compareMarks,
  comparePanels,
  compareSpan,
  compareWindow,
  type ComparePanel,
} from './compare-panels.js';
import { sharedHeight, type ComparePlan } from './compare-rows.js';
import type { ComparedRun } from './compare-run.js';
import { partingSentence, verdictSentence } from './compare-sentences.js';
import { differenceTable, differenceTableRows, differenceTableWidth } from './difference-table.js';
import { truncated, wrapped } from './fit-text.js';
import { GLYPHS, type SymbolSet } from './glyphs.js';
import { plainText } from './plain-text.js';
import { glyphsOf, gutterFor, writable, type PlotFrame, type TimeSpan } from './plot-frame.js';
import { drawPanel, panelRows, type DrawnPanel } from './plot.js';
import type { SpeedUnit } from './quantities.js';
import { markNameRows, timeAxisRows } from './time-axis.js';

/** How a comparison is to be drawn: at most `width` columns and `height` rows; `span` null shows all of the time. */
export interface CompareOptions {
  width: number;
  height: number;
  symbols: SymbolSet;
  paint: Paint;
  speedUnit: SpeedUnit;
  span: TimeSpan | null;
  /** Rig and scenario, where the picture is to name them. */
  title?: string | undefined;
}

/** A comparison with everything drawn that does not hang on the cursor. */
export interface PreparedCompare {
  runs: readonly ComparedRun[];
  options: CompareOptions;
  head: readonly string[];
  plot: PreparedPlot | null;
  table: readonly string[];
  isBeside: boolean;
}

interface PreparedPlot {
  frame: PlotFrame;
  names: readonly string[];
  panels: readonly { caption: string | null; drawn: DrawnPanel }[];
}

/** Fewest columns that lines are drawn in beside the table. */
const LEAST_PLOT_WIDTH = 60;

/** Rows of the whole picture from which the marks are named. */
const ROWS_WITH_NAMES = 20;

const GAP = 3;

type Captions = ReturnType<typeof compareCaptions>;

/** Draws all that stays as it is while the cursor moves; there are two to four runs. */
export function prepareCompare(
  runs: readonly ComparedRun[],
  parting: Parting | null,
  options: CompareOptions,
): PreparedCompare {
  const { width, height, symbols, paint } = options;
  const head = headRows(runs, parting, options);
  const tableWidth = differenceTableWidth(runs, { symbols, paint });
  const isBeside = width - tableWidth - GAP >= LEAST_PLOT_WIDTH;
  const plotWidth = isBeside ? width - tableWidth - GAP : width;
  const panels = comparePanels(runs, options.speedUnit);
  const frame = frameOf(runs, parting, { panels, options: { ...options, width: plotWidth } });
  const names = frame === null || height < ROWS_WITH_NAMES ? [] : markNameRows(frame);
  const plan = sharedHeight({
    free: height - head.length - runs.length,
    table: differenceTableRows(runs, { width, symbols, paint }),
    fixedPlotRows: names.length + 2,
    isBeside,
  });
  const table = differenceTable(runs, {
    width: isBeside ? tableWidth : width,
    height: plan.tableRows,
    symbols,
    paint,
  });
  const captions = compareCaptions(runs, options.speedUnit);
  const plot = frame && preparedPlot(panels, frame, { plan, names, captions });
  return { runs, options, head, plot, table, isBeside };
}

/** The rows of a prepared comparison, with the cursor at a time [s] or without. */
export function compareRows(prepared: PreparedCompare, cursorS: number | null): string[] {
  const { runs, options, head, plot, table, isBeside } = prepared;
  const lines = plot === null ? [] : plotRows(plot, cursorS);
  const body = isBeside
    ? beside(lines, table, { leftWidth: plot?.frame.width ?? 0, gap: GAP })
    : [...lines, ...table];
  return [...head, ...legendRows(runs, options, cursorS), ...body].slice(0, options.height);
}

/** The title, which profile is better, and when they part; a small screen keeps the verdict, and whole sentences. */
function headRows(
  runs: readonly ComparedRun[],
  parting: Parting | null,
  { title, width, height, symbols, paint }: CompareOptions,
): string[] {
  const most = Math.max(1, Math.floor(height / 3));
  const say = (text: string) => wrapped(writable(plainText(text), GLYPHS[symbols]), Math.max(2, width));
  const verdict = say(verdictSentence(runs)).slice(0, most).map(paint.bold);
  const parted = say(partingSentence(runs, parting));
  const named = title === undefined ? [] : say(title).map(paint.dim);
  const both = verdict.length + parted.length <= most ? [...verdict, ...parted] : verdict;
  return named.length + both.length <= most ? [...named, ...both] : both;
}

/** What the panels share; null where nothing was recorded. */
function frameOf(
  runs: readonly ComparedRun[],
  parting: Parting | null,
  { panels, options }: { panels: readonly ComparePanel[]; options: CompareOptions },
): PlotFrame | null {
  const { width, symbols, paint } = options;
  const span = options.span ?? compareSpan(runs);
  if (span === null) return null;
  const labels = panels.flatMap(({ scale }) => scale.ticks.map(({ text }) => text));
  const gutterWidth = gutterFor(labels, { width, symbols });
  const marks = compareMarks(runs, parting);
  return { symbols, paint, width, gutterWidth, span, marks, window: compareWindow(runs) };
}

/** The panels that have room, drawn; null where none has. */
function preparedPlot(
  panels: readonly ComparePanel[],
  frame: PlotFrame,
  { plan, names, captions }: { plan: ComparePlan; names: readonly string[]; captions: Captions },
): PreparedPlot | null {
  if (plan.panels.length === 0) return null;
  const drawn = plan.panels.flatMap(({ name, rowCount }) => {
    const panel = panels.find((candidate) => candidate.name === name);
    if (panel === undefined) return [];
    const { scale, lines } = panel;
    const caption = plan.hasCaptions ? captionRow(captions[name], frame) : null;
    return [{ caption, drawn: drawPanel({ scale, lines, rowCount }, frame) }];
  });
  return { frame, names, panels: drawn };
}

/** A panel's sentence as far as it fits, its first word bold. */
function captionRow(caption: string, frame: PlotFrame): string {
  const glyphs = glyphsOf(frame);
  const text = truncated(writable(caption, glyphs), frame.width, glyphs.ellipsis);
  const end = text.search(/ |$/);
  return frame.paint.bold(text.slice(0, end)) + text.slice(end);
}

function plotRows({ frame, names, panels }: PreparedPlot, cursorS: number | null): string[] {
  return [
    ...names,
    ...panels.flatMap(({ caption, drawn }) => [
      ...(caption === null ? [] : [caption]),
      ...panelRows(drawn, frame, cursorS),
    ]),
    ...timeAxisRows(frame, cursorS),
  ];
}
