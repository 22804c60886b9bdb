/** Does a grid hold each place with each, ends included, in order? By hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gridPoints } from '../../src/sweep/grid.js';
import { holds } from '../properties/properties.js';

describe('a grid', () => {
  it('goes through the last dimension first, from end to end, and takes the middle of a single place', () => {
    expect(gridPoints([2, 1, 3])).toEqual([
      [0, 0.5, 0],
      [0, 0.5, 0.5],
      [0, 0.5, 1],
      [1, 0.5, 0],
      [1, 0.5, 0.5],
      [1, 0.5, 1],
    ]);
    expect(gridPoints([4])).toEqual([[0], [1 / 3], [2 / 3], [1]]);
    expect(gridPoints([])).toEqual([[]]);
    expect(gridPoints([3, 0])).toEqual([]);
  });

  holds(
    'has as many different points as the product of its counts, in ascending order',
    fc.property(fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 4 }), (counts) => {
      const points = gridPoints(counts);
      expect(points.length).toBe(counts.reduce((product, count) => product * count, 1));
      for (const [index, point] of points.slice(1).entries()) {
        const before = points[index]!;
        const at = point.findIndex((place, dimension) => place !== before[dimension]);
        expect(point[at]!).toBeGreaterThan(before[at]!);
      }
    }),
  );
});
