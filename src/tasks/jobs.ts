/**
 * A ranking cut into jobs. Every result goes to its own place, so that neither the number of workers nor their speed changes
 * a byte.
 */
import type { CellResult } from '../measure/profile-result.js';
import type { Solver } from '../simulate/run.js';
import type { CellTask } from './crew.js';
import { TRIALS_KEPT } from './evaluate.js';
import { runTasks, type TaskOptions } from './labour.js';
import { trialsOf, type RankPlan } from './plan.js';

/** Some trials of one profile. */
export interface Job {
  profileIndex: number;
  trialIndices: number[];
  solver: Solver;
}

/** How jobs are to be computed; `onDone` hears of each as it ends, in no fixed order. */
export interface JobOptions extends Pick<TaskOptions, 'threads' | 'signal'> {
  onDone: (job: Job, cells: CellResult[]) => void;
}

/** Most cells of a job: about a tenth of a second of work. */
export const JOB_CELLS = 12;

/** How a ranking is cut into jobs; `jobCells` is the most cells of one. */
export interface JobPlan {
  profileCount: number;
  trialCount: number;
  solver: Solver;
  jobCells?: number;
}

/** Jobs for all cells: profile by profile, but no more trials at a time than a thread keeps ready. */
export function jobsFor({ profileCount, trialCount, solver, jobCells = JOB_CELLS }: JobPlan): Job[] {
  const jobs: Job[] = [];
  for (let group = 0; group < trialCount; group += TRIALS_KEPT) {
    const groupEnd = Math.min(trialCount, group + TRIALS_KEPT);
    for (let profileIndex = 0; profileIndex < profileCount; profileIndex++) {
      for (let first = group; first < groupEnd; first += jobCells) {
        const length = Math.min(jobCells, groupEnd - first);
        jobs.push({
          profileIndex,
          trialIndices: Array.from({ length }, (_, index) => first + index),
          solver,
        });
      }
    }
  }
  return jobs;
}

/** Runs all jobs of a plan. Throws the reason of a signal that comes before the end. */
export async function runJobs(
  plan: RankPlan,
  jobs: readonly Job[],
  { threads, signal, onDone }: JobOptions,
): Promise<void> {
  const trials = trialsOf(plan);
  const tasks = jobs.map(({ profileIndex, trialIndices, solver }): CellTask => ({
    profile: plan.profiles[profileIndex]!.value,
    trials: trialIndices.map((index) => trials[index]!),
    solver,
  }));
  await runTasks(tasks, { threads, signal, onDone: (index, cells) => onDone(jobs[index]!, cells) });
}
