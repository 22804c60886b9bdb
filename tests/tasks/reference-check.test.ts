/**
 * Does the check against odex pass what agrees and find what does not?
 */
import { describe, expect, it } from 'vitest';
import { rank } from '../../src/tasks/rank.js';
import {
  AGREEMENT_RATIO,
  checkAgainstReference,
  mergedCheck,
  type ReferenceCheck,
} from '../../src/tasks/reference-check.js';
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

  it('counts a number far above its scale by its own size: one percent of a rattling motor is no disagreement', async () => {
    const { profiles, ...rest } = smallPlan();
    const [{ name, value }] = profiles as [(typeof profiles)[number]];
    const rattling = { ...value, gains: { ...value.gains, rateAPerDegPerS: 12 } };
    const plan = { ...rest, profiles: [{ name, value: rattling }] };
    const [best] = await rank(plan, { threads: 1 });
    const { commandActivityAPerS } = best!.worst.metrics;
    // The scale is 500 A/s.
    expect(commandActivityAPerS).toBeGreaterThan(5000);
    const metrics = { ...best!.worst.metrics, commandActivityAPerS: 1.015 * commandActivityAPerS };
    const doctored = { ...best!, worst: { ...best!.worst, metrics } };
    const { agrees, largestDifference } = await checkAgainstReference(plan, [doctored], { threads: 1 });
    expect(largestDifference!.metric).toBe('command-activity');
    expect(largestDifference!.scaledDifference).toBeGreaterThan(0.01);
    expect(agrees).toBe(true);
  });

  it('of several profiles is that of all, and none where one is missing', async () => {
    const plan = smallPlan();
    const ranked = await rank(plan, { threads: 1 });
    const single: ReferenceCheck[] = [];
    const all = await checkAgainstReference(plan, ranked, {
      threads: 1,
      onProfile: (_name, check) => single.push(check),
    });
    expect(mergedCheck(single)).toEqual(all);
    expect(mergedCheck([...single, null])).toBeNull();
    expect(mergedCheck([])).toBeNull();
  });
});
