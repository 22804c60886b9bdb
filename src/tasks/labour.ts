/**
 * Tasks shared out over threads: those of a crew, so that the main thread stays free for a screen, or the main thread and
 * others that are opened for the occasion.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import type { CellResult } from '../measure/profile-result.js';
import { openCrew, type CellTask, type Crew } from './crew.js';
import { createEvaluator } from './evaluate.js';

/** Who computes: a count of threads, the main one among them; or a crew that is open already. */
export type Labour = number | Crew;

/**
 * How tasks are to be done; `onDone` hears of each as it ends, in no fixed order. After `signal` has come no further one is
 * begun, and none is told of.
 */
export interface TaskOptions {
  threads: Labour;
  signal?: AbortSignal | undefined;
  onDone: (index: number, cells: CellResult[]) => void;
}

/** Does all tasks, begun in their order. Throws the reason of a signal that comes before the end. */
export async function runTasks(tasks: readonly CellTask[], options: TaskOptions): Promise<void> {
  const { threads, signal } = options;
  const waiting = waitingList(tasks, options);
  if (typeof threads !== 'number') {
    await handOver(threads, waiting);
  } else {
    const others = Math.min(threads, tasks.length) - 1;
    const crew = others > 0 ? await openCrew(others) : undefined;
    try {
      await Promise.all([workHere(waiting), crew && handOver(crew, waiting)]);
    } finally {
      await crew?.close();
    }
  }
  signal?.throwIfAborted();
}

/** What is left to do: `next` takes a task out, `done` hands in its cells. */
interface WaitingList {
  next: () => { index: number; task: CellTask } | undefined;
  done: TaskOptions['onDone'];
}

function waitingList(tasks: readonly CellTask[], { signal, onDone }: TaskOptions): WaitingList {
  let index = -1;
  return {
    next: () => {
      if (signal?.aborted) return undefined;
      index += 1;
      const task = tasks[index];
      return task && { index, task };
    },
    done: (at, cells) => {
      if (!signal?.aborted) onDone(at, cells);
    },
  };
}

async function workHere(waiting: WaitingList): Promise<void> {
  const { cell } = createEvaluator();
  for (let next = waiting.next(); next !== undefined; next = waiting.next()) {
    const { profile, trials, ...how } = next.task;
    const cells: CellResult[] = [];
    for (const planned of trials) {
      cells.push(cell(profile, planned, how));
      await breathe();
    }
    waiting.done(next.index, cells);
  }
}

async function handOver(crew: Crew, waiting: WaitingList): Promise<void> {
  const keepBusy = async () => {
    for (let next = waiting.next(); next !== undefined; next = waiting.next()) {
      waiting.done(next.index, await crew.cells(next.task));
    }
  };
  await Promise.all(Array.from({ length: crew.size }, keepBusy));
}
