/**
 * Random unevenness against ISO 8608:2016: displacement density Gd(n) = Gd(n0) (n / n0)^-2, n0 = 0.1 cycle/m, with
 * geometric means of 16, 64, 256 x 10^-6 m3 for classes A, B, C. Its integral over a band n1 to n2 gives the height
 * rms sigma = n0 sqrt(Gd (1/n1 - 1/n2)) and the slope rms 2 pi n0 sqrt(Gd (n2 - n1)).
 */
import { describe, expect, it } from 'vitest';
import { ROUGHNESS_BAND_CYCLES_PER_M, ROUGHNESS_M3, roughHeights } from '../../src/scenario/roughness.js';
import { buildRoad } from '../../src/scenario/road.js';
import { roadPieces } from '../rigs.js';

const [LOWEST, HIGHEST] = ROUGHNESS_BAND_CYCLES_PER_M;
const SEEDS = Array.from({ length: 12 }, (_, index) => index + 1);
const meanSquare = (values: Float64Array) =>
  values.reduce((sum, value) => sum + value * value, 0) / values.length;

/** Mean square over seeds of what `read` makes of a stretch, and the standard error of that mean. */
function overSeeds(grid: { length: number; spacingM: number }, read: (heights: Float64Array) => number) {
  const squares = SEEDS.map((seed) => read(roughHeights('B', seed, grid)));
  const mean = squares.reduce((sum, square) => sum + square, 0) / squares.length;
  const variance = squares.reduce((sum, square) => sum + (square - mean) ** 2, 0) / (squares.length - 1);
  return { mean, error: Math.sqrt(variance / squares.length) };
}

/** Density of class B integrated over the band with a weight, by the midpoint rule on a fine even grid. */
function integrate(weight: (cyclesPerM: number) => number): number {
  const step = 1e-4;
  let sum = 0;
  for (let n = LOWEST + step / 2; n < HIGHEST; n += step) sum += 64e-6 * (n / 0.1) ** -2 * weight(n) * step;
  return sum;
}

describe('ISO 8608 unevenness', () => {
  // Table computed from the formula: 0.05 to 10 cycle/m gives 1.784, 3.569, 7.138 mm.
  it('has the height rms of class B over its band, 3.569 mm, on 4 km and twelve seeds', () => {
    const { mean, error } = overSeeds({ length: 40_000, spacingM: 0.1 }, meanSquare);
    expect(0.1 * Math.sqrt(64e-6 * (1 / LOWEST - 1 / HIGHEST))).toBeCloseTo(3.569e-3, 6);
    expect(error / mean).toBeLessThan(0.02);
    expect(Math.abs(mean / 3.569e-3 ** 2 - 1)).toBeLessThan(Math.max((3 * error) / mean, 1e-3));
  });

  it('doubles from class to class with the same seed: 1.784, 3.569, 7.138 mm', () => {
    const grid = { length: 4000, spacingM: 0.1 };
    const [a, b, c] = (['A', 'B', 'C'] as const).map((name) =>
      Math.sqrt(meanSquare(roughHeights(name, 3, grid))),
    );
    expect(b! / a!).toBeCloseTo(2, 10);
    expect(c! / b!).toBeCloseTo(2, 10);
    expect([ROUGHNESS_M3.A, ROUGHNESS_M3.B, ROUGHNESS_M3.C]).toEqual([16e-6, 64e-6, 256e-6]);
  });

  it('has the slope rms of class B over its band, 2 pi n0 sqrt(Gd (n2 - n1))', () => {
    const spacingM = 0.002;
    const { mean, error } = overSeeds({ length: 50_000, spacingM }, (heights) => {
      const slopes = heights.subarray(1).map((height, index) => (height - heights[index]!) / spacingM);
      return meanSquare(slopes);
    });
    const slope = 2 * Math.PI * 0.1 * Math.sqrt(64e-6 * (HIGHEST - LOWEST));
    expect(Math.abs(mean / slope ** 2 - 1)).toBeLessThan((3 * error) / mean + 2e-3);
  });

  it.each([0.02, 0.1, 0.5, 2])(
    'spreads that over wavelengths as n^-2: mean square rise over %d m',
    (lagM) => {
      const spacingM = 0.02;
      const lag = Math.round(lagM / spacingM);
      const { mean, error } = overSeeds({ length: 40_000, spacingM }, (heights) =>
        meanSquare(heights.subarray(lag).map((height, index) => height - heights[index]!)),
      );
      const expected = integrate((n) => 2 * (1 - Math.cos(2 * Math.PI * n * lagM)));
      expect(Math.abs(mean / expected - 1)).toBeLessThan((3 * error) / mean + 2e-3);
    },
  );

  it('avoids the trap of a coarse even grid: lines 0.01 apart from 0.01 on give class B 10.26 mm, not 7.996', () => {
    const [low, high] = [0.01, 10];
    let coarse = 0;
    for (let line = 1; line <= 1000; line++) coarse += 64e-6 * ((0.01 * line) / 0.1) ** -2 * 0.01;
    expect(Math.sqrt(coarse)).toBeCloseTo(10.26e-3, 5);
    const exact = 0.1 * Math.sqrt(64e-6 * (1 / low - 1 / high));
    expect(exact).toBeCloseTo(7.996e-3, 5);
    // Lines at the geometric mean of cells that are even in the logarithm carry just the variance of their cell.
    const ratio = (high / low) ** (1 / 192);
    let even = 0;
    for (let line = 0; line < 192; line++) {
      const from = low * ratio ** line;
      even += 64e-6 * ((from * Math.sqrt(ratio)) / 0.1) ** -2 * from * (ratio - 1);
    }
    expect(Math.sqrt(even) / exact).toBeCloseTo(1, 12);
  });

  it('differs from seed to seed and from piece to piece, and is the same twice', () => {
    const grid = { length: 1000, spacingM: 0.05 };
    const heights = roughHeights('C', 1, grid);
    expect(roughHeights('C', 1, grid)).toEqual(heights);
    const others = [2, 3, 4].map((seed) => roughHeights('C', seed, grid));
    for (const other of others) {
      const together =
        heights.reduce((sum, height, index) => sum + height * other[index]!, 0) / heights.length;
      expect(Math.abs(together) / meanSquare(heights)).toBeLessThan(0.5);
    }
    const twice = buildRoad(roadPieces({ lengthM: 10, roughness: 'C' }, { lengthM: 10, roughness: 'C' }), {
      radiusM: 0.14,
      seed: 1,
    });
    expect(twice.bareHeightM[2500]).not.toBeCloseTo(twice.bareHeightM[4500]!, 6);
  });

  it('fades in and out at the ends of its piece, so that there is no step', () => {
    const road = buildRoad(roadPieces({ lengthM: 10, roughness: 'E' }), { radiusM: 0.14, seed: 4 });
    const start = Math.round(10 / road.spacingM);
    const end = Math.round(20 / road.spacingM);
    for (const place of [start, end]) {
      expect(Math.abs(road.bareHeightM[place + 1]! - road.bareHeightM[place - 1]!)).toBeLessThan(1e-4);
    }
    expect(road.bareHeightM[start]).toBe(0);
  });
});
