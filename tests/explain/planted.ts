/**
 * Plants one cause in a composed rig, as strong as it takes to be felt, and asks for an explanation.
 */
import { blame, whomToAsk, type Blame, type Outcome } from '../../src/explain/blame.js';
import { withoutCause } from '../../src/explain/cause.js';
import type { Makings } from '../../src/explain/makings.js';
import { CAUSES } from '../../src/explain/causes.js';
import { referenceProfile } from '../../src/control/reference-profile.js';
import { profileResult } from '../../src/measure/profile-result.js';
import { weightsWith } from '../../src/measure/scales.js';
import type { BoardFile } from '../../src/quantity/board-file.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import type { RiderFile } from '../../src/quantity/rider-file.js';
import { scenarioSchema, type ScenarioFile } from '../../src/quantity/scenario-file.js';
import { load } from '../../src/store/library.js';
import { STREAMS, uniforms } from '../../src/scenario/random.js';
import { findPlaces, programFolder } from '../../src/store/places.js';
import { createEvaluator } from '../../src/tasks/evaluate.js';
import { ROAD_SPOILS, SPOILS, type Spoil } from './spoils.js';

const evaluator = createEvaluator();

/** What came of cells. */
export function outcomesOf(cells: readonly Makings[]): Outcome[] {
  const results = cells.map(({ profile, ...circumstances }, index) => {
    const { scenario, seed } = circumstances;
    const key = { scenario: String(index), rider: 'r', chargePercent: scenario.chargePercent, seed };
    return evaluator.cell(profile, { key, circumstances }, { solver: 'fixed' });
  });
  return profileResult({ name: 'p', summary: '' }, results, weightsWith()).cells;
}

const meanOf = (outcomes: readonly Outcome[]) =>
  outcomes.reduce((sum, { cost }) => sum + cost, 0) / outcomes.length;
const failuresOf = (outcomes: readonly Outcome[]) => outcomes.filter(({ failed }) => failed).length;

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
  const before = outcomesOf(composed);
  const isOfProfile = CAUSES.find(({ name }) => name === cause)?.family === 'profile';
  const feltFrom = isOfProfile ? FELT_RATIO * meanOf(before) : FELT_COST;
  for (const step of STRENGTHS) {
    const strength = step + jitter;
    const cells = composed.map((makings) => spoil(makings, strength));
    const outcomes = outcomesOf(cells);
    if (failuresOf(outcomes) > failuresOf(before) || meanOf(outcomes) > feltFrom) {
      return { cause, strength, said: explained(cells) };
    }
  }
  return null;
}

/** The explanation of cells, by the same steps as the program's (`tasks/explain.ts`), one after the other. */
export function explained(cells: readonly Makings[]): Blame {
  const suited = cells.map(({ board, rider }) => referenceProfile(board, rider));
  const referenced = cells.map((makings, index) => ({ ...makings, profile: suited[index]! }));
  const [own, reference] = [outcomesOf(cells), outcomesOf(referenced)];
  const { isProfileToBlame, isRigTroubled } = whomToAsk(own, reference);
  const suspects = CAUSES.filter(({ family, isPresent }) => {
    const isAsked = family === 'profile' ? isProfileToBlame : isRigTroubled;
    return isAsked && cells.some((makings, index) => isPresent(makings, suited[index]!));
  });
  const ablations = suspects.map((cause) => {
    const isUnderReference = isProfileToBlame && cause.family !== 'profile';
    const from = isUnderReference ? referenced : cells;
    const without = from.map((makings, index) => withoutCause(cause, makings, suited[index]!));
    return { cause: cause.name, cells: outcomesOf(without), isUnderReference };
  });
  return blame(own, reference, ablations);
}

const road = (...pieces: object[]) => [{ lengthM: 3 }, ...pieces];

interface Sketch extends Record<string, unknown> {
  speeds: number[][];
  measure: object;
}

function scenariosOf(sketches: Sketch[]): ScenarioFile[] {
  return sketches.map(({ speeds, measure, ...rest }) =>
    scenarioSchema.parse({
      summary: 'For planted causes.',
      ...rest,
      speeds: speeds.map(([atS, speedKmPerH]) => ({ atS, speedKmPerH })),
      measure: { ...measure, bandDeg: 1 },
    }),
  );
}

/** Short scenarios in which every cause can be felt by somebody, and a composed profile falls in none. */
const SCENARIOS = scenariosOf([
  {
    durationS: 3,
    start: { noseUpDeg: 6 },
    road: [{ lengthM: 20 }],
    speeds: [[0, 0]],
    measure: { as: 'step' },
  },
  {
    durationS: 4,
    start: { speedKmPerH: 12 },
    road: road({ name: 'kerb', lengthM: 30, stepUpM: -0.08 }),
    speeds: [[0, 12]],
    measure: { from: 'kerb', as: 'disturbance' },
  },
  {
    durationS: 5,
    start: { speedKmPerH: 18 },
    road: [{ lengthM: 40 }],
    speeds: [
      [0, 18],
      [0.5, 2],
    ],
    measure: { atS: 0.5, as: 'ride' },
  },
  {
    durationS: 5,
    start: { speedKmPerH: 4 },
    road: road({ name: 'hill', lengthM: 40, gradePercent: 8, easeM: 2 }),
    speeds: [[0, 16]],
    measure: { from: 'hill', as: 'ride' },
  },
]);

/** Steady rides over a road of its own. */
const ROAD_SCENARIOS = scenariosOf(
  [10, 14, 18].map((speedKmPerH) => ({
    durationS: 5,
    start: { speedKmPerH },
    road: [...road({ name: 'road', lengthM: 20 }), { lengthM: 20 }],
    speeds: [[0, speedKmPerH]],
    measure: { from: 'road', as: 'ride' },
  })),
);

/** A composed profile that is not the reference: every number of it is off by up to a quarter. */
function composedProfile(reference: ProfileFile, draws: () => number): ProfileFile {
  const near = (value: number) => value * 1.25 ** (2 * draws() - 1);
  const { proportionalAPerDeg, rateAPerDegPerS } = reference.gains;
  return {
    ...reference,
    gains: {
      proportionalAPerDeg: near(proportionalAPerDeg),
      rateAPerDegPerS: near(rateAPerDegPerS),
      integralAPerDegS: 0,
    },
    shaping: { ...reference.shaping, blendTimeS: near(reference.shaping.blendTimeS) },
  };
}

/** Rides in which some causes can be felt, and the causes. */
interface Ground {
  scenarios: readonly ScenarioFile[];
  spoils: readonly Spoil[];
}

/** What can be felt in usual rides. */
export const USUAL: Ground = { scenarios: SCENARIOS, spoils: SPOILS };

/** What a road can do to stiff legs; bent ones do not bounce on. */
export const ON_ROADS: Ground = { scenarios: ROAD_SCENARIOS, spoils: ROAD_SPOILS };
export const ON_ROADS_WITH_BENT_KNEES: Ground = {
  scenarios: ROAD_SCENARIOS,
  spoils: ROAD_SPOILS.filter(({ cause }) => cause !== "the tyre's own frequency"),
};

/** Composed cells of a ground on a starter board under a rider, the n-th of them. */
function composedCells(
  {
    board,
    rider,
    time,
    riderIndex,
  }: { board: BoardFile; rider: RiderFile; time: number; riderIndex: number },
  { scenarios }: Ground,
): { composed: Makings[]; jitter: number } {
  const numbers = [...uniforms(1 + time + 10 * riderIndex, STREAMS.road, 8)];
  const draws = () => numbers.pop()!;
  const profile = composedProfile(referenceProfile(board, rider), draws);
  const composed = scenarios.map((scenario): Makings => {
    return { profile, board, rider, scenario, seed: 1 + time, noiseRatio: 1 };
  });
  return { composed, jitter: draws() / 10 };
}

/** A starter file. */
function starter<K extends 'board' | 'rider'>(kind: K, name: string) {
  const loaded = load(findPlaces(programFolder()), kind, name);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.faults));
  return loaded.value.value;
}

/** What is said of composed cells that nobody has spoiled. */
export function unspoiled(
  board: string,
  ground: Ground,
  { riders, times }: { riders: readonly string[]; times: number },
): Blame[] {
  return riders.flatMap((name, riderIndex) =>
    Array.from({ length: times }, (_, time) => {
      const rig = { board: starter('board', board), rider: starter('rider', name) };
      return explained(composedCells({ ...rig, time, riderIndex }, ground).composed);
    }),
  );
}

/** Plants every cause of a ground on a starter board under some riders, `times` over with other strengths and seeds of chance. */
export function plantAll(
  board: string,
  ground: Ground,
  { riders, times }: { riders: readonly string[]; times: number },
): Planted[] {
  return riders.flatMap((name, riderIndex) =>
    Array.from({ length: times }, (_, time) => time).flatMap((time) => {
      const rig = { board: starter('board', board), rider: starter('rider', name) };
      const { composed, jitter } = composedCells({ ...rig, time, riderIndex }, ground);
      return ground.spoils.flatMap((spoil) => plant(composed, spoil, jitter) ?? []);
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
