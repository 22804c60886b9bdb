/**
 * Second-order filter sections: two ways to make one from an analog section, and the rms of a
 * signal that has passed through a chain of them.
 *
 *   H(z) = (b0 + b1 z^-1 + b2 z^-2) / (1 + a1 z^-1 + a2 z^-2)
 */
import type { Span } from './window.js';

/** Coefficients of one digital section. */
export interface Biquad {
  b0: number;
  b1: number;
  b2: number;
  a1: number;
  a2: number;
}

/** An analog section in powers of s [rad/s]: (n0 + n1 s + n2 s^2) / (d0 + d1 s + d2 s^2). */
export interface AnalogSection {
  numerator: readonly [number, number, number];
  denominator: readonly [number, number, number];
}

/**
 * Second-order Butterworth high-pass, -3.01 dB at `cornerHz`, by the bilinear transform prewarped at the corner
 * (A. V. Oppenheim, R. W. Schafer, Discrete-Time Signal Processing, chapter 7, from memory). The corner is below half of the rate.
 */
export function butterworthHighPass(cornerHz: number, rateHz: number): Biquad {
  const warped = Math.tan((Math.PI * cornerHz) / rateHz);
  const a0 = 1 + Math.SQRT2 * warped + warped ** 2;
  return {
    b0: 1 / a0,
    b1: -2 / a0,
    b2: 1 / a0,
    a1: (2 * (warped ** 2 - 1)) / a0,
    a2: (1 - Math.SQRT2 * warped + warped ** 2) / a0,
  };
}

/**
 * A digital section with the analog section's poles, z = exp(s/rate), and the same magnitude at 0 Hz and at the two anchors.
 * It does not squeeze the axis towards half of the rate as the bilinear transform does. Poles must be a complex pair.
 * Method: M. Vicanek, Matched Second Order Digital Filters, 2016 (from memory), with free anchors. Throws when no real section fits.
 */
export function matchedSection(
  section: AnalogSection,
  rateHz: number,
  anchorsHz: readonly [number, number],
): Biquad {
  const [d0, d1, d2] = section.denominator;
  const decay = d1 / (2 * d2);
  const ringing = Math.sqrt(d0 / d2 - decay ** 2);
  const a1 = -2 * Math.exp(-decay / rateHz) * Math.cos(ringing / rateHz);
  const a2 = Math.exp((-2 * decay) / rateHz);

  // |1 + a1 z^-1 + a2 z^-2|^2 = A0 (1-s) + A1 s + 4 A2 s (1-s) with s = sin^2(w/2), A2 = -4 a2; likewise B.
  const denominatorSquared = (s: number): number =>
    (1 + a1 + a2) ** 2 * (1 - s) + (1 - a1 + a2) ** 2 * s - 16 * a2 * s * (1 - s);
  const squaredAt0 = (1 + a1 + a2) ** 2 * (section.numerator[0] / d0) ** 2;
  const [p, q] = anchorsHz.map((hz) => {
    const s = Math.sin((Math.PI * hz) / rateHz) ** 2;
    const wanted = analogSquared(section, 2 * Math.PI * hz) * denominatorSquared(s);
    return { s, cross: 4 * s * (1 - s), left: wanted - squaredAt0 * (1 - s) };
  }) as [Anchor, Anchor];
  const determinant = p.s * q.cross - q.s * p.cross;
  const squaredAtHalfRate = (p.left * q.cross - q.left * p.cross) / determinant;
  const crossTerm = (p.s * q.left - q.s * p.left) / determinant;

  const rootAt0 = Math.sqrt(squaredAt0);
  const rootAtHalfRate = Math.sqrt(squaredAtHalfRate);
  const even = (rootAt0 + rootAtHalfRate) / 2;
  const b0 = (even + Math.sqrt(even ** 2 + crossTerm)) / 2;
  if (!(b0 > 0))
    throw new Error(`no matched section at ${rateHz} Hz with anchors ${anchorsHz.join(', ')} Hz`);
  return { b0, b1: (rootAt0 - rootAtHalfRate) / 2, b2: -crossTerm / (4 * b0), a1, a2 };
}

interface Anchor {
  s: number;
  cross: number;
  left: number;
}

/** Squared magnitude of an analog section at `radPerS`. */
export function analogSquared({ numerator, denominator }: AnalogSection, radPerS: number): number {
  return squared(numerator, radPerS) / squared(denominator, radPerS);
}

function squared([c0, c1, c2]: readonly [number, number, number], radPerS: number): number {
  return (c0 - c2 * radPerS ** 2) ** 2 + (c1 * radPerS) ** 2;
}

/**
 * Rms over the span of the signal after the chain, in the signal's unit; 0 when the span is empty. The filters run from
 * sample 0, at rest on its value, so that at the start of the span they know its past and bring no start-up swing of their own.
 */
export function rootMeanSquareThrough(chain: readonly Biquad[], { samples, first, end }: Span): number {
  if (end <= first) return 0;
  const memory = atRestOn(chain, samples[0] as number);
  let sum = 0;
  for (let row = 0; row < end; row += 1) {
    let value = samples[row] as number;
    for (let index = 0; index < chain.length; index += 1) {
      const { b0, b1, b2, a1, a2 } = chain[index] as Biquad;
      const input = value;
      value = b0 * input + (memory[2 * index] as number);
      memory[2 * index] = b1 * input - a1 * value + (memory[2 * index + 1] as number);
      memory[2 * index + 1] = b2 * input - a2 * value;
    }
    if (row >= first) sum += value ** 2;
  }
  return Math.sqrt(sum / (end - first));
}

/** Memory of the chain (two numbers a section, transposed direct form II) after an endless constant input. */
function atRestOn(chain: readonly Biquad[], constant: number): Float64Array {
  const memory = new Float64Array(2 * chain.length);
  let input = constant;
  chain.forEach(({ b0, b1, b2, a1, a2 }, index) => {
    const output = (input * (b0 + b1 + b2)) / (1 + a1 + a2);
    memory[2 * index] = output - b0 * input;
    memory[2 * index + 1] = b2 * input - a2 * output;
    input = output;
  });
  return memory;
}
