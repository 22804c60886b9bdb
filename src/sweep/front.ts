/**
 * What is traded against what? The cost of a profile in comfort, reserve and agility apart, and who is on the front: those
 * whom nobody matches in everything and beats in something (Pareto).
 */
import type { RankedCell } from '../measure/profile-result.js';
import { COST_GROUPS, type Weights } from '../measure/scales.js';
import { FAILED_CELL_COST, termCosts, weightedMean } from '../measure/score.js';

/** A cost for each of the things that are traded against each other; 1 is at the scales. */
export type GroupCosts = Record<(typeof COST_GROUPS)[number], number>;

/**
 * Costs of a profile by group: the mean over its cells of the weighted mean of the group's terms. A cell that failed, or
 * whose window was never reached, counts FAILED_CELL_COST in every group; one in which no term of the group applies is left
 * out of that group's mean, so that a steady ride, which has no agility, does not pass for an agile one. Without any: 0.
 */
export function groupCosts(cells: readonly RankedCell[], weights: Weights): GroupCosts {
  const sums = Object.fromEntries(COST_GROUPS.map((group) => [group, { sum: 0, count: 0 }])) as Record<
    keyof GroupCosts,
    { sum: number; count: number }
  >;
  for (const { failed, metrics } of cells) {
    const isLost = failed || metrics.measuredS === 0;
    const terms = isLost ? [] : termCosts(metrics, weights);
    for (const group of COST_GROUPS) {
      const cost = isLost ? FAILED_CELL_COST : weightedMean(terms.filter((term) => term.group === group));
      if (cost === null) continue;
      sums[group].sum += cost;
      sums[group].count += 1;
    }
  }
  const means = COST_GROUPS.map((group) => [group, sums[group].sum / Math.max(1, sums[group].count)]);
  return Object.fromEntries(means) as GroupCosts;
}

/**
 * Which points are on the front, less being better in every coordinate: those that no other point dominates, which is to be
 * no worse in any coordinate and better in one. Equal points do not dominate each other.
 */
export function onFront(points: readonly (readonly number[])[]): boolean[] {
  return points.map((point) => !points.some((other) => dominates(other, point)));
}

function dominates(a: readonly number[], b: readonly number[]): boolean {
  return a.every((value, index) => value <= b[index]!) && a.some((value, index) => value < b[index]!);
}
