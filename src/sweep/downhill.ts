/**
 * Downhill from the best basins: where the best candidates of a race lie apart, the search goes on from each of them by covariance
 * matrix adaptation, side by side.
 */
import { standing, type Asked, type Judge } from './asked.js';
import { candidateAt, candidateName, numbersKey, type Candidate } from './candidate.js';
import { askPoints, hasEnded, startSearch, tellCosts } from './cma-es.js';
import { bestPlaces, type SoFar } from './racing.js';
import { placeOf, type Range } from './range.js';
import type { ProfileFile } from '../quantity/profile-file.js';

/** From where it goes downhill, over which cells, and how many names are taken. */
export interface Descent {
  base: ProfileFile;
  ranges: readonly Range[];
  seed: number;
  cells: readonly number[];
  taken: number;
}

/** New candidates that were run, and how the best of all stood after each generation. */
export interface Descended {
  fresh: Candidate[];
  progress: SoFar[];
}

/** Generations from each basin; first step, and how far apart basins are, in the unit cube (ours). */
const GENERATIONS = 10;
const FIRST_STEP = 0.08;
const BASINS = 2;
const BASIN_DISTANCE = 0.2;

/** Cost of one more fall beside any score: a fall can't be bought off. */
const FALL_COST = 1000;

/** Goes downhill from the best, who stand in their order. */
export function* downhill(
  best: readonly Candidate[],
  descent: Descent,
  judge: Judge,
): Generator<Asked, Descended, void> {
  const { seed, cells } = descent;
  const catalogue = createCatalogue(best, descent);
  let states = basinsOf(best, descent.ranges).map((start, index) =>
    startSearch({ start, step: FIRST_STEP, seed: seed + index }),
  );
  const progress: SoFar[] = [];
  for (let step = 1; step <= GENERATIONS; step++) {
    if (states.every((state) => hasEnded(state) !== null)) break;
    const proposed = states.map((state) =>
      hasEnded(state) === null ? askPoints(state).map(catalogue.candidateAt) : [],
    );
    const hopeful = proposed.flat().filter((one) => one !== null && !judge.isHopeless(one.profile));
    const candidates = [...new Set(hopeful)].filter((one) => one !== null);
    yield { stage: 'going downhill', step, steps: GENERATIONS, candidates, cells };
    candidates.forEach(catalogue.ran);
    const costOf = (candidate: Candidate | null) =>
      candidate === null || judge.isHopeless(candidate.profile)
        ? Infinity
        : fallsFirst(standing(candidate, cells, judge));
    states = states.map((state, index) =>
      hasEnded(state) === null ? tellCosts(state, proposed[index]!.map(costOf)) : state,
    );
    progress.push(bestOf([...best, ...catalogue.fresh()], cells, judge));
  }
  return { fresh: catalogue.fresh(), progress };
}

function fallsFirst({ failures, score }: SoFar): number {
  return FALL_COST * failures + score;
}

/** Candidates by their numbers: the same numbers are the same candidate, whoever proposes them. */
function createCatalogue(best: readonly Candidate[], descent: Descent) {
  const known = new Map(best.map((candidate) => [numbersKey(candidate.values), candidate]));
  const old = new Set(best);
  const run = new Set<Candidate>();
  let taken = descent.taken;
  return {
    candidateAt: (point: readonly number[]): Candidate | null => {
      const candidate = candidateAt(descent, point, candidateName(taken + 1));
      if (candidate === null) return null;
      const key = numbersKey(candidate.values);
      const same = known.get(key);
      if (same !== undefined) return same;
      taken += 1;
      known.set(key, candidate);
      return candidate;
    },
    ran: (candidate: Candidate) => void (old.has(candidate) || run.add(candidate)),
    fresh: () => [...run],
  };
}

/** The best candidates that lie apart from each other, as points. */
function basinsOf(best: readonly Candidate[], ranges: readonly Range[]): number[][] {
  const basins: number[][] = [];
  for (const { values } of best) {
    const point = values.map((value, index) => placeOf(ranges[index]!, value));
    const isApart = basins.every(
      (other) => Math.hypot(...point.map((place, index) => place - other[index]!)) > BASIN_DISTANCE,
    );
    if (isApart && basins.length < BASINS) basins.push(point);
  }
  return basins;
}

function bestOf(candidates: readonly Candidate[], cells: readonly number[], judge: Judge): SoFar {
  const standings = candidates.map((candidate) => standing(candidate, cells, judge));
  return standings[bestPlaces(standings, 1)[0]!]!;
}
