/**
 * Threads that compute cells and single runs, and stay open between one piece of work and the next: a fresh thread needs
 * a while until its code is compiled.
 */
import { join } from 'node:path';
import type { CellResult } from '../measure/profile-result.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { programFolder } from '../store/places.js';
import type { CellSolver, RunOnRoad } from './evaluate.js';
import type { PlannedTrial } from './plan.js';

/** One profile in some trials: all that a thread must be told. */
export interface CellTask extends CellSolver {
  profile: ProfileFile;
  trials: PlannedTrial[];
}

/** Threads beside the main one; each call answers when one of them has done the work. */
export interface Crew {
  size: number;
  /** The cells of a task, in the order of its trials. */
  cells: (task: CellTask) => Promise<CellResult[]>;
  /** The whole run of a task's first trial, tape and all. */
  run: (task: CellTask) => Promise<RunOnRoad>;
  /** Ends the threads, whatever they are doing. */
  close: () => Promise<void>;
}

/** Opens a crew of `size` threads, one at least. */
export async function openCrew(size: number): Promise<Crew> {
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({
    filename: join(programFolder(), 'dist', 'tasks', 'worker.js'),
    minThreads: size,
    maxThreads: size,
  });
  return {
    size,
    cells: async (task) => (await pool.run(task, { name: 'cells' })) as CellResult[],
    run: async (task) => (await pool.run(task, { name: 'run' })) as RunOnRoad,
    close: async () => pool.destroy(),
  };
}
