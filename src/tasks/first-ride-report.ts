/**
 * The JSON of a first-ride plan: its stages with their numbers, units in the names, and its sentences.
 */
import type { FeelChange } from '../explain/feel-changes.js';
import type { Nearness } from '../explain/feel.js';
import type { FirstRidePlan, StagePlan, StageRide } from '../explain/first-ride.js';
import { CAUTIONS } from '../show/cautions.js';
import type { PlanSection } from '../show/first-ride-item.js';
import { programVersion } from '../store/places.js';

/** The report of a plan; `sections` are its sentences. */
export function firstRideReport(plan: FirstRidePlan, sections: readonly PlanSection[]) {
  const { name, kept, full, free, stages, changes } = plan;
  return {
    version: programVersion(),
    name,
    numbers: kept.numbers,
    board: kept.rig.boardName,
    riders: kept.rig.riders.map((rider) => rider.name),
    fullCeilings: full,
    ceilingsOfTheFreeWheel: free,
    stages: stages.map(stageReport),
    changes: changes.map(changeReport),
    sections,
    caution: CAUTIONS,
  };
}

function stageReport({ stage, ceilings, holds, rides, below }: StagePlan) {
  return {
    name: stage.name,
    upToKmPerH: stage.upToKmPerH,
    ceilings,
    holds,
    rides: rides.map(rideReport),
    withLowerCeilingsIfTried: below && { ceilings: below.ceilings, worst: rideReport(below.worst) },
  };
}

function rideReport({ ride, rider, result: { outcome, metrics } }: StageRide) {
  return {
    ride,
    rider,
    outcome: outcome.kind,
    endedAtS: outcome.atS,
    peakNoseDownRad: metrics.peakNoseDownRad,
    peakNoseUpRad: metrics.peakNoseUpRad,
    peakCurrentA: metrics.peakCurrentA,
    leastHeadroomShareIfMeasured: metrics.leastHeadroomShare,
  };
}

function changeReport({ word, before, found }: FeelChange) {
  const near = (nearness: Nearness | null) =>
    nearness && {
      measure: nearness.reason.measure,
      value: nearness.reason.value,
      unit: nearness.reason.unit,
      threshold: nearness.reason.threshold,
    };
  return {
    against: word,
    beforeIfKnown: near(before),
    changeIfAny: found && {
      numbers: found.change.numbers,
      after: near(found.after),
      failures: found.failures,
      scoreRatio: found.scoreRatio,
    },
  };
}
