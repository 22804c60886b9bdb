/**
 * The road between its grid points: cubic Hermite interpolation gives back any cubic with its slope exactly (any textbook
 * of numerical analysis), so cubics are what it is asked for; the bare road is joined by straight lines.
 */
import { describe, expect, it } from 'vitest';
import { isBelowRoad, readGround, type Ground } from '../../src/model/ground.js';
import { DERIVE_SIZE, ROAD_HEIGHT, ROAD_SLOPE } from '../../src/model/state.js';

const height = (x: number) => 0.3 * x ** 3 - 0.7 * x ** 2 + 0.2 * x + 1.5;
const slope = (x: number) => 0.9 * x ** 2 - 1.4 * x + 0.2;

/** Six points from x = -1 to 1.5. */
const ORIGIN = -1;
const SPACING = 0.5;
const PLACES = [-1, -0.5, 0, 0.5, 1, 1.5];
const GROUND: Ground = {
  originM: ORIGIN,
  spacingM: SPACING,
  knots: Float64Array.from(PLACES.flatMap((x) => [height(x), slope(x) * SPACING])),
  bareHeightM: Float64Array.of(0, 0.1, 0.4, 0.2, 0.2, 1),
};

function read(xM: number): { heightM: number; slope: number } {
  const out = new Float64Array(DERIVE_SIZE);
  readGround(GROUND, xM, out);
  return { heightM: out[ROAD_HEIGHT]!, slope: out[ROAD_SLOPE]! };
}

describe('the road as a tyre meets it', () => {
  it('is the cubic it was made from, height and slope, on the grid and between', () => {
    for (let x = -0.99; x < 1.5; x += 0.07) {
      expect(read(x).heightM).toBeCloseTo(height(x), 12);
      expect(read(x).slope).toBeCloseTo(slope(x), 12);
    }
    expect(read(0.5).heightM).toBeCloseTo(height(0.5), 12);
    expect(read(0.5).slope).toBeCloseTo(slope(0.5), 12);
  });

  it('goes on level beyond either end, from the end on', () => {
    for (const x of [-50, -1.001, -1]) expect(read(x)).toEqual({ heightM: height(-1), slope: 0 });
    for (const x of [1.5, 1.501, 50]) expect(read(x)).toEqual({ heightM: height(1.5), slope: 0 });
  });
});

describe('a point below the bare road', () => {
  const isBelow = (xM: number, zM: number) => isBelowRoad(GROUND, Float64Array.of(9, xM, zM, -9), 1);

  it.each([
    [-0.75, 0.05],
    [-0.4, 0.16],
    [0.25, 0.3],
    [0.75, 0.2],
    [1, 0.2],
    [1.25, 0.6],
  ])('at x = %d lies under straight lines between the grid points: under %d', (xM, edgeM) => {
    expect(isBelow(xM, edgeM - 1e-9)).toBe(true);
    expect(isBelow(xM, edgeM + 1e-9)).toBe(false);
  });

  it('lies under the end height beyond either end', () => {
    for (const [xM, edgeM] of [
      [-40, 0],
      [-1, 0],
      [1.5, 1],
      [40, 1],
    ] as const) {
      expect(isBelow(xM, edgeM - 1e-9)).toBe(true);
      expect(isBelow(xM, edgeM)).toBe(false);
    }
  });
});
