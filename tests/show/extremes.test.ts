import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnExtremes, decimated } from '../../src/show/extremes.js';

const times = (count: number) => Array.from({ length: count }, (_, index) => index);
const line = (values: number[]) => ({ timeS: times(values.length), values });

describe('the range of each column', () => {
  it('keeps least and greatest of many samples', () => {
    const found = columnExtremes(line([0, 5, -3, 1, 1, 1, 9, 1]), { fromS: 0, toS: 8, columnCount: 2 });
    expect([...found.highest]).toEqual([5, 9]);
    expect([...found.lowest]).toEqual([-3, 1]);
  });

  it('joins samples that are columns apart by a straight line', () => {
    const found = columnExtremes(line([0, 8]), { fromS: 0, toS: 1, columnCount: 4 });
    expect([...found.lowest]).toEqual([0, 2, 4, 6]);
    expect([...found.highest]).toEqual([2, 4, 6, 8]);
  });

  it('leaves a gap for what is no number', () => {
    const found = columnExtremes(line([1, NaN, 3, 4]), { fromS: 0, toS: 4, columnCount: 4 });
    expect([...found.lowest]).toEqual([1, Infinity, 3, 4]);
    expect([...found.highest]).toEqual([1, -Infinity, 4, 4]);
  });

  it('cuts a line that comes from outside at the edge', () => {
    const found = columnExtremes(line([0, 10, 20, 30]), { fromS: 0.5, toS: 2.5, columnCount: 2 });
    expect([...found.lowest]).toEqual([5, 15]);
    expect([...found.highest]).toEqual([15, 25]);
  });

  it('never loses a peak', () => {
    const values = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), {
      minLength: 1,
      maxLength: 300,
    });
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 80 }), (samples, columnCount) => {
        const found = columnExtremes(line(samples), { fromS: 0, toS: samples.length - 1, columnCount });
        expect(Math.max(...found.highest)).toBeCloseTo(Math.max(...samples), 6);
        expect(Math.min(...found.lowest)).toBeCloseTo(Math.min(...samples), 6);
      }),
    );
  });
});

describe('thinning', () => {
  it('keeps short lines whole, without what is no number', () => {
    expect(decimated(line([3, NaN, 1]), 10)).toEqual([0, 2]);
  });

  it('keeps the ends and the peak of every stretch, in order, within the limit', () => {
    const values = fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), {
      minLength: 1,
      maxLength: 400,
    });
    fc.assert(
      fc.property(values, fc.integer({ min: 6, max: 60 }), (samples, most) => {
        const kept = decimated(line(samples), most);
        const seen = kept.map((index) => samples[index] ?? NaN);
        expect(kept.length).toBeLessThanOrEqual(most);
        expect(kept).toEqual([...kept].sort((a, b) => a - b));
        expect([kept[0], kept.at(-1)]).toEqual([0, samples.length - 1]);
        expect(Math.max(...seen) + 0).toBe(Math.max(...samples) + 0);
        expect(Math.min(...seen) + 0).toBe(Math.min(...samples) + 0);
      }),
    );
  });
});
