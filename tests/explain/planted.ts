/**
 * Plants one cause in a composed rig, as strong as it takes to be felt, and asks for an explanation.
 */
import { blame, type Blame, type Toll } from '../../src/explain/blame.js';
import { CAUSES, type Makings } from '../../src/explain/causes.js';
import { referenceProfile } from '../../src/explain/reference-profile.js';
import { profileResult } from '../../src/measure/profile-result.js';
import { weightsWith } from '../../src/measure/scales.js';
import { findPlaces, programFolder } from '../../src/store/places.js';
import { createEvaluator } from '../../src/tasks/evaluate.js';
import { planFor } from '../../src/tasks/select.js';
import { SPOILS, type Spoil } from './spoils.js';

const evaluator = createEvaluator();

/** What cells cost together. */
export function tollOf(cells: readonly Makings[]): Toll {
  const results = cells.map(({ profile, ...circumstances }, index) => {
    const { scenario, seed } = circumstances;
    const key = { scenario: String(index), rider: 'r', chargePercent: scenario.chargePercent, seed };
    return evaluator.cell(profile, { key, circumstances }, 'fixed');
  });
  const { failures, cells: priced } = profileResult({ name: 'p', summary: '' }, results, weightsWith());
  return { failures, mean: priced.reduce((sum, { cost }) => sum + cost, 0) / priced.length };
}

/** A profile that costs this much more than the composed one is felt; a rig, where a cell becomes marginal on the mean. */
const FELT_RATIO = 1.15;
const FELT_COST = 0.5;
const STRENGTHS = [0.15, 0.4, 0.65, 0.9] as const;

/** A planted case: what was planted how strongly, and what was said; null where even the strongest is not felt. */
export interface Planted {
  cause: string;
  strength: number;
  said: Blame;
}

/** Plants a cause in composed cells. `jitter` (0 to 0.1) moves its strength. */
export function plant(composed: readonly Makings[], { cause, spoil }: Spoil, jitter: number): Planted | null {
  const before = tollOf(composed);
  const isOfProfile = CAUSES.find(({ name }) => name === cause)?.family === 'profile';
  const feltFrom = isOfProfile ? FELT_RATIO * before.mean : FELT_COST;
  for (const step of STRENGTHS) {
    const strength = step + jitter;
    const cells = composed.map((makings) => spoil(makings, strength));
    const toll = tollOf(cells);
    if (toll.failures > before.failures || toll.mean > feltFrom) {
      return { cause, strength, said: explained(cells, toll) };
    }
  }
  return null;
}

/** The explanation of cells, by the same steps as the program's. */
function explained(cells: readonly Makings[], toll: Toll): Blame {
  const referenced = cells.map((makings) => ({
    ...makings,
    profile: referenceProfile(makings.board, makings.rider),
  }));
  const without = (from: readonly Makings[], remove: (typeof CAUSES)[number]['remove']) =>
    tollOf(from.map((makings, index) => remove(makings, referenced[index]!.profile)));
  const ablations = CAUSES.filter(({ isPresent }) =>
    cells.some((makings, index) => isPresent(makings, referenced[index]!.profile)),
  ).map(({ name, family, remove }) => ({
    cause: name,
    toll: without(cells, remove),
    underReference: family === 'profile' ? null : without(referenced, remove),
  }));
  return blame(toll, tollOf(referenced), ablations);
}

/** Scenarios of the starter set in which every cause can be felt by somebody, and a composed profile falls in none. */
const SCENARIOS = ['hard-stop', 'kerb-drop', 'level-from-nose-up', 'shove', 'roll-off', 'wet-leaves'];

/** Plants every cause on a starter board under some riders, `times` over with other strengths and seeds of chance. */
export function plantAll(
  board: string,
  { riders, times }: { riders: readonly string[]; times: number },
): Planted[] {
  const planned = planFor(findPlaces(programFolder()), {
    board,
    riders,
    profiles: null,
    scenarios: SCENARIOS,
    charges: [null],
    seeds: [1],
    solver: 'fixed',
    weights: weightsWith(),
  });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const plan = planned.value;
  return plan.riders.flatMap(({ value: rider }, riderIndex) =>
    Array.from({ length: times }, (_, time) => time).flatMap((time) => {
      const profile = referenceProfile(plan.board.value, rider);
      const composed = plan.scenarios.map(({ value: scenario }): Makings => {
        return { profile, board: plan.board.value, rider, scenario, seed: 1 + time, noiseRatio: 1 };
      });
      const jitter = ((7 * riderIndex + 3 * time) % 10) / 100;
      return SPOILS.flatMap((spoil) => plant(composed, spoil, jitter) ?? []);
    }),
  );
}

/** What was planted and what was said instead, for those that were not named first. */
export function missesOf(cases: readonly Planted[]): string[] {
  return cases
    .filter(({ cause, said }) => said.findings[0]?.cause !== cause)
    .map(
      ({ cause, strength, said }) =>
        `${cause} (${strength.toFixed(2)}): ${said.findings.map((found) => found.cause).join(', ')}`,
    );
}
