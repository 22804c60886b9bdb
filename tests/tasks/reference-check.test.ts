/**
 * Does the check against odex pass what agrees and find what does not?
 */
import { describe, expect, it } from 'vitest';
import { rank } from '../../src/tasks/rank.js';
import { AGREEMENT_RATIO, checkAgainstReference } from '../../src/tasks/reference-check.js';
import { smallPlan } from './small-plan.js';

describe('the check against the reference solver', () => {
  it('agrees on the worst cells', async () => {
    const plan = smallPlan();
    const ranked = await rank(plan, { threads: 1 });
    const check = await checkAgainstReference(plan, ranked, { threads: 1 });
    expect(check).toMatchObject({ cellsChecked: 3, agrees: true });
    expect(check.largestDifference!.scaledDifference).toBeLessThan(AGREEMENT_RATIO);
  });

  it('finds a metric that is off, and a different outcome', async () => {
    const plan = smallPlan();
    const [best, ...others] = await rank(plan, { threads: 1 });
    const peak = best!.worst.metrics.peakNoseDownRad + 0.01;
    const doctored = {
      ...best!,
      worst: {
        ...best!.worst,
        metrics: { ...best!.worst.metrics, peakNoseDownRad: peak, peakNoseUpRad: peak },
      },
    };
    const off = await checkAgainstReference(plan, [doctored, ...others], { threads: 1 });
    expect(off).toMatchObject({
      agrees: false,
      largestDifference: { metric: 'peak-pitch', profile: best!.name },
    });
    const fallen = { ...best!, worst: { ...best!.worst, outcome: { kind: 'nose strike' as const, atS: 1 } } };
    const other = await checkAgainstReference(plan, [fallen], { threads: 1 });
    expect(other).toMatchObject({
      agrees: false,
      largestDifference: { metric: 'outcome', quick: 'nose strike', reference: 'upright' },
    });
  });
});
