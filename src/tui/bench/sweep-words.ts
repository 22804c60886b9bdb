/**
 * How far a sweep is, in words: for the line at the top of every screen, and in full for the Sweep screen.
 */
import { plainNumber } from '../../show/why-sentences.js';
import type { SweepProgress, SweepStage } from '../../tasks/sweep.js';
import type { BenchState } from './state.js';
import type { SweepRunState } from './sweep-state.js';

/** A part in percent. */
export function percentText(percent: number): string {
  return `${plainNumber(percent)} %`;
}

/** A time [s]. */
export function secondsText(timeS: number): string {
  return `${plainNumber(timeS)} s`;
}

/** Stages, short enough for a line that says something else too. */
const SHORT: Readonly<Record<SweepStage, string>> = {
  'ordering the cells': 'cells',
  racing: 'race',
  'going downhill': 'downhill',
  'running the best': 'the best',
  'looking at the finalists': 'finalists',
};

/** How far a sweep is: `sweep: race 2 of 4, 31 %`; empty where none is under way. */
export function sweepText({ sweep: { run } }: Pick<BenchState, 'sweep'>): string {
  if (run === null || run.outcome !== null) return '';
  if (!run.isRunning) return 'sweep stopped';
  return run.progress === null
    ? 'sweep begins'
    : `sweep: ${partText(run.progress, SHORT[run.progress.stage])}`;
}

/** The same in full, for the Sweep screen. */
export function stageText({ sweep: { run } }: Pick<BenchState, 'sweep'>): string {
  if (run === null) return 'not begun';
  if (run.outcome !== null) return `done, ${runsText(run.outcome.answer.runs)}`;
  const stopped = run.isRunning ? '' : 'stopped: ';
  return stopped + (run.progress === null ? 'begins' : partText(run.progress, run.progress.stage));
}

const runsText = (count: number) => (count === 1 ? '1 run' : `${count} runs`);

function partText({ step, steps, done, all }: SweepProgress, stage: string): string {
  const part = steps > 1 ? ` ${step} of ${steps}` : '';
  return `${stage}${part}, ${Math.floor((100 * done) / Math.max(1, all))} %`;
}

/** How far a sweep is, in sentences with its rate and what is left. */
export function progressText({ progress, isRunning }: SweepRunState): string {
  const stopped = isRunning ? '' : 'Stopped; Space goes on. ';
  if (progress === null) return `${stopped}The sweep begins.`;
  const { stage, step, steps, done, all, known, ratePerS } = progress;
  const name = `${stage[0]!.toUpperCase()}${stage.slice(1)}`;
  const part = steps > 1 ? `, step ${step} of ${steps}` : '';
  const left = ratePerS > 0 ? `, ${Math.ceil((all - done) / ratePerS)} s left of this step` : '';
  const pace = isRunning ? `, ${Math.round(ratePerS)} runs a second${left}` : '';
  return `${stopped}${name}${part}: ${done} of ${all} runs${pace}; ${known} in all.`;
}

/** Where the runs of a sweep are kept, in a sentence. */
export function keptText({ options }: BenchState, { kept }: SweepRunState): string {
  if (kept !== null) return `Runs are kept in ${kept}; begun again, the same sweep goes on from there.`;
  return options.ownFolder
    ? 'Runs are kept in memory.'
    : 'Runs are kept while the bench is open; in a folder of your own they are kept in a file.';
}
