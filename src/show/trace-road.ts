/**
 * How high and how steep is the bare road at a place? Straight lines between the points of its grid; off
 * its ends it stays as high as it was there.
 */
import type { Road } from '../scenario/road.js';

/** What is read of a road. */
type Heights = Pick<Road, 'originM' | 'spacingM' | 'bareHeightM'>;

/** Height [m] of the bare road at a place [m]; no number for no place. */
export function roadHeightM({ originM, spacingM, bareHeightM }: Heights, placeM: number): number {
  const at = (placeM - originM) / spacingM;
  if (!Number.isFinite(at)) return NaN;
  const inside = Math.max(0, Math.min(bareHeightM.length - 1, at));
  const before = Math.floor(inside);
  const low = bareHeightM[before] ?? 0;
  const high = bareHeightM[before + 1] ?? low;
  return low + (high - low) * (inside - before);
}

/** Heights [m] of the bare road at places [m]. */
export function roadHeightsM(road: Heights, placesM: Float64Array): Float64Array {
  return placesM.map((placeM) => roadHeightM(road, placeM));
}

/** Slope [ratio] of the bare road over a wheel's width: from a radius [m] behind a place [m] to one ahead. */
export function roadSlopeRatio(road: Heights, placeM: number, radiusM: number): number {
  return (roadHeightM(road, placeM + radiusM) - roadHeightM(road, placeM - radiusM)) / (2 * radiusM);
}
