/**
 * How does a sweep find the few profiles worth trying? Candidates spread over all ranges race against each other; from the best of
 * them, basin by basin, the search goes on downhill; the best of all are run in every cell. It asks for runs and waits for what
 * came of them: who runs them, where and in which order, changes nothing.
 */
import type { ProfileFile } from '../quantity/profile-file.js';
import { withoutAlike } from './alike.js';
import type { Asked, Judge, Tried } from './asked.js';
import { candidateAt, candidateName, numbersKey, type Candidate } from './candidate.js';
import { downhill } from './downhill.js';
import { gridPoints } from './grid.js';
import { latinHypercube } from './latin-hypercube.js';
import { race } from './race.js';
import { FINALISTS, rungs, type SoFar } from './racing.js';
import type { Range } from './range.js';

/** What is searched, and how. */
export interface SearchSpec {
  base: ProfileFile;
  ranges: readonly Range[];
  /** Candidates that are spread over the ranges. */
  count: number;
  /** Points along each range in place of a spread; null for none. */
  grid: number | null;
  /** Every candidate in every cell: nobody is dropped. */
  isExhaustive: boolean;
  /** Whether it goes on downhill from the best. */
  isRefined: boolean;
  seed: number;
  /** Cells in the order in which candidates are run in them. */
  cellOrder: readonly number[];
}

/** What a search found: everyone who was tried, by name, and the finalists, best first. */
export interface Found {
  tried: Tried[];
  finalists: Candidate[];
  /** How the best stood after the first race and after each generation downhill, over the same cells. */
  progress: SoFar[];
  /** Spread candidates, and the scores of those left after the first race that fall no more often than the best. */
  spread: { count: number; scores: number[] };
}

/** Cells that the first race ends with, and that a step downhill is judged by, at most. */
const FIRST_RACE_CELLS = 16;

/** Candidates that begin the last race, at most. */
const LATE_STARTERS = 2 * FINALISTS;

/** Searches: yields what is to be run, and returns what was found. */
export function* search(spec: SearchSpec, judge: Judge): Generator<Asked, Found, void> {
  const { cellOrder, isExhaustive } = spec;
  const { spread, proposed } = spreadOf(spec);
  const hopeful = spread.filter(({ profile }) => !judge.isHopeless(profile));
  const counts = rungs(cellOrder.length);
  const early = counts.filter(
    (count, index) => count <= FIRST_RACE_CELLS && (index === 0 || index < counts.length - 1),
  );
  const judged = early.at(-1)!;
  const first = yield* race(
    hopeful,
    { stage: 'racing', cellOrder, before: 0, rungs: early, most: null, isOpen: isExhaustive },
    judge,
  );
  const best = first.left.map(({ candidate }) => candidate);
  const descended = spec.isRefined
    ? yield* downhill(
        best,
        { ...spec, seed: spec.seed, cells: cellOrder.slice(0, judged), taken: proposed },
        judge,
      )
    : { fresh: [], progress: [] };
  const { kept, dropped: alike } = withoutAlike(
    { old: best, fresh: descended.fresh },
    cellOrder.slice(0, judged),
    judge,
  );
  const late = yield* race(
    [...best, ...kept],
    {
      stage: 'running the best',
      cellOrder,
      before: judged,
      rungs: counts.filter((count) => count > judged),
      most: LATE_STARTERS,
      isOpen: isExhaustive,
    },
    judge,
  );
  const finalists = late.left.slice(0, FINALISTS).map(({ candidate }) => candidate);
  const leading = first.left[0]?.standing;
  return {
    tried: byName([
      ...spread
        .filter((candidate) => !hopeful.includes(candidate))
        .map((candidate): Tried => ({ candidate, fate: { kind: 'hopeless' } })),
      ...first.dropped,
      ...alike,
      ...late.dropped,
      ...late.left.map(({ candidate }): Tried => ({ candidate, fate: { kind: 'run in every cell' } })),
    ]),
    finalists,
    progress: leading === undefined ? [] : [leading, ...descended.progress],
    spread: {
      count: spread.length,
      scores: first.left
        .filter(({ standing }) => standing.failures === leading?.failures)
        .map(({ standing }) => standing.score),
    },
  };
}

/** Candidates spread over the ranges, or at the points of the grid, each set of numbers once; and how many were proposed. */
export function spreadOf({
  base,
  ranges,
  count,
  grid,
  seed,
}: Pick<SearchSpec, 'base' | 'ranges' | 'count' | 'grid' | 'seed'>): {
  spread: Candidate[];
  proposed: number;
} {
  const points =
    grid === null
      ? latinHypercube({ count, dimensions: ranges.length, seed })
      : gridPoints(ranges.map(() => grid));
  const seen = new Set<string>();
  const spread = points.flatMap((point, index) => {
    const candidate = candidateAt({ base, ranges }, point, candidateName(index + 1));
    if (candidate === null || seen.has(numbersKey(candidate.values))) return [];
    seen.add(numbersKey(candidate.values));
    return [candidate];
  });
  return { spread, proposed: points.length };
}

function byName(tried: readonly Tried[]): Tried[] {
  return [...tried].sort((a, b) => (a.candidate.name < b.candidate.name ? -1 : 1));
}
