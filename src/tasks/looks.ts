/**
 * Runs to be looked at: computed by a crew when a screen wants them, the newest wish first, and kept while they may be
 * wanted again.
 */
import { plantOf } from '../model/plant.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { ScenarioFile } from '../quantity/scenario-file.js';
import type { TraceView } from '../show/trace-view.js';
import { contentKey, RecentMap } from './content-key.js';
import type { Crew } from './crew.js';
import type { RunOnRoad } from './evaluate.js';
import { CellFailed } from './labour.js';
import type { Named, PlannedTrial, RankPlan } from './plan.js';
import { viewOf } from './view-run.js';

/** A run that is wanted: a profile in one trial of a plan. */
export interface LookWish {
  plan: RankPlan;
  profile: Named<ProfileFile>;
  trial: PlannedTrial;
}

/** A run to be looked at. */
export interface Look extends RunOnRoad {
  wish: LookWish;
  scenario: ScenarioFile;
  view: TraceView;
}

/** The looks that are wanted, as far as they are there. */
export interface Looks {
  /** Asks for runs; those asked for before and not begun are dropped. */
  want: (wishes: readonly LookWish[]) => void;
  /** The run of a wish, or null while it is not there. */
  find: (wish: LookWish) => Look | null;
}

/** Runs kept; each is about 2 MB. */
const KEPT = 16;

/** Opens looks; `onChange` hears that one more is there, `onFault` of what went wrong: a CellFailed where a run was not to be had. */
export function openLooks(
  crew: Crew,
  { onChange, onFault }: { onChange: () => void; onFault: (error: unknown) => void },
): Looks {
  const memory = new RecentMap<Look>(KEPT);
  const begun = new Set<string>();
  let waiting: readonly LookWish[] = [];
  const keys = new WeakMap<PlannedTrial, string>();
  const keyOf = ({ plan, profile, trial }: LookWish) => {
    const key = keys.get(trial) ?? contentKey(trial);
    keys.set(trial, key);
    return key + plan.solver + contentKey([plan.board.name, profile]);
  };
  const look = async (wish: LookWish, key: string) => {
    begun.add(key);
    try {
      const task = { profile: wish.profile.value, trials: [wish.trial], solver: wish.plan.solver };
      const run = await crew.run(task).catch((reason: unknown) => {
        throw new CellFailed(task, wish.trial, reason);
      });
      memory.set(key, lookOf(wish, run));
    } finally {
      begun.delete(key);
    }
    onChange();
    beginNext();
  };
  const beginNext = () => {
    for (const wish of waiting) {
      const key = keyOf(wish);
      if (begun.size >= crew.size) return;
      if (begun.has(key) || memory.get(key) !== undefined) continue;
      look(wish, key).catch(onFault);
    }
  };
  return {
    want: (wishes) => {
      waiting = wishes;
      beginNext();
    },
    find: (wish) => memory.get(keyOf(wish)) ?? null,
  };
}

function lookOf(wish: LookWish, run: RunOnRoad): Look {
  const { plan, profile, trial } = wish;
  const { board, rider, scenario } = trial.circumstances;
  const names = {
    profile: profile.name,
    scenario: trial.key.scenario,
    board: plan.board.name,
    rider: trial.key.rider,
  };
  const view: TraceView = {
    ...viewOf({ ...run, scenario }, names),
    rig: plantOf(board, rider),
    road: run.road,
    finalPitchRad: run.metrics.finalPitchRad,
    scaleRanges: { currentA: { lowest: -board.motor.brakeCurrentA, highest: board.motor.driveCurrentA } },
  };
  return { ...run, wish, scenario, view };
}
