/** The table of scales and the cost of one cell: at scale it is 1, more of a bad metric never lowers it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Metrics } from '../../src/measure/metrics.js';
import { COST_GROUPS, COST_NAMES, COST_TERMS, weightsWith } from '../../src/measure/scales.js';
import type { CostName } from '../../src/measure/scales.js';
import { FAILED_CELL_COST, cellCost, termCosts } from '../../src/measure/score.js';
import { BAD, CALM, metricsArbitrary, share, weightsArbitrary } from './some-metrics.js';

describe('the table of scales', () => {
  it('has a name, a group, a positive scale, a weight and a source on every line, no name twice', () => {
    for (const term of COST_TERMS) {
      expect(COST_GROUPS).toContain(term.group);
      expect(term.scale).toBeGreaterThan(0);
      expect(term.weight).toBeGreaterThan(0);
      expect(term.source).not.toBe('');
      expect(term.name).toMatch(/^[a-z]+(-[a-z]+)*$/);
    }
    expect(new Set(COST_NAMES).size).toBe(COST_TERMS.length);
  });

  it('puts given weights in place of its own and leaves the rest', () => {
    expect(weightsWith({ settling: 0 }).settling).toBe(0);
    expect(weightsWith({ settling: 0 }).overshoot).toBe(weightsWith().overshoot);
  });
});

describe('the cost of a cell', () => {
  it('is 0 with nothing bad and 1 when every metric is at its scale', () => {
    expect(cellCost(CALM)).toBe(0);
    const scaleOf = (name: CostName): number => COST_TERMS.find((term) => term.name === name)?.scale ?? NaN;
    const atScale: Metrics = {
      ...CALM,
      reboundPercent: scaleOf('overshoot'),
      settlingTimeS: scaleOf('settling'),
      saturationShare: scaleOf('saturation'),
      longestSaturationS: scaleOf('saturation-stretch'),
      peakNoseUpRad: scaleOf('peak-pitch'),
      leastHeadroomShare: 1 - scaleOf('lack-of-headroom'),
      oneFootLightS: scaleOf('foot-light'),
      pitchRateActivityRadPerS: scaleOf('pitch-rate-activity'),
      commandActivityAPerS: scaleOf('command-activity'),
      riderTorqueRmsNm: scaleOf('rider-torque'),
      weightedFeetAccelerationMPerS2: scaleOf('feet-acceleration'),
    };
    expect(cellCost(atScale)).toBeCloseTo(1, 12);
    for (const { cost } of termCosts(atScale)) expect(cost).toBeCloseTo(1, 12);
  });

  it('takes a window that did not settle at its full length', () => {
    const unsettled = { ...CALM, calm: false, settlingTimeS: null };
    expect(cellCost(unsettled)).toBe(cellCost({ ...CALM, settlingTimeS: 8 }));
    expect(cellCost(unsettled)).toBeGreaterThan(cellCost({ ...CALM, settlingTimeS: 7.9 }));
  });

  it('leaves out what does not apply to a ride, weight and all', () => {
    const ride: Metrics = {
      ...CALM,
      kind: 'ride',
      reboundPercent: null,
      settlingTimeS: null,
      oneFootLightS: 1,
    };
    const names = termCosts(ride).map(({ name }) => name);
    expect(names).toHaveLength(COST_NAMES.length - 2);
    expect(names).not.toContain('overshoot');
    expect(names).not.toContain('settling');
    expect(cellCost(ride)).toBe(cellCost(ride, weightsWith({ overshoot: 50, settling: 50 })));
  });

  it('of a window that was never reached is that of a failure', () => {
    expect(cellCost({ ...CALM, measuredS: 0, leastHeadroomShare: null })).toBe(FAILED_CELL_COST);
  });

  it('is 0 when no weight is left', () => {
    const none = Object.fromEntries(COST_NAMES.map((name) => [name, 0]));
    expect(cellCost({ ...CALM, saturationShare: 1 }, weightsWith(none))).toBe(0);
  });

  it.each(Object.keys(BAD) as (keyof typeof BAD)[])('never falls when there is more %s', (name) => {
    fc.assert(
      fc.property(metricsArbitrary, weightsArbitrary, BAD[name], BAD[name], (metrics, weights, a, b) => {
        const less = cellCost({ ...metrics, [name]: Math.min(a, b) }, weights);
        expect(cellCost({ ...metrics, [name]: Math.max(a, b) }, weights)).toBeGreaterThanOrEqual(less);
      }),
    );
    // And it does count: from none to plenty the cost rises.
    expect(cellCost({ ...CALM, [name]: 0.3 })).toBeGreaterThan(0);
  });

  it('never falls when there is less headroom', () => {
    fc.assert(
      fc.property(metricsArbitrary, share, share, (metrics, a, b) => {
        const more = cellCost({ ...metrics, leastHeadroomShare: Math.max(a, b) });
        expect(cellCost({ ...metrics, leastHeadroomShare: Math.min(a, b) })).toBeGreaterThanOrEqual(more);
      }),
    );
    expect(cellCost({ ...CALM, leastHeadroomShare: 0 })).toBeGreaterThan(0);
  });
});
