/**
 * What is known of a sweep's runs? Each is made once, kept as it comes, and found again: by the same sweep begun anew, and by the
 * one that puts the parts of several machines together.
 */
import { COST_TERMS } from '../measure/scales.js';
import type { CellResult } from '../measure/profile-result.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
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

type Kept = Pick<CellResult, 'outcome' | 'eventReached' | 'metrics'>;

/** A line of a file of results. */
interface Line extends Kept {
  numbers: Numbers;
  trial: number;
  how: How;
}

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
  /** All lines in the order in which their runs were asked for, which hangs on the sweep alone. */
  lines: () => string[];
  size: () => number;
}

const keyOf = ({ numbers, trial, how }: Omit<SweepRun, 'profile'>) => `${how} ${trial} ${numbers.join(' ')}`;

/** A ledger over some trials that knows what these lines hold; `keep` is given each new line as it comes. */
export function createLedger(
  trials: readonly PlannedTrial[],
  known: readonly Line[],
  keep: (line: string) => void,
): Ledger {
  const kept = new Map<string, Line>(known.map((line) => [keyOf(line), line]));
  const asked = new Set<string>();
  return {
    run: async (runs, { threads, signal, onRuns }) => {
      runs.forEach((run) => asked.add(keyOf(run)));
      const missing = runs.filter((run) => !kept.has(keyOf(run)));
      let done = runs.length - missing.length;
      if (missing.length === 0) return;
      const tasks = missing.map(({ profile, trial, how }): CellTask => ({
        profile,
        trials: [trials[trial]!],
        solver: how === 'reference' ? 'reference' : 'fixed',
        stepsRatio: how === 'half step' ? 2 : 1,
      }));
      await runTasks(tasks, {
        threads,
        signal,
        onDone: (index, [cell]) => {
          const { numbers, trial, how } = missing[index]!;
          const { outcome, eventReached, metrics } = cell!;
          const line: Line = { how, trial, numbers, outcome, eventReached, metrics };
          kept.set(keyOf(line), line);
          keep(JSON.stringify(line));
          onRuns?.(++done, runs.length);
        },
      });
    },
    result: (run) => {
      const line = kept.get(keyOf(run));
      if (line === undefined) throw new Error(`a run that was not asked for: ${keyOf(run)}`);
      const { outcome, eventReached, metrics } = line;
      return { ...trials[run.trial]!.key, outcome, eventReached, metrics };
    },
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

/** The lines of a file of results, or everything that is wrong with them. */
export function readLines(texts: readonly string[], shown: string): Checked<Line[], Problem> {
  const faults: Problem[] = [];
  const lines = texts.flatMap((text, index): Line[] => {
    const line = lineIn(text);
    if (line !== null) return [line];
    faults.push({
      file: shown,
      line: index + 2,
      column: null,
      key: '',
      expected: 'a result as this program writes it',
      received: text.length > 40 ? `${text.slice(0, 40)}...` : text,
    });
    return [];
  });
  return faults.length === 0 ? { ok: true, value: lines } : { ok: false, faults };
}

function lineIn(text: string): Line | null {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    return null;
  }
  return isLine(content) ? content : null;
}

function isLine(content: unknown): content is Line {
  if (typeof content !== 'object' || content === null) return false;
  const { how, trial, numbers, outcome, eventReached, metrics } = content as Record<string, unknown>;
  return (
    HOWS.some((one) => one === how) &&
    Number.isInteger(trial) &&
    Array.isArray(numbers) &&
    typeof outcome === 'object' &&
    outcome !== null &&
    typeof eventReached === 'boolean' &&
    typeof metrics === 'object' &&
    metrics !== null &&
    COST_TERMS.every(({ read }) => read(metrics as CellResult['metrics']) !== undefined)
  );
}
