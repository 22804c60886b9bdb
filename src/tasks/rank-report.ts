/**
 * A ranking as data to keep: everything it was made from, so that any row can be run again, and what came out.
 */
import { orderRows, type RowOrder } from '../measure/row-order.js';
import { SCALES_VERSION } from '../measure/scales.js';
import type { RankView } from '../show/rank-table.js';
import { programVersion } from '../store/places.js';
import type { RankPlan } from './plan.js';
import type { RankedCell, ProfileResult } from '../measure/profile-result.js';
import type { ReferenceCheck } from './reference-check.js';

/**
 * A ranking with all that belongs to it: `ranked` in the order of rank, `order` that of the rows. The check is null where
 * there is none: the runs were made with the reference itself, or it was not made, or has not come yet.
 */
export interface RankResult {
  plan: RankPlan;
  ranked: readonly ProfileResult[];
  check: ReferenceCheck | null;
  order: RowOrder;
}

/** What the table shows of a ranking. */
export function rankView({ plan, ranked, order }: Omit<RankResult, 'check'>): RankView {
  return {
    board: plan.board.name,
    riders: plan.riders.map(({ name }) => name),
    seedCount: plan.seeds.length,
    scenarios: plan.scenarios.map(({ name }) => name),
    weights: plan.weights,
    profiles: ranked,
    order,
  };
}

/** The JSON of `rank`. Units are in the names; radians and SI but where a name says otherwise. */
export function rankReport({ plan, ranked, check, order }: RankResult) {
  const named = <T extends object>({ name, value }: { name: string; value: T }) => ({ name, ...value });
  return {
    version: programVersion(),
    scalesVersion: SCALES_VERSION,
    solver: plan.solver,
    seeds: plan.seeds,
    weights: plan.weights,
    rig: { board: named(plan.board), riders: plan.riders.map(named) },
    scenarios: plan.scenarios.map(named),
    order,
    profiles: orderRows(ranked, order).map((profile) => ({
      rank: ranked.indexOf(profile) + 1,
      name: profile.name,
      failures: profile.failures,
      score: profile.score,
      worst: cellReport(profile.worst),
      cells: profile.cells.map(cellReport),
      profile: plan.profiles.find(({ name }) => name === profile.name)!.value,
    })),
    check,
  };
}

function cellReport({ key: _key, outcome, metrics, ...cell }: RankedCell) {
  return {
    ...cell,
    outcome: outcome.kind,
    endedAtS: outcome.atS,
    detail: outcome.detail ?? null,
    ...metrics,
  };
}
