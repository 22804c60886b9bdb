/** Are the small parts of a sweep what they say: ranges, candidates, rungs, the order of cells, slips? */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { referenceProfile } from '../../src/control/reference-profile.js';
import { candidateAt } from '../../src/sweep/candidate.js';
import { cellOrder } from '../../src/sweep/cell-order.js';
import { neighboursOf, slipped } from '../../src/sweep/neighbours.js';
import { bestPlaces, FINALISTS, goingOn, rungs } from '../../src/sweep/racing.js';
import { placeOf, usualRanges, valueAt } from '../../src/sweep/range.js';
import { boardWith, profileWith, riderWith } from '../rigs.js';
import { RANGES } from './made-judge.js';

describe('a range', () => {
  it('goes evenly in its logarithm, and evenly where it holds zero', () => {
    expect([0, 0.5, 1].map((place) => valueAt({ min: 1, max: 100 }, place))).toEqual([1, 10, 100]);
    expect([0, 0.5, 1].map((place) => valueAt({ min: -2, max: 4 }, place))).toEqual([-2, 1, 4]);
  });

  it('is never left, whatever is rounded, and places come back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        fc.double({ min: 1.1, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (min, ratio, place) => {
          const range = { min, max: min * ratio };
          const value = valueAt(range, place);
          expect(value).toBeGreaterThanOrEqual(range.min);
          expect(value).toBeLessThanOrEqual(range.max);
          expect(Math.abs(placeOf(range, value) - place)).toBeLessThan(0.006 / Math.log(ratio));
        },
      ),
    );
  });

  it('that suits a rig holds the references of its riders', () => {
    const riders = [riderWith({ body: { massKg: 50 } }), riderWith({ body: { massKg: 110 } })];
    const [proportional, rate] = usualRanges(boardWith(), riders);
    for (const rider of riders) {
      const { gains } = referenceProfile(boardWith(), rider);
      expect(gains.proportionalAPerDeg).toBeGreaterThan(2 * proportional!.min);
      expect(gains.proportionalAPerDeg).toBeLessThan(proportional!.max / 1.5);
      expect(gains.rateAPerDegPerS).toBeGreaterThan(2 * rate!.min);
      expect(gains.rateAPerDegPerS).toBeLessThan(rate!.max / 2);
    }
  });
});

describe('a candidate', () => {
  it('has the numbers of its point in three digits, and all else of its base', () => {
    const base = profileWith([20, 1], { blendTimeS: 3 });
    const candidate = candidateAt({ base, ranges: RANGES }, [0.5, 0.25], 'c1')!;
    expect(candidate.values).toEqual([12.6, 0.178]);
    expect(candidate.profile.gains).toMatchObject({ proportionalAPerDeg: 12.6, rateAPerDegPerS: 0.178 });
    expect(candidate.profile.shaping).toEqual(base.shaping);
  });

  it('is none where the schema has no such profile', () => {
    const ranges = [{ path: ['shaping', 'gyroLowPassHz'], unit: 'Hz', min: 0.1, max: 10 }];
    expect(candidateAt({ base: profileWith([20, 1]), ranges }, [0], 'c1')).toBeNull();
  });
});

describe('a race', () => {
  it('doubles its cells from rung to rung and ends with all', () => {
    expect(rungs(60)).toEqual([4, 8, 16, 32, 60]);
    expect(rungs(64)).toEqual([4, 8, 16, 32, 64]);
    expect(rungs(3)).toEqual([3]);
  });

  it('keeps the better half, never fewer than the finalists, and nobody who falls too often', () => {
    const standings = Array.from({ length: 100 }, (_, place) => ({ failures: 0, score: 100 - place }));
    expect(goingOn(standings)).toEqual(Array.from({ length: 50 }, (_, index) => 50 + index));
    expect(goingOn(standings.slice(0, 20))).toHaveLength(FINALISTS);
    const falling = standings.map((standing, place) => ({ ...standing, failures: place < 80 ? 3 : 0 }));
    expect(goingOn(falling)).toHaveLength(20);
    expect(goingOn([])).toEqual([]);
  });

  it('puts falls before any score', () => {
    expect(
      bestPlaces(
        [
          { failures: 1, score: 0 },
          { failures: 0, score: 9 },
          { failures: 0, score: 1 },
        ],
        2,
      ),
    ).toEqual([2, 1]);
  });
});

describe('the order of cells', () => {
  const cell = (rider: string, riderMassKg: number, cost: number, failed = false) => ({
    rider,
    riderMassKg,
    cost,
    failed,
  });

  it('begins with the hardest two of the lightest and of the heaviest, and ends with what the plain one falls in', () => {
    const cells = [
      cell('middle', 78, 0.9),
      cell('light', 50, 0.1),
      cell('light', 50, 0.5),
      cell('light', 50, 10, true),
      cell('light', 50, 0.4),
      cell('heavy', 110, 0.2),
      cell('heavy', 110, 0.3),
      cell('middle', 78, 0.8),
    ];
    expect(cellOrder(cells)).toEqual([2, 4, 6, 5, 0, 7, 1, 3]);
  });

  it('holds every cell once', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(4), fc.nat(9), fc.boolean()), { maxLength: 60 }), (drawn) => {
        const cells = drawn.map(([rider, cost, failed]) => cell(`r${rider}`, 50 + rider, cost, failed));
        expect(cellOrder(cells).toSorted((a, b) => a - b)).toEqual(cells.map((_, index) => index));
      }),
    );
  });
});

describe('a slip', () => {
  it.each([
    ['a tenth less', 18],
    ['a tenth more', 22],
    ['first digit one less', 10],
    ['first digit one more', 30],
    ['a tenth of it', 2],
    ['ten times it', 200],
  ] as const)('%s makes %d of 20', (slip, off) => {
    expect(slipped(20, slip)).toBe(off);
  });

  it('of a small number is one of its first digit too', () => {
    expect(slipped(0.0345, 'first digit one more')).toBe(0.0445);
    expect(slipped(1.2, 'first digit one less')).toBe(0.2);
  });

  it('keeps every digit that was typed, where it is a digit, a point or a sign that slips', () => {
    expect(slipped(12.345, 'the other sign')).toBe(-12.345);
    expect(slipped(12.345, 'ten times it')).toBe(123.45);
    expect(slipped(12.345, 'a tenth of it')).toBe(1.2345);
    expect(slipped(9.87, 'first digit one more')).toBe(10.87);
  });

  it('touches one number at a time, and leaves out what no profile can hold', () => {
    const base = profileWith([20, 1]);
    const neighbours = neighboursOf({ values: [20, 20] }, { base, ranges: RANGES });
    expect(neighbours.every(({ values, range }) => values[1 - range] === 20)).toBe(true);
    expect(neighbours.filter(({ range }) => range === 0)).toHaveLength(6);
    // 200 A/(deg/s) is more than a profile may have.
    expect(neighbours.filter(({ range }) => range === 1).map(({ slip }) => slip)).not.toContain(
      'ten times it',
    );
  });
});
