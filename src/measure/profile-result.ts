/**
 * What became of one profile over all of its trials: each cell with its cost, how many failed, the score, the worst
 * cell, and the few numbers that a row of the table shows.
 */
import type { Outcome } from '../simulate/outcome.js';
import { overshootOrReboundPercent, type Metrics } from './metrics.js';
import type { Weights } from './scales.js';
import { costOf, scoreProfile } from './score.js';

/** What became of one profile in one trial; the key tells trials apart. */
export interface CellResult {
  scenario: string;
  rider: string;
  chargePercent: number;
  seed: number;
  outcome: Outcome;
  /** False when the run ended, or its time was up, before the event that is measured from. */
  eventReached: boolean;
  metrics: Metrics;
}

/** A cell with its cost. It failed when it did not end upright or never met its event. */
export interface RankedCell extends CellResult {
  key: string;
  failed: boolean;
  cost: number;
}

/** One profile with its cells, in the order in which they were given. */
export interface ProfileResult {
  name: string;
  summary: string;
  failures: number;
  score: number;
  worst: RankedCell;
  cells: RankedCell[];
}

/** Whether a run did not end upright, or never met the event that is measured from. */
export function hasFailed({ outcome, eventReached }: Pick<CellResult, 'outcome' | 'eventReached'>): boolean {
  return outcome.kind !== 'upright' || !eventReached;
}

/** Names of the riders who failed in some cell, each once, in order. */
export function ridersWhoFall(cells: readonly Pick<RankedCell, 'rider' | 'failed'>[]): string[] {
  return [...new Set(cells.filter(({ failed }) => failed).map(({ rider }) => rider))].toSorted();
}

/** Prices the cells of a profile and scores it; there is at least one cell. */
export function profileResult(
  profile: { name: string; summary: string },
  results: readonly CellResult[],
  weights: Weights,
): ProfileResult {
  const cells = results.map((result): RankedCell => {
    const { scenario, rider, chargePercent, seed } = result;
    const failed = hasFailed(result);
    const cell = { ...result, key: [scenario, rider, chargePercent, seed].join('/'), failed };
    return { ...cell, cost: costOf(cell, weights) };
  });
  const { failures, score, worstCell } = scoreProfile(cells, weights);
  if (worstCell === null) throw new Error('a profile without cells cannot be scored');
  return { ...profile, failures, score, worst: worstCell, cells };
}

/** Means over the cells that did not fail and where a metric applies; null where there is none. */
export interface RowFigures {
  overshootPercent: number | null;
  /** Not settled counts as the length of the window, as it does in the score. */
  settlingTimeS: number | null;
  notSettledCount: number;
  saturationShare: number | null;
}

/** The figures of a profile's row. */
export function rowFigures(cells: readonly RankedCell[]): RowFigures {
  const upright = cells.filter(({ failed }) => !failed).map(({ metrics }) => metrics);
  const settling = upright.filter(({ kind }) => kind !== 'ride');
  return {
    overshootPercent: meanOf(upright.map(overshootOrReboundPercent)),
    settlingTimeS: meanOf(settling.map(({ settlingTimeS, windowS }) => settlingTimeS ?? windowS)),
    notSettledCount: settling.filter(({ settlingTimeS }) => settlingTimeS === null).length,
    saturationShare: meanOf(upright.map(({ saturationShare }) => saturationShare)),
  };
}

function meanOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}

/** How a cell stands: failed; marginal when it costs much or did not settle; else composed. */
export type Standing = 'composed' | 'marginal' | 'failed';

/** Cost from which a cell is called marginal: on the mean, every metric past half of its scale (ours, no source). */
export const MARGINAL_COST = 0.55;

/** The standing of the worst of some cells. */
export function standingOf(cells: readonly RankedCell[]): Standing {
  if (cells.some(({ failed }) => failed)) return 'failed';
  const marginal = ({ cost, metrics }: RankedCell) =>
    cost > MARGINAL_COST || (metrics.kind !== 'ride' && metrics.settlingTimeS === null);
  return cells.some(marginal) ? 'marginal' : 'composed';
}
