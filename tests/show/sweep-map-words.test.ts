/** Do words tell where the map is best and between which numbers the falls begin, whichever way the cliff lies? */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MapCandidate, MapSpec } from '../../src/show/sweep-map.js';
import { mapWords } from '../../src/show/sweep-map-words.js';
import { holds } from '../properties/properties.js';

const RANGES = [
  { path: ['gains', 'proportionalAPerDeg'], unit: 'A/deg', min: 0, max: 100 },
  { path: ['gains', 'rateAPerDegPerS'], unit: 'A/(deg/s)', min: 0, max: 9 },
];

/** Candidates at whole tens of one number and whole ones of the other. */
function gridOf(falls: (x: number, y: number) => boolean): MapCandidate[] {
  return Array.from({ length: 110 }, (_, index): MapCandidate => {
    const [x, y] = [10 * (index % 11), Math.floor(index / 11)];
    return { name: `c${index}`, values: [x, y], falls: falls(x, y), value: x + y, sign: null };
  });
}

const SCORE = { name: 'Score over 2 cells', text: (value: number) => value.toFixed(0), ofFallen: false };

const specOf = (candidates: MapCandidate[]): MapSpec => ({
  ranges: RANGES,
  x: 0,
  y: 1,
  candidates,
  metric: SCORE,
});
const wordsOf = (falls: (x: number, y: number) => boolean) => mapWords(specOf(gridOf(falls)));

describe('the map in words', () => {
  it('says what is mapped over which numbers, how many fall, and where the best lie', () => {
    const [first] = wordsOf((x) => x < 35);
    expect(first).toEqual([
      'Score over 2 cells by proportional and rate: best 40 at proportional 40 A/deg, rate 0 A/(deg/s); 40 of 110 candidates fall.',
      'To the right proportional 0 to 100 A/deg, upwards rate 0 to 9 A/(deg/s).',
      'The best fifth, 14 candidates up to 53, lies at proportional 40 to 50 A/deg and rate 0 to 9 A/(deg/s).',
    ]);
  });

  it('says between which numbers the falls begin, below', () => {
    const [, cliff] = wordsOf((x) => x < 35);
    expect(cliff).toEqual([
      'Where the falls begin, by rate:',
      'rate 0 to 3 A/(deg/s), 33 candidates: they stay up at proportional 40 to 100 A/deg, and fall at 30 A/deg and below.',
      'rate 3 to 6 A/(deg/s), 33 candidates: they stay up at proportional 40 to 100 A/deg, and fall at 30 A/deg and below.',
      'rate 6 to 9 A/(deg/s), 44 candidates: they stay up at proportional 40 to 100 A/deg, and fall at 30 A/deg and below.',
    ]);
  });

  it('says so of a cliff on both sides, and of one across the other number', () => {
    expect(wordsOf((x) => x < 25 || x > 75)[1]![1]).toContain(
      'stay up at proportional 30 to 70 A/deg, and fall at 20 A/deg and below and at 80 A/deg and above.',
    );
    const across = wordsOf((_, y) => y > 7)[1]!;
    expect(across[0]).toBe('Where the falls begin, by proportional:');
    expect(across[1]).toMatch(/they stay up at rate 0 to 7 A\/\(deg\/s\), and fall at 8 .* and above\.$/);
  });

  it('tells exceptions, a band without falls, and one in which all fall', () => {
    const stray = wordsOf((x, y) => x < 35 || (x === 80 && y === 1));
    expect(stray[1]![1]).toMatch(/and below; 1 of them does otherwise\.$/);
    const [, , , , ...none] = wordsOf((x, y) => y < 3 || (y < 6 && x < 35))[1]!;
    expect(none).toEqual([]);
    const bands = wordsOf((x, y) => y < 3 || (y < 6 && x < 35))[1]!;
    expect(bands.join(' ')).toMatch(/rate 0 to 3 [^:]*: all fall\./);
    expect(bands.join(' ')).toMatch(/rate 6 to 9 [^:]*: nobody falls\./);
  });

  it('says that there is no cliff where nobody falls, and where all do', () => {
    expect(wordsOf(() => false)[1]).toEqual(['Nobody falls: there is no cliff between these numbers.']);
    const all = wordsOf(() => true);
    expect(all[0]![0]).toMatch(/nobody stays up; 110 of 110 candidates fall\.$/);
    expect(all[1]![0]).toMatch(/^All of them fall/);
  });

  it('names the finalists by their signs, in their order', () => {
    const signed = gridOf(() => false).map((one, index) => ({ ...one, sign: ['2', '1'][index] ?? null }));
    expect(mapWords(specOf(signed))[2]).toEqual([
      'The finalists by their signs:',
      '1 c1 with proportional 10 A/deg, rate 0 A/(deg/s): 10.',
      '2 c0 with proportional 0 A/deg, rate 0 A/(deg/s): 0.',
    ]);
  });

  holds(
    'tells every sharp cliff along one number without an exception',
    fc.property(
      fc.integer({ min: 0, max: 9 }),
      fc.integer({ min: 1, max: 10 }),
      fc.boolean(),
      (a, b, isAcross) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const at = (step: number) => step >= low && step < high;
        const words = wordsOf((x, y) => !at(isAcross ? y : x / 10));
        const text = words[1]!.join(' ');
        expect(text).not.toContain('otherwise');
        if (high - low >= 1 && (low > 0 || high < 10) && !isAcross)
          expect(text).toContain(
            `they stay up at proportional ${high - low === 1 ? '' : `${10 * low} to `}${10 * (high - 1)} A/deg`,
          );
      },
    ),
  );
});
