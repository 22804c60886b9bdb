/**
 * In which cells was a kept profile proven? Its rig as it was kept, its scenarios as the working folder has them now.
 */
import { weightsWith } from '../measure/scales.js';
import type { KeptFile } from '../quantity/kept-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
import type { ScenarioFile } from '../quantity/scenario-file.js';
import { load } from '../store/library.js';
import type { Places } from '../store/places.js';
import { cellsPart } from './kept-parts.js';
import type { Named, RankPlan } from './plan.js';

/** The plan that a profile was proven in, and whether its scenarios hold something else since. */
export interface KeptPlan {
  plan: RankPlan;
  hasOtherScenarios: boolean;
}

/** The plan of a kept profile, or every scenario that is missing or faulty. */
export function keptPlan(places: Places, { name, value }: Named<KeptFile>): Checked<KeptPlan, Problem> {
  const { cells, rig, profile } = value;
  const faults: Problem[] = [];
  const scenarios = cells.scenarios.flatMap((scenario): Named<ScenarioFile>[] => {
    const loaded = load(places, 'scenario', scenario);
    if (!loaded.ok) faults.push(...loaded.faults);
    return loaded.ok ? [{ name: scenario, value: loaded.value.value }] : [];
  });
  if (faults.length > 0) return { ok: false, faults };
  const plan: RankPlan = {
    board: { name: rig.boardName, value: rig.board },
    riders: rig.riders.map((one) => ({ name: one.name, value: one.rider })),
    profiles: [{ name, value: profile }],
    scenarios,
    charges: [...cells.chargesPercent],
    seeds: [...cells.seeds],
    solver: 'fixed',
    weights: weightsWith(cells.weights),
  };
  const { scenarioHash } = cells;
  const hasOtherScenarios = scenarioHash !== undefined && cellsPart(plan).scenarioHash !== scenarioHash;
  return { ok: true, value: { plan, hasOtherScenarios } };
}
