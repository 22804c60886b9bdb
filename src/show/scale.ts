/**
 * From where to where does an axis go? Scales come from short ladders, so that two runs mostly share
 * one and can be compared by eye; labels carry their unit, and pitch is spoken by the nose.
 */
import type { SpeedUnit } from './quantities.js';
import { heightTickText, leanTickText, pitchTickText, tickText } from './quantities.js';

/** A label on an axis, at a value. */
export interface ScaleTick {
  value: number;
  text: string;
}

/** A fixed scale, and its labels in the order in which they claim their rows. */
export interface Scale {
  low: number;
  high: number;
  ticks: readonly ScaleTick[];
}

const PITCH_LADDER_DEG = [2, 4, 8, 16, 30, 60, 90, 180] as const;
const CURRENT_LADDER_A = [10, 20, 40, 60, 80, 100, 120, 160, 200, 300, 400] as const;
const HEIGHT_LADDER_M = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50] as const;
const SPEED_LADDER = [10, 20, 30, 40, 60, 80, 100] as const;

/**
 * The first rung that holds a size of zero or more; past the ladder, whole multiples of its last
 * rung.
 */
function rung(size: number, ladder: readonly number[]): number {
  if (!(size > 0)) return 0;
  const last = ladder.at(-1) ?? 1;
  return ladder.find((step) => step >= size) ?? Math.ceil(size / last) * last;
}

/** A scale with labels at its ends, at zero, and half way. */
function labelled(low: number, high: number, text: (value: number) => string): Scale {
  const values = new Set([high, low, 0, high / 2, low / 2]);
  const ticks = [...values].map((value) => ({ value, text: text(value) }));
  return { low, high, ticks };
}

/** A scale for pitch [deg, nose down positive and above], level in its middle. */
export function pitchScale(range: { lowest: number; highest: number }): Scale {
  const top = rung(Math.max(-range.lowest, range.highest), PITCH_LADDER_DEG) || PITCH_LADDER_DEG[0];
  return labelled(-top, top, pitchTickText);
}

/** A scale for a rider's lean [deg, forward positive and above], upright in its middle. */
export function leanScale(range: { lowest: number; highest: number }): Scale {
  const top = rung(Math.max(-range.lowest, range.highest), PITCH_LADDER_DEG) || PITCH_LADDER_DEG[0];
  return labelled(-top, top, leanTickText);
}

/** A scale for the height of a road [m], the height at its start among it. */
export function heightScale(range: { lowest: number; highest: number }): Scale {
  const low = -rung(-range.lowest, HEIGHT_LADDER_M);
  const high = rung(range.highest, HEIGHT_LADDER_M) || (low < 0 ? 0 : HEIGHT_LADDER_M[0]);
  return labelled(low, high, heightTickText);
}

/** A scale for current [A] that holds the current and its ceilings. */
export function currentScale(range: { lowest: number; highest: number }): Scale {
  const high = rung(range.highest, CURRENT_LADDER_A) || CURRENT_LADDER_A[0];
  return labelled(-rung(-range.lowest, CURRENT_LADDER_A), high, (value) => `${tickText(value)} A`);
}

/** A scale for speed, in the unit it is shown in; rolling backward lies below zero. */
export function speedScale(range: { lowest: number; highest: number }, unit: SpeedUnit): Scale {
  const high = rung(range.highest, SPEED_LADDER) || SPEED_LADDER[0];
  return labelled(-rung(-range.lowest, SPEED_LADDER), high, (value) => `${tickText(value)} ${unit}`);
}

/** Times [s] for an axis: multiples of 1, 2 or 5 times a power of ten, at most `most` of them. */
export function timeTicks(fromS: number, toS: number, most: number): number[] {
  const spanS = toS - fromS;
  if (!(spanS > 0) || !Number.isFinite(spanS)) return [fromS];
  const rough = spanS / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  const stepS = ([1, 2, 5].find((step) => step * power >= rough) ?? 10) * power;
  const first = Math.ceil(fromS / stepS - 1e-9);
  const count = Math.floor(toS / stepS + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) =>
    Number(((first + index) * stepS).toPrecision(12)),
  );
}
