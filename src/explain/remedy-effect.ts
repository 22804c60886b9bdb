/**
 * What did a change do? Cells cured and newly failed, what costs less and what costs more; and what is to be said of all
 * changes together.
 */
import type { ProfileResult, RankedCell } from '../measure/profile-result.js';
import { COST_TERMS, type CostName, type Weights } from '../measure/scales.js';
import { termCosts } from '../measure/score.js';
import type { Blame, Finding } from './blame.js';
import { mergedFindings } from './evidence.js';
import type { Proposal } from './remedies.js';

/** One cost term over the cells that stayed up before and after: its mean metric in the term's own unit, and its cost. */
export interface TermChange {
  name: CostName;
  unit: string;
  before: number;
  after: number;
  /** Change of the mean weighted share of a cell's cost; below zero is better. */
  costChange: number;
}

/** What a change did over all cells, the largest changes first. */
export interface Effect {
  failuresBefore: number;
  failuresAfter: number;
  scoreBefore: number;
  scoreAfter: number;
  cured: RankedCell[];
  newlyFailed: RankedCell[];
  /** Keys of all cells that fail after it. */
  failing: string[];
  better: TermChange[];
  worse: TermChange[];
}

/** A change that was tried. */
export interface Remedy extends Proposal {
  effect: Effect;
  helps: boolean;
}

/** Terms that are named on each side, and the least change of a mean cell's cost that is worth a name (ours). */
const NAMED_TERMS = 3;
const LEAST_COST_CHANGE = 0.003;
/** A change helps that lowers the score by this share at least, or the count of failures (ours). */
const LEAST_GAIN_SHARE = 0.03;
/** Two changes are worth it that lower the score by this share beyond each of them (ours). */
const LEAST_PAIR_GAIN_SHARE = 0.1;

/** What came of a change, cell by cell; both results hold the same cells. */
export function effectOf(before: ProfileResult, after: ProfileResult, weights: Weights): Effect {
  const later = new Map(after.cells.map((cell) => [cell.key, cell]));
  const pairs = before.cells.flatMap((cell): [RankedCell, RankedCell][] => {
    const other = later.get(cell.key);
    return other === undefined ? [] : [[cell, other]];
  });
  const terms = termChanges(pairs, weights);
  return {
    failuresBefore: before.failures,
    failuresAfter: after.failures,
    scoreBefore: before.score,
    scoreAfter: after.score,
    cured: pairs.filter(([was, is]) => was.failed && !is.failed).map(([was]) => was),
    newlyFailed: pairs.filter(([was, is]) => !was.failed && is.failed).map(([, is]) => is),
    failing: pairs.filter(([, is]) => is.failed).map(([, is]) => is.key),
    better: terms
      .filter(({ costChange }) => costChange < -LEAST_COST_CHANGE)
      .sort((a, b) => a.costChange - b.costChange)
      .slice(0, NAMED_TERMS),
    worse: terms
      .filter(({ costChange }) => costChange > LEAST_COST_CHANGE)
      .sort((a, b) => b.costChange - a.costChange)
      .slice(0, NAMED_TERMS),
  };
}

function termChanges(pairs: readonly [RankedCell, RankedCell][], weights: Weights): TermChange[] {
  const upright = pairs.filter(([was, is]) => !was.failed && !is.failed);
  return COST_TERMS.flatMap(({ name, unit, read }): TermChange[] => {
    const both = upright.flatMap(([was, is]) => {
      const [before, after] = [read(was.metrics), read(is.metrics)];
      if (before === null || after === null) return [];
      return [{ before, after, costChange: partOf(is, name, weights) - partOf(was, name, weights) }];
    });
    if (both.length === 0) return [];
    const mean = (key: 'before' | 'after') => both.reduce((sum, one) => sum + one[key], 0) / both.length;
    const costChange = both.reduce((sum, one) => sum + one.costChange, 0) / upright.length;
    return [{ name, unit, before: mean('before'), after: mean('after'), costChange }];
  });
}

/** What a term adds to the cost of its cell. */
function partOf({ metrics }: RankedCell, name: CostName, weights: Weights): number {
  const terms = termCosts(metrics, weights);
  const weightSum = terms.reduce((sum, { weight }) => sum + weight, 0);
  const term = terms.find((one) => one.name === name);
  return term === undefined || weightSum === 0 ? 0 : (term.weight * term.cost) / weightSum;
}

/** A tried change, and whether it helps: it makes no cell fail that stood, and fewer fail or the score is clearly less. */
export function remedyOf(proposal: Proposal, effect: Effect): Remedy {
  const { failuresBefore, failuresAfter, scoreBefore, scoreAfter, newlyFailed } = effect;
  const isLess = failuresAfter < failuresBefore;
  const isBetter = failuresAfter === failuresBefore && scoreAfter < scoreBefore * (1 - LEAST_GAIN_SHARE);
  return { ...proposal, effect, helps: newlyFailed.length === 0 && (isLess || isBetter) };
}

/** Tried changes, best first: as profiles are ranked; of equal ones that with fewer edits. */
export function orderRemedies(remedies: readonly Remedy[]): Remedy[] {
  return remedies.toSorted(
    (a, b) =>
      a.effect.failuresAfter - b.effect.failuresAfter ||
      a.effect.scoreAfter - b.effect.scoreAfter ||
      a.edits.length - b.edits.length,
  );
}

/** True where a change of two things does clearly more than each of the two by itself. */
export function isWorthTwo(pair: Remedy, singles: readonly Remedy[]): boolean {
  return singles.every(
    ({ effect }) =>
      pair.effect.failuresAfter < effect.failuresAfter ||
      (pair.effect.failuresAfter === effect.failuresAfter &&
        pair.effect.scoreAfter < effect.scoreAfter * (1 - LEAST_PAIR_GAIN_SHARE)),
  );
}

/** What is to be said of all tried changes. `limits`: findings outside the profile that none of the changes cures. */
export interface Verdict {
  kind: 'one change helps' | 'only two changes help' | 'no change helps';
  limits: Finding[];
}

/** A finding outside the profile counts as cured when all the cells stand that it fells, or half of its relief goes. */
const CURED_SHARE = 0.5;

/** The verdict over the tried changes. */
export function verdictOf(
  { findings }: Blame,
  singles: readonly Remedy[],
  pairs: readonly Remedy[],
): Verdict {
  const helping = [...singles, ...pairs].filter(({ helps }) => helps);
  const isCured = ({ cured, relief }: Finding) =>
    helping.some(({ effect }) => {
      if (cured.length > 0) return cured.every((key) => !effect.failing.includes(key));
      return effect.scoreBefore - effect.scoreAfter >= CURED_SHARE * relief;
    });
  const limits = mergedFindings(findings)
    .map(({ finding }) => finding)
    .filter((finding) => finding.family !== 'profile' && !isCured(finding));
  if (singles.some(({ helps }) => helps)) return { kind: 'one change helps', limits };
  return { kind: helping.length > 0 ? 'only two changes help' : 'no change helps', limits };
}
