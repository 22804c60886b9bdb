/**
 * Which profile comes first, and where is each one worst? A cell is one run of a profile (scenario,
 * rider, pack state, seed). Failed cells are counted first, so that no smoothness elsewhere buys off a
 * fall; then half the mean and half the mean of the worst fifth of the cells' costs. A score comes from
 * the profile's own cells and fixed scales alone: never from which other profiles are there.
 */
import type { Metrics } from './metrics.js';
import { COST_TERMS, weightsWith } from './scales.js';
import type { COST_GROUPS, CostName, CostTerm, Weights } from './scales.js';

/**
 * One run of a profile as the score sees it. `key` tells the cells of a profile apart and breaks ties between them;
 * `failed` is true when the run did not end upright, or never came to what was to be measured.
 */
export interface Cell {
  readonly key: string;
  readonly failed: boolean;
  readonly metrics: Metrics;
}

/** What one term adds: its metric over its scale, and the weight it enters the cell's cost with. */
export interface TermCost {
  readonly name: CostName;
  readonly group: (typeof COST_GROUPS)[number];
  readonly cost: number;
  readonly weight: number;
}

/** Failed cells, the score (less is better, 0 without cells) and the worst cell (null without cells). */
export interface ProfileScore<C extends Cell = Cell> {
  readonly failures: number;
  readonly score: number;
  readonly worstCell: C | null;
}

/** What the order of profiles is made from; `margin`, more is better, counts only where it is known. */
export interface Rankable {
  readonly name: string;
  readonly failures: number;
  readonly score: number;
  readonly margin?: number;
}

/** Cost of a failed cell in the score: as if every metric were ten times its scale. Ours: it only parts profiles that fail equally often. */
export const FAILED_CELL_COST = 10;

const WORST_SHARE = 1 / 5;

/** The cost terms that apply to these metrics. */
export function termCosts(metrics: Metrics, weights: Weights = weightsWith()): TermCost[] {
  return COST_TERMS.flatMap((term: CostTerm & { name: CostName }) => {
    const metric = term.read(metrics);
    if (metric === null) return [];
    return [{ name: term.name, group: term.group, cost: metric / term.scale, weight: weights[term.name] }];
  });
}

/**
 * Cost of one cell that did not fail: the weighted mean of the terms that apply, 1 when each is at its scale. A window
 * that the run never reached costs as much as a failure.
 */
export function cellCost(metrics: Metrics, weights: Weights = weightsWith()): number {
  if (metrics.measuredS === 0) return FAILED_CELL_COST;
  return weightedMean(termCosts(metrics, weights)) ?? 0;
}

/** The weighted mean of some terms; null where none of them has a weight. */
export function weightedMean(terms: readonly TermCost[]): number | null {
  let sum = 0;
  let weightSum = 0;
  for (const { cost, weight } of terms) {
    sum += weight * cost;
    weightSum += weight;
  }
  return weightSum > 0 ? sum / weightSum : null;
}

/** What a cell adds to the score: its cost, or the fixed price of a failure. */
export function costOf({ failed, metrics }: Cell, weights: Weights = weightsWith()): number {
  return failed ? FAILED_CELL_COST : cellCost(metrics, weights);
}

/** Failures, score and worst cell of one profile; the order of its cells does not matter. */
export function scoreProfile<C extends Cell>(
  cells: readonly C[],
  weights: Weights = weightsWith(),
): ProfileScore<C> {
  const priced = cells.map((cell) => ({
    cell,
    cost: costOf(cell, weights),
  }));
  priced.sort(
    (a, b) =>
      Number(b.cell.failed) - Number(a.cell.failed) || b.cost - a.cost || byCodePoint(a.cell.key, b.cell.key),
  );
  return {
    failures: cells.filter(({ failed }) => failed).length,
    score: scoreOfCosts(priced.map(({ cost }) => cost)),
    worstCell: priced[0]?.cell ?? null,
  };
}

/** The score of a profile whose cells cost so much each, in any order: half the mean and half the mean of the worst fifth. */
export function scoreOfCosts(costs: ArrayLike<number>): number {
  const descending = new Float64Array(costs).sort().toReversed();
  return (mean(descending) + mean(descending.subarray(0, Math.ceil(costs.length * WORST_SHARE)))) / 2;
}

/** Fewer failures first, then less score; 0 when only margin and name can part the two. */
export function byFailuresAndScore(
  a: Pick<Rankable, 'failures' | 'score'>,
  b: Pick<Rankable, 'failures' | 'score'>,
): number {
  return a.failures - b.failures || a.score - b.score;
}

/** The profiles, best first: fewer failures, then less score, then more margin, then name by code point. */
export function rankProfiles<P extends Rankable>(profiles: readonly P[]): P[] {
  return [...profiles].sort(
    (a, b) => byFailuresAndScore(a, b) || byMargin(a.margin, b.margin) || byCodePoint(a.name, b.name),
  );
}

function mean(values: Float64Array): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** More margin first; an unknown one counts as the least. */
function byMargin(a = -Infinity, b = -Infinity): number {
  if (a === b) return 0;
  return a > b ? -1 : 1;
}

/** Order by code point: UTF-16 order differs from it beyond the basic plane only. */
function byCodePoint(a: string, b: string): number {
  const left = Array.from(a, (character) => character.codePointAt(0) ?? 0);
  const right = Array.from(b, (character) => character.codePointAt(0) ?? 0);
  const at = left.findIndex((point, index) => point !== right[index]);
  if (at === -1) return left.length - right.length;
  return (left[at] ?? 0) - (right[at] ?? -1);
}
