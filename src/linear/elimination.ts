/**
 * Linear equations in complex numbers: Gaussian elimination with pivots by rows in flat arrays, the determinant on the way; and
 * (z I - A) X = B for one real A and B at one z after another.
 */
import type { Complex } from './complex.js';

/** A system that can be solved at any z. */
export interface Elimination {
  /** Solves at z; returns det(I - A / z). */
  solveAt: (z: Complex) => Complex;
  /** The sum of a row of real numbers times a column of X, at the last z. */
  lookAt: (row: readonly number[], column: number) => Complex;
}

/** A system of a matrix, row by row, and columns to its right. */
export function createElimination(
  A: readonly (readonly number[])[],
  B: readonly (readonly number[])[],
): Elimination {
  const table = createTable(A.length, B[0]!.length);
  const { re, im, size, width } = table;
  return {
    solveAt: (z) => {
      // I - A / z to the left, B / z to the right.
      const square = z.re * z.re + z.im * z.im;
      const [overRe, overIm] = [z.re / square, -z.im / square];
      for (let row = 0; row < size; row++) {
        for (let column = 0; column < width; column++) {
          const isLeft = column < size;
          const value = isLeft ? -A[row]![column]! : B[row]![column - size]!;
          re[row * width + column] = value * overRe + (isLeft && row === column ? 1 : 0);
          im[row * width + column] = value * overIm;
        }
      }
      return eliminate(table);
    },
    lookAt: (row, column) => {
      let [sumRe, sumIm] = [0, 0];
      for (let place = 0; place < size; place++) {
        sumRe += row[place]! * re[place * width + size + column]!;
        sumIm += row[place]! * im[place * width + size + column]!;
      }
      return { re: sumRe, im: sumIm };
    },
  };
}

/** A square matrix of a size to the left, columns to its right, row by row; `width` is of both. */
export interface Table {
  re: Float64Array;
  im: Float64Array;
  size: number;
  width: number;
}

/** A table of zeros. */
export function createTable(size: number, columns: number): Table {
  const width = size + columns;
  return { re: new Float64Array(size * width), im: new Float64Array(size * width), size, width };
}

/**
 * Turns the left of a table into the identity and so its right into the solution; returns the determinant that the left had.
 * Throws where the left is singular.
 */
export function eliminate(table: Table): Complex {
  const { re, im, size, width } = table;
  let determinant: Complex = { re: 1, im: 0 };
  for (let pivot = 0; pivot < size; pivot++) {
    const sign = bringUp(table, pivot);
    const at = pivot * width + pivot;
    const [pRe, pIm] = [re[at]!, im[at]!];
    const square = pRe * pRe + pIm * pIm;
    if (square === 0) throw new Error('a singular matrix has no solution');
    determinant = {
      re: sign * (determinant.re * pRe - determinant.im * pIm),
      im: sign * (determinant.re * pIm + determinant.im * pRe),
    };
    for (let column = pivot; column < width; column++) {
      const place = pivot * width + column;
      const [a, b] = [re[place]!, im[place]!];
      re[place] = (a * pRe + b * pIm) / square;
      im[place] = (b * pRe - a * pIm) / square;
    }
    for (let row = 0; row < size; row++) if (row !== pivot) subtract(table, row, pivot);
  }
  return determinant;
}

/** Brings the row with the largest number in the pivot's column up to it; -1 where rows changed places. */
function bringUp({ re, im, size, width }: Table, pivot: number): 1 | -1 {
  const sizeAt = (row: number) => Math.abs(re[row * width + pivot]!) + Math.abs(im[row * width + pivot]!);
  let best = pivot;
  for (let row = pivot + 1; row < size; row++) if (sizeAt(row) > sizeAt(best)) best = row;
  if (best === pivot) return 1;
  for (const part of [re, im]) {
    const row = part.slice(best * width, (best + 1) * width);
    part.copyWithin(best * width, pivot * width, (pivot + 1) * width);
    part.set(row, pivot * width);
  }
  return -1;
}

function subtract({ re, im, width }: Table, row: number, pivot: number): void {
  const [fRe, fIm] = [re[row * width + pivot]!, im[row * width + pivot]!];
  if (fRe === 0 && fIm === 0) return;
  for (let column = pivot; column < width; column++) {
    const [from, place] = [pivot * width + column, row * width + column];
    const [a, b] = [re[from]!, im[from]!];
    re[place]! -= fRe * a - fIm * b;
    im[place]! -= fRe * b + fIm * a;
  }
}
