/**
 * Seeded chance: the same seed and stream give the same numbers on every machine. Every use has a stream
 * of its own, so that a longer run or one more sensor never changes what another sees.
 */
import { mersenne } from 'pure-rand/generator/mersenne';

/** Streams of chance: five in a run, then those of a sweep. */
export const STREAMS = {
  road: 1,
  gyro: 2,
  accelerometerForward: 3,
  accelerometerUp: 4,
  tremor: 5,
  candidates: 6,
  generation: 7,
  search: 8,
  resampling: 9,
} as const;

/** One of the streams. */
export type Stream = (typeof STREAMS)[keyof typeof STREAMS];

/** `length` numbers spread evenly over the open interval from 0 to 1. */
export function uniforms(seed: number, stream: Stream, length: number): Float64Array {
  const generator = mersenne(mix(seed, stream));
  const numbers = new Float64Array(length);
  for (let index = 0; index < length; index++) {
    numbers[index] = ((generator.next() >>> 0) + 0.5) / 2 ** 32;
  }
  return numbers;
}

/** `length` numbers, normally distributed with mean 0 and standard deviation 1 (Box and Muller 1958). */
export function normals(seed: number, stream: Stream, length: number): Float64Array {
  const even = length + (length % 2);
  const numbers = uniforms(seed, stream, even);
  for (let index = 0; index < even; index += 2) {
    const radius = Math.sqrt(-2 * Math.log(numbers[index]!));
    const angle = 2 * Math.PI * numbers[index + 1]!;
    numbers[index] = radius * Math.cos(angle);
    numbers[index + 1] = radius * Math.sin(angle);
  }
  return numbers.subarray(0, length);
}

/** Spreads near seeds far apart, so that seeds 1 and 2 share nothing (multiply, shift and xor). */
function mix(seed: number, stream: number): number {
  let h = Math.imul(seed ^ Math.imul(stream, 0x9e3779b1), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15), 0xc2b2ae35);
  return (h ^ (h >>> 13)) | 0;
}
