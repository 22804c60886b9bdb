/** Are complex linear equations solved, rows changed places where they must, and the determinant right? By hand. */
import { describe, expect, it } from 'vitest';
import { createElimination, createTable, eliminate } from '../../src/linear/elimination.js';

describe('elimination', () => {
  it('solves (z I - A) X = B with det(I - A / z) on the way: by hand for 2 x 2, with a pivot that is no first choice', () => {
    const A = [
      [2, 1],
      [3, 4],
    ];
    const elimination = createElimination(A, [[1], [0]]);
    // z = 2: z I - A = [[0, -1], [-3, -2]], determinant -3, over z^2: -3/4; X = [[2/3], [-1]].
    expect(elimination.solveAt({ re: 2, im: 0 }).re).toBeCloseTo(-3 / 4, 15);
    expect(elimination.lookAt([1, 0], 0).re).toBeCloseTo(2 / 3, 15);
    expect(elimination.lookAt([0, 1], 0).re).toBeCloseTo(-1, 15);
    // z = j: determinant (j - 2)(j - 4) - 3 = 4 - 6j, over z^2: -4 + 6j; x1 = (j - 4) / (4 - 6j), x2 = 3 / (4 - 6j).
    const determinant = elimination.solveAt({ re: 0, im: 1 });
    expect(determinant.re).toBeCloseTo(-4, 14);
    expect(determinant.im).toBeCloseTo(6, 14);
    const sum = elimination.lookAt([1, 1], 0);
    // (j - 1) / (4 - 6j) = (j - 1)(4 + 6j) / 52 = (-10 - 2j) / 52
    expect(sum.re).toBeCloseTo(-10 / 52, 15);
    expect(sum.im).toBeCloseTo(-2 / 52, 15);
  });

  it('says so where there is no solution', () => {
    const table = createTable(2, 1);
    table.re.set([1, 2, 1, 2, 4, 1]);
    expect(() => eliminate(table)).toThrow('singular');
  });
});
