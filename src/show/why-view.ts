/**
 * What is there to show of an explanation? The profile with its findings, how it feels, and the changes that were tried.
 */
import type { Blame } from '../explain/blame.js';
import type { Evidence } from '../explain/evidence.js';
import type { FeelRide } from '../explain/feel-readings.js';
import type { Feel } from '../explain/feel.js';
import type { Remedy, Verdict } from '../explain/remedy-effect.js';
import type { LimitWays } from '../explain/ways-out.js';
import type { ProfileResult } from '../measure/profile-result.js';
import type { Weights } from '../measure/scales.js';

/** The feel of a profile under one rider, and the steady rides that it was told from. */
export interface FeelView {
  rider: string;
  words: readonly Feel[];
  rides: readonly FeelRide[];
}

/** The changes that were tried, best first, the verdict over them, and what else would help. */
export interface RemediesView {
  remedies: readonly Remedy[];
  counts: { ofOne: number; ofTwo: number };
  verdict: Verdict;
  /** What else was simulated against the limits of the verdict. */
  ways: readonly LimitWays[];
}

/**
 * An explanation. `isComplete` is false where only the worst cells were run; feel and remedies are null as long as they have
 * not come.
 */
export interface WhyView {
  profile: string;
  board: string;
  riders: readonly string[];
  isComplete: boolean;
  weights: Weights;
  result: ProfileResult;
  reference: ProfileResult;
  blame: Pick<Blame, 'excess' | 'isProfileToBlame' | 'isRigTroubled'>;
  /** Suspects that were taken away, one by one. */
  suspects: number;
  /**
   * Profile and board as they were asked for, so that a command finds them again, null for the usual board; and the words of a
   * command for the cells.
   */
  asked: { profile: string; board: string | null; cells: readonly string[] };
  /** Charge of each scenario of its own, %, so that a command names only another one. */
  ownCharges: Readonly<Record<string, number>>;
  findings: readonly Evidence[];
  feel: FeelView | null;
  tried: RemediesView | null;
}
