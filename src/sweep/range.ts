/**
 * Between which numbers does a sweep look? A range for some numbers of a profile; none given, the two gains that matter most, about
 * what suits the rig.
 */
import { referenceProfile } from '../control/reference-profile.js';
import type { BoardFile } from '../quantity/board-file.js';
import { PROFILE_FIELDS, type ProfileField } from '../quantity/profile-fields.js';
import type { RiderFile } from '../quantity/rider-file.js';

/** A range of one number of a profile, both ends included, in the field's unit. */
export interface Range {
  path: readonly string[];
  unit: string;
  min: number;
  max: number;
}

/**
 * Factors below and above the reference of the rig between which its gains are looked for; half as stiff again as the reference is
 * what people begin to call stiff (ours, no source).
 */
const USUAL_SPREAD = {
  proportionalAPerDeg: { below: 4, above: 1.6 },
  rateAPerDegPerS: { below: 8, above: 3 },
} as const;

/** Ranges that suit a rig: of proportional and rate gain, about the references of its riders. */
export function usualRanges(board: BoardFile, riders: readonly RiderFile[]): Range[] {
  const gains = riders.map((rider) => referenceProfile(board, rider).gains);
  return (['proportionalAPerDeg', 'rateAPerDegPerS'] as const).map((key) => {
    const values = gains.map((each) => each[key]);
    const { below, above } = USUAL_SPREAD[key];
    const { path, unit } = fieldCalled(key)!;
    return {
      path,
      unit,
      min: rounded(Math.min(...values) / below),
      max: rounded(Math.max(...values) * above),
    };
  });
}

/** The field of a profile with a key; undefined where there is none of that name. */
export function fieldCalled(key: string): ProfileField | undefined {
  return PROFILE_FIELDS.find((field) => field.key === key);
}

/** Digits of a candidate's numbers: what can be typed without a slip, and finer than a difference can be felt. */
const DIGITS = 3;

/** A number as a candidate has it. */
export function rounded(value: number): number {
  return Number(value.toPrecision(DIGITS));
}

/** The number at a place of a range, 0 to 1: evenly in its logarithm where all of the range is above 0. */
export function valueAt({ min, max }: Pick<Range, 'min' | 'max'>, place: number): number {
  const value = min > 0 ? min * (max / min) ** place : min + (max - min) * place;
  return Math.min(max, Math.max(min, rounded(value)));
}

/** The place of a number in a range, 0 to 1. */
export function placeOf({ min, max }: Pick<Range, 'min' | 'max'>, value: number): number {
  if (max === min) return 0.5;
  return min > 0 ? Math.log(value / min) / Math.log(max / min) : (value - min) / (max - min);
}
