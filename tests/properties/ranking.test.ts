/**
 * Does a profile's score belong to it alone? Through the ranking itself, with files by chance: one more profile changes
 * nobody's number and no order among the others, and the order in which profiles, scenarios, riders, charges and seeds
 * are named never matters, to the last bit. No outside source.
 */
import fc from 'fast-check';
import { describe } from 'vitest';
import type { ProfileResult } from '../../src/measure/profile-result.js';
import type { Named, RankPlan } from '../../src/tasks/plan.js';
import { rank } from '../../src/tasks/rank.js';
import { weightsArbitrary } from '../measure/some-metrics.js';
import { around } from './drawn-numbers.js';
import { boards, profiles, riders } from './drawn-rig.js';
import { scenariosOn, shortRoad } from './drawn-scenario.js';
import { holds } from './properties.js';

/** How many riders, scenarios, charges and seeds a plan has: a few cells, and every list is once a list. */
const counts = fc.constantFrom<number[]>([2, 1, 1, 1], [1, 2, 1, 1], [1, 1, 2, 1], [1, 1, 1, 2]);

const two = <T>(one: fc.Arbitrary<T>) => fc.array(one, { minLength: 2, maxLength: 2 });

const NAMES = ['wool', 'silk', 'felt', 'hemp'] as const;

function named<T>(values: readonly T[], names: readonly string[] = NAMES): Named<T>[] {
  return values.map((value, index) => ({ name: names[index]!, value }));
}

/** Boards with a slow loop: a ranking does not care, and its cells take less. */
const slowBoards = boards.map((board) => ({
  ...board,
  controller: { ...board.controller, loopRateHz: 250 },
}));

const names = fc.shuffledSubarray([...NAMES], { minLength: NAMES.length });

const plans: fc.Arbitrary<RankPlan> = fc
  .record({
    names,
    counts,
    board: slowBoards,
    riders: two(riders),
    profiles: two(profiles),
    scenarios: two(scenariosOn(shortRoad, 0.5)),
    charge: around(1, 50, 99).map(Math.round),
    seeds: fc.uniqueArray(fc.nat(), { minLength: 2, maxLength: 2 }),
    weights: weightsArbitrary,
  })
  .map(({ board, names: order, counts: [ofRiders, ofScenarios, ofCharges, ofSeeds], charge, ...drawn }) => ({
    board: { name: 'pebble', value: board },
    riders: named(drawn.riders.slice(0, ofRiders)),
    profiles: named(drawn.profiles, order),
    scenarios: named(drawn.scenarios.slice(0, ofScenarios)),
    charges: [null, charge].slice(0, ofCharges),
    seeds: drawn.seeds.slice(0, ofSeeds),
    solver: 'fixed',
    weights: drawn.weights,
  }));

const byKey = (a: { key: string }, b: { key: string }) => (a.key < b.key ? -1 : 1);

/** A ranking as text, every number to the last bit, with each profile's cells in the order of their keys. */
function textOf(ranked: readonly ProfileResult[]): string {
  return JSON.stringify(ranked.map(({ cells, ...rest }) => ({ ...rest, cells: [...cells].sort(byKey) })));
}

function expectSame(one: readonly ProfileResult[], other: readonly ProfileResult[]): void {
  if (textOf(one) === textOf(other)) return;
  const row = ({ name, failures, score }: ProfileResult) => `${name} ${failures} ${score}`;
  throw new Error(`${one.map(row).join(', ')} against ${other.map(row).join(', ')}`);
}

/** The plan with every list in it shuffled. */
function shuffled(plan: RankPlan): fc.Arbitrary<RankPlan> {
  const any = <T>(list: readonly T[]) => fc.shuffledSubarray([...list], { minLength: list.length });
  return fc.record({
    board: fc.constant(plan.board),
    riders: any(plan.riders),
    profiles: any(plan.profiles),
    scenarios: any(plan.scenarios),
    charges: any(plan.charges),
    seeds: any(plan.seeds),
    solver: fc.constant(plan.solver),
    weights: fc.constant(plan.weights),
  });
}

describe('a ranking', () => {
  holds(
    'gives everyone the same numbers and the same order when one more profile is there',
    fc.asyncProperty(plans, profiles, fc.nat(3), async (plan, newcomer, place) => {
      const before = await rank(plan, { threads: 1 });
      const taken = plan.profiles.map(({ name }) => name);
      const name = NAMES.find((free) => !taken.includes(free))!;
      const more = plan.profiles.toSpliced(place, 0, { name, value: newcomer });
      const after = await rank({ ...plan, profiles: more }, { threads: 1 });
      if (after.length !== before.length + 1) throw new Error(`${after.length} profiles in the end`);
      expectSame(
        before,
        after.filter((profile) => profile.name !== name),
      );
    }),
  );

  holds(
    'is the same whatever the order of profiles, scenarios, riders, charges and seeds',
    fc.asyncProperty(
      plans.chain((plan) => fc.tuple(fc.constant(plan), shuffled(plan))),
      async ([plan, other]) => {
        expectSame(await rank(plan, { threads: 1 }), await rank(other, { threads: 1 }));
      },
    ),
  );
});
