/**
 * Who goes on? Candidates are run in a few cells first; the better half goes on to more, until few are left that are run in all.
 * Who falls more often than can be made good is out at once. A dropped one has no score: only that it was dropped, and after
 * how many cells.
 */
import { byFailuresAndScore, scoreOfCosts } from '../measure/score.js';

/** What is known of a candidate in one cell. */
export interface Priced {
  failed: boolean;
  cost: number;
}

/** How a candidate stands over the cells that it was run in. */
export interface SoFar {
  failures: number;
  score: number;
}

/** So many are run in every cell at the end, at most. */
export const FINALISTS = 16;

/** Cells of the first rung: the hardest two under the lightest and under the heaviest rider. */
const FIRST_RUNG = 4;

/** A candidate that falls so many times more often than the last that would go on is out, however many would. */
const FALL_GATE = 1;

/** How many cells have been run by the end of each rung: 4, 8, 16 and so on, all of them last. */
export function rungs(cellCount: number): number[] {
  const counts: number[] = [];
  for (let count = FIRST_RUNG; count < cellCount; count *= 2) counts.push(count);
  return [...counts, cellCount];
}

/** Failures and score over some cells. */
export function soFar(cells: readonly Priced[]): SoFar {
  return {
    failures: cells.filter(({ failed }) => failed).length,
    score: scoreOfCosts(cells.map(({ cost }) => cost)),
  };
}

/** The places of the best, best first: fewer failures, then less score, then by place. */
export function bestPlaces(standings: readonly SoFar[], most: number): number[] {
  return standings
    .map(({ failures, score }, place) => ({ failures, score, place }))
    .sort((a, b) => byFailuresAndScore(a, b) || a.place - b.place)
    .slice(0, most)
    .map(({ place }) => place);
}

/**
 * Those that go on to the next rung, by place: the better half, as many as finalists at least, without those that fall too
 * often for it.
 */
export function goingOn(standings: readonly SoFar[]): number[] {
  const kept = bestPlaces(standings, Math.max(FINALISTS, Math.ceil(standings.length / 2)));
  const last = kept[Math.min(FINALISTS, kept.length) - 1];
  const gate = (last === undefined ? 0 : standings[last]!.failures) + FALL_GATE;
  return kept.filter((place) => standings[place]!.failures <= gate).sort((a, b) => a - b);
}
