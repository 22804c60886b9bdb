/**
 * The margins of one profile on one rig, steady ride by steady ride: what the linear view says and what the simulation made
 * of it.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import type { Confirmation, Trial } from '../linear/confirm.js';
import { doublingS, fateOf, hasMargins } from '../linear/growth.js';
import type { Margin } from '../linear/margins.js';
import { reportRide } from '../linear/ride-report.js';
import { weightsWith } from '../measure/scales.js';
import type { BoardFile } from '../quantity/board-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import {
  seenPoints,
  stateOf,
  type MarginPoint,
  type MarginView,
  type SeenPoint,
} from '../show/margin-view.js';
import { programVersion, type Places } from '../store/places.js';
import { chooseRides, type RideTexts, type RideWhere } from './margin-points.js';
import type { Named } from './plan.js';
import { planFor } from './select.js';

/** One profile on one rig and the steady rides to look at it in. */
export interface MarginPlan {
  board: Named<BoardFile>;
  rider: Named<RiderFile>;
  profile: Named<ProfileFile>;
  chargePercent: number;
  rides: readonly RideWhere[];
}

/** A plan with a point for each of its rides. */
export interface MarginResult {
  plan: MarginPlan;
  points: MarginPoint[];
}

/** Names or paths of profile, board and rider (undefined stands for the usual ones), and the rides as typed. */
export interface MarginSelection extends RideTexts {
  profile: string;
  board: string | undefined;
  rider: string | undefined;
}

/** The plan for a selection, or everything that is wrong with it. */
export function marginPlan(places: Places, selection: MarginSelection): Checked<MarginPlan, Problem> {
  const { profile, board, rider, ...typed } = selection;
  const chosen = chooseRides(typed);
  const planned = planFor(places, {
    board,
    riders: rider === undefined ? undefined : [rider],
    profiles: [profile],
    scenarios: [],
    charges: [null],
    seeds: [1],
    solver: 'fixed',
    weights: weightsWith(),
  });
  if (!planned.ok || !chosen.ok) {
    return { ok: false, faults: [planned, chosen].flatMap((one) => (one.ok ? [] : one.faults)) };
  }
  const { value: found } = planned;
  return {
    ok: true,
    value: { board: found.board, rider: found.riders[0]!, profile: found.profiles[0]!, ...chosen.value },
  };
}

/** Looks at every ride of a plan; about a second each, with a breath between two, in which a signal is heard. */
export async function lookAtMargins(plan: MarginPlan): Promise<MarginResult> {
  const rig = { board: plan.board.value, rider: plan.rider.value, profile: plan.profile.value };
  const points: MarginResult['points'] = [];
  for (const ride of plan.rides) {
    await breathe();
    points.push({ ...ride, report: reportRide({ ...rig, ...ride, chargePercent: plan.chargePercent }) });
  }
  await breathe();
  return { plan, points };
}

/** What is shown of margins. */
export function marginView({ plan, points }: MarginResult): MarginView {
  return {
    board: plan.board.name,
    rider: plan.rider.name,
    profile: plan.profile.name,
    chargePercent: plan.chargePercent,
    loopRateHz: plan.board.value.controller.loopRateHz,
    points,
  };
}

/** The JSON of `margins`: units in the names, null where there is none. */
export function marginReport({ plan, points }: MarginResult) {
  const named = <T extends object>({ name, value }: { name: string; value: T }) => ({ name, ...value });
  return {
    version: programVersion(),
    rig: { board: named(plan.board), rider: named(plan.rider) },
    profile: named(plan.profile),
    chargePercent: plan.chargePercent,
    points: points.map((point) => {
      const { speedKmPerH, gradePercent } = point;
      const [seen] = seenPoints([point]);
      const isCut = seen === undefined;
      return { speedKmPerH, gradePercent, isCutByCeiling: isCut, ...(seen && pointReport(seen)) };
    }),
  };
}

function pointReport(point: SeenPoint) {
  const { report, speedKmPerH } = point;
  const { tried, modes, footPath } = report;
  const pitchLoop = stateOf(point);
  return {
    pitchLoop,
    marginsIfItHolds: hasMargins(pitchLoop) ? marginsReport(point) : null,
    modes: modes.map(({ frequencyHz, dampingRatio, shares, ...mode }) => ({
      frequencyHz,
      dampingRatio,
      growthPerS: mode.growthPerS,
      doublingSIfGrowing: finite(doublingS(mode)),
      fate: fateOf({ ...mode, frequencyHz, dampingRatio, shares }, speedKmPerH === 0),
      energyShares: shares,
    })),
    deckStiffnessNmPerDeg: report.deckStiffnessNmPerDeg,
    footPath: {
      gainAt1HzMPerS2PerNm: footPath.gainAt1Hz,
      delayAt1HzS: footPath.delayAt1HzS,
      bandwidthHzIfFound: footPath.bandwidthHz,
    },
    gyroNoiseInRequestA: report.gyroNoiseA,
    triedInSimulation: {
      delayIfAny: trialsReport(tried.delay),
      gainUpIfAny: trialsReport(tried.gainUp),
      gainDownIfAny: trialsReport(tried.gainDown),
    },
    curve: report.curve,
  };
}

function marginsReport({ report: { margins, allowedByDisk } }: SeenPoint) {
  const placed = ({ value, radPerS }: Margin) =>
    radPerS === null || !Number.isFinite(value) ? null : { value, atHz: radPerS / (2 * Math.PI) };
  return {
    gainUpFactorIfAny: placed(margins.gainUp),
    gainDownFactorIfAny: placed(margins.gainDown),
    phaseRadIfAny: placed(margins.phaseRad),
    delaySIfAny: placed(margins.delayS),
    disk: {
      alpha: margins.disk.value,
      gainFromFactor: allowedByDisk.gainDown,
      gainToFactorIfLimited: finite(allowedByDisk.gainUp),
      phaseRad: allowedByDisk.phaseRad,
    },
    sensitivityPeak: placed(margins.sensitivityPeak),
  };
}

function trialsReport(confirmation: Confirmation | null) {
  if (confirmation === null) return null;
  const trial = ({ change, growthPerS }: Trial) => ({
    change,
    isGrowing: growthPerS > 0,
    growthPerSIfMeasurable: finite(growthPerS),
  });
  const { inside, outside, agrees } = confirmation;
  return { inside: trial(inside), outside: trial(outside), agrees };
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
