/**
 * What is shown and what is printed as JSON of a sweep that has come to its end.
 */
import { SCALES_VERSION } from '../measure/scales.js';
import { CAUTION } from '../show/cautions.js';
import type { FinalistView, SweepView } from '../show/sweep-view.js';
import { programVersion } from '../store/places.js';
import { whatIsLeft } from '../sweep/what-is-left.js';
import type { SweepAnswer } from './sweep.js';
import { trialsOf } from './plan.js';

/** What is shown of a sweep. */
export function sweepView({ plan, base, found, finalists, runs }: SweepAnswer): SweepView {
  const { cells, ranges, isExhaustive } = plan;
  const count = (kind: string) => found.tried.filter(({ fate }) => fate.kind === kind).length;
  return {
    board: cells.board.name,
    riders: cells.riders.map(({ name }) => name),
    scenarios: cells.scenarios.map(({ name }) => name),
    cellCount: trialsOf(cells).length,
    runs,
    weights: cells.weights,
    ranges,
    isExhaustive,
    isGrid: plan.grid !== null,
    base,
    counts: {
      tried: found.tried.length,
      spread: found.spread.count,
      hopeless: count('hopeless'),
      dropped: count('dropped'),
      inEveryCell: count('run in every cell'),
    },
    finalists: finalists.map((finalist): FinalistView => {
      const { candidate, margins, ...rest } = finalist;
      const disk = margins?.disk;
      const leastDisk =
        disk === undefined ? null : { margin: disk.value, rider: disk.rider, speedKmPerH: disk.speedKmPerH };
      return { ...rest, leastDisk, values: candidate.values };
    }),
    left: leftOf(found),
  };
}

/** Draws that were dropped on the way have no score, but were draws. */
function leftOf({ spread, progress }: SweepAnswer['found']): SweepView['left'] {
  const dropped = Array<number>(Math.max(0, spread.count - spread.scores.length)).fill(Infinity);
  const improvements = progress.slice(1).map(({ failures, score }, index) => {
    const before = progress[index]!;
    return failures === before.failures ? Math.max(0, before.score - score) : 0;
  });
  return whatIsLeft([...spread.scores, ...dropped], improvements);
}

/** The JSON of a sweep: the plan, everyone who was tried and what became of them, the finalists with all that is known. */
export function sweepReport(answer: SweepAnswer) {
  const { plan, found, finalists, runs } = answer;
  const named = <T extends object>({ name, value }: { name: string; value: T }) => ({ name, ...value });
  const { cells, base, ranges, ...how } = plan;
  return {
    version: programVersion(),
    scalesVersion: SCALES_VERSION,
    rig: { board: named(cells.board), riders: cells.riders.map(named) },
    scenarios: cells.scenarios.map(({ name }) => name),
    chargesPercent: cells.charges,
    seeds: cells.seeds,
    base: named(base),
    baseResult: { failures: answer.base.failures, score: answer.base.score },
    ranges,
    ...how,
    runs,
    tried: found.tried.map(({ candidate: { name, values }, fate }) => ({ name, values, ...fate })),
    finalists: finalists.map(({ candidate, result, ...rest }) => ({
      name: candidate.name,
      profile: candidate.profile,
      failures: result.failures,
      score: result.score,
      worst: result.worst.key,
      cells: result.cells.map(({ key, failed, cost, outcome }) => ({ key, failed, cost, outcome })),
      ...rest,
    })),
    left: leftOf(found),
    caution: CAUTION,
  };
}
