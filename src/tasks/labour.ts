/**
 * Tasks shared out over threads: those of a crew, so that the main thread stays free for a screen, or the main thread and
 * others that are opened for the occasion. What a thread fails at is tried once more, cell by cell; what fails again is told by
 * name, once all that was in hand is done.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import type { CellResult } from '../measure/profile-result.js';
import { openCrew, type CellTask, type Crew } from './crew.js';
import { createEvaluator } from './evaluate.js';
import type { PlannedTrial } from './plan.js';

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

/** A cell that could not be computed: its task, the trial in it, and what came in its place. */
export class CellFailed extends Error {
  // Private, so that whoever prints the error does not print a whole rig with it.
  readonly #task: CellTask;
  readonly #trial: PlannedTrial;

  constructor(task: CellTask, trial: PlannedTrial, reason: unknown) {
    const { scenario, rider, chargePercent, seed } = trial.key;
    const said = reason instanceof Error ? reason.message : String(reason);
    super(`${scenario}, ${rider}, ${chargePercent} %, seed ${seed}: ${said}`, { cause: reason });
    this.#task = task;
    this.#trial = trial;
  }

  get task(): CellTask {
    return this.#task;
  }

  get trial(): PlannedTrial {
    return this.#trial;
  }
}

/**
 * Does all tasks, begun in their order. Throws the reason of a signal that comes before the end, a CellFailed for a cell that
 * could not be computed, or what `onDone` threw.
 */
export async function runTasks(tasks: readonly CellTask[], options: TaskOptions): Promise<void> {
  const { threads, signal } = options;
  const waiting = waitingList(tasks, options);
  if (typeof threads !== 'number') {
    await handOver(threads, waiting);
  } else {
    const others = Math.min(threads, tasks.length) - 1;
    const crew = others > 0 ? await openCrew(others) : undefined;
    try {
      await allEnded([workHere(waiting), ...(crew === undefined ? [] : [handOver(crew, waiting)])]);
    } finally {
      await crew?.close();
    }
  }
  signal?.throwIfAborted();
}

/** What is left to do: `next` takes a task out, `done` hands in its cells, `end` leaves the rest undone. */
interface WaitingList {
  next: () => { index: number; task: CellTask } | undefined;
  done: TaskOptions['onDone'];
  end: () => void;
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
    end: () => (index = tasks.length),
  };
}

async function workHere(waiting: WaitingList): Promise<void> {
  const { cell } = createEvaluator();
  await workThrough(waiting, async (task) => {
    const { profile, trials, ...how } = task;
    const cells: CellResult[] = [];
    for (const planned of trials) {
      try {
        cells.push(cell(profile, planned, how));
      } catch (error) {
        throw new CellFailed(task, planned, error);
      }
      await breathe();
    }
    return cells;
  });
}

async function handOver(crew: Crew, waiting: WaitingList): Promise<void> {
  const keepBusy = () =>
    workThrough(waiting, async (task) => {
      try {
        return await crew.cells(task);
      } catch {
        return onceMore(crew, task);
      }
    });
  await allEnded(Array.from({ length: crew.size }, keepBusy));
}

/** The cells of a task one by one, so that one that fails again is known by name. */
async function onceMore(crew: Crew, task: CellTask): Promise<CellResult[]> {
  const cells: CellResult[] = [];
  for (const planned of task.trials) {
    try {
      cells.push(...(await crew.cells({ ...task, trials: [planned] })));
    } catch (error) {
      throw new CellFailed(task, planned, error);
    }
  }
  return cells;
}

/** Takes tasks out until none is left; a failure ends the list for all who take from it. */
async function workThrough(
  waiting: WaitingList,
  compute: (task: CellTask) => Promise<CellResult[]>,
): Promise<void> {
  try {
    for (let next = waiting.next(); next !== undefined; next = waiting.next()) {
      waiting.done(next.index, await compute(next.task));
    }
  } catch (error) {
    waiting.end();
    throw error;
  }
}

/** Waits for all, then throws what the first of them that failed threw. */
async function allEnded(works: readonly Promise<void>[]): Promise<void> {
  const ends = await Promise.allSettled(works);
  for (const end of ends) if (end.status === 'rejected') throw end.reason;
}
