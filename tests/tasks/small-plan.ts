/**
 * A plan small enough for a test: three profiles, of which one falls, on two short scenarios.
 */
import { weightsWith } from '../../src/measure/scales.js';
import { boardSchema } from '../../src/quantity/board-file.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import { riderSchema } from '../../src/quantity/rider-file.js';
import { scenarioSchema } from '../../src/quantity/scenario-file.js';
import type { RankPlan } from '../../src/tasks/plan.js';
import { validBoard, validRider } from '../quantity/valid-values.js';

const profile = (proportionalAPerDeg: number, rateAPerDegPerS: number) =>
  profileSchema.parse({ summary: 'A profile for tests', gains: { proportionalAPerDeg, rateAPerDegPerS } });

const level = scenarioSchema.parse({
  summary: 'Levelling',
  durationS: 3,
  start: { noseUpDeg: 6 },
  road: [{ lengthM: 20 }],
  speeds: [{ atS: 0, speedKmPerH: 0 }],
  measure: { as: 'step', bandDeg: 1 },
});

const kerb = scenarioSchema.parse({
  summary: 'A drop',
  durationS: 4,
  start: { speedKmPerH: 10 },
  road: [{ lengthM: 3 }, { name: 'kerb', lengthM: 20, stepUpM: -0.04 }],
  speeds: [{ atS: 0, speedKmPerH: 10 }],
  measure: { from: 'kerb', as: 'disturbance', bandDeg: 1 },
});

/** The plan; parts given replace those of the usual one. */
export function smallPlan(parts: Partial<RankPlan> = {}): RankPlan {
  return {
    board: { name: 'pebble', value: boardSchema.parse(validBoard()) },
    riders: [{ name: 'kim', value: riderSchema.parse(validRider()) }],
    profiles: [
      { name: 'wool', value: profile(20, 1.2) },
      { name: 'silk', value: profile(2, 0.1) },
      { name: 'felt', value: profile(30, 2) },
    ],
    scenarios: [
      { name: 'level', value: level },
      { name: 'kerb', value: kerb },
    ],
    charges: [null],
    seeds: [1, 2],
    solver: 'fixed',
    weights: weightsWith(),
    ...parts,
  };
}
