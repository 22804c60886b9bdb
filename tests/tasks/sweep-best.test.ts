/**
 * Does a sweep tell of the best so far as what it is: over the same cells it never gets worse, and the last told is the first finalist?
 * Does its answer hold how the profile does from which all begin?
 */
import { beforeAll, expect, it } from 'vitest';
import { byFailuresAndScore } from '../../src/measure/score.js';
import type { ProfileResult } from '../../src/measure/profile-result.js';
import type { ScenarioFile } from '../../src/quantity/scenario-file.js';
import { trialsOf, type Named } from '../../src/tasks/plan.js';
import { createLedger } from '../../src/tasks/sweep-ledger.js';
import type { SweepPlan } from '../../src/tasks/sweep-plan.js';
import { sweep, type SweepAnswer } from '../../src/tasks/sweep.js';
import { crewHere } from './crew-here.js';
import { smallPlan } from './small-plan.js';

const small = smallPlan();
/** Two seconds are enough to tell one from another. */
const brief = ({ name, value }: Named<ScenarioFile>) => ({ name, value: { ...value, durationS: 2 } });
const plan: SweepPlan = {
  cells: { ...small, profiles: [], scenarios: small.scenarios.map(brief) },
  base: small.profiles[0]!,
  ranges: [
    { path: ['gains', 'proportionalAPerDeg'], unit: 'A/deg', min: 8, max: 60 },
    { path: ['gains', 'rateAPerDegPerS'], unit: 'A/(deg/s)', min: 0.3, max: 4 },
  ],
  count: 6,
  grid: null,
  isExhaustive: false,
  isRefined: true,
  seed: 2,
  checkedCells: 0,
};

/** Steady rides are not what is asked here, and take longest: none is looked at. */
const unseen = () => Promise.resolve(null);

const told: ProfileResult[] = [];
let lists: (readonly ProfileResult[])[] = [];
let answer: SweepAnswer;
beforeAll(async () => {
  const ledger = createLedger(trialsOf(plan.cells), new Map(), () => {});
  answer = await sweep(plan, ledger, {
    threads: { ...crewHere(), ride: unseen },
    onBest: (leaders) => {
      for (const { candidate, result } of leaders) expect(result.name).toBe(candidate.name);
      const best = leaders.map(({ result }) => result);
      lists = [...lists, best];
      told.push(...best.slice(0, 1));
    },
  });
}, 120_000);

it('over the same cells the best never gets worse', () => {
  const steps = told.slice(1).map((best, index) => [told[index]!, best] as const);
  const alike = steps.filter(([before, after]) => before.cells.length === after.cells.length);
  expect(alike.length).toBeGreaterThan(5);
  for (const [before, after] of alike) expect(byFailuresAndScore(after, before)).toBeLessThanOrEqual(0);
});

it('each stands once among the best, over as many cells as the others', () => {
  for (const best of lists) {
    expect(new Set(best.map(({ name }) => name)).size).toBe(best.length);
    expect(new Set(best.map(({ cells }) => cells.length)).size).toBe(1);
  }
});

it('the last told is the first finalist, over all cells', () => {
  const [first] = answer.finalists;
  expect(told.at(-1)!.name).toBe(first!.result.name);
  expect(told.at(-1)!.cells).toHaveLength(trialsOf(plan.cells).length);
});

it('the answer holds the profile from which all begin, in every cell', () => {
  expect(answer.base.name).toBe(plan.base.name);
  expect(answer.base.cells).toHaveLength(trialsOf(plan.cells).length);
});
