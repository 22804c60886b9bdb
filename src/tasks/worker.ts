/** A worker thread of a crew: computes the cells of a task, one whole run, or the report of a steady ride. */
import type { RideLook } from '../linear/ride-report.js';
import type { RidePoint } from '../linear/steady-ride.js';
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

/** What the linear view says of a steady ride, no margin tried; null where a ceiling cuts it. Slow: a tenth of a second or two. */
export async function ride(point: RidePoint): Promise<RideLook | null> {
  // Loaded when it is first wanted: the first cells of a thread are not to wait for it.
  const { rideLook } = await import('../linear/ride-report.js');
  return rideLook(point);
}
