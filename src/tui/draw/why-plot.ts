/**
 * The run of Why: the moment where a finding is seen best, alone, or before and after a change over one another; under its
 * sentence.
 */
import { pitchSentence } from '../../show/run-sentences.js';
import { smallTrace } from '../../show/trace-small.js';
import { overlaidPitch, overlaySentence } from '../../show/why-overlay.js';
import { cellName } from '../../show/why-sentences.js';
import type { Look } from '../../tasks/looks.js';
import { wishesOf } from '../bench/rows.js';
import type { BenchState } from '../bench/state.js';
import { shownEvidence } from '../bench/why-items.js';
import { worstSpan } from './panel.js';
import { say, type Area } from './say.js';

/** Most rows of the sentence, and fewest columns of the plot. */
const SENTENCE_MOST = 5;
const LEAST_WIDTH = 26;

/** The plot with its sentence; says so where its run is still being computed. */
export function whyPlotRows(state: BenchState, { width, height }: Area): string[] {
  const { options, looks } = state;
  const there = looks.filter((look): look is Look => look !== null && look.tape.length > 1);
  const [before, after] = there;
  const isWhole = there.length === wishesOf(state).length;
  if (before === undefined || !isWhole)
    return say('The run is being computed.', width, options).slice(0, height);
  const cell = shownEvidence(state)?.cell;
  const where = cell === undefined ? '' : `${cellName(cell)}. `;
  const text =
    after === undefined
      ? pitchSentence(before.view.facts, before.outcome)
      : overlaySentence([before.view, after.view]);
  const sentence = say(`${where}${text}`, width, options).slice(0, SENTENCE_MOST);
  if (width < LEAST_WIDTH) return sentence.slice(0, height);
  const { symbols, paint } = options;
  const place = { width, height: height - sentence.length, symbols, paint, span: worstSpan(before) };
  const plot =
    after === undefined ? smallTrace(before.view, place) : overlaidPitch([before.view, after.view], place);
  return [...sentence, ...plot].slice(0, height);
}
