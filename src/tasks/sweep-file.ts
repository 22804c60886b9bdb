/**
 * Where are the runs of a sweep kept? In a file of results beside the rider's own, line by line as they come; the same sweep finds
 * them again, whatever ended the one before. At its end they stand in an order that hangs on the sweep alone.
 */
import { join } from 'node:path';
import type { Checked, Problem } from '../quantity/problem.js';
import { openJournal, readJournal, rewriteJournal } from '../store/journal.js';
import { leftBehind } from '../store/left-behind.js';
import { shownPath, type Places } from '../store/places.js';
import { fileProblem } from '../store/system-fault.js';
import { trialsOf } from './plan.js';
import { headFault, OWN_RESULTS } from './sweep-head.js';
import { createLedger, type KnownRuns, type Ledger } from './sweep-ledger.js';
import { readRuns } from './sweep-lines.js';
import { headOf, sweepKey, type Shard, type SweepPlan } from './sweep-plan.js';

/** Folder of a working folder in which sweeps are kept where no file is named. */
export const SWEEP_FOLDER = 'sweeps';

/** The runs of a sweep, kept or not. */
export interface SweepFile {
  ledger: Ledger;
  /** As it is shown; null where nothing is kept. */
  shown: string | null;
  /** Runs that were there already. */
  found: number;
  /** Files beside it, as they are shown, that a run may have left when it was killed, or that somebody has copied. */
  leftBehind: string[];
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

/** Where a sweep is kept, whole or in part, and what is known of it from elsewhere. */
export interface SweepPlace {
  /** Null keeps nothing. */
  path: string | null;
  places: Places;
  part?: Shard | null;
  known?: KnownRuns;
}

/** A part of which nothing is kept would be run for nothing. */
const NO_PLACE_FOR_PART: Problem = {
  ...fileProblem('', 'a file for the runs of a part', 'none, and no folder of your own'),
  key: 'out',
};

/** Opens the runs of a sweep: those that its file holds already, and those known from elsewhere. */
export function openSweepFile(
  plan: SweepPlan,
  { path, places, part = null, known = new Map() }: SweepPlace,
): Checked<SweepFile, Problem> {
  const trials = trialsOf(plan.cells);
  if (path === null) {
    if (part !== null) return { ok: false, faults: [NO_PLACE_FOR_PART] };
    const ledger = createLedger(trials, known, () => {});
    return {
      ok: true,
      value: {
        ledger,
        shown: null,
        found: known.size,
        leftBehind: [],
        close: () => {},
        finish: async () => null,
      },
    };
  }
  const shown = shownPath(places, path);
  const own = headOf(plan, part);
  const there = readJournal(path, shown);
  if (!there.ok) return there;
  const text = there.value;
  const fault = text === null ? null : headFault({ shown, text, expected: OWN_RESULTS }, own);
  if (fault !== null) return { ok: false, faults: [fault] };
  const runs = readRuns(plan, [{ shown, lines: text?.lines ?? [] }], known);
  if (!runs.ok) return runs;
  const head = JSON.stringify(own);
  const journal = openJournal(path, shown, head);
  if (!journal.ok) return journal;
  const { append, close } = journal.value;
  const keep = (line: string) => {
    const problem = append(line);
    if (problem !== null) throw new KeepingFailed(problem);
  };
  const ledger = createLedger(trials, runs.value, keep);
  const beside = leftBehind(path, head).map((file) => shownPath(places, file));
  const finish = async () => {
    close();
    return rewriteJournal(path, shown, { head, lines: ledger.lines() });
  };
  return { ok: true, value: { ledger, shown, found: runs.value.size, leftBehind: beside, close, finish } };
}
