/**
 * The finalists of a sweep: their table, and what there is to know of the one under the cursor.
 */
import { CAUTION } from '../../show/rank-table.js';
import { bestSentences, lookedSentences, tableSentences } from '../../show/sweep-sentences.js';
import { finalistRows } from '../../show/sweep-table.js';
import type { SweepView } from '../../show/sweep-view.js';
import { sweepView } from '../../tasks/sweep-report.js';
import type { BenchState } from '../bench/state.js';
import { currentCandidate } from '../bench/sweep-items.js';
import type { SweepOutcome } from '../bench/sweep-state.js';
import { candidateText } from './sweep-read-out.js';
import { inSight, say, type Area } from './say.js';

/** Fewest rows with what was looked through, and with what the columns mean. */
const WITH_LOOKED = 18;
const WITH_LEGEND = 30;

/** Part of the rows that is for the table, at most. */
const TABLE_SHARE = 0.55;

const views = new WeakMap<SweepOutcome, SweepView>();

function viewOf(outcome: SweepOutcome): SweepView {
  const view = views.get(outcome) ?? sweepView(outcome.answer);
  views.set(outcome, view);
  return view;
}

/** The table of finalists with what is to be said of the one under the cursor. */
export function finalistViewRows(state: BenchState, { width, height }: Area): string[] {
  const outcome = state.sweep.run?.outcome;
  if (!outcome) return [];
  const { options } = state;
  const { symbols, paint } = options;
  const view = viewOf(outcome);
  const ascii = symbols === 'ascii';
  const saying = (texts: readonly string[]) => texts.flatMap((text) => say(text, width, options));
  const looked = height < WITH_LOOKED ? [] : [...saying(lookedSentences(view).slice(1)).map(paint.dim), ''];
  if (view.finalists.length === 0) return [...looked, ...saying(bestSentences(view))];
  const here = currentCandidate(state);
  const at = view.finalists.findIndex(({ result }) => result.name === here?.name);
  const [header, ...rows] = finalistRows(view, { width: width - 2, symbols, paint });
  const marked = rows.map((row, index) => {
    const sign = index === at ? (ascii ? '>' : '▸') : ' ';
    return `${paint.accent(sign)} ${row}`;
  });
  const most = Math.max(2, Math.floor((height - looked.length) * TABLE_SHARE));
  const shown = [`  ${header}`, ...inSight(marked, Math.max(0, at), most - 1)];
  const about =
    at === -1 ? [candidateText(state)] : bestSentences({ ...view, finalists: [view.finalists[at]!] });
  const legend =
    height < WITH_LEGEND ? [] : ['', ...saying([...tableSentences(ascii), CAUTION]).map(paint.dim)];
  return [...looked, ...shown, '', ...saying(about), ...legend];
}
