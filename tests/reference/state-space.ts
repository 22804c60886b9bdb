/**
 * Linear systems x' = A x + B u as the witnesses compare them: a rig whose tread is rigid, the same system sampled with
 * its input held, its poles, and its response at a frequency.
 */
import { EigenvalueDecomposition, Matrix, solve } from 'ml-matrix';
import * as at from '../../src/model/state.js';
import type { LinearRig } from './jacobian.js';

/** x' = A x + B u. */
export interface StateSpace {
  A: Matrix;
  B: Matrix;
}

/** A complex number. */
export interface Complex {
  re: number;
  im: number;
}

/**
 * A linear rig that rolls without slip: the tread carries whatever force keeps r psi'' = x''. States are the coordinates
 * given (among them X, which takes the wheel along), then their rates; inputs are motor torque and foot torque. Exact
 * where wheel load and leg force keep still, as they do to first order about standing upright.
 */
export function rollingRig(rig: LinearRig, radiusM: number, coordinates: readonly number[]): StateSpace {
  const shear = rig.A.getColumn(at.TREAD);
  const slip = (rates: readonly number[]) => radiusM * rates[at.WHEEL + at.RATE]! - rates[at.X + at.RATE]!;
  const accelerations = (rates: readonly number[]) => {
    const hold = -slip(rates) / slip(shear);
    return coordinates.map((place) => rates[place + at.RATE]! + hold * shear[place + at.RATE]!);
  };
  const column = (place: number, wheelPlace: number) => {
    const way = Matrix.zeros(at.STATE_SIZE, 1);
    way.set(place, 0, 1);
    if (place % at.RATE === at.X) way.set(wheelPlace, 0, 1 / radiusM);
    return accelerations(rig.A.mmul(way).to1DArray());
  };
  const size = coordinates.length;
  const A = Matrix.zeros(2 * size, 2 * size);
  const B = Matrix.zeros(2 * size, 2);
  coordinates.forEach((place, k) => {
    A.set(k, size + k, 1);
    column(place, at.WHEEL).forEach((value, row) => A.set(size + row, k, value));
    column(place + at.RATE, at.WHEEL + at.RATE).forEach((value, row) => A.set(size + row, size + k, value));
  });
  [at.MOTOR_TORQUE, at.RIDER_TORQUE].forEach((input, k) => {
    accelerations(rig.B.getColumn(input)).forEach((value, row) => B.set(size + row, k, value));
  });
  return { A, B };
}

/** exp(A t) by its series, t halved until the series is short. */
function exponential(At: Matrix): Matrix {
  const halvings = Math.max(0, Math.ceil(Math.log2(Math.max(1e-300, At.norm('frobenius')))) + 3);
  const small = Matrix.mul(At, 2 ** -halvings);
  let term = Matrix.eye(At.rows);
  let sum = Matrix.eye(At.rows);
  for (let order = 1; order <= 16; order++) {
    term = term.mmul(small).div(order);
    sum = Matrix.add(sum, term);
  }
  for (let k = 0; k < halvings; k++) sum = sum.mmul(sum);
  return sum;
}

/** The system from one tick to the next with its inputs held, x_next = Phi x + Gamma u, given back as A and B. */
export function held({ A, B }: StateSpace, tickS: number): StateSpace {
  const size = A.rows;
  const both = Matrix.zeros(size + B.columns, size + B.columns);
  both.setSubMatrix(A, 0, 0);
  both.setSubMatrix(B, 0, size);
  const end = exponential(both.mul(tickS));
  return {
    A: end.subMatrix(0, size - 1, 0, size - 1),
    B: end.subMatrix(0, size - 1, size, size + B.columns - 1),
  };
}

/** Eigenvalues, from the fastest growing down; of a pair the one with the positive imaginary part first. */
export function polesOf(A: Matrix): Complex[] {
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(A);
  return realEigenvalues
    .map((re, k) => ({ re, im: imaginaryEigenvalues[k]! }))
    .sort((a, b) => (Math.abs(b.re - a.re) > 1e-7 ? b.re - a.re : b.im - a.im));
}

/** C (s I - A)^-1 B for one input and one output; s = j w, or z = exp(j w T) for a sampled system. */
export function responseAt({ A, B }: StateSpace, output: readonly number[], { re, im }: Complex): Complex {
  const size = A.rows;
  const resolvent = Matrix.zeros(2 * size, 2 * size);
  const direct = Matrix.sub(Matrix.eye(size).mul(re), A);
  resolvent.setSubMatrix(direct, 0, 0);
  resolvent.setSubMatrix(direct, size, size);
  resolvent.setSubMatrix(Matrix.eye(size).mul(-im), 0, size);
  resolvent.setSubMatrix(Matrix.eye(size).mul(im), size, 0);
  const input = Matrix.zeros(2 * size, 1);
  input.setSubMatrix(B, 0, 0);
  const x = solve(resolvent, input).to1DArray();
  return {
    re: output.reduce((sum, c, k) => sum + c * x[k]!, 0),
    im: output.reduce((sum, c, k) => sum + c * x[size + k]!, 0),
  };
}

/** Largest difference of two matrices, as a share of the second's largest entry. */
export function apart(actual: Matrix, expected: Matrix): number {
  return Matrix.sub(actual, expected).abs().max() / Matrix.abs(expected).max();
}

/** Largest distance of poles from the rows [re, im] they should be at, as a share of the largest pole. */
export function polesApart(actual: readonly Complex[], expected: readonly (readonly number[])[]): number {
  const scale = Math.max(...expected.map(([re, im]) => Math.hypot(re!, im!)));
  return Math.max(
    ...expected.map(([re, im], k) => Math.hypot(actual[k]!.re - re!, actual[k]!.im - im!) / scale),
  );
}
