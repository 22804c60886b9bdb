/**
 * How far is a profile that is being proven, and what is computed for a preview, in words?
 */
import type { KeepProgress, KeepStage } from '../../tasks/keep.js';
import { previewNow, previewWish } from './shortlist-items.js';
import type { Keeping } from './shortlist-state.js';
import type { BenchState } from './state.js';

/** Stages, short enough for a line that says something else too. */
const SHORT: Readonly<Record<KeepStage, string>> = {
  'running every cell': 'cells',
  'looking at steady rides': 'rides',
  'trying slips': 'slips',
  'looking for the edge': 'edge',
};

function partText({ done, all }: KeepProgress): string {
  return all === null ? `${done} runs` : `${Math.floor((100 * done) / Math.max(1, all))} %`;
}

/** How far the shortlist is: `proving evening: slips 40 %, 1 waits`; empty where nothing is being proven. */
export function keepingText({ shortlist: { queue } }: Pick<BenchState, 'shortlist'>): string {
  const [first, ...others] = queue;
  if (first === undefined) return '';
  const { name, progress } = first;
  const part = progress === null ? '' : `: ${SHORT[progress.stage]} ${partText(progress)}`;
  const waiting = others.length === 0 ? '' : `, ${others.length} ${others.length === 1 ? 'waits' : 'wait'}`;
  return `proving ${name}${part}${waiting}`;
}

/** How far one of them is: `looking for the edge, 57 runs`. */
export function stageWords({ progress }: Pick<Keeping, 'progress'>, isFirst: boolean): string {
  if (!isFirst) return 'waits to be proven';
  return progress === null ? 'is being proven' : `${progress.stage}, ${partText(progress)}`;
}

/** What is computed for the view in front: `simulated: 12 of 60 runs`; empty where nothing is. */
export function previewText(state: BenchState): string {
  if (previewWish(state) === null) return '';
  const preview = previewNow(state);
  if (preview === null) return 'simulating';
  if (preview.answer !== null) return 'simulated';
  if (preview.problems.length > 0) return 'not simulated';
  const { done, all } = preview;
  return `simulating: ${all === null ? `${done} runs` : `${done} of ${all} runs`}`;
}
