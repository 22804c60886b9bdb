/**
 * Where are the runs of a sweep kept? In a file of results beside the rider's own, line by line as they come; the same sweep finds
 * them again, whatever ended the one before. At its end they stand in an order that hangs on the sweep alone.
 */
import { basename, join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import type { Checked, Problem } from '../quantity/problem.js';
import {
  notThisJournal,
  openJournal,
  readJournal,
  rewriteJournal,
  type JournalText,
} from '../store/journal.js';
import { shownPath, type Places } from '../store/places.js';
import { trialsOf } from './plan.js';
import { createLedger, readLines, type Ledger } from './sweep-ledger.js';
import { headOf, sweepKey, type SweepHead, type SweepPlan } from './sweep-plan.js';
import type { Shard } from './sweep-shard.js';

/** Folder of a working folder in which sweeps are kept where no file is named. */
export const SWEEP_FOLDER = 'sweeps';

/** The runs of a sweep, kept or not. */
export interface SweepFile {
  ledger: Ledger;
  /** As it is shown; null where nothing is kept. */
  shown: string | null;
  /** Runs that were there already. */
  found: number;
  close: () => void;
  /** Puts the lines in their order; answers what the system has against it. */
  finish: () => Promise<Problem | null>;
}

/** What ends a sweep that can no longer keep its runs. */
export class KeepingFailed extends Error {
  constructor(readonly problem: Problem) {
    super(problem.received);
  }
}

/** The file for a sweep, or a part of it, in a working folder of one's own; null in the starter set, which stays as it is. */
export function usualSweepPath(places: Places, plan: SweepPlan, shard: Shard | null): string | null {
  if (places.isStarterSet) return null;
  const part = shard === null ? '' : `-${shard.part}of${shard.parts}`;
  return join(places.workingFolder, SWEEP_FOLDER, `${plan.cells.board.name}-${sweepKey(plan)}${part}.ndjson`);
}

/** Opens the runs of a sweep: those that `path` holds already, and of `others` known from elsewhere; null keeps nothing. */
export function openSweepFile(
  plan: SweepPlan,
  { path, places, others = [] }: { path: string | null; places: Places; others?: readonly string[] },
): Checked<SweepFile, Problem> {
  const trials = trialsOf(plan.cells);
  if (path === null) {
    const known = readLines(others, '');
    if (!known.ok) return known;
    const ledger = createLedger(trials, known.value, () => {});
    return {
      ok: true,
      value: { ledger, shown: null, found: others.length, close: () => {}, finish: async () => null },
    };
  }
  const shown = shownPath(places, path);
  const head = headOf(plan);
  const there = readJournal(path, shown);
  if (!there.ok) return there;
  const fault = there.value === null ? null : headFault(there.value, head, shown);
  if (fault !== null) return { ok: false, faults: [fault] };
  const known = readLines([...(there.value?.lines ?? []), ...others], shown);
  if (!known.ok) return known;
  const journal = openJournal(path, shown, JSON.stringify(head));
  if (!journal.ok) return journal;
  const { append, close } = journal.value;
  const keep = (line: string) => {
    const problem = append(line);
    if (problem !== null) throw new KeepingFailed(problem);
  };
  const ledger = createLedger(trials, known.value, keep);
  const finish = async () => {
    close();
    return rewriteJournal(path, shown, { head: JSON.stringify(head), lines: ledger.lines() });
  };
  return { ok: true, value: { ledger, shown, found: known.value.length, close, finish } };
}

function headFault({ head }: JournalText, expected: SweepHead, shown: string): Problem | null {
  const found = headIn(head);
  if (found === null) return notThisJournal(shown, 'a file that no sweep has written');
  if (isDeepStrictEqual(found, JSON.parse(JSON.stringify(expected)))) return null;
  const { version, scalesVersion } = found;
  return version !== expected.version || scalesVersion !== expected.scalesVersion
    ? notThisJournal(shown, `results of version ${version} of this program`)
    : notThisJournal(shown, 'results of another sweep');
}

function headIn(text: string): SweepHead | null {
  try {
    const content: unknown = JSON.parse(text);
    if (typeof content !== 'object' || content === null || !('underfootSweep' in content)) return null;
    return content as SweepHead;
  } catch {
    return null;
  }
}

/** The parts of a sweep, put together. */
export interface MergedParts {
  plan: SweepPlan;
  lines: string[];
}

/** Reads the parts of one sweep, or tells everything that is wrong with them. */
export function readParts(paths: readonly string[]): Checked<MergedParts, Problem> {
  const faults: Problem[] = [];
  const parts: { shown: string; head: SweepHead; lines: string[] }[] = [];
  for (const path of paths) {
    const text = readJournal(path, path);
    if (!text.ok) {
      faults.push(...text.faults);
      continue;
    }
    const head = text.value === null ? null : headIn(text.value.head);
    if (text.value === null || head === null) {
      faults.push(
        notThisJournal(path, text.value === null ? 'nothing there' : 'a file that no sweep has written'),
      );
      continue;
    }
    const fault = headFault(text.value, headOf(head.plan), path);
    const lines = readLines(text.value.lines, path);
    if (fault !== null) faults.push(fault);
    if (!lines.ok) faults.push(...lines.faults);
    const [first] = parts;
    if (first !== undefined && !isDeepStrictEqual(first.head, head)) {
      faults.push(notThisJournal(path, `results of another sweep than ${basename(first.shown)}`));
    }
    parts.push({ shown: path, head, lines: text.value.lines });
  }
  const [first] = parts;
  if (first === undefined || faults.length > 0) return { ok: false, faults };
  return { ok: true, value: { plan: first.head.plan, lines: parts.flatMap(({ lines }) => lines) } };
}
