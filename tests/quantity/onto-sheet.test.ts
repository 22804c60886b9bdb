/** What is to be typed for a profile, what did that change, and what will the controller act on? */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeOf, ontoSheet } from '../../src/quantity/onto-sheet.js';
import { readBack, withPlainNumbers } from '../../src/quantity/off-sheet.js';
import { PROFILE_FIELDS, readField } from '../../src/quantity/profile-fields.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import { sheetQuantity } from '../../src/quantity/sheet-quantities.js';
import { UNITS_OF } from '../../src/quantity/sheet-units.js';
import { sheetWith, type RawRow } from './valid-sheet.js';

const HOLD: RawRow = { label: 'Hold', quantity: 'proportionalAPerDeg', unit: 'A/deg' };
const CALM: RawRow = { label: 'Calm', quantity: 'rateAPerDegPerS', unit: 'A/(deg/s)' };
const BLEND: RawRow = { label: 'Memory', quantity: 'blendTimeS', unit: 's' };

const profile = (shaping: object = {}, gains: object = {}) =>
  profileSchema.parse({
    summary: 'A profile for tests',
    gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1.2, ...gains },
    shaping: { blendTimeS: 4, ...shaping },
  });

const lift = { headroomLift: { belowPercent: 45, upToDeg: 12, rateDegPerS: 2 } };

const typed = (rows: readonly RawRow[], parts: object = {}, own = profile()) =>
  ontoSheet(sheetWith(rows, parts), own);

describe('what is typed', () => {
  it('is in the order, unit, scale and digits of the sheet', () => {
    const { entries } = typed(
      [
        { ...CALM, unit: 'limit/(rad/tick)', decimals: 2 },
        { ...HOLD, unit: 'mA/rad', scale: 0.001, decimals: 1 },
      ],
      { currentLimitA: 80 },
    );
    expect(entries.map(({ row, text }) => [row.label, text])).toEqual([
      ['Calm', '429.72'], // 1.2 x 57.29578 / 80 x 500
      ['Hold', '1145.9'], // 20 x 57.29578
    ]);
    expect(entries[1]!.back).toBeCloseTo(1145.9 / 57.29577951, 8);
    expect(entries[1]).toMatchObject({ rounded: true, limited: false, ours: 20 });
  });

  it('has the sign of a controller that counts nose up, and comes back as ours', () => {
    const rows = [HOLD, CALM, { label: 'Level', quantity: 'restTrimNoseUpDeg', unit: 'deg', scale: 1000 }];
    const counts = { pitch: 'nose up', current: 'forward' };
    const { entries, actedOn } = typed(rows, { counts }, profile({ restTrimNoseUpDeg: 1.5 }));
    expect(entries.map(({ text }) => text)).toEqual(['-20', '-1.2', '1500']);
    expect(actedOn).toEqual(profile({ restTrimNoseUpDeg: 1.5 }));
  });

  it('that nothing changed comes back to the last bit', () => {
    const fine = { ...HOLD, unit: 'A/rad', scale: 3, decimals: 9 };
    const { entries, actedOn } = typed([fine, { ...CALM, unit: 'mA/(rad/s)', decimals: 9 }, BLEND]);
    expect(entries.map(({ rounded }) => rounded)).toEqual([false, false, false]);
    expect(actedOn).toEqual(profile());
  });
});

describe('what is flagged', () => {
  it('a limit, with what is left of the number', () => {
    const { entries, actedOn } = typed([{ ...HOLD, greatest: 15 }, CALM, BLEND]);
    expect(entries[0]).toMatchObject({ text: '15', limited: true, rounded: false, back: 15, exact: 20 });
    expect(actedOn.gains.proportionalAPerDeg).toBe(15);
  });

  it('a number that the profile leaves out: what means none, or nothing at all', () => {
    const ceiling = { label: 'Stop', quantity: 'brakeCeilingA', unit: 'A', decimals: 0 };
    const [withNone] = typed([{ ...ceiling, whenLeftOut: 0 }]).entries;
    expect(withNone).toMatchObject({ text: '0', ours: null, back: null, rounded: false });
    const [without] = typed([ceiling]).entries;
    expect(without).toMatchObject({ text: '', ours: null, back: null });
    expect(typed([{ ...ceiling, whenLeftOut: 0 }]).actedOn.shaping).not.toHaveProperty('brakeCeilingA');
  });

  it('a sign that contradicts the way of counting; it comes back wrong', () => {
    const { entries, actedOn } = typed([{ ...HOLD, sign: 'minus' }, CALM, BLEND]);
    expect(entries[0]).toMatchObject({ text: '-20', signContradicts: true, back: -20 });
    expect(actedOn.gains.proportionalAPerDeg).toBe(-20);
    const agreeing = { counts: { pitch: 'nose down', current: 'backward' } };
    expect(typed([{ ...HOLD, sign: 'minus' }], agreeing).entries[0]!.signContradicts).toBe(false);
  });

  it('nothing of a sign where the number is 0 or has no direction', () => {
    const integral = { label: 'Long', quantity: 'integralAPerDegS', unit: 'A/(deg s)', sign: 'minus' };
    const stop = { label: 'Stop', quantity: 'brakeCeilingA', unit: 'A', sign: 'minus' };
    const { entries } = typed([integral, stop], {}, profile({ brakeCeilingA: 30 }));
    expect(entries.map(({ signContradicts }) => signContradicts)).toEqual([false, false]);
    expect(entries.map(({ text, back }) => [text, back])).toEqual([
      ['0', 0],
      ['-30', 30],
    ]);
  });
});

describe('what has no place', () => {
  const gone = (rows: readonly RawRow[], own = profile()) =>
    typed(rows, {}, own).unplaced.map(({ key, absence }) => `${key}: ${absence}`);

  it('is told and not there in what the controller acts on', () => {
    const own = profile({ ...lift, progressiveStiffnessPerDeg: 0.2, driveCeilingA: 40, engageRampS: 1 });
    expect(gone([HOLD, CALM, BLEND], own)).toEqual([
      'progressiveStiffnessPerDeg: zero',
      'driveCeilingA: none',
      'engageRampS: zero',
      'upToDeg: no section',
    ]);
    expect(typed([HOLD, CALM, BLEND], {}, own).actedOn).toEqual(profile());
  });

  it('is not told where it is off, or where what it belongs to is', () => {
    expect(gone([HOLD, CALM, BLEND])).toEqual([]);
    const load = profile({ loadFeedForward: { filterTimeS: 1 }, integralLimitA: 50 });
    expect(gone([HOLD, CALM, BLEND], load)).toEqual([]);
  });

  it('a blend time stays as proven, as nobody knows what is built in', () => {
    expect(gone([HOLD, CALM])).toEqual(['blendTimeS: unknown']);
    expect(typed([HOLD, CALM]).actedOn).toEqual(profile());
  });

  it('an integral without a place for its limit has none', () => {
    const long = { label: 'Long', quantity: 'integralAPerDegS', unit: 'A/(deg s)' };
    const own = profile({ integralLimitA: 80 }, { integralAPerDegS: 100 });
    expect(gone([HOLD, CALM, BLEND, long], own)).toEqual(['integralLimitA: no limit']);
    expect(typed([HOLD, CALM, BLEND, long], {}, own).actedOn.shaping.integralLimitA).toBe(Infinity);
  });

  it('rise and rate of a lift that has a place stay as proven', () => {
    const up = { label: 'Rise', quantity: 'upToDeg', unit: 'deg' };
    expect(gone([HOLD, CALM, BLEND, up], profile(lift))).toEqual([
      'belowPercent: unknown',
      'rateDegPerS: unknown',
    ]);
    expect(typed([HOLD, CALM, BLEND, up], {}, profile(lift)).actedOn).toEqual(profile(lift));
  });
});

describe('numbers at their ends make no law that divides by nothing', () => {
  it.each([
    ['blendTimeS', 'new share dt/(T+dt)', { blendTimeS: 60 }, 1e9],
    ['blendTimeS', 'kept share exp(-dt/T)', { blendTimeS: 60 }, 1e9],
    ['driveCeilingA', 'A', { driveCeilingA: 1 }, 0.001],
    ['gyroLowPassHz', 's', { gyroLowPassHz: 2000 }, 1e9],
  ])('%s in %s, rounded to whole ones', (quantity, unit, shaping, back) => {
    const scale = quantity === 'driveCeilingA' ? 0.1 : 1;
    const [entry] = typed(
      [{ label: 'End', quantity, unit, scale, decimals: 0 }],
      {},
      profile(shaping),
    ).entries;
    expect(entry!.back).toBe(back);
  });

  it('a size that a limit makes negative is none', () => {
    const row = { label: 'Stop', quantity: 'slewLimitAPerS', unit: 'A/s', greatest: -1 };
    expect(typed([row], {}, profile({ slewLimitAPerS: 500 })).entries[0]!.back).toBe(0);
  });
});

it('without rounding and limits a whole profile comes back, in whatever units and signs', () => {
  const whole = profile({
    ...lift,
    progressiveStiffnessPerDeg: 0.2,
    slewLimitAPerS: 900,
    driveCeilingA: 40,
    brakeCeilingA: 50,
    gyroLowPassHz: 90,
    restTrimNoseUpDeg: -1.5,
    engageRampS: 0.7,
    loadFeedForward: { filterTimeS: 0.8, currentShare: 0.4, noseUpDegPerA: -0.05 },
  });
  const keys = PROFILE_FIELDS.map(({ key }) => key);
  const unitOf = (key: string, pick: number) => {
    // Shares near 1 lose digits of the time; they have a test of their own.
    const units = Object.keys(UNITS_OF[sheetQuantity(key).dimension]).filter((unit) => !/share ./.test(unit));
    return units[pick % units.length]!;
  };
  fc.assert(
    fc.property(
      fc.array(fc.nat(100), { minLength: keys.length, maxLength: keys.length }),
      fc.constantFrom('nose up', 'nose down'),
      fc.constantFrom('forward', 'backward'),
      fc.constantFrom(1, 1000, 1e-3, 7),
      (picks, pitch, current, scale) => {
        const rows = keys.map((key, index) => ({
          label: `Row ${index}`,
          quantity: key,
          unit: unitOf(key, picks[index]!),
          scale,
        }));
        const sheet = sheetWith(rows, { counts: { pitch, current }, currentLimitA: 83, loopRateHz: 613 });
        for (const { row, exact, ours } of ontoSheet(sheet, whole).entries) {
          const back = readBack(sheet, row, exact!);
          expect(Math.abs(back - ours!), row.quantity).toBeLessThanOrEqual(1e-12 * Math.abs(ours!));
        }
      },
    ),
    { numRuns: 300, seed: 7 },
  );
});

it('numbers are put into a profile as they are, and sections only for a number', () => {
  const own = profile();
  const changed = withPlainNumbers(own, [
    { key: 'proportionalAPerDeg', value: -3 },
    { key: 'upToDeg', value: null },
    { key: 'currentShare', value: null },
  ]);
  expect(changed).toEqual({ ...own, gains: { ...own.gains, proportionalAPerDeg: -3 } });
  expect(own.gains.proportionalAPerDeg).toBe(20);
  const [entry] = typed([HOLD]).entries;
  expect(changeOf(entry!)).toEqual({ key: 'proportionalAPerDeg', value: 20 });
  expect(
    readField(withPlainNumbers(own, [{ key: 'upToDeg', value: 3 }]), {
      path: ['shaping', 'headroomLift', 'upToDeg'],
    }),
  ).toBe(3);
});
