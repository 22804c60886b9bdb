/**
 * Several profiles in one trial: a measured run of each, when they part, and all of it as data to keep.
 */
import { partingOf, type Parting } from '../measure/parting.js';
import { profileResult, type RankedCell } from '../measure/profile-result.js';
import { SCALES_VERSION } from '../measure/scales.js';
import type { ScenarioFile } from '../quantity/scenario-file.js';
import type { ComparedRun } from '../show/compare-run.js';
import { bestIndexes } from '../show/compare-sentences.js';
import { prepareTrial } from '../simulate/trial.js';
import { programVersion } from '../store/places.js';
import { measureProfile, type MeasuredRun } from './evaluate.js';
import { trialsOf, type RankPlan } from './plan.js';
import { namesIn, viewOf } from './view-run.js';

/** The run of one profile, with its cell: key, cost, whether it failed. */
export interface ProfileRun extends MeasuredRun {
  name: string;
  cell: RankedCell;
}

/** The runs of a plan's profiles in its first trial, in the order of the profiles, and when they part. */
export interface Comparison {
  plan: RankPlan;
  scenario: ScenarioFile;
  runs: ProfileRun[];
  parting: Parting | null;
}

/** Runs every profile of a plan in its first trial; all of them meet the same road, script and chance. */
export function runAll(plan: RankPlan): Comparison {
  const trial = prepareTrial(firstTrialOf(plan).circumstances);
  return comparisonOf(
    plan,
    plan.profiles.map(({ value }) => measureProfile(trial, value, { solver: plan.solver })),
  );
}

/** The comparison of runs that were computed elsewhere: one for each profile of the plan, in its first trial. */
export function comparisonOf(plan: RankPlan, measured: readonly MeasuredRun[]): Comparison {
  const { key, circumstances } = firstTrialOf(plan);
  const runs = plan.profiles.map(({ name, value }, index): ProfileRun => {
    const run = measured[index];
    if (run === undefined) throw new Error('a comparison has a run for each of its profiles');
    const { outcome, metrics } = run;
    const result = { ...key, outcome, eventReached: metrics.measuredS > 0, metrics };
    return {
      ...run,
      name,
      cell: profileResult({ name, summary: value.summary }, [result], plan.weights).worst,
    };
  });
  const bandRad = runs[0]?.window.bandRad ?? 0;
  const parting = partingOf(
    runs.map(({ tape }) => tape),
    bandRad,
  );
  return { plan, scenario: circumstances.scenario, runs, parting };
}

function firstTrialOf(plan: RankPlan) {
  const [planned] = trialsOf(plan);
  if (planned === undefined) throw new Error('a plan to compare has a trial');
  return planned;
}

/** The runs of a comparison as they are drawn. */
export function comparedRuns({ plan, scenario, runs }: Comparison): ComparedRun[] {
  return runs.map((run) => {
    const { name, cell } = run;
    return { name, cell, view: viewOf({ ...run, scenario }, { ...namesIn(plan), profile: name }) };
  });
}

/**
 * The JSON of `compare`: rig, scenario and profiles as they were run, what was measured of each, which are best, and when
 * they part. Units are in the names; radians and SI but where a name says otherwise. No tapes: `run` gives those.
 */
export function compareReport(comparison: Comparison) {
  const { plan, scenario, runs, parting } = comparison;
  const named = <T extends object>({ name, value }: { name: string; value: T }) => ({ name, ...value });
  const best = bestIndexes(runs);
  return {
    version: programVersion(),
    scalesVersion: SCALES_VERSION,
    solver: plan.solver,
    seed: plan.seeds[0]!,
    weights: plan.weights,
    rig: { board: named(plan.board), rider: named(plan.riders[0]!) },
    scenario: { name: plan.scenarios[0]!.name, ...scenario },
    best: best.map((index) => runs[index]!.name),
    parting: parting && {
      timeS: parting.timeS,
      by: parting.by,
      between: parting.between.map((index) => runs[index]!.name),
      bandRad: runs[0]!.window.bandRad,
      pitchRad: Object.fromEntries(runs.map(({ name }, index) => [name, parting.pitchesRad[index] ?? null])),
    },
    profiles: runs.map(({ name, cell, outcome, marks, window, metrics }, index) => ({
      name,
      outcome,
      failed: cell.failed,
      eventReached: cell.eventReached,
      cost: cell.cost,
      marks,
      window,
      metrics,
      profile: plan.profiles[index]!.value,
    })),
  };
}
