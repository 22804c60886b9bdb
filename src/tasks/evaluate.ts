/**
 * One cell after another: prepares a trial when it is first needed, runs a profile in it, measures. Used by the
 * main thread and by workers alike, so that where a cell is computed can't change its numbers.
 */
import { marksOf, windowOf, type EventMark } from '../measure/marks.js';
import { measureRun, type Metrics } from '../measure/metrics.js';
import type { CellResult } from '../measure/profile-result.js';
import type { MeasureWindow } from '../measure/window.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { Outcome } from '../simulate/outcome.js';
import { run, type RunOptions, type Solver } from '../simulate/run.js';
import type { Tape } from '../simulate/tape.js';
import { prepareTrial, type Trial } from '../simulate/trial.js';
import { trialsOf, type RankPlan } from './plan.js';

/** A run with what was measured on it. */
export interface MeasuredRun {
  outcome: Outcome;
  tape: Tape;
  marks: EventMark[];
  window: MeasureWindow;
  metrics: Metrics;
}

/** Trials that one thread keeps ready at a time; each holds about a megabyte of road, script and noise. */
export const TRIALS_KEPT = 64;

/** Runs a profile in a trial and measures it. */
export function measureProfile(trial: Trial, profile: ProfileFile, options: RunOptions): MeasuredRun {
  const { outcome, tape } = run(trial, profile, options);
  const marks = marksOf(trial.scenario, tape, trial.plant.wheelRadiusM);
  const window = windowOf(trial.scenario, marks, trial.tickS);
  return { outcome, tape, marks, window, metrics: measureRun(tape, window, outcome) };
}

/** Computes the cell of a profile and a trial, both by their index in the plan. */
export type Evaluate = (cell: { profileIndex: number; trialIndex: number; solver: Solver }) => CellResult;

/** An evaluator for a plan, with its own tape and its own ready trials. */
export function createEvaluator(plan: RankPlan): Evaluate {
  const planned = trialsOf(plan);
  const ready = new Map<number, Trial>();
  let tape: Tape | undefined;
  const trialAt = (index: number): Trial => {
    const kept = ready.get(index);
    if (kept !== undefined) return kept;
    const oldest = ready.keys().next();
    if (ready.size >= TRIALS_KEPT && !oldest.done) ready.delete(oldest.value);
    const trial = prepareTrial(planned[index]!.circumstances);
    ready.set(index, trial);
    return trial;
  };
  return ({ profileIndex, trialIndex, solver }) => {
    const profile = plan.profiles[profileIndex]!.value;
    const measured = measureProfile(trialAt(trialIndex), profile, { solver, ...(tape && { tape }) });
    tape = measured.tape;
    return {
      ...planned[trialIndex]!.key,
      outcome: measured.outcome,
      eventReached: measured.metrics.measuredS > 0,
      metrics: measured.metrics,
    };
  };
}
