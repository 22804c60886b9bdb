/**
 * What is known of a sweep's runs? Each is made once, kept as it comes, and found again: by the same sweep begun anew, and by the
 * one that puts the parts of several machines together.
 */
import type { CellResult } from '../measure/profile-result.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { CellTask } from './crew.js';
import { runTasks, type TaskOptions } from './labour.js';
import type { PlannedTrial } from './plan.js';

/** How a run is integrated: as a sweep does, with half the step, or with odex. */
export const HOWS = ['fixed', 'half step', 'reference'] as const;

/** One of the ways. */
export type How = (typeof HOWS)[number];

/** The numbers that tell a profile of a sweep from the others; null for one that it leaves out. */
export type Numbers = readonly (number | null)[];

/** A run of a sweep. */
export interface SweepRun {
  profile: ProfileFile;
  numbers: Numbers;
  trial: number;
  how: How;
}

/** What is kept of a run: one line of a file of results. */
export interface SweepLine extends Pick<CellResult, 'outcome' | 'eventReached' | 'metrics'> {
  numbers: Numbers;
  trial: number;
  how: How;
}

/** Runs by their key. */
export type KnownRuns = ReadonlyMap<string, SweepLine>;

/** How runs are made; `onRuns` hears how many of those asked for are done. */
export interface LedgerOptions extends Pick<TaskOptions, 'threads' | 'signal'> {
  onRuns?: ((done: number, all: number) => void) | undefined;
}

/** All runs of a sweep that are known. */
export interface Ledger {
  /** Makes those runs that are not known yet. */
  run: (runs: readonly SweepRun[], options: LedgerOptions) => Promise<void>;
  /** The cell of a run that is known. */
  result: (run: Omit<SweepRun, 'profile'>) => CellResult;
  /** How many of these are not known yet. */
  missing: (runs: readonly SweepRun[]) => number;
  /** All lines in the order in which their runs were asked for, which hangs on the sweep alone. */
  lines: () => string[];
  size: () => number;
}

/** What tells runs of a sweep apart. */
export function runKey({ numbers, trial, how }: Omit<SweepRun, 'profile'>): string {
  return `${how} ${trial} ${numbers.join(' ')}`;
}

/** A ledger over some trials that knows these runs; `keep` is given the line of each new one as it comes. */
export function createLedger(
  trials: readonly PlannedTrial[],
  known: KnownRuns,
  keep: (line: string) => void,
): Ledger {
  const kept = new Map(known);
  const asked = new Set<string>();
  /** Those not known yet, each once. */
  const missingOf = (runs: readonly SweepRun[]) => {
    const byKey = new Map(runs.map((run) => [runKey(run), run]));
    return [...byKey].flatMap(([key, run]) => (kept.has(key) ? [] : [{ key, run }]));
  };
  return {
    run: async (runs, { threads, signal, onRuns }) => {
      runs.forEach((run) => asked.add(runKey(run)));
      // Cell by cell: a thread keeps fewer trials ready than a sweep has.
      const missing = missingOf(runs).toSorted((a, b) => a.run.trial - b.run.trial);
      let done = runs.length - missing.length;
      if (missing.length === 0) return;
      const tasks = missing.map(({ run: { profile, trial, how } }): CellTask => ({
        profile,
        trials: [trials[trial]!],
        solver: how === 'reference' ? 'reference' : 'fixed',
        stepsRatio: how === 'half step' ? 2 : 1,
      }));
      await runTasks(tasks, {
        threads,
        signal,
        onDone: (index, [cell]) => {
          const { key, run } = missing[index]!;
          const text = lineText(run, cell!);
          keep(text);
          // As it will be read again, so that a sweep that is begun anew sees the same to the last bit.
          kept.set(key, JSON.parse(text) as SweepLine);
          onRuns?.(++done, runs.length);
        },
      });
    },
    result: (run) => {
      const line = kept.get(runKey(run));
      if (line === undefined) throw new Error(`a run that was not asked for: ${runKey(run)}`);
      const { outcome, eventReached, metrics } = line;
      return { ...trials[run.trial]!.key, outcome, eventReached, metrics };
    },
    missing: (runs) => missingOf(runs).length,
    lines: () => {
      const others = [...kept.keys()].filter((key) => !asked.has(key)).sort();
      return [...asked, ...others].flatMap((key) => {
        const line = kept.get(key);
        return line === undefined ? [] : [JSON.stringify(line)];
      });
    },
    size: () => kept.size,
  };
}

function lineText({ how, trial, numbers }: SweepRun, cell: CellResult): string {
  const { outcome, eventReached, metrics } = cell;
  const line: SweepLine = { how, trial, numbers, outcome, eventReached, metrics };
  return JSON.stringify(line);
}
