/**
 * What is a sweep of, as data: the cells, the profile that candidates share, the ranges, how it is searched. All that its numbers
 * hang on, so that a file of results can say what it is of.
 */
import type { ProfileFile } from '../quantity/profile-file.js';
import { SCALES_VERSION } from '../measure/scales.js';
import type { Range } from '../sweep/range.js';
import { programVersion } from '../store/places.js';
import { contentKey } from './content-key.js';
import type { Named, RankPlan } from './plan.js';

/** A sweep. */
export interface SweepPlan {
  /** Board, riders, scenarios, charges, seeds and weights; it has no profiles of its own. */
  cells: RankPlan;
  base: Named<ProfileFile>;
  ranges: Range[];
  /** Candidates spread over the ranges; points along each in place of a spread, or null. */
  count: number;
  grid: number | null;
  isExhaustive: boolean;
  isRefined: boolean;
  seed: number;
  /** Cells of each finalist that are run again with odex; null for all of them. */
  checkedCells: number | null;
}

/** What the first line of a file of results says: of which sweep it is, and by which program. */
export interface SweepHead {
  underfootSweep: 1;
  version: string;
  scalesVersion: number;
  /** The part of the sweep that the file is for; null for the whole. */
  part: Shard | null;
  /** A key of the plan, so that one with something changed in it is known. */
  planKey: string;
  plan: SweepPlan;
}

/** One part of so many, counted from 1. */
export interface Shard {
  part: number;
  parts: number;
}

/** The first line for a sweep, or for a part of one. */
export function headOf(plan: SweepPlan, part: Shard | null = null): SweepHead {
  const planKey = contentKey(plan);
  return {
    underfootSweep: 1,
    version: programVersion(),
    scalesVersion: SCALES_VERSION,
    part,
    planKey,
    plan,
  };
}

/** A short name of all that the numbers of a sweep hang on. */
export function sweepKey(plan: SweepPlan): string {
  return contentKey(headOf(plan))
    .replaceAll(/[^a-zA-Z0-9]/g, '')
    .slice(0, 8)
    .toLowerCase();
}
