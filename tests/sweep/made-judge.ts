/**
 * A made-up world for searches: candidates cost as much as they lie away from a best set of gains, in each cell a little otherwise,
 * and fall where they lie too far away. What it is asked is written down.
 */
import type { Asked, Judge } from '../../src/sweep/asked.js';
import type { Candidate } from '../../src/sweep/candidate.js';
import { placeOf, type Range } from '../../src/sweep/range.js';
import type { Found, SearchSpec } from '../../src/sweep/search.js';
import { search } from '../../src/sweep/search.js';
import { profileWith } from '../rigs.js';

export const RANGES: readonly Range[] = [
  { path: ['gains', 'proportionalAPerDeg'], unit: 'A/deg', min: 2, max: 80 },
  { path: ['gains', 'rateAPerDegPerS'], unit: 'A/(deg/s)', min: 0.05, max: 8 },
];

export const specWith = (changes: Partial<SearchSpec> = {}): SearchSpec => ({
  base: profileWith([20, 1]),
  ranges: RANGES,
  count: 120,
  grid: null,
  isExhaustive: false,
  isRefined: true,
  seed: 1,
  cellOrder: Array.from({ length: 40 }, (_, cell) => cell),
  ...changes,
});

/** The place of the best set of gains in a cell. */
const bestIn = (cell: number) => [0.55 + 0.05 * Math.sin(3 * cell), 0.4 + 0.05 * Math.cos(5 * cell)];

/** Distance beyond which a candidate falls in a cell. */
const FALL_DISTANCE = 0.45;

export function priceOf({ values }: Candidate, cell: number) {
  const best = bestIn(cell);
  const apart = Math.hypot(...values.map((value, index) => placeOf(RANGES[index]!, value) - best[index]!));
  const failed = apart > FALL_DISTANCE;
  return { failed, cost: failed ? 10 : 0.1 + apart + 0.02 * Math.sin(7 * cell) };
}

/** Searches to the end; answers what was found and what was asked. */
export function searched(
  spec: SearchSpec,
  isHopeless: Judge['isHopeless'] = () => false,
): { found: Found; asked: Asked[]; runs: Set<string> } {
  const runs = new Set<string>();
  const judge: Judge = {
    isHopeless,
    priced: (candidate, cell) => {
      if (!runs.has(`${candidate.values.join(' ')} ${cell}`))
        throw new Error('priced without having been run');
      return priceOf(candidate, cell);
    },
  };
  const asked: Asked[] = [];
  const searching = search(spec, judge);
  for (let next = searching.next(); ; next = searching.next()) {
    if (next.done) return { found: next.value, asked, runs };
    asked.push(next.value);
    const { candidates, cells } = next.value;
    for (const { values } of candidates) for (const cell of cells) runs.add(`${values.join(' ')} ${cell}`);
  }
}
