/**
 * Are the fields of a profile those of its schema, and does each nudge lead to a round number in range?
 */
import { describe, expect, it } from 'vitest';
import { PROFILE_FIELDS, nudged, readField, withField } from '../../src/quantity/profile-fields.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import { validProfile } from './valid-values.js';

const full = profileSchema.parse({
  ...validProfile(),
  shaping: {
    slewLimitAPerS: 600,
    driveCeilingA: 50,
    brakeCeilingA: 40,
    gyroLowPassHz: 60,
    loadFeedForward: { filterTimeS: 0.8 },
    headroomLift: { belowPercent: 40, upToDeg: 8, rateDegPerS: 10 },
  },
});
const bare = profileSchema.parse(validProfile());
const field = (key: string) => PROFILE_FIELDS.find((known) => known.key === key)!;

/** The paths of the numbers in a value. */
function numbersIn(value: unknown, above: readonly string[] = []): string[] {
  if (typeof value === 'number') return [above.join('.')];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, [...above, key]));
}

describe('the fields of a profile', () => {
  it('are all of its numbers, each once', () => {
    const paths = PROFILE_FIELDS.map(({ path }) => path.join('.'));
    expect(paths.toSorted()).toEqual(numbersIn(full).toSorted());
    expect(new Set(paths).size).toBe(paths.length);
  });

  it('come in the order of the file, the gains first', () => {
    expect(PROFILE_FIELDS.slice(0, 4).map(({ key }) => key)).toEqual([
      'proportionalAPerDeg',
      'rateAPerDegPerS',
      'integralAPerDegS',
      'progressiveStiffnessPerDeg',
    ]);
  });

  it('have unit, range and sentence of the schema', () => {
    expect(field('rateAPerDegPerS')).toEqual({
      path: ['gains', 'rateAPerDegPerS'],
      key: 'rateAPerDegPerS',
      unit: 'A/(deg/s)',
      min: 0,
      max: 100,
      says: 'Motor current per degree per second of pitch rate: the damping',
      optional: false,
    });
    expect(field('currentShare')).toMatchObject({ unit: '', min: 0, max: 0.95 });
  });

  it.each(PROFILE_FIELDS)('$key holds what the schema holds, and no more', (known) => {
    const { min, max } = known;
    expect(max).toBeGreaterThan(min);
    expect(known.says).not.toBe('');
    for (const value of [min, max]) expect(readField(withField(full, known, value)!, known)).toBe(value);
    const beyond = (max - min) / 1000;
    expect(withField(full, known, min - beyond)).toBeNull();
    expect(withField(full, known, max + beyond)).toBeNull();
    expect(withField(full, known, Number.NaN)).toBeNull();
  });

  it('that are optional are those that stay out when they are left out', () => {
    const staysOut = PROFILE_FIELDS.filter((known) => {
      const without = withField(full, known, undefined);
      return without !== null && readField(without, known) === undefined;
    });
    expect(staysOut.map(({ key }) => key)).toEqual([
      'slewLimitAPerS',
      'driveCeilingA',
      'brakeCeilingA',
      'gyroLowPassHz',
    ]);
    expect(PROFILE_FIELDS.filter(({ optional }) => optional)).toEqual(staysOut);
  });
});

describe('reading and changing', () => {
  it('changes the one number and leaves the profile it began with alone', () => {
    const before = structuredClone(full);
    for (const known of PROFILE_FIELDS) {
      const middle = (known.min + known.max) / 2;
      const changed = withField(full, known, middle)!;
      expect(readField(changed, known)).toBe(middle);
      expect(withField(changed, known, readField(full, known))).toEqual(full);
    }
    expect(full).toEqual(before);
  });

  it('reads nothing where a section is left out', () => {
    expect(readField(bare, field('filterTimeS'))).toBeUndefined();
    expect(readField(bare, field('slewLimitAPerS'))).toBeUndefined();
  });

  it('begins a section with a number that it can begin with alone, and no other', () => {
    expect(withField(bare, field('filterTimeS'), 0.5)?.shaping.loadFeedForward).toEqual({
      filterTimeS: 0.5,
      currentShare: 0,
      noseUpDegPerA: 0,
    });
    expect(withField(bare, field('currentShare'), 0.5)).toBeNull();
    expect(withField(bare, field('belowPercent'), 40)).toBeNull();
  });
});

describe('a nudge', () => {
  it.each([
    ['proportionalAPerDeg', 20, [21, 22, 23]],
    ['proportionalAPerDeg', 20.3, [21, 22]],
    ['proportionalAPerDeg', 0, [1, 1.05]],
    ['proportionalAPerDeg', 499, [500, 500]],
    ['rateAPerDegPerS', 1.2, [1.25, 1.3]],
    ['rateAPerDegPerS', 0.02, [0.025, 0.03]],
    ['restTrimNoseUpDeg', -0.25, [-0.2, -0.1, 0, 0.1, 0.2]],
    ['slewLimitAPerS', 600, [620, 640]],
    ['slewLimitAPerS', 1_000_000, [1_000_000]],
  ] as const)('takes %s up from %d to %j', (key, from, expected) => {
    let value: number = from;
    const seen = expected.map(() => (value = nudged(field(key), value, { direction: 1, finely: false })));
    expect(seen).toEqual(expected);
  });

  it.each([
    ['proportionalAPerDeg', 21, [20, 19.5, 19]],
    ['proportionalAPerDeg', 0.03, [0.02, 0, 0]],
    ['rateAPerDegPerS', 1.25, [1.2, 1.15]],
    ['restTrimNoseUpDeg', 0.2, [0.1, 0, -0.1]],
    ['slewLimitAPerS', 51, [50, 50]],
  ] as const)('takes %s down from %d to %j', (key, from, expected) => {
    let value: number = from;
    const seen = expected.map(() => (value = nudged(field(key), value, { direction: -1, finely: false })));
    expect(seen).toEqual(expected);
  });

  it.each([
    [20, 1, 20.2],
    [20, -1, 19.9],
    [0, 1, 0.2],
  ] as const)('moves %d finely, direction %d, to %d', (from, direction, to) => {
    expect(nudged(field('proportionalAPerDeg'), from, { direction, finely: true })).toBe(to);
  });

  it.each(PROFILE_FIELDS)('of $key stays in range, moves, and from a round number comes back', (known) => {
    for (const finely of [false, true]) {
      const up = { direction: 1, finely } as const;
      const down = { direction: -1, finely } as const;
      // A number to begin with that nudges have made round; the first step from 0 is longer than the way back.
      let value = nudged(known, nudged(known, known.min + (known.max - known.min) / 3, up), up);
      for (let count = 0; count < 60; count += 1) {
        const next = nudged(known, value, up);
        expect(next).toBeGreaterThan(value);
        expect(nudged(known, next, down)).toBe(value);
        if (next === known.max || nudged(known, next, up) === known.max) break;
        value = next;
      }
    }
  });

  it.each(PROFILE_FIELDS)('of $key comes down to the least there is', (known) => {
    let value = known.max;
    let count = 0;
    for (; value > known.min && count < 2000; count += 1) {
      value = nudged(known, value, { direction: -1, finely: false });
    }
    expect(value).toBe(known.min);
    expect(count).toBeLessThan(500);
  });
});
