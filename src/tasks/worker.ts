/** A worker thread: gets the plan once when it starts, then jobs, and answers each with its cells. */
import { workerData } from 'node:worker_threads';
import { createEvaluator } from './evaluate.js';
import type { CellResult } from '../measure/profile-result.js';
import type { Evaluate } from './evaluate.js';
import type { Job } from './jobs.js';
import type { RankPlan } from './plan.js';

let evaluate: Evaluate | undefined;

/** Computes the cells of one job. */
export default function work({ profileIndex, trialIndices, solver }: Job): CellResult[] {
  evaluate ??= createEvaluator(planFrom(workerData));
  const cell = evaluate;
  return trialIndices.map((trialIndex) => cell({ profileIndex, trialIndex, solver }));
}

/** The pool hands a worker its own data beside the caller's, as a pair. */
function planFrom(data: unknown): RankPlan {
  return (Array.isArray(data) ? data[1] : data) as RankPlan;
}
