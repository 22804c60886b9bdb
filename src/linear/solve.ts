/**
 * (z I - A) X = B for complex z, with terms added to A.
 */
import type { Matrix } from 'ml-matrix';
import type { Complex } from './complex.js';
import { createTable, eliminate } from './elimination.js';

/** A term c r that is added to A: a real column and a complex row. */
export interface RankOne {
  column: readonly number[];
  row: readonly Complex[];
}

/** X of (z I - A - sum of the terms) X = B, row by row; B is real. Throws where there is none. */
export function solveComplex(A: Matrix, z: Complex, B: Matrix, terms: readonly RankOne[] = []): Complex[][] {
  const table = createTable(A.rows, B.columns);
  const { re, im, size, width } = table;
  for (let row = 0; row < size; row++) {
    const first = row * width;
    for (let column = 0; column < size; column++) re[first + column] = -A.get(row, column);
    for (let column = 0; column < B.columns; column++) re[first + size + column] = B.get(row, column);
    re[first + row]! += z.re;
    im[first + row]! += z.im;
    for (const term of terms) {
      const factor = term.column[row]!;
      if (factor === 0) continue;
      for (let column = 0; column < size; column++) {
        re[first + column]! -= factor * term.row[column]!.re;
        im[first + column]! -= factor * term.row[column]!.im;
      }
    }
  }
  eliminate(table);
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: B.columns }, (__, column) => {
      const place = row * width + size + column;
      return { re: re[place]!, im: im[place]! };
    }),
  );
}
