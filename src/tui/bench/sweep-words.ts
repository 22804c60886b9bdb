/**
 * How far a sweep is, in words: for the line at the top of every screen, and in full for the Sweep screen.
 */
import { plainNumber } from '../../show/why-sentences.js';
import type { SweepProgress, SweepStage } from '../../tasks/sweep.js';
import type { BenchState } from './state.js';

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
  if (run.outcome !== null) return `done, ${run.outcome.answer.runs} runs`;
  const stopped = run.isRunning ? '' : 'stopped: ';
  return stopped + (run.progress === null ? 'begins' : partText(run.progress, run.progress.stage));
}

function partText({ step, steps, done, all }: SweepProgress, stage: string): string {
  const part = steps > 1 ? ` ${step} of ${steps}` : '';
  return `${stage}${part}, ${Math.floor((100 * done) / Math.max(1, all))} %`;
}
