/**
 * Who was run in which cells of a sweep? The ledger of a sweep, watched: at the end it tells where
 * everyone stands who was tried.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import { numbersKey } from '../../sweep/candidate.js';
import type { Ledger, SweepRun } from '../../tasks/sweep-ledger.js';
import { resultOf, type SweepAnswer } from '../../tasks/sweep.js';
import type { SweepPoint } from '../bench/sweep-state.js';

/** A ledger, and what it has seen. */
export interface Watch {
  ledger: Ledger;
  /** Where everyone stands. */
  points: (answer: SweepAnswer) => Promise<SweepPoint[]>;
}

/** Points made before keys come in between. */
const AT_ONCE = 10;

/** Watches a ledger. */
export function watched(ledger: Ledger): Watch {
  const cellsOf = new Map<string, Set<number>>();
  const seen = (run: SweepRun) => {
    if (run.how !== 'fixed') return;
    const key = run.numbers.join(' ');
    const cells = cellsOf.get(key) ?? new Set();
    cellsOf.set(key, cells.add(run.trial));
  };
  return {
    ledger: {
      ...ledger,
      run: async (runs, options) => {
        await ledger.run(runs, options);
        runs.forEach(seen);
      },
    },
    points: (answer) => pointsOf(answer, ledger, cellsOf),
  };
}

async function pointsOf(
  { plan, found }: SweepAnswer,
  ledger: Ledger,
  cellsOf: ReadonlyMap<string, ReadonlySet<number>>,
): Promise<SweepPoint[]> {
  const run = found.tried.map(({ candidate, fate }) => {
    return fate.kind === 'hopeless' ? null : (cellsOf.get(numbersKey(candidate.values)) ?? null);
  });
  const shared = sharedBy(run.filter((cells) => cells !== null));
  const points: SweepPoint[] = [];
  for (const [index, { candidate, fate }] of found.tried.entries()) {
    if (index % AT_ONCE === 0) await breathe();
    const cells = run[index];
    const over = (some: readonly number[]) =>
      some.length === 0 ? null : resultOf(plan, ledger, { candidate, cells: some });
    const [own, both] = cells ? [over([...cells].sort((a, b) => a - b)), over(shared)] : [null, null];
    points.push({ candidate, fate, own, shared: both });
  }
  return points;
}

/** The cells that are in every set. */
function sharedBy(sets: readonly ReadonlySet<number>[]): number[] {
  const [first, ...others] = sets;
  if (first === undefined) return [];
  return [...first].filter((cell) => others.every((other) => other.has(cell))).sort((a, b) => a - b);
}
