/** How did pitch move about one moment of a run? One panel in a few rows, for a place beside other things. */
import { gutterFor } from './plot-frame.js';
import type { PlotFrame } from './plot-frame.js';
import { plotPanel } from './plot.js';
import { measuredSpan, runMarks, runPanels } from './run-view.js';
import { markNameRows, timeAxisRows } from './time-axis.js';
import type { TraceOptions } from './trace-layout.js';
import { bandLines } from './trace-view.js';
import type { BandedView } from './trace-view.js';

/** Fewest rows with the names of the events, and with a time axis. */
const NAMES_LEAST = 6;
const AXIS_LEAST = 4;

/** Pitch with its set-point and settled band over a stretch of time: `height` rows, none wider than `width`. */
export function smallTrace(view: BandedView, options: Omit<TraceOptions, 'speedUnit'>): string[] {
  const { width, height, symbols, paint, span } = options;
  if (view.tape.length === 0 || height < 1) return [];
  const [pitch] = runPanels(view, 'km/h');
  const gutterWidth = gutterFor(
    pitch.scale.ticks.map(({ text }) => text),
    { width, symbols },
  );
  const window = measuredSpan(view);
  const frame: PlotFrame = { symbols, paint, width, gutterWidth, span, marks: runMarks(view), window };
  const names = height >= NAMES_LEAST ? [markNameRows(frame).at(-1) ?? ''] : [];
  const axis = height >= AXIS_LEAST ? timeAxisRows(frame) : [];
  const rowCount = height - names.length - axis.length;
  const panel = {
    ...pitch,
    lines: [...bandLines(view), ...pitch.lines],
    rowCount,
    tightLabels: rowCount < 4,
  };
  return [...names, ...plotPanel(panel, frame), ...axis];
}
