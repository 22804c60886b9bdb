/**
 * Does a short hash tell one set of numbers from another, and a proven file from one with a number changed by hand?
 */
import { describe, expect, it } from 'vitest';
import { PROFILE_FIELDS, withFields } from '../../src/quantity/profile-fields.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import type { KeptFile } from '../../src/quantity/kept-file.js';
import { HASH_DIGITS, numbersHash, numbersText, sealOf, shortHash } from '../../src/store/short-hash.js';
import { validProfile } from '../quantity/valid-values.js';

const profile = profileSchema.parse(validProfile());

/** A value of five bits at a place of the digest, the slow way. */
function bitsAt(hex: string, place: number): number {
  const bits = [...hex].map((digit) => Number.parseInt(digit, 16).toString(2).padStart(4, '0')).join('');
  return Number.parseInt(bits.slice(5 * place, 5 * place + 5), 2);
}

describe('a short hash', () => {
  it('holds the first 40 bits of SHA-256', () => {
    // FIPS 180-4, examples of SHA-256: the digest of "abc" begins with ba7816bf 8f.
    const digits = shortHash('abc').replace('-', '');
    expect([...digits].map((digit) => HASH_DIGITS.indexOf(digit))).toEqual(
      Array.from({ length: 8 }, (_, place) => bitsAt('ba7816bf8f', place)),
    );
  });

  it('has 32 different digits and none that is mistaken for 0 or 1', () => {
    expect(new Set(HASH_DIGITS).size).toBe(32);
    // Crockford's table reads o as 0, i and l as 1, and has no u.
    expect(HASH_DIGITS).not.toMatch(/[oilu]/);
    expect(shortHash('x')).toMatch(/^[0-9a-hjkmnp-tv-z]{4}-[0-9a-hjkmnp-tv-z]{4}$/);
  });
});

describe('the hash of numbers', () => {
  it('is of the numbers alone', () => {
    expect(numbersHash({ ...profile, summary: 'Another one' })).toBe(numbersHash(profile));
    expect(numbersText(profile)).toBe(
      [
        'proportionalAPerDeg=20',
        'rateAPerDegPerS=1.2',
        'integralAPerDegS=0',
        'progressiveStiffnessPerDeg=0',
        'integralLimitA=20',
        'blendTimeS=1',
        'restTrimNoseUpDeg=0',
        'engageRampS=0',
        '',
      ].join('\n'),
    );
  });

  it('changes with every number that a profile can have', () => {
    const full = profileSchema.parse({
      ...validProfile(),
      shaping: {
        loadFeedForward: { filterTimeS: 0.5 },
        headroomLift: { belowPercent: 20, upToDeg: 3, rateDegPerS: 5 },
      },
    });
    const hashes = PROFILE_FIELDS.map(({ path, min, max }) => {
      const changed = withFields(full, [{ path, value: min + 0.37 * (Math.min(max, 1000) - min) }]);
      return numbersHash(changed!);
    });
    expect(new Set([numbersHash(full), ...hashes]).size).toBe(PROFILE_FIELDS.length + 1);
  });
});

describe('a seal', () => {
  const kept = { note: '', rides: [], numbers: 'a', profile, figures: { failures: 0, score: 0.2 } };
  const seal = (parts: object) => sealOf({ ...kept, ...parts } as unknown as KeptFile);

  it('leaves the note, the rides and itself to the rider', () => {
    expect(seal({ note: 'Held well', rides: [{ on: '2026-05-31' }], seal: 'x' })).toBe(seal({}));
  });

  it('is broken by any other change, however deep', () => {
    expect(seal({ figures: { failures: 1, score: 0.2 } })).not.toBe(seal({}));
    expect(seal({ numbers: 'b' })).not.toBe(seal({}));
  });

  it('does not hang on the order of keys', () => {
    expect(seal({ figures: { score: 0.2, failures: 0 } })).toBe(seal({}));
  });
});
