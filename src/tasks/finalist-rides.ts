/**
 * What do steady rides tell of finalists? Their margins under every rider, and how they feel to the usual one.
 */
import { USUAL_CHARGE_PERCENT, USUAL_SPEED_KM_PER_H } from '../explain/edge-scenarios.js';
import type { RidePoint } from '../linear/steady-ride.js';
import type { ProfileResult } from '../measure/profile-result.js';
import type { FeelWord } from '../quantity/feel-words.js';
import type { Candidate } from '../sweep/candidate.js';
import { marginsOfRide, worstMargins, type FinalistMargins } from '../sweep/finalist-margins.js';
import { feelFrom, feelPoints } from './feel-rides.js';
import type { RankPlan } from './plan.js';
import { lookAtRides, type RideOptions } from './ride-looks.js';

/** What steady rides tell of a finalist. */
export interface FinalistRides {
  /** Each margin where it is smallest; null where a ceiling cuts every ride. */
  margins: FinalistMargins | null;
  /** How it feels, in words, to the usual rider or else to the first. */
  feel: { rider: string; words: FeelWord[] };
}

/** The rides of a finalist: those for its margins, one for each rider, and then those for its feel. */
export function finalistPoints(cells: RankPlan, { profile }: Pick<Candidate, 'profile'>): RidePoint[] {
  const steady = {
    speedKmPerH: USUAL_SPEED_KM_PER_H,
    gradePercent: 0,
    chargePercent: USUAL_CHARGE_PERCENT,
  };
  const board = cells.board.value;
  const forMargins = cells.riders.map(({ value: rider }) => ({ board, rider, profile, ...steady }));
  return [...forMargins, ...feelPoints(cells, profile)];
}

/** Looks at the rides of finalists, whose results are given; answers in their order. */
export async function rideFinalists(
  cells: RankPlan,
  finalists: readonly { candidate: Candidate; result: ProfileResult }[],
  options: RideOptions,
): Promise<FinalistRides[]> {
  const points = finalists.flatMap(({ candidate }) => finalistPoints(cells, candidate));
  const reports = await lookAtRides(points, options);
  const each = points.length / finalists.length;
  return finalists.map(({ result }, place): FinalistRides => {
    const own = reports.slice(place * each, (place + 1) * each);
    const rides = cells.riders.flatMap(({ name: rider }, index) => {
      const report = own[index]!;
      return report === null ? [] : [marginsOfRide({ rider, speedKmPerH: USUAL_SPEED_KM_PER_H }, report)];
    });
    const { rider, words } = feelFrom(cells, result.cells, own.slice(cells.riders.length));
    return { margins: worstMargins(rides), feel: { rider, words: words.map(({ word }) => word) } };
  });
}
