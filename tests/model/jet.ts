/**
 * Numbers that carry their first and second time derivative, for kinematics that are differentiated by a
 * machine and not by hand: the product and chain rules, nothing else.
 */

/** Value, first and second derivative. */
export type Jet = readonly [number, number, number];

/** A number that does not change. */
export const still = (value: number): Jet => [value, 0, 0];

/** a + b + ... */
export const plus = (...terms: readonly Jet[]): Jet => [
  terms.reduce((sum, term) => sum + term[0], 0),
  terms.reduce((sum, term) => sum + term[1], 0),
  terms.reduce((sum, term) => sum + term[2], 0),
];

/** a b */
export const times = (a: Jet, b: Jet): Jet => [
  a[0] * b[0],
  a[1] * b[0] + a[0] * b[1],
  a[2] * b[0] + 2 * a[1] * b[1] + a[0] * b[2],
];

/** -a */
export const minus = (a: Jet): Jet => [-a[0], -a[1], -a[2]];

/** sin a */
export const sine = (a: Jet): Jet => {
  const [s, c] = [Math.sin(a[0]), Math.cos(a[0])];
  return [s, c * a[1], c * a[2] - s * a[1] * a[1]];
};

/** cos a */
export const cosine = (a: Jet): Jet => {
  const [s, c] = [Math.sin(a[0]), Math.cos(a[0])];
  return [c, -s * a[1], -s * a[2] - c * a[1] * a[1]];
};
