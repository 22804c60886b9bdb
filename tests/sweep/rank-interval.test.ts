/**
 * Are rank intervals what resampling makes them? Small cases whose chances are counted by hand, each held well outside of
 * four standard errors of 1,000 resamples; ties; order; the ranking's own rule.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rankIntervals, type Resampled } from '../../src/sweep/rank-interval.js';
import { holds } from '../properties/properties.js';

function profileOf(name: string, costs: readonly number[], failed: readonly number[] = []): Resampled {
  return {
    name,
    cells: costs.map((cost, index) => ({ key: `cell-${index}`, failed: failed.includes(index), cost })),
  };
}

const intervalsOf = (profiles: readonly Resampled[], share?: number) =>
  Object.fromEntries(
    rankIntervals(profiles, { seed: 3, ...(share === undefined ? {} : { share }) }).map(
      ({ name, low, high }) => [name, [low, high]],
    ),
  );

const profilesArbitrary = fc
  .record({ cells: fc.integer({ min: 1, max: 8 }), profiles: fc.integer({ min: 1, max: 5 }) })
  .chain(({ cells, profiles }) =>
    fc.array(
      fc.array(fc.record({ cost: fc.double({ min: 0, max: 3, noNaN: true }), failed: fc.boolean() }), {
        minLength: cells,
        maxLength: cells,
      }),
      { minLength: profiles, maxLength: profiles },
    ),
  )
  .map((all) =>
    all.map((cells, name) => ({
      name: `p${name}`,
      cells: cells.map((cell, index) => ({ ...cell, key: `cell-${index}` })),
    })),
  );

describe('rank intervals', () => {
  it('follow the chances of two cells: the uneven one is first when its good cell is drawn twice, 1 in 4', () => {
    const profiles = [profileOf('uneven', [0, 1]), profileOf('even', [0.4, 0.4])];
    expect(intervalsOf(profiles, 0.7)).toEqual({ uneven: [1, 2], even: [1, 2] });
    expect(intervalsOf(profiles, 0.3)).toEqual({ uneven: [2, 2], even: [1, 1] });
  });

  it('count failures first: one fall in 20 cells is missed by 0.95^20 = 36 % of the resamples', () => {
    const costs = Array.from({ length: 20 }, () => 1);
    const smooth = costs.map((_, index) => (index === 7 ? 10 : 0.01));
    const profiles = [profileOf('fell once', smooth, [7]), profileOf('rough', costs)];
    expect(intervalsOf(profiles, 0.5)).toEqual({ 'fell once': [1, 2], rough: [1, 2] });
    expect(intervalsOf(profiles, 0.1)).toEqual({ 'fell once': [2, 2], rough: [1, 1] });
  });

  it('weigh the worst fifth: a spike that the mean alone would forgive costs the first rank', () => {
    // Of five cells the spike is drawn in 1 - 0.8^5 = 67 % of the resamples; then the score is 1.4 at least, against 1.
    const profiles = [profileOf('spiked', [0.5, 0.5, 0.5, 0.5, 2]), profileOf('flat', [1, 1, 1, 1, 1])];
    expect(intervalsOf(profiles, 0.2)).toEqual({ spiked: [2, 2], flat: [1, 1] });
  });

  it('of profiles that are alike are equal and as wide as all of them, whatever their names', () => {
    const costs = [0.2, 0.5, 0.9];
    const alike = ['d', 'a', 'c', 'b'].map((name) => profileOf(name, costs));
    expect(intervalsOf([...alike, profileOf('worse', [1, 1, 1])])).toEqual({
      a: [1, 4],
      b: [1, 4],
      c: [1, 4],
      d: [1, 4],
      worse: [5, 5],
    });
  });

  holds(
    'put a profile that is better in every cell always first',
    fc.property(profilesArbitrary, fc.nat(), (profiles, seed) => {
      const best = profiles[0]!.cells.map(({ key }, index) => ({
        key,
        failed: profiles.every(({ cells }) => cells[index]!.failed),
        cost: Math.min(...profiles.map(({ cells }) => cells[index]!.cost)) - 0.01,
      }));
      const found = rankIntervals([...profiles, { name: 'best', cells: best }], {
        seed,
        resamples: 50,
        share: 1,
      });
      expect(found.at(-1)).toEqual({ name: 'best', low: 1, high: 1 });
      expect(found.slice(0, -1).every(({ low }) => low >= 2)).toBe(true);
    }),
  );

  holds(
    'are the same whatever the order of profiles and cells',
    fc.property(profilesArbitrary, fc.nat(), (profiles, seed) => {
      const turned = profiles.map(({ name, cells }) => ({ name, cells: cells.toReversed() })).toReversed();
      const found = rankIntervals(profiles, { seed, resamples: 40 });
      expect(rankIntervals(profiles, { seed, resamples: 40 })).toEqual(found);
      expect(rankIntervals(turned, { seed, resamples: 40 }).toReversed()).toEqual(found);
    }),
  );

  it('need the same cells of everybody', () => {
    const other = { name: 'other', cells: [{ key: 'elsewhere', failed: false, cost: 1 }] };
    expect(() => rankIntervals([profileOf('one', [1]), other], { seed: 1 })).toThrow(/other was not run/);
    expect(() => rankIntervals([profileOf('one', [1]), profileOf('two', [1, 2])], { seed: 1 })).toThrow(
      /two/,
    );
    expect(rankIntervals([], { seed: 1 })).toEqual([]);
  });
});
