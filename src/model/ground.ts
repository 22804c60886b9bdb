/**
 * The road as the equations read it: heights and slopes on an even grid, cubic Hermite between, so
 * that height and slope are continuous (C1). Beyond either end the road goes on level.
 */
import { ROAD_HEIGHT, ROAD_SLOPE } from './state.js';

/** A road on an even grid; `knots` holds height [m] and slope times spacing [m], pair by pair. */
export interface Ground {
  originM: number;
  spacingM: number;
  /** Height and slope-times-spacing of the road as a round tyre meets it. */
  knots: Float64Array;
  /** Height of the bare road at the same places, m, for nose and tail. */
  bareHeightM: Float64Array;
}

/** Writes height [m] and slope of the road under an axle at `xM` into `out`. */
export function readGround(ground: Ground, xM: number, out: Float64Array): void {
  const { knots, spacingM } = ground;
  const last = knots.length / 2 - 1;
  const place = (xM - ground.originM) / spacingM;
  if (!(place > 0 && place < last)) {
    out[ROAD_HEIGHT] = knots[place >= last ? 2 * last : 0]!;
    out[ROAD_SLOPE] = 0;
    return;
  }
  const left = Math.floor(place);
  const t = place - left;
  const h0 = knots[2 * left]!;
  const s0 = knots[2 * left + 1]!;
  const rise = knots[2 * left + 2]! - h0;
  const s1 = knots[2 * left + 3]!;
  const c2 = 3 * rise - 2 * s0 - s1;
  const c3 = s0 + s1 - 2 * rise;
  out[ROAD_HEIGHT] = h0 + t * (s0 + t * (c2 + t * c3));
  out[ROAD_SLOPE] = (s0 + t * (2 * c2 + t * 3 * c3)) / spacingM;
}

/** True when the point that stands in `points` at `index` (x, then z, m) lies below the bare road. */
export function isBelowRoad(ground: Ground, points: Float64Array, index: number): boolean {
  const heights = ground.bareHeightM;
  const last = heights.length - 1;
  const place = Math.min(Math.max((points[index]! - ground.originM) / ground.spacingM, 0), last);
  const left = Math.min(Math.floor(place), last - 1);
  const low = heights[left]!;
  return points[index + 1]! < low + (place - left) * (heights[left + 1]! - low);
}
