/**
 * Cells shared out over threads. The main thread works too, and first: a fresh worker needs a while until its code is
 * compiled. Every result goes to its own place, so that neither the number of workers nor their speed changes a byte.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import { join } from 'node:path';
import type { Solver } from '../simulate/run.js';
import { programFolder } from '../store/places.js';
import type { CellResult } from '../measure/profile-result.js';
import { createEvaluator, TRIALS_KEPT } from './evaluate.js';
import type { RankPlan } from './plan.js';

/** Some trials of one profile. */
export interface Job {
  profileIndex: number;
  trialIndices: number[];
  solver: Solver;
}

/** How cells are to be computed; `threads` counts the main thread. */
export interface JobOptions {
  threads: number;
  onDone: (job: Job, cells: CellResult[]) => void;
}

/** Most cells of a job: about a tenth of a second of work. */
const JOB_CELLS = 12;

/** Jobs for all cells: profile by profile, but no more trials at a time than a thread keeps ready. */
export function jobsFor(profileCount: number, trialCount: number, solver: Solver): Job[] {
  const jobs: Job[] = [];
  for (let group = 0; group < trialCount; group += TRIALS_KEPT) {
    const groupEnd = Math.min(trialCount, group + TRIALS_KEPT);
    for (let profileIndex = 0; profileIndex < profileCount; profileIndex++) {
      for (let first = group; first < groupEnd; first += JOB_CELLS) {
        const length = Math.min(JOB_CELLS, groupEnd - first);
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

/** Runs all jobs; `onDone` hears of each as it ends, in no fixed order. */
export async function runJobs(
  plan: RankPlan,
  jobs: readonly Job[],
  { threads, onDone }: JobOptions,
): Promise<void> {
  const waiting = [...jobs];
  const others = Math.min(threads, jobs.length) - 1;
  const pool = others > 0 ? await openPool(plan, others) : undefined;
  const handOver = async () => {
    for (let job = waiting.shift(); job !== undefined; job = waiting.shift()) {
      onDone(job, (await pool!.run(job)) as CellResult[]);
    }
  };
  try {
    await Promise.all([
      workHere(plan, waiting, onDone),
      ...Array.from({ length: Math.max(0, others) }, handOver),
    ]);
  } finally {
    await pool?.destroy();
  }
}

async function workHere(plan: RankPlan, waiting: Job[], onDone: JobOptions['onDone']): Promise<void> {
  const evaluate = createEvaluator(plan);
  for (let job = waiting.shift(); job !== undefined; job = waiting.shift()) {
    const cells: CellResult[] = [];
    for (const trialIndex of job.trialIndices) {
      cells.push(evaluate({ profileIndex: job.profileIndex, trialIndex, solver: job.solver }));
      await breathe();
    }
    onDone(job, cells);
  }
}

async function openPool(plan: RankPlan, threads: number) {
  const { Tinypool } = await import('tinypool');
  return new Tinypool({
    filename: join(programFolder(), 'dist', 'tasks', 'worker.js'),
    minThreads: threads,
    maxThreads: threads,
    workerData: plan,
  });
}
