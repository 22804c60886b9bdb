/**
 * What is tried in a sweep? Profiles that share all but some numbers, which lie in the ranges of the sweep.
 */
import { withFields } from '../quantity/profile-fields.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { valueAt, type Range } from './range.js';

/** One candidate: its name, the number of each range, and the profile with them. */
export interface Candidate {
  name: string;
  values: readonly number[];
  profile: ProfileFile;
}

/** Places of a name's number, so that names stand in their order. */
const NAME_DIGITS = 5;

/** The name of the candidate that was the n-th to be proposed, counted from 1. */
export function candidateName(n: number): string {
  return `c${String(n).padStart(NAME_DIGITS, '0')}`;
}

/** The candidate at a point of the unit cube, one place for each range; null where the schema has no such profile. */
export function candidateAt(
  { base, ranges }: { base: ProfileFile; ranges: readonly Range[] },
  point: readonly number[],
  name: string,
): Candidate | null {
  const values = ranges.map((range, index) => valueAt(range, point[index]!));
  const profile = withNumbers(base, ranges, values);
  return profile === null ? null : { name, values, profile };
}

/** A profile with other numbers at the ranges; null where the schema has no such profile. */
export function withNumbers(
  base: ProfileFile,
  ranges: readonly Pick<Range, 'path'>[],
  values: readonly number[],
): ProfileFile | null {
  return withFields(
    base,
    ranges.map(({ path }, index) => ({ path, value: values[index]! })),
  );
}

/** What tells candidates apart: their numbers. */
export function numbersKey(values: readonly number[]): string {
  return values.join(' ');
}
