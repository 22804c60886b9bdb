/** Does a number keep its meaning in every unit of a controller? */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimatorLaw } from '../../src/control/estimator.js';
import { PROFILE_FIELDS } from '../../src/quantity/profile-fields.js';
import { SHEET_QUANTITIES, sheetQuantity } from '../../src/quantity/sheet-quantities.js';
import {
  needsLimit,
  needsTick,
  SHEET_UNITS,
  UNITS_OF,
  type Dimension,
} from '../../src/quantity/sheet-units.js';

const GROUND = { tickS: 1 / 800, limitA: 80 };

const to = (dimension: Dimension, unit: string, ours: number, ground = GROUND) =>
  UNITS_OF[dimension][unit]!.to(ours, ground);

describe('angles', () => {
  it('are those of NIST SP 811, appendix B.8: 1 deg = 1.745 329 E-02 rad', () => {
    expect(to('angle', 'rad', 1)).toBeCloseTo(1.745329e-2, 8);
    expect(to('current per angle', 'A/rad', 1.745329e-2)).toBeCloseTo(1, 6);
    expect(to('growth per angle', 'percent/rad', 0.01)).toBeCloseTo(1 / 1.745329e-2, 4);
    expect(to('angle per current', 'rad/A', 1)).toBeCloseTo(1.745329e-2, 8);
  });
});

describe('parts of the limit and milliamperes', () => {
  it.each([
    ['current', 'limit', 20, 0.25],
    ['current', 'mA', 20, 20_000],
    ['current per angle', 'limit/deg', 20, 0.25],
    ['current per time', 'limit/s', 400, 5],
    ['angle per current', 'deg/limit', 0.1, 8],
    ['angle per current', 'deg/mA', 0.1, 0.0001],
  ] as const)('%s in %s', (dimension, unit, ours, theirs) => {
    expect(to(dimension, unit, ours)).toBeCloseTo(theirs, 12);
  });
});

/** A ride of some ticks with a pitch that grows steadily: what a controller that counts by the tick makes of it. */
describe('units of a tick act as ours do', () => {
  const { tickS } = GROUND;
  const rateDegPerS = 12;
  const pitchesDeg = Array.from({ length: 50 }, (_, tick) => rateDegPerS * tick * tickS);

  it('a difference from tick to tick is the rate', () => {
    const perTick = to('current per pitch rate', 'A/(deg/tick)', 1.2);
    expect(perTick * (pitchesDeg[9]! - pitchesDeg[8]!)).toBeCloseTo(1.2 * rateDegPerS, 9);
    const radPerTick = to('pitch rate', 'rad/tick', rateDegPerS);
    expect(radPerTick).toBeCloseTo(((pitchesDeg[9]! - pitchesDeg[8]!) * Math.PI) / 180, 12);
  });

  it('a sum over the ticks is the integral', () => {
    const errorDeg = 0.5;
    const perTick = to('current per angle and time', 'A/(deg tick)', 100);
    const summedA = pitchesDeg.reduce((sum) => sum + perTick * errorDeg, 0);
    expect(summedA).toBeCloseTo(100 * errorDeg * pitchesDeg.length * tickS, 9);
  });

  it('a change a tick is the slew limit, and ticks are a time', () => {
    expect(to('current per time', 'A/tick', 800)).toBeCloseTo(1, 12);
    expect(to('time', 'ticks', 0.5)).toBeCloseTo(400, 9);
  });
});

describe('filters by their share a tick', () => {
  // A complementary filter with 0.98 at 100 Hz is the usual example; its time constant is given as 0.49 s (common practice).
  it('by the backward difference', () => {
    const ground = { tickS: 0.01, limitA: 1 };
    expect(to('time constant', 'kept share T/(T+dt)', 0.49, ground)).toBeCloseTo(0.98, 12);
    expect(to('time constant', 'new share dt/(T+dt)', 0.49, ground)).toBeCloseTo(0.02, 12);
  });

  // 1/(0.1 s + 1) held over 0.02 s, as c2d of Octave's control package 3.4 has it.
  it('exactly for an input that is held', () => {
    const ground = { tickS: 0.02, limitA: 1 };
    expect(to('time constant', 'kept share exp(-dt/T)', 0.1, ground)).toBeCloseTo(0.818730753077982, 14);
    expect(to('time constant', 'new share 1-exp(-dt/T)', 0.1, ground)).toBeCloseTo(0.181269246922018, 14);
  });

  it('a held input reaches what the differential equation says', () => {
    const fresh = to('time constant', 'new share 1-exp(-dt/T)', 0.3);
    let value = 0;
    for (let tick = 0; tick < 240; tick++) value += fresh * (1 - value);
    expect(value).toBeCloseTo(1 - Math.exp(-1), 9);
  });

  it('are the very shares that the simulated controller works with', () => {
    const law = estimatorLaw(4, GROUND.tickS, 60);
    expect(to('time constant', 'kept share T/(T+dt)', 4)).toBeCloseTo(law.gyroTrustRatio, 14);
    expect(to('corner frequency', 'new share 1-exp(-dt/T)', 60)).toBeCloseTo(law.rateFollowRatio, 14);
  });

  it('a corner is 1 / (2 pi T), in rad/s 1 / T', () => {
    expect(to('corner frequency', 'ms', 50)).toBeCloseTo(1000 / (2 * Math.PI * 50), 12);
    expect(to('corner frequency', 'rad/s', 50)).toBeCloseTo(100 * Math.PI, 10);
    expect(to('time constant', 'Hz', 0.5)).toBeCloseTo(1 / Math.PI, 12);
    expect(to('time constant', 'rad/s', 0.5)).toBe(2);
  });
});

it('every number of a profile is known, with its own unit among those it may have', () => {
  const own: Readonly<Record<string, string>> = { '': 'share', '%': 'percent' };
  expect(Object.keys(SHEET_QUANTITIES).toSorted()).toEqual(PROFILE_FIELDS.map(({ key }) => key).toSorted());
  for (const { key, unit } of PROFILE_FIELDS) {
    const law = UNITS_OF[sheetQuantity(key).dimension][own[unit] ?? unit];
    expect(law?.to(1.5, GROUND), key).toBe(1.5);
  }
});

it('there and back a number is the same, in every unit', () => {
  const numbers = PROFILE_FIELDS.flatMap(({ key, min, max }) =>
    Object.entries(UNITS_OF[sheetQuantity(key).dimension]).map(([unit, law]) => ({
      key,
      unit,
      law,
      min,
      max,
    })),
  );
  expect(numbers.length).toBeGreaterThan(90);
  fc.assert(
    fc.property(
      fc.constantFrom(...numbers),
      fc.double({ min: 0.001, max: 1, noNaN: true }),
      fc.integer({ min: 100, max: 4000 }),
      fc.integer({ min: 1, max: 1000 }),
      ({ key, unit, law, max }, part, rateHz, limitA) => {
        const ground = { tickS: 1 / rateHz, limitA };
        const ours = part * max;
        const theirs = law.to(ours, ground);
        // A share near 0 or 1 has fewer bits left for the time: its digits are lost in the share itself.
        const room = /share ./.test(unit) ? Math.min(theirs, 1 - theirs) : 1;
        if (room < 1e-9) return;
        expect(Math.abs(law.back(theirs, ground) / ours - 1), `${key} in ${unit}`).toBeLessThan(1e-12 / room);
      },
    ),
    { numRuns: 3000, seed: 7 },
  );
});

it('units say what they need of the controller', () => {
  expect(SHEET_UNITS.filter(needsLimit)).toContain('limit/(rad tick)');
  expect(SHEET_UNITS.filter(needsLimit)).not.toContain('A/deg');
  expect(SHEET_UNITS.filter(needsTick)).toEqual(
    expect.arrayContaining(['ticks', 'A/tick', 'kept share exp(-dt/T)']),
  );
  for (const laws of Object.values(UNITS_OF)) {
    for (const [unit, law] of Object.entries(laws)) {
      const isFinite = Number.isFinite(law.to(0.5, { tickS: NaN, limitA: NaN }));
      expect(isFinite, unit).toBe(!needsLimit(unit) && !needsTick(unit));
    }
  }
});
