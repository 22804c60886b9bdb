/**
 * Trace and Compare in words: one sentence for every picture, then every value at the cursor.
 */
import type { Parting } from '../../measure/parting.js';
import { legendRows } from '../../show/compare-legend.js';
import type { ComparedRun } from '../../show/compare-run.js';
import { partingSentence, verdictSentence } from '../../show/compare-sentences.js';
import { differenceTable } from '../../show/difference-table.js';
import { pitchText, timeText } from '../../show/quantities.js';
import { readOut } from '../../show/read-out.js';
import { sideViewSentence } from '../../show/side-view.js';
import { rowAt, traceSentences, type TraceView } from '../../show/trace-view.js';
import { cursorS } from '../bench/time-acts.js';
import type { BenchState } from '../bench/state.js';
import { say, type Area } from './say.js';

/** A run in words. */
export function traceWordRows(view: TraceView, state: BenchState, { width, height }: Area): string[] {
  const { options } = state;
  const row = rowAt(view, cursorS(state));
  const sentences = [
    `At ${timeText(cursorS(state))}, ${pitchText(view.tape.columns.pitchRad[row] ?? 0)}: ${sideViewSentence(view, row, options.speedUnit)}`,
    ...traceSentences(view, options.speedUnit).map(({ sentence }) => sentence),
  ];
  const values = readOut(view, row, options.speedUnit).map(({ name, text }) => `${name}: ${text}`);
  return [
    ...sentences.flatMap((text) => say(text, width, options)),
    '',
    ...say(values.join('; '), width, options),
  ].slice(0, height);
}

/** A comparison in words: which is better, when they part, how each ended and stands now, and the table of differences. */
export function compareWordRows(
  { runs, parting }: { runs: readonly ComparedRun[]; parting: Parting | null },
  state: BenchState,
  { width, height }: Area,
): string[] {
  const { options } = state;
  const legend = { width, ...options };
  const rows = [
    ...say(verdictSentence(runs), width, options).map(options.paint.bold),
    ...say(partingSentence(runs, parting), width, options),
    '',
    ...legendRows(runs, legend, null),
    '',
    ...say(`At ${timeText(cursorS(state))}:`, width, options),
    ...legendRows(runs, legend, cursorS(state)),
    '',
  ];
  const { symbols, paint } = options;
  const table = differenceTable(runs, { width, height: height - rows.length, symbols, paint });
  return [...rows, ...table].slice(0, height);
}
