/**
 * Complex numbers, as far as frequency responses need them.
 */

/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** A real number as a complex one. */
export const real = (re: number): Complex => ({ re, im: 0 });

/** exp(j angle), the angle in rad. */
export const turned = (angleRad: number): Complex => ({ re: Math.cos(angleRad), im: Math.sin(angleRad) });

/** a + b. */
export const plus = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });

/** a - b. */
export const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });

/** a b. */
export const times = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});

/** a / b. */
export function over(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
}

/** z to a whole power of zero or more, or below zero. */
export function power(z: Complex, exponent: number): Complex {
  const size = magnitude(z) ** exponent;
  const turn = turned(angleOf(z) * exponent);
  return { re: size * turn.re, im: size * turn.im };
}

/** The principal root. */
export function root(z: Complex): Complex {
  const size = Math.sqrt(magnitude(z));
  const turn = turned(angleOf(z) / 2);
  return { re: size * turn.re, im: size * turn.im };
}

/** Distance from zero. */
export const magnitude = ({ re, im }: Complex): number => Math.hypot(re, im);

/** Angle from the positive real axis, rad, above -pi up to pi. */
export const angleOf = ({ re, im }: Complex): number => Math.atan2(im, re);
