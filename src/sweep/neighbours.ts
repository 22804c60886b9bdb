/**
 * What if a number is a little off, or typed wrongly? Each number of a finalist by itself: a tenth less and more, its first digit one
 * less and one more, its decimal point slipped to either side, its sign the other.
 */
import { SLIPS, type Slip } from '../quantity/kept-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { withNumbers, type Candidate } from './candidate.js';
import { rounded, type Range } from './range.js';

/** A finalist with one number off. */
export interface Neighbour {
  /** Which of the ranges is off, and how. */
  range: number;
  slip: Slip;
  values: readonly number[];
  profile: ProfileFile;
}

/** The neighbours of a candidate; a slip that changes nothing, or that no profile can hold, is left out. */
export function neighboursOf(
  { values }: Pick<Candidate, 'values'>,
  { base, ranges }: { base: ProfileFile; ranges: readonly Range[] },
): Neighbour[] {
  return ranges.flatMap((_, range) =>
    SLIPS.flatMap((slip): Neighbour[] => {
      const off = values.with(range, slipped(values[range]!, slip));
      const profile = off[range] === values[range] ? null : withNumbers(base, ranges, off);
      return profile === null ? [] : [{ range, slip, values: off, profile }];
    }),
  );
}

/** Digits that wash out the last bits of a decimal that was moved, not one that was typed. */
const ALL_DIGITS = 12;

/** A number that is off: by a tenth in the digits of a candidate, else to the last digit that was typed. */
export function slipped(value: number, slip: Slip): number {
  const digit = value === 0 ? 0 : Math.sign(value) * 10 ** Math.floor(Math.log10(Math.abs(value)));
  const off: Record<Slip, number> = {
    'a tenth less': rounded(0.9 * value),
    'a tenth more': rounded(1.1 * value),
    'first digit one less': value - digit,
    'first digit one more': value + digit,
    'a tenth of it': value / 10,
    'ten times it': 10 * value,
    'the other sign': -value,
  };
  return Number(off[slip].toPrecision(ALL_DIGITS));
}
