/**
 * The race: rung by rung candidates are run in more cells, and on each rung the better half goes on.
 */
import { standing, type Asked, type Judge, type Stage, type Tried } from './asked.js';
import type { Candidate } from './candidate.js';
import { bestPlaces, goingOn, type SoFar } from './racing.js';

/** Where a race begins and ends: cells in their order, how many have been run before it, and how many by each rung. */
export interface Course {
  stage: Stage;
  cellOrder: readonly number[];
  before: number;
  rungs: readonly number[];
  /** So many begin at most, the best over the cells before; null for all. */
  most: number | null;
  /** Everyone goes on from every rung. */
  isOpen: boolean;
}

/** What a race comes to: those who are left, best first, with how they stand, and those who were dropped. */
export interface RaceResult {
  left: { candidate: Candidate; standing: SoFar }[];
  dropped: Tried[];
}

/** Runs the race; nobody is dropped after the last rung. */
export function* race(
  candidates: readonly Candidate[],
  { stage, cellOrder, before, rungs, most, isOpen }: Course,
  judge: Judge,
): Generator<Asked, RaceResult, void> {
  let running = [...candidates];
  const dropped: Tried[] = [];
  let done = before;
  const keepOnly = (choose: (standings: readonly SoFar[]) => number[]) => {
    const seen = cellOrder.slice(0, done);
    const standings = running.map((candidate) => standing(candidate, seen, judge));
    const going = new Set(choose(standings));
    running.forEach((candidate, place) => {
      if (going.has(place)) return;
      const { failures } = standings[place]!;
      dropped.push({ candidate, fate: { kind: 'dropped', afterCells: done, failures } });
    });
    running = running.filter((_, place) => going.has(place));
  };
  if (most !== null && !isOpen) keepOnly((standings) => bestPlaces(standings, most));
  for (const [index, count] of rungs.entries()) {
    if (index > 0 && !isOpen) keepOnly(goingOn);
    yield {
      stage,
      step: index + 1,
      steps: rungs.length,
      candidates: running,
      cells: cellOrder.slice(done, count),
    };
    done = count;
  }
  const seen = cellOrder.slice(0, done);
  const standings = running.map((candidate) => standing(candidate, seen, judge));
  const left = bestPlaces(standings, running.length).map((place) => {
    return { candidate: running[place]!, standing: standings[place]! };
  });
  return { left, dropped };
}
