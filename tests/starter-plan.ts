/**
 * The plan that `rank` makes of the starter set when nothing is named.
 */
import { weightsWith } from '../src/measure/scales.js';
import { findPlaces, programFolder } from '../src/store/places.js';
import type { RankPlan } from '../src/tasks/plan.js';
import { planFor } from '../src/tasks/select.js';

/** All starter profiles and scenarios, the default board and rider, one seed. */
export function starterPlan(): RankPlan {
  const planned = planFor(findPlaces(programFolder()), {
    board: undefined,
    riders: undefined,
    profiles: null,
    scenarios: null,
    charges: [null],
    seeds: [1],
    solver: 'fixed',
    weights: weightsWith(),
  });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value;
}
