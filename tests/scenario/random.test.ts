/** Is the chance of a run normal, its streams apart, and the same however long the run? Moments of the normal distribution. */
import { describe, expect, it } from 'vitest';
import { normals, STREAMS, uniforms } from '../../src/scenario/random.js';

const COUNT = 40_000;
const mean = (values: Float64Array, read: (value: number, index: number) => number) =>
  values.reduce((sum, value, index) => sum + read(value, index), 0) / values.length;

describe('normal numbers', () => {
  // Four standard errors each: of the mean 1/sqrt(n), of the variance sqrt(2/n), of the fourth moment sqrt(96/n).
  it.each(Object.entries(STREAMS))(
    'have mean 0, variance 1, fourth moment 3 in stream %s',
    (_name, stream) => {
      const values = normals(7, stream, COUNT);
      expect(Math.abs(mean(values, (value) => value))).toBeLessThan(4 / Math.sqrt(COUNT));
      expect(Math.abs(mean(values, (value) => value ** 2) - 1)).toBeLessThan(4 * Math.sqrt(2 / COUNT));
      expect(Math.abs(mean(values, (value) => value ** 4) - 3)).toBeLessThan(4 * Math.sqrt(96 / COUNT));
    },
  );

  it('lie within one and two standard deviations as often as they should: 68.27 and 95.45 %', () => {
    const values = normals(3, STREAMS.gyro, COUNT);
    for (const [width, share] of [
      [1, 0.6827],
      [2, 0.9545],
    ] as const) {
      const inside = mean(values, (value) => (Math.abs(value) < width ? 1 : 0));
      expect(Math.abs(inside - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / COUNT));
    }
  });

  it('share nothing between streams, between seeds that follow one another, or from one tick to the next', () => {
    const values = normals(1, STREAMS.gyro, COUNT);
    const others = [
      normals(1, STREAMS.tremor, COUNT),
      normals(2, STREAMS.gyro, COUNT),
      normals(2, STREAMS.accelerometerForward, COUNT),
      Float64Array.from(values, (_, index) => values[(index + 1) % COUNT]!),
    ];
    for (const other of others) {
      expect(Math.abs(mean(values, (value, index) => value * other[index]!))).toBeLessThan(
        4 / Math.sqrt(COUNT),
      );
    }
  });

  it('are never those of another seed and stream', () => {
    const firsts = [1, 2, 3, 4, 5, 6].flatMap((seed) =>
      Object.values(STREAMS).map((stream) => normals(seed, stream, 2)[0]),
    );
    expect(new Set(firsts).size).toBe(firsts.length);
  });

  it('begin the same however many are drawn, and the same seed gives them again', () => {
    const long = normals(11, STREAMS.tremor, 1001);
    for (const length of [1, 2, 999, 1000]) {
      expect(normals(11, STREAMS.tremor, length)).toEqual(long.subarray(0, length));
    }
  });
});

describe('even numbers', () => {
  it('stay inside 0 and 1 and fill it evenly', () => {
    const values = uniforms(5, STREAMS.road, COUNT);
    expect(Math.min(...values)).toBeGreaterThan(0);
    expect(Math.max(...values)).toBeLessThan(1);
    for (let tenth = 0; tenth < 10; tenth++) {
      const share = mean(values, (value) => (Math.floor(10 * value) === tenth ? 1 : 0));
      expect(Math.abs(share - 0.1)).toBeLessThan(4 * Math.sqrt(0.09 / COUNT));
    }
  });
});
