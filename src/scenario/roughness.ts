/**
 * Random unevenness of a road by its ISO 8608:2016 class: displacement density
 * Gd(n) = Gd(n0) (n / n0)^-2 with n0 = 0.1 cycle/m, synthesised as a sum of cosines with random phases.
 *
 * Lines are spaced evenly in the logarithm of n and stand at the geometric mean of their cells, so that each
 * carries just the variance of its cell; a coarse even grid would overstate the height.
 */
import type { ROUGHNESS_CLASSES } from '../quantity/scenario-file.js';
import { STREAMS, uniforms } from './random.js';

/** A road class of ISO 8608. */
export type RoughnessClass = (typeof ROUGHNESS_CLASSES)[number];

/** Geometric mean of Gd(n0) in each class, m3 (ISO 8608; each class is four times the one before). */
export const ROUGHNESS_M3: Record<RoughnessClass, number> = {
  A: 16e-6,
  B: 64e-6,
  C: 256e-6,
  D: 1024e-6,
  E: 4096e-6,
};

const REFERENCE_CYCLES_PER_M = 0.1;

/** Band that is synthesised, cycle/m: ISO 8608 asks for 0.05 off the road, and 10 for the tyre's envelope. */
export const ROUGHNESS_BAND_CYCLES_PER_M = [0.05, 10] as const;

const LINES = 192;

/** Heights [m] at `length` places `spacingM` apart of a road of that class. */
export function roughHeights(
  roughness: RoughnessClass,
  seed: number,
  grid: { length: number; spacingM: number },
): Float64Array {
  const [lowest, highest] = ROUGHNESS_BAND_CYCLES_PER_M;
  const ratio = (highest / lowest) ** (1 / LINES);
  const phases = uniforms(seed, STREAMS.road, LINES);
  const heights = new Float64Array(grid.length);
  for (let line = 0; line < LINES; line++) {
    const from = lowest * ratio ** line;
    const cyclesPerM = from * Math.sqrt(ratio);
    const density = ROUGHNESS_M3[roughness] * (cyclesPerM / REFERENCE_CYCLES_PER_M) ** -2;
    const amplitudeM = Math.sqrt(2 * density * from * (ratio - 1));
    addCosine(heights, amplitudeM, 2 * Math.PI * cyclesPerM * grid.spacingM, 2 * Math.PI * phases[line]!);
  }
  return heights;
}

/** Adds a cosine by turning a pointer, which is as exact as needed over a lane and far quicker than Math.cos. */
function addCosine(heights: Float64Array, amplitude: number, stepRad: number, phaseRad: number): void {
  const turnCos = Math.cos(stepRad);
  const turnSin = Math.sin(stepRad);
  let real = amplitude * Math.cos(phaseRad);
  let imaginary = amplitude * Math.sin(phaseRad);
  for (let index = 0; index < heights.length; index++) {
    heights[index]! += real;
    const turned = real * turnCos - imaginary * turnSin;
    imaginary = real * turnSin + imaginary * turnCos;
    real = turned;
  }
}
