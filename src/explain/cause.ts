/**
 * What is a suspect? It names what it changes in a cell's makings: in the profile, in the loop's hardware, in motor and pack, in
 * the rider, or in the road. Taking it away and running the same cells again shows what it is to blame for.
 */
import type { ProfileFile } from '../quantity/profile-file.js';
import type { Makings } from './makings.js';

/** Where a cause lies: `profile` can be cured by other numbers in the profile, the others cannot. */
export const FAMILIES = ['profile', 'loop', 'power', 'rider', 'road'] as const;

/** Where a cause lies. */
export type Family = (typeof FAMILIES)[number];

/** One suspect: `remove` takes it away; for those of the profile with the help of a reference for the same rig. */
export interface Cause {
  name: string;
  family: Family;
  /** False where there is nothing to take away, so that no run is wasted. */
  isPresent: (makings: Makings, reference: ProfileFile) => boolean;
  remove: (makings: Makings, reference: ProfileFile) => Makings;
  /**
   * True for what a ride is meant to meet: where it is gone every other suspect has less to do, so that it is named before
   * another one only where it cures far more.
   */
  isPartOfTheRide?: true;
}

/** The makings without a suspect: as they are where it is not there, so that nobody else is made worse. */
export function withoutCause(cause: Cause, makings: Makings, reference: ProfileFile): Makings {
  return cause.isPresent(makings, reference) ? cause.remove(makings, reference) : makings;
}

/** A number that is off what is usual by less than this factor is not a suspect. */
export const NEAR_USUAL = 1.1;
