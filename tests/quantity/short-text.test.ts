/**
 * Does every profile come back from its short text to the last digit, and is a text with faults told all of them?
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keyPath } from '../../src/quantity/key-path.js';
import { PROFILE_FIELDS, readField } from '../../src/quantity/profile-fields.js';
import { readShortText, SHORT_TAGS, shortText } from '../../src/quantity/short-text.js';
import { numbersHash } from '../../src/store/short-hash.js';
import { holds } from '../properties/properties.js';
import { anyProfile, bareProfile, fullProfile } from '../show/exported-kept.js';

const textOf = (profile: typeof bareProfile) => shortText(profile, numbersHash(profile));
const read = (text: string) => readShortText(text, numbersHash);

/** Every fault as one line: place, expectation, what came. */
function faultsOf(text: string): string[] {
  const reading = read(text);
  if (reading.ok) throw new Error('no fault');
  return reading.faults.map(({ path, expected, received }) => `${keyPath(path)}: ${expected} / ${received}`);
}

describe('the tags', () => {
  it('are there for every number of a profile and for nothing else, each once', () => {
    expect(Object.keys(SHORT_TAGS).toSorted()).toEqual(PROFILE_FIELDS.map(({ key }) => key).toSorted());
    expect(new Set(Object.values(SHORT_TAGS)).size).toBe(PROFILE_FIELDS.length);
  });

  it('are letters, and none is the one of the power of ten', () => {
    for (const tag of Object.values(SHORT_TAGS)) expect(tag).toMatch(/^[A-DF-Z]$/);
  });
});

describe('a short text', () => {
  it('says the numbers, defaults too, and leaves out what the profile leaves out', () => {
    expect(shortText(bareProfile, '7k2m-q9dx')).toBe('UF1 P20 R1.2 I0 K0 L20 T1 N0 W0 7K2M-Q9DX');
  });

  it('says every number of a profile that has them all', () => {
    expect(shortText(fullProfile, '7k2m-q9dx')).toBe(
      'UF1 P20.5 R1.25 I12 K0.05 L15 S20000 D45 B50 G150 T2.5 N-0.5 W0.8 F0.8 C0.4 U-0.02 H45 M12 V2 7K2M-Q9DX',
    );
  });

  holds(
    'comes back as the same numbers, in the characters of the alphanumeric mode',
    fc.property(anyProfile, (profile) => {
      const text = textOf(profile);
      // ISO/IEC 18004, table of the alphanumeric mode; from memory.
      expect(text).toMatch(/^[0-9A-Z $%*+\-./:]+$/);
      const again = read(text);
      if (!again.ok) throw new Error(faultsOf(text).join('\n'));
      for (const field of PROFILE_FIELDS)
        expect(String(readField(again.value, field))).toBe(String(readField(profile, field)));
      expect(Object.keys(again.value.shaping).toSorted()).toEqual(Object.keys(profile.shaping).toSorted());
    }),
  );

  holds(
    'with one character changed is never read as other numbers',
    fc.property(anyProfile, fc.nat(), fc.constantFrom(...'0123456789.-PRIKE'), (profile, place, put) => {
      const text = textOf(profile);
      const at = place % text.length;
      const changed = text.slice(0, at) + put + text.slice(at + 1);
      const again = read(changed);
      if (!again.ok) return;
      // Only a number written otherwise (1.0E-7, 01.5) or with what lies below its last digit may pass.
      for (const field of PROFILE_FIELDS)
        expect(String(readField(again.value, field))).toBe(String(readField(profile, field)));
    }),
  );

  it('may be typed in small letters and with more spaces', () => {
    const again = read(`  ${textOf(fullProfile).toLowerCase().replaceAll(' ', '  ')}\n`);
    expect(again.ok && again.value.shaping).toEqual(fullProfile.shaping);
    expect(again.ok && again.value.summary).toBe(`From a short text, ${numbersHash(fullProfile)}`);
  });
});

describe('a text with faults', () => {
  it('is told all of them at once', () => {
    expect(faultsOf('UF2 P600 R1O X7 I2 I3 K0.5 H45 7K2M-Q9D')).toEqual([
      "mark: UF1 at the beginning, as in UF1 P20 R1.2 7K2M-Q9DX / 'UF2'",
      "hash: the short hash at the end, as in UF1 P20 R1.2 7K2M-Q9DX / '7K2M-Q9D'",
      "gains.rateAPerDegPerS: R and a number such as R1.25 / 'R1O'",
      "X: a number after one of the letters P, R, I, K, L, S, D, B, G, T, N, W, F, C, U, H, M, V / 'X7'",
      "gains.integralAPerDegS: the letter I once / 'I3' after another one",
      'gains.proportionalAPerDeg: a number from 0 to 500 A/deg / 600',
      'shaping.headroomLift.upToDeg: a number from 0.5 to 15 deg / nothing',
      'shaping.headroomLift.rateDegPerS: a number from 0.5 to 60 deg/s / nothing',
    ]);
  });

  it('is told which gains are missing', () => {
    expect(faultsOf('UF1 T4 7K2M-Q9DX')).toEqual([
      'gains.proportionalAPerDeg: a number from 0 to 500 A/deg / nothing',
      'gains.rateAPerDegPerS: a number from 0 to 100 A/(deg/s) / nothing',
    ]);
  });

  it('is told a hash of other numbers, and one that is not there', () => {
    const text = textOf(bareProfile);
    const hash = numbersHash(bareProfile).toUpperCase();
    expect(faultsOf(text.replace('P20', 'P21'))).toEqual([
      expect.stringMatching(new RegExp(`^hash: ....-...., the hash of these numbers / '${hash}'$`)),
    ]);
    expect(faultsOf(text.replace(` ${hash}`, ''))).toEqual([expect.stringMatching(/^hash: .* \/ nothing$/)]);
  });

  it.each(['', ' ', 'UF1', 'hello', 'P20', '🛹', 'UF1 P', 'UF1 PINFINITY', 'UF1 PNAN 7K2M-Q9DX'])(
    'is no reason to throw: %j',
    (text) => {
      expect(faultsOf(text).length).toBeGreaterThan(1);
    },
  );

  holds(
    'never throws, whatever it is',
    fc.property(fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'UF1 PRIK0.5E-') })), (text) => {
      expect(read(text).ok).toBe(false);
    }),
  );
});
