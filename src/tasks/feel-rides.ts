/**
 * How does a profile of a plan feel to the usual rider, if he is among its own, or else to the first? Which steady rides must be
 * looked at to know, and what is told from their reports and the rider's cells.
 */
import { USUAL_CHARGE_PERCENT } from '../explain/edge-scenarios.js';
import type { FeelFacts, FeelRide } from '../explain/feel-readings.js';
import { feelOf, footShiftNm, type Feel } from '../explain/feel.js';
import type { RidePoint } from '../linear/steady-ride.js';
import type { RankedCell } from '../measure/profile-result.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import { USUAL_SPEEDS_KM_PER_H } from './margin-points.js';
import type { Named, RankPlan } from './plan.js';
import { DEFAULT_RIDER } from './select.js';

/** How a profile feels to a rider, and the rides that it is told from. */
export interface Felt {
  rider: string;
  rides: FeelRide[];
  words: Feel[];
}

/** The steady rides that the feel of a profile is told from. */
export function feelPoints(plan: Pick<RankPlan, 'board' | 'riders'>, profile: ProfileFile): RidePoint[] {
  const rig = { board: plan.board.value, rider: usualRider(plan).value, profile };
  const steady = { gradePercent: 0, chargePercent: USUAL_CHARGE_PERCENT };
  return USUAL_SPEEDS_KM_PER_H.map((speedKmPerH) => ({ ...rig, ...steady, speedKmPerH }));
}

/** What the feel of a profile is told from: its cells and the reports of its rides in their order. */
export function feelFacts(
  plan: Pick<RankPlan, 'riders'>,
  cells: readonly RankedCell[],
  reports: readonly FeelRide['report'][],
): FeelFacts {
  const { name, value } = usualRider(plan);
  return {
    rides: USUAL_SPEEDS_KM_PER_H.map((speedKmPerH, index) => ({ speedKmPerH, report: reports[index]! })),
    cells: cells.filter(({ rider }) => rider === name),
    footShiftNm: footShiftNm({ massKg: value.body.massKg, stanceWidthM: value.stance.widthM }),
  };
}

/** The feel of a profile, from its cells and the reports of its rides in their order. */
export function feelFrom(
  plan: Pick<RankPlan, 'riders'>,
  cells: readonly RankedCell[],
  reports: readonly FeelRide['report'][],
): Felt {
  const facts = feelFacts(plan, cells, reports);
  return { rider: usualRider(plan).name, rides: [...facts.rides], words: feelOf(facts) };
}

function usualRider({ riders }: Pick<RankPlan, 'riders'>): Named<RiderFile> {
  return riders.find(({ name }) => name === DEFAULT_RIDER) ?? riders[0]!;
}
