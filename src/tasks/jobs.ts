/**
 * Cells shared out over threads. The main thread works too, and first, unless a screen needs it. Every result goes to its own place, so that neither the number of workers nor their speed changes a byte.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import type { CellResult } from '../measure/profile-result.js';
import type { Solver } from '../simulate/run.js';
import { openCrew, type CellTask, type Crew } from './crew.js';
import { createEvaluator, TRIALS_KEPT } from './evaluate.js';
import { trialsOf, type RankPlan } from './plan.js';

/** Some trials of one profile. */
export interface Job {
  profileIndex: number;
  trialIndices: number[];
  solver: Solver;
}

/**
 * Who computes: a count of threads, the main one among them, or a crew that is open already; then the main thread stays
 * free, for a screen.
 */
export type Labour = number | Crew;

/** How cells are to be computed; after `signal` has come, no further job is begun and none is told of. */
export interface JobOptions {
  threads: Labour;
  signal?: AbortSignal | undefined;
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

/** Runs all jobs; `onDone` hears of each as it ends, in no fixed order. Throws the reason of a signal that comes before. */
export async function runJobs(plan: RankPlan, jobs: readonly Job[], options: JobOptions): Promise<void> {
  const { threads, signal } = options;
  const waiting = waitingList(jobs, options);
  const tasks = taskMaker(plan);
  if (typeof threads !== 'number') {
    await handOver(threads, waiting, tasks);
  } else {
    const others = Math.min(threads, jobs.length) - 1;
    const crew = others > 0 ? await openCrew(others) : undefined;
    try {
      await Promise.all([workHere(waiting, tasks), crew && handOver(crew, waiting, tasks)]);
    } finally {
      await crew?.close();
    }
  }
  signal?.throwIfAborted();
}

/** What is left to do: `next` takes a job out, `done` hands in its cells. */
interface WaitingList {
  next: () => Job | undefined;
  done: JobOptions['onDone'];
}

function waitingList(jobs: readonly Job[], { signal, onDone }: JobOptions): WaitingList {
  const left = [...jobs];
  return {
    next: () => (signal?.aborted ? undefined : left.shift()),
    done: (job, cells) => {
      if (!signal?.aborted) onDone(job, cells);
    },
  };
}

function taskMaker(plan: RankPlan): (job: Job) => CellTask {
  const trials = trialsOf(plan);
  return ({ profileIndex, trialIndices, solver }) => ({
    profile: plan.profiles[profileIndex]!.value,
    trials: trialIndices.map((index) => trials[index]!),
    solver,
  });
}

async function workHere(waiting: WaitingList, taskOf: (job: Job) => CellTask): Promise<void> {
  const { cell } = createEvaluator();
  for (let job = waiting.next(); job !== undefined; job = waiting.next()) {
    const { profile, trials, solver } = taskOf(job);
    const cells: CellResult[] = [];
    for (const planned of trials) {
      cells.push(cell(profile, planned, solver));
      await breathe();
    }
    waiting.done(job, cells);
  }
}

async function handOver(crew: Crew, waiting: WaitingList, taskOf: (job: Job) => CellTask): Promise<void> {
  const keepBusy = async () => {
    for (let job = waiting.next(); job !== undefined; job = waiting.next()) {
      waiting.done(job, await crew.cells(taskOf(job)));
    }
  };
  await Promise.all(Array.from({ length: crew.size }, keepBusy));
}
