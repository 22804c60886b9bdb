/**
 * What does the bench know of a sweep? The form from which one begins, the one that was begun last with all that is known of it,
 * and what of it is looked at.
 */
import type { ProfileResult } from '../../measure/profile-result.js';
import type { Fate } from '../../sweep/asked.js';
import type { Candidate } from '../../sweep/candidate.js';
import type { Range } from '../../sweep/range.js';
import type { SweepPlan } from '../../tasks/sweep-plan.js';
import type { SweepAnswer, SweepProgress } from '../../tasks/sweep.js';

/** The ends of a range. */
export type RangeEnd = 'min' | 'max';

/** What is asked for: `from` null is the first profile, `ranges` null those that suit the rig. */
export interface SweepForm {
  from: string | null;
  ranges: readonly Range[] | null;
  /** Candidates spread over the ranges; or, on a grid, points along each of them. */
  count: number;
  isGrid: boolean;
  points: number;
  /** True runs every candidate in every cell, without a race. */
  isExhaustive: boolean;
  /** The cursor: a range, and behind them the other rows of the form; and which end of the range. */
  row: number;
  end: RangeEnd;
}

/** One of the best so far, over the cells that it was run in. */
export interface BestSoFar {
  values: readonly number[];
  result: ProfileResult;
}

/**
 * Everyone who was tried: over the cells that one was run in, and over those that all were run in; null for one that was not run.
 */
export interface SweepPoint {
  candidate: Candidate;
  fate: Fate;
  own: ProfileResult | null;
  shared: ProfileResult | null;
}

/** What came of a sweep, and where everyone stands who was tried. */
export interface SweepOutcome {
  answer: SweepAnswer;
  points: readonly SweepPoint[];
}

/** A sweep that was begun; its plan stands for it. */
export interface SweepRunState {
  plan: SweepPlan;
  /** True where it began with the plain profile for the rig, which no file holds. */
  isPlain: boolean;
  isRunning: boolean;
  /** How far it is, and how many runs are made in a second. */
  progress: (SweepProgress & { ratePerS: number }) | null;
  best: readonly BestSoFar[];
  /** How the profile that all share does itself, as far as its cells were run. */
  base: ProfileResult | null;
  /** The file in which runs are kept, as it is shown; null where they are in memory alone. */
  kept: string | null;
  outcome: SweepOutcome | null;
}

/** What of a sweep stands in the body. */
export type SweepViewName = 'ranges' | 'live' | 'finalists' | 'map' | 'front';

/** The Sweep screen. The cursor is on a candidate by name, null for the first; it is the same one in every view. */
export interface SweepState {
  form: SweepForm;
  run: SweepRunState | null;
  view: SweepViewName;
  /** Null shows pictures. Else the view is shown as text, and so many of its signs stand above the first row. */
  read: number | null;
  cursor: string | null;
  /** Which metric is mapped, over which pair of numbers, and which two are traded, each counted from 0. */
  metric: number;
  pair: number;
  trade: number;
}
