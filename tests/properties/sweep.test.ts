/**
 * Does what a sweep says of a candidate belong to it alone? With rigs and ranges by chance: more or fewer candidates change nobody's
 * score, a finalist's figures are those of the ranking once it is a file, and parts put together are the whole, to the last bit.
 * No outside source.
 */
import fc from 'fast-check';
import { describe } from 'vitest';
import type { ProfileResult } from '../../src/measure/profile-result.js';
import { freshProfileText, profileOfText } from '../../src/store/profile-text.js';
import { fieldCalled } from '../../src/sweep/range.js';
import { rank } from '../../src/tasks/rank.js';
import { createLedger } from '../../src/tasks/sweep-ledger.js';
import type { SweepPlan } from '../../src/tasks/sweep-plan.js';
import { runShard } from '../../src/tasks/sweep-shard.js';
import { trialsOf } from '../../src/tasks/plan.js';
import { weightsArbitrary } from '../measure/some-metrics.js';
import { around } from './drawn-numbers.js';
import { boards, profiles, riders } from './drawn-rig.js';
import { scenariosOn, shortRoad } from './drawn-scenario.js';
import { holds } from './properties.js';
import { searched } from './searched-sweep.js';

/** Boards with a slow loop: a sweep does not care, and its cells take less. */
const slowBoards = boards.map((board) => ({
  ...board,
  controller: { ...board.controller, loopRateHz: 250 },
}));

const range = (key: string, low: fc.Arbitrary<number>) =>
  fc.record({ min: low, factor: around(1.5, 3, 6) }).map(({ min, factor }) => {
    const { path, unit } = fieldCalled(key)!;
    return { path, unit, min, max: Number((min * factor).toPrecision(3)) };
  });

const plans: fc.Arbitrary<SweepPlan> = fc
  .record({
    board: slowBoards,
    rider: riders,
    heavier: around(1.05, 1.2, 1.4),
    scenario: scenariosOn(shortRoad, 0.5),
    base: profiles,
    proportional: range('proportionalAPerDeg', around(4, 10, 20)),
    rate: range('rateAPerDegPerS', around(0.2, 0.6, 1.5)),
    weights: weightsArbitrary,
    seed: fc.nat(1000),
  })
  .map(({ board, rider, heavier, scenario, base, proportional, rate, weights, seed }) => ({
    cells: {
      board: { name: 'pebble', value: board },
      riders: [
        { name: 'kim', value: rider },
        { name: 'bo', value: { ...rider, body: { ...rider.body, massKg: rider.body.massKg * heavier } } },
      ],
      profiles: [],
      scenarios: [{ name: 'short', value: scenario }],
      charges: [null],
      seeds: [seed],
      solver: 'fixed',
      weights,
    },
    base: { name: 'plain', value: base },
    ranges: [proportional, rate],
    count: 6,
    grid: 2,
    isExhaustive: true,
    isRefined: false,
    seed,
    checkedCells: 0,
  }));

const figures = ({ failures, score, worst, cells }: ProfileResult) =>
  JSON.stringify({ failures, score, worst: worst.key, cells });

function expectSame(name: string, one: string, other: string): void {
  if (one !== other) throw new Error(`${name}: ${one} against ${other}`);
}

/** Each run of these is a sweep. */
const LONG = { share: 1 / 10 };

describe('a sweep', () => {
  holds(
    'says the same of a candidate whichever others are there',
    fc.asyncProperty(plans, async (plan) => {
      const few = await searched(plan);
      // The points of a grid of two are among those of a grid of three.
      const many = await searched({ ...plan, grid: 3 });
      for (const [index, { values }] of few.finalists.entries()) {
        const place = many.finalists.findIndex((other) => other.values.join() === values.join());
        expectSame(values.join(), figures(few.results[index]!), figures(many.results[place]!));
      }
    }),
    LONG,
  );

  holds(
    'says of a finalist what the ranking says of its file',
    fc.asyncProperty(plans, async (plan) => {
      const { finalists, results } = await searched({ ...plan, grid: null });
      const saved = finalists.map(({ name, profile }) => {
        const read = profileOfText(freshProfileText(profile), name);
        if (!read.ok) throw new Error(JSON.stringify(read.faults));
        return { name, value: read.value };
      });
      const ranked = await rank({ ...plan.cells, profiles: saved }, { threads: 1 });
      for (const result of results) {
        const own = ranked.find(({ name }) => name === result.name)!;
        expectSame(result.name, figures(result), figures(own));
      }
    }),
    LONG,
  );

  holds(
    'shared out and put together is the whole, and makes no run twice',
    fc.asyncProperty(plans, fc.integer({ min: 1, max: 5 }), fc.boolean(), async (plan, parts, isSpread) => {
      const shared = { ...plan, grid: isSpread ? null : plan.grid };
      const whole = await searched(shared);
      const made: string[] = [];
      for (let part = parts; part > 0; part--) {
        const ledger = createLedger(trialsOf(plan.cells), new Map(), (line) => made.push(line));
        await runShard(shared, ledger, { part, parts, threads: 1 });
      }
      const merged = await searched(shared, made);
      expectSame('made for all', String(new Set(made).size), String(made.length));
      expectSame('made when put together', '', merged.made.join('\n'));
      expectSame('lines', whole.lines.join('\n'), merged.lines.join('\n'));
      expectSame('figures', whole.results.map(figures).join(), merged.results.map(figures).join());
    }),
    LONG,
  );
});
