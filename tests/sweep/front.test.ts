/** Costs by group against the cost of a cell, which they make up; the front against its definition. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Metrics } from '../../src/measure/metrics.js';
import type { RankedCell } from '../../src/measure/profile-result.js';
import { COST_GROUPS, COST_TERMS, weightsWith } from '../../src/measure/scales.js';
import { cellCost, FAILED_CELL_COST } from '../../src/measure/score.js';
import { groupCosts, onFront } from '../../src/sweep/front.js';
import { CALM, metricsArbitrary, weightsArbitrary } from '../measure/some-metrics.js';
import { holds } from '../properties/properties.js';

function cellOf(metrics: Metrics, failed = false): RankedCell {
  return {
    scenario: 'kerb',
    rider: 'wool',
    chargePercent: 50,
    seed: 1,
    outcome: { kind: 'upright', atS: 8 },
    eventReached: true,
    metrics,
    key: 'kerb/wool/50/1',
    failed,
    cost: failed ? FAILED_CELL_COST : cellCost(metrics),
  };
}

const RIDE: Metrics = { ...CALM, kind: 'ride', reboundPercent: null, settlingTimeS: null };

describe('costs by group', () => {
  holds(
    'of one cell make up its cost, each by the weight of its group',
    fc.property(metricsArbitrary, weightsArbitrary, (metrics, weights) => {
      const costs = groupCosts([cellOf(metrics)], weights);
      const terms = COST_TERMS.filter(({ read }) => read(metrics) !== null);
      const weightOf = (group: string) =>
        terms.filter((term) => term.group === group).reduce((sum, { name }) => sum + weights[name], 0);
      const all = COST_GROUPS.reduce((sum, group) => sum + weightOf(group), 0);
      const made = COST_GROUPS.reduce((sum, group) => sum + weightOf(group) * costs[group], 0);
      const cost = cellCost(metrics, weights);
      expect(Math.abs(made - cost * all)).toBeLessThanOrEqual(1e-12 * Math.max(1, made));
    }),
  );

  it('are means over the cells, each group by itself', () => {
    const still = cellOf(CALM);
    const shaky = cellOf({ ...CALM, riderTorqueRmsNm: 20, commandActivityAPerS: 500 });
    expect(groupCosts([still, shaky], weightsWith())).toEqual({
      comfort: 2 / 3.5 / 2,
      reserve: 0,
      agility: 0,
    });
  });

  it('count a fall, and a window never reached, at the cost of a failure in every group', () => {
    const dear = { comfort: FAILED_CELL_COST, reserve: FAILED_CELL_COST, agility: FAILED_CELL_COST };
    expect(groupCosts([cellOf(CALM, true)], weightsWith())).toEqual(dear);
    expect(groupCosts([cellOf({ ...RIDE, measuredS: 0 })], weightsWith())).toEqual(dear);
    const half = groupCosts([cellOf(CALM), cellOf(CALM, true)], weightsWith());
    expect(half.agility).toBe(FAILED_CELL_COST / 2);
  });

  it('leave a cell out of a group none of whose terms apply to it', () => {
    const slow = cellOf({ ...CALM, settlingTimeS: 2, reboundPercent: 25 });
    expect(groupCosts([slow, cellOf(RIDE)], weightsWith()).agility).toBe(1);
    expect(groupCosts([cellOf(RIDE)], weightsWith()).agility).toBe(0);
    const none = weightsWith({ overshoot: 0, settling: 0 });
    expect(groupCosts([slow], none).agility).toBe(0);
  });

  it('of no cells are nothing, not NaN', () => {
    expect(groupCosts([], weightsWith())).toEqual({ comfort: 0, reserve: 0, agility: 0 });
  });
});

describe('the front', () => {
  // Few values, so that ties and equal points are common.
  const pointsArbitrary = fc
    .integer({ min: 1, max: 4 })
    .chain((size) =>
      fc.array(fc.array(fc.nat(4), { minLength: size, maxLength: size }), { minLength: 1, maxLength: 30 }),
    );

  holds(
    'is every point that no other is at least as good as everywhere and better than somewhere',
    fc.property(pointsArbitrary, (points) => {
      const expected = points.map((own) => {
        for (const other of points) {
          const differences = own.map((value, index) => value - other[index]!);
          if (Math.min(...differences) >= 0 && Math.max(...differences) > 0) return false;
        }
        return true;
      });
      expect(onFront(points)).toEqual(expected);
    }),
  );

  it('by hand: a corner, a trade-off, a twin, a beaten one', () => {
    const points = [
      [1, 5],
      [2, 2],
      [2, 2],
      [2, 3],
      [5, 1],
    ];
    expect(onFront(points)).toEqual([true, true, true, false, true]);
    expect(onFront([])).toEqual([]);
  });
});
