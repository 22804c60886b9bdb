/**
 * From road pieces to the grid that a wheel rolls on: bare heights one piece after another, then the path
 * of a round tyre over them (it touches the highest point under its disc), then slopes.
 */
import type { RoadPiece } from '../quantity/scenario-file.js';
import { roughHeights } from './roughness.js';
import { SURFACE_VALUES } from './surface.js';

/** Spacing of the road grid, m, unless asked otherwise. */
export const ROAD_SPACING_M = 0.005;

/** Road before the start, with the grade on which the first piece begins, and level road after the last piece, m. */
const RUN_UP_M = 10;
const RUN_OUT_M = 10;

/** Length over which unevenness fades in and out at the ends of its piece, m. */
const FADE_M = 0.5;

/** A road: its grid as the tyre meets it, its bare heights, and what the tyre runs on from where. */
export interface Road {
  originM: number;
  spacingM: number;
  /** Height and slope-times-spacing of the tyre's path, pair by pair, m. */
  knots: Float64Array;
  /** Height of the bare road, m. */
  bareHeightM: Float64Array;
  /** Where each piece begins, m, rising. */
  pieceStartM: Float64Array;
  /** Grip of each piece, ratio. */
  gripRatio: Float64Array;
  /** Rolling resistance of each piece, ratio. */
  rollingResistanceRatio: Float64Array;
}

/** Builds the road for a wheel of a radius [m]; the seed draws the unevenness. */
export function buildRoad(
  pieces: readonly RoadPiece[],
  { radiusM, seed, spacingM = ROAD_SPACING_M }: { radiusM: number; seed: number; spacingM?: number },
): Road {
  const starts = pieceStarts(pieces);
  const lengthM = starts.at(-1)! + pieces.at(-1)!.lengthM;
  const count = Math.ceil((RUN_UP_M + lengthM + RUN_OUT_M) / spacingM) + 1;
  const bareHeightM = new Float64Array(count);
  let levelM = 0;
  // The run-up has the grade of the first piece, or is level where that eases in.
  let slopeBefore = slopeAt(pieces[0]!, 0, 0);
  let next = Math.round(RUN_UP_M / spacingM);
  for (let place = 0; place < next; place++) bareHeightM[place] = slopeBefore * (place - next) * spacingM;
  pieces.forEach((piece, index) => {
    const first = next;
    next = Math.round((RUN_UP_M + starts[index]! + piece.lengthM) / spacingM);
    levelM += piece.stepUpM;
    const heights = bareHeightM.subarray(first, next);
    layPiece(piece, { heights, spacingM, levelM, slopeBefore, seed: seed + 7919 * index });
    levelM += climb(piece, slopeBefore, piece.lengthM);
    slopeBefore = slopeAt(piece, slopeBefore, piece.lengthM);
  });
  bareHeightM.fill(levelM, next);
  return {
    originM: -RUN_UP_M,
    spacingM,
    knots: withSlopes(tyrePath(bareHeightM, radiusM, spacingM)),
    bareHeightM,
    pieceStartM: Float64Array.from(starts),
    gripRatio: Float64Array.from(
      pieces,
      (piece) => piece.gripRatio ?? SURFACE_VALUES[piece.surface].gripRatio,
    ),
    rollingResistanceRatio: Float64Array.from(
      pieces,
      (piece) => piece.rollingResistanceRatio ?? SURFACE_VALUES[piece.surface].rollingResistanceRatio,
    ),
  };
}

/** Where each piece begins, m from the start. */
export function pieceStarts(pieces: readonly RoadPiece[]): number[] {
  let startM = 0;
  return pieces.map((piece) => {
    const here = startM;
    startM += piece.lengthM;
    return here;
  });
}

interface Lane {
  heights: Float64Array;
  spacingM: number;
  levelM: number;
  /** Slope at the end of the piece before, ratio. */
  slopeBefore: number;
  seed: number;
}

/** Rise [m] of a piece over its first `alongM`: the slope goes evenly to the piece's own over its ease, then stays. */
function climb(piece: RoadPiece, slopeBefore: number, alongM: number): number {
  const slope = piece.gradePercent / 100;
  const easedM = Math.min(alongM, piece.easeM);
  const easing = easedM > 0 ? ((slope - slopeBefore) * easedM * easedM) / (2 * piece.easeM) : 0;
  return slopeBefore * easedM + easing + slope * (alongM - easedM);
}

/** Slope [ratio] of a piece `alongM` from its start. */
function slopeAt(piece: RoadPiece, slopeBefore: number, alongM: number): number {
  const slope = piece.gradePercent / 100;
  return alongM < piece.easeM ? slopeBefore + (slope - slopeBefore) * (alongM / piece.easeM) : slope;
}

function layPiece(piece: RoadPiece, { heights, spacingM, levelM, slopeBefore, seed }: Lane): void {
  const length = heights.length;
  const rough = piece.roughness ? roughHeights(piece.roughness, seed, { length, spacingM }) : undefined;
  for (let index = 0; index < length; index++) {
    const alongM = index * spacingM;
    const endM = Math.min(alongM, piece.lengthM - alongM);
    const bump =
      (piece.bumpHeightM / 2) * (1 - Math.cos((2 * Math.PI * piece.bumpCount * alongM) / piece.lengthM));
    heights[index] =
      levelM + climb(piece, slopeBefore, alongM) + bump + (rough ? rough[index]! * fade(endM) : 0);
  }
}

function fade(distanceM: number): number {
  const share = Math.min(1, Math.max(0, distanceM / FADE_M));
  return share * share * (3 - 2 * share);
}

/**
 * Height [m] of the road as a disc of a radius [m] meets it, axle height less radius:
 * h_c(x) = max over |s| <= r of h(x + s) + sqrt(r^2 - s^2) - r.
 */
export function tyrePath(
  bareHeightM: Float64Array,
  radiusM: number,
  spacingM: number = ROAD_SPACING_M,
): Float64Array {
  const reach = Math.floor(radiusM / spacingM);
  const disc = Float64Array.from({ length: reach + 1 }, (_, index) => {
    const s = index * spacingM;
    return Math.sqrt(Math.max(0, radiusM * radiusM - s * s)) - radiusM;
  });
  const count = bareHeightM.length;
  const padded = new Float64Array(count + 2 * reach);
  padded.fill(bareHeightM[0]!, 0, reach);
  padded.set(bareHeightM, reach);
  padded.fill(bareHeightM[count - 1]!, reach + count);
  const path = new Float64Array(count);
  for (let place = 0; place < count; place++) {
    const centre = place + reach;
    let highest = padded[centre]!;
    for (let offset = 1; offset <= reach; offset++) {
      const behind = padded[centre - offset]!;
      const ahead = padded[centre + offset]!;
      const touching = (behind > ahead ? behind : ahead) + disc[offset]!;
      if (touching > highest) highest = touching;
    }
    path[place] = highest;
  }
  return path;
}

function withSlopes(path: Float64Array): Float64Array {
  const knots = new Float64Array(2 * path.length);
  for (let place = 0; place < path.length; place++) {
    const before = path[Math.max(0, place - 1)]!;
    const after = path[Math.min(path.length - 1, place + 1)]!;
    knots[2 * place] = path[place]!;
    knots[2 * place + 1] = (after - before) / 2;
  }
  return knots;
}
