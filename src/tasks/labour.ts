/**
 * Cells shared out over threads, task by task. A task that a thread fails at is done once more, cell by cell, so that what fails
 * again is known by its name.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import type { CellResult } from '../measure/profile-result.js';
import type { CellTask, Crew } from './crew.js';
import { createEvaluator, type Evaluator } from './evaluate.js';
import type { PlannedTrial } from './plan.js';
import { shareOut, WorkFailed, type ShareOptions } from './share-out.js';

/** How tasks are to be done; `onDone` hears of the cells of each. */
export type TaskOptions = ShareOptions<CellResult[]>;

/** A cell that could not be computed: its trial, with which profile, and what came in its place. */
export class CellFailed extends WorkFailed {
  // Private, so that whoever prints the error does not print a whole rig with it.
  readonly #trial: PlannedTrial;

  constructor({ profile }: CellTask, trial: PlannedTrial, reason: unknown) {
    const { scenario, rider, chargePercent, seed } = trial.key;
    super(`${scenario}, ${rider}, ${chargePercent} %, seed ${seed}`, profile, reason);
    this.#trial = trial;
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
  const evaluator = createEvaluator();
  const here = (task: CellTask) => cellsHere(evaluator, task);
  await shareOut(tasks, { here, byCrew: cellsByCrew }, options);
}

async function cellsHere({ cell }: Evaluator, task: CellTask): Promise<CellResult[]> {
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
}

async function cellsByCrew(crew: Crew, task: CellTask): Promise<CellResult[]> {
  try {
    return await crew.cells(task);
  } catch {
    return onceMore(crew, task);
  }
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
