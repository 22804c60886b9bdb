/**
 * (z I - A) X = B for complex z: solved as a real system of twice the size.
 */
import { Matrix, solve } from 'ml-matrix';
import type { Complex } from './complex.js';

/** A term c r that is added to A: a real column and a complex row. */
export interface RankOne {
  column: readonly number[];
  row: readonly Complex[];
}

/** The matrix z I - A - sum of c r, real and imaginary parts in blocks: [[Re, -Im], [Im, Re]]. */
function blocks(A: Matrix, z: Complex, terms: readonly RankOne[]): Matrix {
  const size = A.rows;
  const both = Matrix.zeros(2 * size, 2 * size);
  const put = (row: number, column: number, re: number, im: number) => {
    both.set(row, column, re);
    both.set(row + size, column + size, re);
    both.set(row, column + size, -im);
    both.set(row + size, column, im);
  };
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      let re = (row === column ? z.re : 0) - A.get(row, column);
      let im = row === column ? z.im : 0;
      for (const term of terms) {
        re -= term.column[row]! * term.row[column]!.re;
        im -= term.column[row]! * term.row[column]!.im;
      }
      put(row, column, re, im);
    }
  }
  return both;
}

/** X of (z I - A - sum of the terms) X = B, row by row; B is real. */
export function solveComplex(A: Matrix, z: Complex, B: Matrix, terms: readonly RankOne[] = []): Complex[][] {
  const size = A.rows;
  const right = Matrix.zeros(2 * size, B.columns);
  right.setSubMatrix(B, 0, 0);
  const X = solve(blocks(A, z, terms), right);
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: B.columns }, (__, column) => ({
      re: X.get(row, column),
      im: X.get(row + size, column),
    })),
  );
}
