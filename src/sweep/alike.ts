/**
 * Which candidates are too much alike for both to be worth a look? Going downhill crowds around the best: of those that nobody
 * could tell apart by riding, the better one is enough.
 */
import { standing, type Judge, type Tried } from './asked.js';
import type { Candidate } from './candidate.js';
import { bestPlaces } from './racing.js';

/** Two sets of numbers are alike where no number differs by more than this part of the larger one (ours, no source). */
const ALIKE_SHARE = 0.05;

/** True where every number of one is nearly that of the other. */
export function areAlike(a: readonly number[], b: readonly number[]): boolean {
  return a.every((value, index) => {
    const other = b[index]!;
    return Math.abs(value - other) <= ALIKE_SHARE * Math.max(Math.abs(value), Math.abs(other));
  });
}

/**
 * The fresh candidates without those that are like a better one, old or fresh, over cells that all of them were run in; old ones
 * stay whatever they are like.
 */
export function withoutAlike(
  { old, fresh }: { old: readonly Candidate[]; fresh: readonly Candidate[] },
  cells: readonly number[],
  judge: Judge,
): { kept: Candidate[]; dropped: Tried[] } {
  const all = [...old, ...fresh];
  const standings = all.map((candidate) => standing(candidate, cells, judge));
  const better: Candidate[] = [];
  const left = new Set<Candidate>();
  for (const place of bestPlaces(standings, all.length)) {
    const candidate = all[place]!;
    const isLike = better.some(({ values }) => areAlike(values, candidate.values));
    if (place >= old.length && isLike) left.add(candidate);
    else better.push(candidate);
  }
  const failuresOf = (candidate: Candidate) => standings[all.indexOf(candidate)]!.failures;
  return {
    kept: fresh.filter((candidate) => !left.has(candidate)),
    dropped: [...left].map((candidate): Tried => {
      const fate = {
        kind: 'dropped' as const,
        afterCells: cells.length,
        failures: failuresOf(candidate),
      };
      return { candidate, fate };
    }),
  };
}
