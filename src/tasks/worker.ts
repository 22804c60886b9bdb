/** A worker thread of a crew: computes the cells of a task, or one whole run. */
import type { CellResult } from '../measure/profile-result.js';
import type { CellTask } from './crew.js';
import { createEvaluator } from './evaluate.js';
import type { RunOnRoad } from './evaluate.js';

const evaluator = createEvaluator();

/** The cells of a task. */
export function cells({ profile, trials, ...how }: CellTask): CellResult[] {
  return trials.map((planned) => evaluator.cell(profile, planned, how));
}

/** The whole run of a task's first trial, with a tape no longer than the run. */
export function run({ profile, trials: [planned], solver }: CellTask): RunOnRoad {
  if (planned === undefined) throw new Error('a task to run has a trial');
  return evaluator.run(profile, planned, solver);
}
