/** Does taking a suspect away change that one thing, and is a suspect only asked where there is something to take away? */
import { describe, expect, it } from 'vitest';
import { causeNumber } from '../../src/explain/cause-number.js';
import type { Makings } from '../../src/explain/makings.js';
import { CAUSES } from '../../src/explain/causes.js';
import { referenceProfile } from '../../src/control/reference-profile.js';
import { boardSchema } from '../../src/quantity/board-file.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import { riderSchema } from '../../src/quantity/rider-file.js';
import { scenarioSchema } from '../../src/quantity/scenario-file.js';
import { validBoard, validRider, validScenario } from '../quantity/valid-values.js';

const board = boardSchema.parse(validBoard());
const usual = riderSchema.parse(validRider());
const rider = {
  ...usual,
  balance: { ...usual.balance, delayS: 0.2, frequencyRadPerS: 3, tremorNm: 4 },
  stance: { ...usual.stance, legStiffnessNPerM: 40_000 },
};
const reference = referenceProfile(board, rider);

/** A rig and a ride in which every suspect is there. */
const MAKINGS: Makings = {
  board,
  rider,
  seed: 1,
  noiseRatio: 1,
  scenario: scenarioSchema.parse({
    ...validScenario(),
    chargePercent: 30,
    road: [
      { lengthM: 5, roughness: 'C' },
      { name: 'kerb', lengthM: 5, gripRatio: 0.1, stepUpM: -0.05 },
      { name: 'waves', lengthM: 12, bumpHeightM: 0.03, bumpCount: 10 },
      { lengthM: 5, gradePercent: 8 },
    ],
    start: { speedKmPerH: 13 },
    speeds: [{ atS: 0, speedKmPerH: 13 }],
  }),
  profile: profileSchema.parse({
    summary: 'Everything is wrong with it',
    gains: { proportionalAPerDeg: 3, rateAPerDegPerS: 0.1, integralAPerDegS: 50 },
    shaping: {
      progressiveStiffnessPerDeg: 0.5,
      slewLimitAPerS: 60,
      driveCeilingA: 12,
      gyroLowPassHz: 3,
      blendTimeS: 0.3,
      restTrimNoseUpDeg: 5,
      loadFeedForward: { filterTimeS: 1, currentShare: 0.9 },
      headroomLift: { belowPercent: 80, upToDeg: 12, rateDegPerS: 30 },
    },
  }),
};

const TOO_MUCH = ['too much rate gain', 'too much proportional gain'];

/** Paths at which two makings differ. */
function differences(one: object, other: object, path = ''): string[] {
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) => {
    const [a, b] = [one, other].map((side) => (side as Record<string, unknown>)[key]);
    const here = path === '' ? key : `${path}.${key}`;
    if (typeof a === 'object' && typeof b === 'object' && a !== null && b !== null) {
      return differences(a, b, here);
    }
    return a === b ? [] : [here];
  });
}

const CHANGED: Readonly<Record<string, string[]>> = {
  'too little rate gain': ['profile.gains.rateAPerDegPerS'],
  'too little proportional gain': ['profile.gains.proportionalAPerDeg'],
  'integral wind-up': ['profile.gains.integralAPerDegS'],
  'filter lag': ['profile.shaping.gyroLowPassHz'],
  'accelerometer pull': ['profile.shaping.blendTimeS'],
  'slew limit': ['profile.shaping.slewLimitAPerS'],
  'progressive stiffness': ['profile.shaping.progressiveStiffnessPerDeg'],
  "the profile's own ceilings": ['profile.shaping.driveCeilingA'],
  'load feed-forward': ['profile.shaping.loadFeedForward'],
  trim: ['profile.shaping.restTrimNoseUpDeg'],
  'loop delay': ['board.motor.currentLagMs', 'board.controller.delayTicks'],
  'noise of the gyro': ['board.controller.gyroNoiseDegPerS'],
  'current ceiling': ['board.motor.driveCurrentA', 'board.motor.brakeCurrentA'],
  'pack ceiling': ['board.pack.dischargeCurrentA', 'board.pack.chargeCurrentA'],
  'low pack': ['scenario.chargePercent'],
  "the rider's delay": ['rider.balance.delayS'],
  "the rider's tremor": ['rider.balance.tremorNm'],
  "the rider's stiffness": ['rider.balance.frequencyRadPerS'],
  grip: [0, 1, 2, 3].map((index) => `scenario.road.${index}.gripRatio`),
  'rough road': ['scenario.road.0.roughness'],
  "the tyre's own frequency": ['board.tyre.verticalDampingNSPerM'],
  slope: ['scenario.road.3.gradePercent'],
  'noise of the accelerometer': ['board.controller.accelerometerNoiseMPerS2'],
  'headroom lift': ['profile.shaping.headroomLift'],
  'bumps and steps': ['scenario.road.1.stepUpM', 'scenario.road.2.bumpHeightM'],
};

describe('a suspect', () => {
  const present = CAUSES.filter(({ name }) => CHANGED[name] !== undefined);

  it.each(present.map((cause) => [cause.name, cause] as const))(
    '%s is taken away, and nothing else',
    (name, cause) => {
      const before = structuredClone(MAKINGS);
      expect(cause.isPresent(MAKINGS, reference)).toBe(true);
      expect(differences(MAKINGS, cause.remove(MAKINGS, reference)).toSorted()).toEqual(
        CHANGED[name]!.toSorted(),
      );
      expect(MAKINGS).toEqual(before);
    },
  );

  it('is not asked where the profile is the reference', () => {
    const suited = { ...MAKINGS, profile: reference };
    const asked = CAUSES.filter((cause) => cause.family === 'profile' && cause.isPresent(suited, reference));
    expect(asked.map(({ name }) => name)).toEqual([]);
  });

  it('of too much is asked on the other side only', () => {
    const asked = (factor: number) => {
      const { proportionalAPerDeg, rateAPerDegPerS } = reference.gains;
      const gains = {
        ...reference.gains,
        proportionalAPerDeg: factor * proportionalAPerDeg,
        rateAPerDegPerS: factor * rateAPerDegPerS,
      };
      const makings = { ...MAKINGS, profile: { ...reference, gains } };
      return CAUSES.filter((cause) => cause.isPresent(makings, reference)).map(({ name }) => name);
    };
    expect(asked(1.5)).toEqual(expect.arrayContaining(TOO_MUCH));
    expect(asked(0.5)).not.toEqual(expect.arrayContaining(TOO_MUCH));
  });

  it('that is the voltage leaves the power of the pack as it is', () => {
    const voltage = CAUSES.find(({ name }) => name === 'voltage ceiling')!;
    const { pack } = voltage.remove(MAKINGS, reference).board;
    expect(pack.seriesCells * pack.dischargeCurrentA).toBe(
      board.pack.seriesCells * board.pack.dischargeCurrentA,
    );
    expect(pack.seriesCells * pack.cellResistanceMilliohm).toBe(
      board.pack.seriesCells * board.pack.cellResistanceMilliohm,
    );
  });
});

it('the reference grows with what the motor has to move', () => {
  const heavier = { ...rider, body: { ...rider.body, massKg: rider.body.massKg + 92 } };
  const ratio =
    referenceProfile(board, heavier).gains.proportionalAPerDeg / reference.gains.proportionalAPerDeg;
  // Wheel 6, deck 8 and rider 78 kg make 92.
  expect(ratio).toBeCloseTo(2, 12);
  expect(reference.gains.rateAPerDegPerS / reference.gains.proportionalAPerDeg).toBeCloseTo(0.06, 12);
});

describe('the number of a cause', () => {
  it.each([
    [
      'too little rate gain',
      { value: 0.1, unit: 'A/(deg/s)', beside: { value: reference.gains.rateAPerDegPerS } },
    ],
    ['filter lag', { value: 3, unit: 'Hz', beside: null }],
    ['loop delay', { value: 1000 / 800 + board.motor.currentLagMs, unit: 'ms', beside: null }],
    ['low pack', { value: 30, unit: '%' }],
    ['grip', { value: 0.1, unit: '' }],
    ["the rider's delay", { value: 0.2, unit: 's', beside: { name: 'usual is', value: 0.14 } }],
    ["the rider's stiffness", { value: 3, unit: 'rad/s', beside: { value: 2 } }],
    ["the tyre's own frequency", { value: expect.closeTo(2.88, 2) as number, unit: 'Hz' }],
    [
      "the tyre's own frequency",
      { beside: { name: 'the bumps come at', value: expect.closeTo(3, 1) as number } },
    ],
  ])('%s is read where it stands', (cause, expected) => {
    expect(causeNumber(cause, MAKINGS, reference)).toMatchObject(expected);
  });

  it('is none for a cause without one', () => {
    expect(causeNumber('rough road', MAKINGS, reference)).toBeNull();
    expect(causeNumber('filter lag', { ...MAKINGS, profile: reference }, reference)).toBeNull();
  });
});
