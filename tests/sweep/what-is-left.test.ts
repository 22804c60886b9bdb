/** Does it come true? Seeded draws: how often one more is better, and by how much, beside what was believed before it. */
import { describe, expect, it } from 'vitest';
import { STREAMS, uniforms } from '../../src/scenario/random.js';
import { whatIsLeft } from '../../src/sweep/what-is-left.js';

const TRIALS = 20_000;

interface Seen {
  /** Share of the trials in which the next draw was better, and what was gained and believed on the mean. */
  better: number;
  gained: number;
  believed: number;
}

/** Many searches of n draws, and then one more draw each; `score` is what an even number becomes. */
function played(n: number, score: (even: number) => number): Seen {
  const numbers = uniforms(n, STREAMS.road, TRIALS * (n + 1)).map(score);
  const seen: Seen = { better: 0, gained: 0, believed: 0 };
  for (let trial = 0; trial < TRIALS; trial++) {
    const draws = Array.from(numbers.subarray(trial * (n + 1), (trial + 1) * (n + 1)));
    const next = draws.pop()!;
    const gain = Math.max(0, Math.min(...draws) - next);
    seen.better += Number(gain > 0) / TRIALS;
    seen.gained += gain / TRIALS;
    seen.believed += (whatIsLeft(draws, []).gainPerDraw ?? 0) / TRIALS;
  }
  return seen;
}

describe('what is left of independent draws', () => {
  it.each([1, 4, 9, 40])('is a chance of 1 / (n + 1) that one more is better, n = %i', (n) => {
    const { better } = played(n, (even) => even ** 3);
    const chance = 1 / (n + 1);
    expect(whatIsLeft(new Array<number>(n).fill(1), []).chanceOfBetter).toBe(chance);
    expect(Math.abs(better - chance)).toBeLessThan(4 * Math.sqrt((chance * (1 - chance)) / TRIALS));
  });

  // Standard error of the gain: about sqrt(2 chance / TRIALS) for exponential gaps of mean 1, a 22nd of it at n = 20.
  it('is as much as it says where scores thin out exponentially', () => {
    const { gained, believed } = played(20, Math.log);
    expect(believed).toBeCloseTo(1 / 21, 3);
    expect(Math.abs(gained - 1 / 21)).toBeLessThan(4 * Math.sqrt(2 / 21 / TRIALS));
  });

  it('is less than it says in a bowl: by 1.64 over four gains (the volume within a cost grows as its square)', () => {
    const { gained, believed } = played(20, Math.sqrt);
    expect(believed / gained).toBeGreaterThan(1.5);
    expect(believed / gained).toBeLessThan(1.8);
  });

  it('takes its gain from the best five scores, each gap times its rank', () => {
    const { draws, gainIfBetter, gainPerDraw } = whatIsLeft([9, 1, 2, 2.5, 4, 4, 100], []);
    expect(draws).toBe(7);
    expect(gainIfBetter).toBeCloseTo((1 + 2 * 0.5 + 3 * 1.5 + 0) / 4, 12);
    expect(gainPerDraw).toBeCloseTo(gainIfBetter! / 8, 12);
  });

  it('counts draws without a score, but takes no gap from them', () => {
    const left = whatIsLeft([Infinity, 3, NaN, 5], []);
    expect(left).toMatchObject({ draws: 4, chanceOfBetter: 1 / 5, gainIfBetter: 2 });
    expect(whatIsLeft([3, Infinity], [])).toMatchObject({ gainIfBetter: null, gainPerDraw: null });
    expect(whatIsLeft([], [])).toMatchObject({ draws: 0, chanceOfBetter: 1, gainIfBetter: null });
  });
});

describe('what is left of a search that learns', () => {
  const left = (...improvements: number[]) => whatIsLeft([], improvements).gainOfSearch;

  it('is the rest of the series, exactly, where improvements shrink by the same share', () => {
    const share = 0.8;
    const steps = [0, 1, 2, 3, 4, 5].map((step) => 3 * share ** step);
    expect(left(...steps)).toBeCloseTo((3 * share ** 6) / (1 - share), 12);
    expect(left(4, 2)).toBeCloseTo(2, 12);
  });

  it('leaves out the oldest of an odd number', () => {
    expect(left(100, 4, 2)).toBeCloseTo(2, 12);
  });

  it('is nothing when nothing came of late, and unknown when improvements do not shrink or there are none to compare', () => {
    expect(left(5, 3, 0, 0)).toBe(0);
    expect(left(0, 0)).toBe(0);
    expect(left(1, 1)).toBeNull();
    expect(left(1, 2)).toBeNull();
    expect(left(0, 2)).toBeNull();
    expect(left(2)).toBeNull();
    expect(left()).toBeNull();
  });
});
