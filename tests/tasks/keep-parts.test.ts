/**
 * Do margins and edges come into a file in its units, each from the rider who has least of it?
 */
import { describe, expect, it } from 'vitest';
import type { Edge } from '../../src/explain/edge-found.js';
import { cellsPart, limitsPart, marginsPart } from '../../src/tasks/kept-parts.js';
import { altered } from '../quantity/valid-values.js';
import { smallPlan } from './small-plan.js';

const at = { rider: 'kim', speedKmPerH: 12, radPerS: 9 };

describe('margins', () => {
  it('are in degrees and milliseconds, and null where they are without end', () => {
    const kept = marginsPart({
      disk: { value: 0.512346, ...at },
      gainUp: { value: Infinity, ...at, radPerS: null },
      gainDown: { value: 0, ...at, radPerS: null },
      phaseRad: { value: Math.PI / 6, ...at },
      delayS: { value: 0.0125, ...at, rider: 'robin' },
    });
    const where = { rider: 'kim', speedKmPerH: 12 };
    expect(kept).toEqual({
      disk: { value: 0.51235, ...where },
      gainUpRatio: { value: null, ...where },
      gainDownRatio: { value: null, ...where },
      phaseDeg: { value: 30, ...where },
      delayMs: { value: 12.5, ...where, rider: 'robin' },
    });
    expect(marginsPart(null)).toBeNull();
  });
});

describe('limits', () => {
  const edge = (survived: number | null, failed: number | null): Edge => ({
    name: 'bump',
    unit: 'mm',
    speedKmPerH: 12,
    chargePercent: 80,
    pushNS: null,
    survived,
    failed,
    ending: failed === null ? null : { kind: 'nose strike', atS: 2, seed: 1 },
    largestTried: 300,
    footLightFrom: null,
  });
  const first = (...edges: Edge[]) => {
    const riders = edges.map((one, index) => ({
      rider: 'abc'[index]!,
      edges: [one],
      lifts: [],
      spareDelayMs: null,
    }));
    return limitsPart({ seeds: [1], statedPushNS: 30, riders, liftBelowShare: null })[0];
  };

  it('are of whoever falls at the smallest size', () => {
    expect(first(edge(60, 61), edge(40, 41), edge(300, null))).toMatchObject({ rider: 'b', survived: 40 });
    expect(first(edge(0, 1), edge(null, 0))).toMatchObject({ rider: 'b', survived: null, failed: 0 });
    expect(first(edge(300, null), edge(299, 300))).toMatchObject({ rider: 'b', ending: 'nose strike' });
  });

  it('are of the first rider where nobody falls', () => {
    expect(first(edge(300, null), edge(300, null))).toMatchObject({ rider: 'a', failed: null, ending: null });
  });
});

describe('the cells', () => {
  it('have another hash where a scenario says something else', () => {
    const plan = smallPlan();
    const steeper = altered(plan, ['scenarios', 1, 'value', 'road', 1, 'stepUpM'], -0.05);
    expect(cellsPart(steeper).scenarioHash).not.toBe(cellsPart(plan).scenarioHash);
    expect(cellsPart({ ...plan, seeds: [1] }).scenarioHash).toBe(cellsPart(plan).scenarioHash);
  });
});
