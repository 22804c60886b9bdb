/** Does the bounce of a rider on tyre and legs come out as the whole loop has it, and is it told from bumps out of its time? */
import { describe, expect, it } from 'vitest';
import { bounceHz, keepsBouncing, loadSwingNPerM, trainHz, withoutBounce } from '../../src/explain/bounce.js';
import { referenceProfile } from '../../src/control/reference-profile.js';
import { rideLook } from '../../src/linear/ride-report.js';
import { scenarioSchema } from '../../src/quantity/scenario-file.js';
import { boardWith, riderWith } from '../rigs.js';

const board = boardWith();
const bent = riderWith({ stance: { legStiffnessNPerM: 14_000, legDampingNSPerM: 900 } });
const stiff = riderWith({ stance: { legStiffnessNPerM: 40_000, legDampingNSPerM: 1100 } });
const light = riderWith({ body: { massKg: 52 }, stance: { legStiffnessNPerM: 10_000 } });
const RIDERS = { bent, stiff, light } as const;

const waves = (frequencyHz: number, speedKmPerH = 12) =>
  scenarioSchema.parse({
    summary: 'Waves.',
    durationS: 5,
    start: { speedKmPerH },
    road: [{ lengthM: (10 * speedKmPerH) / 3.6 / frequencyHz, bumpHeightM: 0.03, bumpCount: 10 }],
    speeds: [{ atS: 0, speedKmPerH }],
    measure: { as: 'ride' },
  });

describe('the bounce', () => {
  it.each(Object.entries(RIDERS))('has the frequency of the whole loop under %s', (_, rider) => {
    const profile = referenceProfile(board, rider);
    const steady = { speedKmPerH: 12, gradePercent: 0, chargePercent: 80 };
    const { modes } = rideLook({ board, rider, profile, ...steady })!;
    const slow = modes.filter(({ shares, frequencyHz }) => shares.tyre > 0.5 && frequencyHz < 6);
    expect(slow).toHaveLength(1);
    expect(Math.abs(bounceHz(board, rider) / slow[0]!.frequencyHz - 1)).toBeLessThan(0.1);
  });

  it('swings the load as a stiff whole on a slow wave, and as the tyre alone on a quick one', () => {
    const massKg = board.wheel.massKg + board.deck.massKg + bent.body.massKg;
    const slow = 2 * Math.PI * 0.05;
    expect(loadSwingNPerM(board, bent, 0.05)).toBeCloseTo(massKg * slow ** 2, 1);
    const w = 2 * Math.PI * 2000;
    const { verticalStiffnessNPerM, verticalDampingNSPerM } = board.tyre;
    const tyre = Math.hypot(verticalStiffnessNPerM, verticalDampingNSPerM * w);
    expect(Math.abs(loadSwingNPerM(board, bent, 2000) / tyre - 1)).toBeLessThan(0.01);
  });

  const makings = { board, profile: referenceProfile(board, stiff), seed: 1, noiseRatio: 1 };

  it('is kept going under stiff legs by bumps in its time, not by quicker or slower ones', () => {
    const keeps = (ratio: number) =>
      keepsBouncing({ ...makings, rider: stiff, scenario: waves(ratio * bounceHz(board, stiff)) });
    expect([0.5, 1, 2].map(keeps)).toEqual([false, true, false]);
  });

  it('is kept going by nothing where knees are bent, where the tyre does not bounce, or without a train', () => {
    const scenario = waves(bounceHz(board, stiff));
    const single = { ...scenario, road: [{ ...scenario.road[0]!, bumpCount: 1 }] };
    const dead = withoutBounce(board, stiff);
    const own = waves(bounceHz(board, bent));
    expect(keepsBouncing({ ...makings, rider: bent, scenario: own })).toBe(false);
    expect(keepsBouncing({ ...makings, rider: stiff, board: dead, scenario })).toBe(false);
    expect(keepsBouncing({ ...makings, rider: stiff, scenario: single })).toBe(false);
    expect(trainHz({ ...makings, rider: stiff, scenario: single })).toBeNull();
    expect(trainHz({ ...makings, rider: stiff, scenario })).toBeCloseTo(bounceHz(board, stiff), 9);
  });
});
