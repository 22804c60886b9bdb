/**
 * A ranking as data to keep: everything it was made from, so that any row can be run again, and what came out.
 */
import { SCALES_VERSION } from '../measure/scales.js';
import { programVersion } from '../store/places.js';
import type { RankPlan } from './plan.js';
import type { RankedCell, ProfileResult } from '../measure/profile-result.js';
import type { ReferenceCheck } from './reference-check.js';

/** The JSON of `rank`. Units are in the names; radians and SI but where a name says otherwise. */
export function rankReport(plan: RankPlan, ranked: readonly ProfileResult[], check: ReferenceCheck | null) {
  const named = <T extends object>({ name, value }: { name: string; value: T }) => ({ name, ...value });
  return {
    version: programVersion(),
    scalesVersion: SCALES_VERSION,
    solver: plan.solver,
    seeds: plan.seeds,
    weights: plan.weights,
    rig: { board: named(plan.board), riders: plan.riders.map(named) },
    scenarios: plan.scenarios.map(named),
    profiles: ranked.map((profile, index) => ({
      rank: index + 1,
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
