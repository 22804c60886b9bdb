/**
 * Does a number that is typed wrongly do in the simulation what it does? A wrong sign falls because it was run, not because it was
 * refused; a small slip does what a profile with that number does.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { hasFailed, type ProfileResult } from '../../src/measure/profile-result.js';
import { PROFILE_FIELDS } from '../../src/quantity/profile-fields.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import { createEvaluator } from '../../src/tasks/evaluate.js';
import { trialsOf, type RankPlan } from '../../src/tasks/plan.js';
import { rank } from '../../src/tasks/rank.js';
import { inBalanceOf, slipsIn, trySlips, type SlipFound } from '../../src/tasks/tolerance.js';
import { starterPlan } from '../starter-plan.js';
import { smallPlan } from './small-plan.js';

/** The starter plan with one of its profiles. */
function planWith(name: string): RankPlan {
  const plan = starterPlan();
  return { ...plan, profiles: plan.profiles.filter((profile) => profile.name === name) };
}

/** The small plan with one of its profiles. */
function smallPlanOf(place: number): RankPlan {
  const plan = smallPlan();
  return { ...plan, profiles: [plan.profiles[place]!] };
}

const full = profileSchema.parse({
  summary: 'A profile with every number',
  gains: { proportionalAPerDeg: 60, rateAPerDegPerS: 1, integralAPerDegS: 4 },
  shaping: {
    progressiveStiffnessPerDeg: 0.2,
    integralLimitA: 10,
    slewLimitAPerS: 2000,
    driveCeilingA: 60,
    brakeCeilingA: 50,
    gyroLowPassHz: 400,
    blendTimeS: 1,
    restTrimNoseUpDeg: -2,
    engageRampS: 0.5,
    loadFeedForward: { filterTimeS: 0.8, currentShare: 0.4, noseUpDegPerA: 0.01 },
    headroomLift: { belowPercent: 10, upToDeg: 3, rateDegPerS: 20 },
  },
});

describe('slips', () => {
  it('are of every number', () => {
    expect(new Set(slipsIn(full).map(({ key }) => key))).toEqual(
      new Set(PROFILE_FIELDS.map(({ key }) => key)),
    );
  });

  it('change one number to what was typed, past what a file may hold', () => {
    const gain = slipsIn(full).filter(({ key }) => key === 'proportionalAPerDeg');
    expect(gain.map(({ value }) => value)).toEqual([54, 66, 50, 70, 6, 600, -60]);
    for (const { value, profile } of gain) {
      expect(profile).toEqual({ ...full, gains: { ...full.gains, proportionalAPerDeg: value } });
    }
  });

  it('turn the sign where it is a matter of which way a controller counts, and only there', () => {
    const turned = slipsIn(full).filter(({ slip }) => slip === 'the other sign');
    expect(turned.map(({ key, value }) => [key, value])).toEqual([
      ['proportionalAPerDeg', -60],
      ['rateAPerDegPerS', -1],
      ['integralAPerDegS', -4],
      ['restTrimNoseUpDeg', 2],
      ['currentShare', -0.4],
      ['noseUpDegPerA', -0.01],
    ]);
  });

  it('leave out a 0, and a time or a share of headroom that comes to 0', () => {
    const plain = smallPlan().profiles[0]!.value;
    expect(new Set(slipsIn(plain).map(({ key }) => key))).toEqual(
      new Set(['proportionalAPerDeg', 'rateAPerDegPerS', 'integralLimitA', 'blendTimeS']),
    );
    const less = slipsIn(full).filter(({ slip }) => slip === 'first digit one less');
    expect(less.find(({ key }) => key === 'blendTimeS')).toBeUndefined();
    expect(less.find(({ key }) => key === 'belowPercent')).toBeUndefined();
    expect(less.find(({ key }) => key === 'rateAPerDegPerS')).toMatchObject({ value: 0 });
  });
});

describe.each(['proportionalAPerDeg', 'rateAPerDegPerS'])('%s with the other sign', (turned) => {
  it('falls in every run, from a start in which the right numbers go on', async () => {
    const plan = planWith('linen');
    const profile = plan.profiles[0]!.value;
    const trials = await inBalanceOf(profile, trialsOf(plan), undefined);
    const { cell } = createEvaluator();
    const wrong = slipsIn(profile).find(({ key, slip }) => key === turned && slip === 'the other sign')!;
    const falls = trials.map((trial) => cell(wrong.profile, trial, { solver: 'fixed' }).outcome);
    expect(falls.map(({ kind }) => kind)).not.toContain('upright');
    // A loop that pushes the way it falls doubles what is wrong in some hundredths of a second; the rider holds against it for a while.
    const latestS = Math.max(...falls.map(({ atS }) => atS));
    expect(latestS).toBeLessThan(1.2);
    // No fall is that of the start itself.
    expect(Math.min(...falls.map(({ atS }) => atS))).toBeGreaterThan(0.05);
    const right = trials.map((trial) => cell(profile, trial, { solver: 'fixed' }).outcome);
    expect(right.filter(({ kind, atS }) => kind !== 'upright' && atS <= latestS)).toEqual([]);
  });
});

describe('slips that are tried', () => {
  const plan = smallPlanOf(0);
  let own: ProfileResult;
  let slips: SlipFound[];
  beforeAll(async () => {
    [own] = (await rank(plan, { threads: 1 })) as [ProfileResult];
    slips = await trySlips(plan, own, { threads: 1 });
  }, 60_000);

  it('do what a profile with that number does', async () => {
    for (const { key, slip, profile } of slipsIn(plan.profiles[0]!.value)) {
      if (!profileSchema.safeParse(profile).success) continue;
      const [typed] = await rank({ ...plan, profiles: [{ name: 'typed', value: profile }] }, { threads: 1 });
      const tried = slips.find((one) => one.key === key && one.slip === slip)!;
      const ends = typed!.cells.map(({ outcome }) => outcome).filter(({ kind }) => kind !== 'upright');
      expect(tried).toMatchObject({
        runs: own.cells.length,
        failures: typed!.cells.filter(hasFailed).length,
        moreFailures: typed!.failures - own.failures,
        scoreRatio: Number((typed!.score / own.score).toPrecision(4)),
        soonestS: ends.length === 0 ? null : Number(Math.min(...ends.map(({ atS }) => atS)).toFixed(3)),
      });
    }
  });

  it('come with the most dangerous first: the falls that are more, then the soonest', () => {
    expect(slips[0]).toMatchObject({ slip: 'the other sign', failures: slips[0]!.runs });
    slips.slice(1).forEach((slip, index) => {
      const before = slips[index]!;
      expect(before.moreFailures).toBeGreaterThanOrEqual(slip.moreFailures);
      if (before.moreFailures !== slip.moreFailures) return;
      expect(before.soonestS ?? Infinity).toBeLessThanOrEqual(slip.soonestS ?? Infinity);
    });
  });

  it('are tried in two cells at least under every rider, and left when a signal comes', async () => {
    const rider = plan.riders[0]!.value;
    const riders = Array.from({ length: 18 }, (_, index) => 48 + 4 * index).map((massKg) => ({
      name: `kg${massKg}`,
      value: { ...rider, body: { ...rider.body, massKg } },
    }));
    const many = { ...plan, riders, seeds: [1, 2] };
    const [ofMany] = await rank(many, { threads: 1 });
    const stop = new AbortController();
    let allRuns = 0;
    const ending = trySlips(many, ofMany!, {
      threads: 1,
      signal: stop.signal,
      onRuns: (_, all) => {
        allRuns = all;
        stop.abort(new Error('enough'));
      },
    });
    await expect(ending).rejects.toThrow('enough');
    expect(allRuns).toBe(slipsIn(plan.profiles[0]!.value).length * 2 * riders.length);
  });
});
