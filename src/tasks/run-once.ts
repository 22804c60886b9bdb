/**
 * One run for a person to look at: a profile in a scenario, with everything measured and everything that is needed to do
 * it again.
 */
import { measuredEvent } from '../measure/marks.js';
import { peakRow } from '../measure/moments.js';
import type { ScenarioFile } from '../quantity/scenario-file.js';
import { TAPE_COLUMNS } from '../simulate/tape.js';
import type { Solver } from '../simulate/run.js';
import { prepareTrial } from '../simulate/trial.js';
import { programVersion } from '../store/places.js';
import { measureProfile, type MeasuredRun } from './evaluate.js';
import { trialsOf, type RankPlan } from './plan.js';

/** A run with what was met by name. */
export interface SingleRun extends MeasuredRun {
  plan: RankPlan;
  scenario: ScenarioFile;
}

/** Runs the first profile of a plan in its first trial. */
export function runOnce(plan: RankPlan): SingleRun {
  const [planned] = trialsOf(plan);
  const [profile] = plan.profiles;
  if (planned === undefined || profile === undefined)
    throw new Error('a plan to run has a profile and a trial');
  const trial = prepareTrial(planned.circumstances);
  return { plan, scenario: trial.scenario, ...measureProfile(trial, profile.value, { solver: plan.solver }) };
}

/** The measured event of a run and the largest pitch in its window: where and when after the event. */
export function peakFacts({ scenario, tape, window }: Pick<SingleRun, 'scenario' | 'tape' | 'window'>) {
  const row = peakRow(tape, window);
  return {
    eventName: measuredEvent(scenario),
    peakPitchRad: tape.columns.pitchRad[row] ?? 0,
    peakAfterS: Math.max(0, (row - window.firstRow) * tape.tickS),
  };
}

/** The JSON of `run`: rig, scenario and profile as they were run, and the tape column by column, units in the names. */
export function runReport({ plan, scenario, outcome, tape, marks, window, metrics }: SingleRun) {
  const named = <T extends object>({ name, value }: { name: string; value: T }) => ({ name, ...value });
  const column = (values: Float64Array) => Array.from(values.subarray(0, tape.length));
  return {
    version: programVersion(),
    solver: plan.solver satisfies Solver,
    seed: plan.seeds[0]!,
    rig: { board: named(plan.board), rider: named(plan.riders[0]!) },
    scenario: { name: plan.scenarios[0]!.name, ...scenario },
    profile: named(plan.profiles[0]!),
    outcome,
    marks,
    window,
    metrics,
    tape: {
      tickS: tape.tickS,
      length: tape.length,
      columns: Object.fromEntries(TAPE_COLUMNS.map((name) => [name, column(tape.columns[name])])),
    },
  };
}
