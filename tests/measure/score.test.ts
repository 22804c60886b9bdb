/** The score and the order of profiles: no bribes for falls, no influence between profiles, no matter of order. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Metrics } from '../../src/measure/metrics.js';
import { COST_NAMES, COST_TERMS, weightsWith } from '../../src/measure/scales.js';
import type { CostName } from '../../src/measure/scales.js';
import { FAILED_CELL_COST, rankProfiles, scoreProfile } from '../../src/measure/score.js';
import type { Cell } from '../../src/measure/score.js';
import { CALM, metricsArbitrary, weightsArbitrary } from './some-metrics.js';

function cellOf(key: string, metrics: Metrics = CALM, failed = false): Cell {
  return { key, failed, metrics };
}

const cellsArbitrary: fc.Arbitrary<Cell[]> = fc
  .array(fc.record({ metrics: metricsArbitrary, failed: fc.boolean() }), {
    minLength: 1,
    maxLength: 12,
  })
  .map((cells) => cells.map(({ metrics, failed }, index) => cellOf(`cell-${index}`, metrics, failed)));

describe('the score of a profile', () => {
  const only = weightsWith({
    ...(Object.fromEntries(COST_NAMES.map((name) => [name, 0])) as Record<CostName, number>),
    'rider-torque': 1,
  });
  const scale = COST_TERMS.find(({ name }) => name === 'rider-torque')?.scale ?? NaN;
  const costing = (key: string, cost: number): Cell =>
    cellOf(key, { ...CALM, riderTorqueRmsNm: cost * scale });

  it('is half the mean and half the mean of the worst fifth, rounded up to whole cells', () => {
    const five = [1, 2, 3, 4, 5].map((cost) => costing(`c${cost}`, cost));
    expect(scoreProfile(five, only).score).toBeCloseTo((3 + 5) / 2, 12);
    const six = [...five, costing('c6', 6)];
    expect(scoreProfile(six, only).score).toBeCloseTo((3.5 + 5.5) / 2, 12);
    expect(scoreProfile([costing('one', 7)], only).score).toBeCloseTo(7, 12);
  });

  it('counts failures, takes each at its fixed cost, and finds the worst cell', () => {
    const cells = [costing('dear', 40), cellOf('b-fell', CALM, true), cellOf('a-fell', CALM, true)];
    const { failures, score, worstCell } = scoreProfile(cells, only);
    expect(failures).toBe(2);
    expect(score).toBeCloseTo(((40 + 2 * FAILED_CELL_COST) / 3 + 40) / 2, 12);
    expect(worstCell?.key).toBe('a-fell');
    expect(scoreProfile(cells.slice(0, 1), only).worstCell?.key).toBe('dear');
  });

  it('finds the worst cell by its fall, then by its cost, then by its key', () => {
    const worst = (...cells: Cell[]) => scoreProfile(cells, only).worstCell?.key;
    expect(worst(costing('a-dear', 40), cellOf('z-fell', CALM, true))).toBe('z-fell');
    expect(worst(costing('a-cheap', 1), costing('z-dear', 5))).toBe('z-dear');
    expect(worst(costing('z-dear', 5), costing('a-dear', 5))).toBe('a-dear');
  });

  it('of no cells is nothing, not NaN', () => {
    expect(scoreProfile([])).toEqual({ failures: 0, score: 0, worstCell: null });
  });

  it('does not depend on the order of the cells, to the last bit', () => {
    fc.assert(
      fc.property(
        cellsArbitrary.chain((cells) =>
          fc.tuple(fc.constant(cells), fc.shuffledSubarray(cells, { minLength: cells.length })),
        ),
        ([cells, shuffled]) => {
          expect(scoreProfile(shuffled)).toEqual(scoreProfile(cells));
        },
      ),
    );
  });

  it('is finite, whatever failed', () => {
    fc.assert(
      fc.property(cellsArbitrary, weightsArbitrary, (cells, weights) => {
        expect(Number.isFinite(scoreProfile(cells, weights).score)).toBe(true);
      }),
    );
  });
});

describe('the order of profiles', () => {
  const namedArbitrary = fc.uniqueArray(
    fc.record({ name: fc.string({ minLength: 1 }), cells: cellsArbitrary }),
    {
      selector: ({ name }) => name,
      minLength: 1,
      maxLength: 8,
    },
  );
  const scored = (profiles: readonly { name: string; cells: Cell[] }[]) =>
    rankProfiles(profiles.map(({ name, cells }) => ({ name, ...scoreProfile(cells) })));

  it('and every score stay as they were when one more profile comes in', () => {
    fc.assert(
      fc.property(namedArbitrary, fc.nat(), (profiles, pick) => {
        const all = scored(profiles);
        const out = profiles[pick % profiles.length]?.name;
        const without = scored(profiles.filter(({ name }) => name !== out));
        expect(without).toEqual(all.filter(({ name }) => name !== out));
      }),
    );
  });

  it('does not depend on the order of the input', () => {
    fc.assert(
      fc.property(
        namedArbitrary.chain((list) =>
          fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length })),
        ),
        ([profiles, shuffled]) => {
          expect(scored(shuffled)).toEqual(scored(profiles));
        },
      ),
    );
  });

  it('lets no smoothness buy off a fall', () => {
    fc.assert(
      fc.property(fc.array(metricsArbitrary, { minLength: 2, maxLength: 10 }), (rough) => {
        const fell = rough.map((_, index) => cellOf(`c${index}`, CALM, index === 0));
        const stayed = rough.map((metrics, index) => cellOf(`c${index}`, metrics));
        const order = scored([
          { name: 'a-smooth-but-fell', cells: fell },
          { name: 'b-rough-but-stayed', cells: stayed },
        ]);
        expect(order[0]?.name).toBe('b-rough-but-stayed');
      }),
    );
  });

  it('goes by failures, score, margin where there is one, name by code point', () => {
    const order = rankProfiles([
      { name: '\u{10000}', failures: 0, score: 1 },
      { name: '\uffff', failures: 0, score: 1 },
      { name: 'b', failures: 0, score: 1 },
      { name: 'ab', failures: 0, score: 1 },
      { name: 'a', failures: 0, score: 1 },
      { name: 'narrow', failures: 0, score: 1, margin: 0.2 },
      { name: 'wide', failures: 0, score: 1, margin: 0.5 },
      { name: 'better', failures: 0, score: 0.5 },
      { name: 'fell', failures: 1, score: 0 },
    ]);
    const names = ['better', 'wide', 'narrow', 'a', 'ab', 'b', '\uffff', '\u{10000}', 'fell'];
    expect(order.map(({ name }) => name)).toEqual(names);
  });

  it('puts more margin first and a name before one that it begins, whatever came in first', () => {
    const even = { failures: 0, score: 1 };
    for (const [first, second] of [
      [
        { ...even, name: 'wide', margin: 0.5 },
        { ...even, name: 'narrow', margin: 0.2 },
      ],
      [
        { ...even, name: 'z-known', margin: 0.2 },
        { ...even, name: 'a-unknown' },
      ],
      [
        { ...even, name: 'a' },
        { ...even, name: 'a\u0000' },
      ],
    ] as const) {
      const names = [first.name, second.name];
      expect(rankProfiles([first, second]).map(({ name }) => name)).toEqual(names);
      expect(rankProfiles([second, first]).map(({ name }) => name)).toEqual(names);
    }
  });

  it('leaves the list it was given alone', () => {
    const list = Object.freeze([
      { name: 'b', failures: 1, score: 1 },
      { name: 'a', failures: 0, score: 1 },
    ]);
    expect(rankProfiles(list)[0]?.name).toBe('a');
    expect(list[0]?.name).toBe('b');
  });
});
