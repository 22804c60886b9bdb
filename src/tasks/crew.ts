/**
 * Threads that compute cells, single runs and reports of steady rides, and stay open between one piece of work and the next: a fresh thread needs
 * a while until its code is compiled. A thread that ends is replaced; the work that it had in hand is answered with an error.
 */
import { join } from 'node:path';
import type { RideLook } from '../linear/ride-report.js';
import type { RidePoint } from '../linear/steady-ride.js';
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
  /** What the linear view says of a steady ride, no margin tried; null where a ceiling cuts it. */
  ride: (point: RidePoint) => Promise<RideLook | null>;
  /** Ends the threads, whatever they are doing. */
  close: () => Promise<void>;
}

/** What the threads run. */
function usualWork(): string {
  return join(programFolder(), 'dist', 'tasks', 'worker.js');
}

/** Opens a crew of `size` threads, one at least; `work` is the file that each of them runs. */
export async function openCrew(size: number, work = usualWork()): Promise<Crew> {
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({ filename: work, minThreads: size, maxThreads: size });
  let isOpen = true;
  let lastFault: unknown = new Error('no thread could be begun');
  const watched = new WeakSet<object>();
  const watchThreads = () => {
    for (const thread of pool.threads.filter((each) => !watched.has(each))) {
      watched.add(thread);
      thread.once('exit', () => {
        if (!isOpen) return;
        // Tinypool replaces a thread that fails, but waits for ever for one that just ends.
        if (pool.threads.includes(thread)) thread.emit('error', new Error('its thread ended'));
        watchThreads();
      });
    }
  };
  // Threads that fail with nothing in hand, such as those that cannot be begun: what waits for them must not wait for ever.
  pool.on('error', (error) => {
    lastFault = error;
    if (pool.threads.length === 0) pool.cancelPendingTasks();
  });
  watchThreads();
  const ask = async (name: 'cells' | 'run' | 'ride', task: CellTask | RidePoint): Promise<unknown> => {
    if (!isOpen) throw new Error('the threads are closed');
    try {
      const answer = pool.run(task, { name });
      watchThreads();
      return await answer;
    } catch (error) {
      throw error instanceof Error && error.name === 'CancelError' ? lastFault : error;
    }
  };
  return {
    size,
    cells: async (task) => (await ask('cells', task)) as CellResult[],
    run: async (task) => (await ask('run', task)) as RunOnRoad,
    ride: async (point) => (await ask('ride', point)) as RideLook | null,
    close: async () => {
      isOpen = false;
      await pool.destroy();
    },
  };
}
