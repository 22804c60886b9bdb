/**
 * What is there to show of a sweep? What was looked through, and the few that are left, each seen from all sides.
 */
import type { ProfileResult } from '../measure/profile-result.js';
import type { Weights } from '../measure/scales.js';
import type { GroupCosts } from '../sweep/front.js';
import type { Slip } from '../quantity/kept-file.js';
import type { RankInterval } from '../sweep/rank-interval.js';
import type { Range } from '../sweep/range.js';
import type { WhatIsLeft } from '../sweep/what-is-left.js';
import type { CheckView } from './check-line.js';

/** A finalist with one number off, or typed wrongly. */
export interface SlipView {
  range: number;
  slip: Slip;
  values: readonly number[];
  /** More falls than the finalist itself has in the cells in which slips are tried, and the score over its own there. */
  moreFailures: number;
  scoreRatio: number;
}

/** A finalist. */
export interface FinalistView {
  values: readonly number[];
  result: ProfileResult;
  groups: GroupCosts;
  isOnFront: boolean;
  interval: RankInterval;
  /** The smallest disk margin over riders and speeds, and where; null where a ceiling cuts every ride. */
  leastDisk: { margin: number; rider: string; speedKmPerH: number } | null;
  halfStep: CheckView;
  reference: CheckView;
  slips: readonly SlipView[];
  feel: { rider: string; words: readonly string[] };
  notFor: readonly string[];
}

/** A sweep that has come to its end. */
export interface SweepView {
  board: string;
  riders: readonly string[];
  scenarios: readonly string[];
  cellCount: number;
  runs: number;
  weights: Weights;
  ranges: readonly Range[];
  isExhaustive: boolean;
  isGrid: boolean;
  /** How the profile that all share does itself, in every cell. */
  base: ProfileResult;
  /** Candidates by what became of them; those spread over the ranges are part of those tried. */
  counts: { tried: number; spread: number; hopeless: number; dropped: number; inEveryCell: number };
  finalists: readonly FinalistView[];
  left: WhatIsLeft;
}
