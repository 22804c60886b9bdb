/**
 * Are small changes small and whole, and is the one that is proposed the one that takes most of a feel away without a fall?
 */
import { describe, expect, it } from 'vitest';
import { changesAgainst, smallChanges, type Felt, type SmallChange } from '../../src/explain/feel-changes.js';
import { profileSchema } from '../../src/quantity/profile-file.js';

const profile = profileSchema.parse({
  summary: 'Made for tests.',
  gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1.2 },
});
const withLowPass = profileSchema.parse({ ...profile, shaping: { gyroLowPassHz: 60 } });

/** What is felt where a shift of weight tilts the deck by so many degrees. */
function felt(tiltDeg: number, failures = 0): Felt {
  const report = {
    modes: [],
    margins: { sensitivityPeak: { value: 1, radPerS: null } } as never,
    deckStiffnessNmPerDeg: { at1Hz: 10 / tiltDeg } as never,
    gyroNoiseA: 0.1,
  };
  return { facts: { rides: [{ speedKmPerH: 10, report }], cells: [], footShiftNm: 10 }, failures, score: 1 };
}

const change = (to: number): SmallChange => ({
  numbers: [{ key: 'proportionalAPerDeg', from: 20, to }],
  profile,
});

const against = (word: string, found: ReturnType<typeof changesAgainst>) =>
  found.find((one) => one.word === word)!;

describe('small changes', () => {
  it('move gains that are there by a tenth, together or alone', () => {
    const moved = smallChanges(profile).map(({ numbers }) => numbers.map(({ key, to }) => `${key} ${to}`));
    expect(moved).toEqual([
      ['proportionalAPerDeg 22'],
      ['proportionalAPerDeg 18'],
      ['rateAPerDegPerS 1.32'],
      ['rateAPerDegPerS 1.08'],
      ['proportionalAPerDeg 22', 'rateAPerDegPerS 1.32'],
      ['proportionalAPerDeg 18', 'rateAPerDegPerS 1.08'],
    ]);
  });

  it('move a low-pass only where there is one', () => {
    const keys = smallChanges(withLowPass).flatMap(({ numbers }) => numbers.map(({ key }) => key));
    expect(keys).toContain('gyroLowPassHz');
  });

  it('are what the changed profile has', () => {
    for (const { numbers, profile: changed } of smallChanges(withLowPass)) {
      for (const { key, to } of numbers) {
        expect({ ...changed.gains, ...changed.shaping }).toHaveProperty(key, to);
      }
    }
  });
});

describe('the change against a feel', () => {
  it('is the one that takes most of it away', () => {
    const found = changesAgainst(felt(4), [
      { change: change(22), felt: felt(3.5) },
      { change: change(24), felt: felt(3) },
      { change: change(18), felt: felt(4.5) },
    ]);
    expect(against('loose', found).found?.change.numbers[0]?.to).toBe(24);
    expect(against('stiff', found).found?.change.numbers[0]?.to).toBe(18);
  });

  it('is none that lets more runs fall', () => {
    const found = changesAgainst(felt(4, 1), [
      { change: change(22), felt: felt(3.5, 1) },
      { change: change(24), felt: felt(3, 2) },
    ]);
    expect(against('loose', found).found?.change.numbers[0]?.to).toBe(22);
  });

  it('is none where nothing helps, and where nothing speaks of the feel', () => {
    const found = changesAgainst(felt(4), [{ change: change(22), felt: felt(4) }]);
    expect(against('loose', found)).toMatchObject({ found: null, before: { reason: { value: 4 } } });
    expect(against('twitchy', found)).toMatchObject({ found: null, before: null });
  });
});
