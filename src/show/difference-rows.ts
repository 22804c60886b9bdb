/**
 * In what do profiles differ, row by row, and which is better there? Only runs that stayed up and met their event
 * compete: the numbers of a run that was cut short cover less time and decide nothing. Values that round to the same
 * shown number are equal, and where all are, no one is better.
 */
import type { RankedCell } from '../measure/profile-result.js';
import { termCosts } from '../measure/score.js';
import { signAt, type ComparedRun } from './compare-run.js';
import { differenceMetrics, type DifferenceMetric } from './difference-metrics.js';
import { numberText } from './quantities.js';

/** One value of a row. */
export interface DifferenceCell {
  text: string;
  isBest: boolean;
  /** False for a run that was cut short. */
  competes: boolean;
}

/** One row; `spread` is by how much the cost term of the metric differs, weighted, 0 where it has none. */
export interface DifferenceRow {
  name: string;
  cells: DifferenceCell[];
  /** Between best and worst, with its unit; `equal`, or nothing where fewer than two compete. */
  difference: string;
  spread: number;
  /** Cost, and outcomes that differ, are shown before all else. */
  isSummary: boolean;
}

/** Stands where all values are shown alike. */
export const EQUAL = 'equal';

/** Stands where a run has no value. */
const NONE = '-';

/** A value as it counts: the number that is shown, and whether it is only a bound from below. */
interface Reading {
  shown: number;
  isBound: boolean;
}

/** The rows of the table: outcome and cost, then the metrics. */
export function differenceRows(runs: readonly ComparedRun[]): DifferenceRow[] {
  const kind = runs[0]?.cell.metrics.kind ?? 'ride';
  const spreads = costSpreads(runs);
  return [
    outcomeRow(runs),
    rowOf(runs, { name: 'cost', unit: '', quantity: 'ratio', better: 'less', ofCell: ({ cost }) => cost }),
    ...differenceMetrics(kind).map((metric) => {
      const ofCell = ({ metrics }: RankedCell) => metric.read(metrics);
      const boundOf = ({ metrics }: RankedCell) => metric.bound?.(metrics) ?? null;
      const spread = metric.cost === undefined ? 0 : (spreads.get(metric.cost) ?? 0);
      return { ...rowOf(runs, { ...metric, ofCell, boundOf }), spread, isSummary: false };
    }),
  ];
}

function outcomeRow(runs: readonly ComparedRun[]): DifferenceRow {
  const isDecided = new Set(runs.map(({ cell }) => cell.failed)).size > 1;
  const cells = runs.map(({ cell }) => ({
    text: outcomeWord(cell),
    isBest: isDecided && !cell.failed,
    competes: !cell.failed,
  }));
  const words = new Set(cells.map(({ text }) => text));
  const differs = words.size > 1;
  return { name: 'outcome', cells, difference: differs ? '' : EQUAL, spread: 0, isSummary: differs };
}

/** One or two words for how a run ended. */
function outcomeWord({ outcome, eventReached }: RankedCell): string {
  if (outcome.kind === 'solver stopped') return 'stopped';
  return outcome.kind === 'upright' && !eventReached ? 'no event' : outcome.kind;
}

interface RowSpec extends Pick<DifferenceMetric, 'name' | 'unit' | 'quantity' | 'better'> {
  ofCell: (cell: RankedCell) => number | null;
  boundOf?: (cell: RankedCell) => number | null;
}

function rowOf(runs: readonly ComparedRun[], spec: RowSpec): DifferenceRow {
  const readings = runs.map(({ cell }) => readingOf(cell, spec));
  const competing = readings.filter((reading, index) => reading !== null && !runs[index]!.cell.failed);
  const ordered = competing.filter((reading) => reading !== null).toSorted((a, b) => order(a, b, spec));
  const best = ordered[0];
  const worst = ordered.at(-1);
  const isDecided = best !== undefined && worst !== undefined && order(best, worst, spec) !== 0;
  return {
    name: spec.name,
    cells: readings.map((reading, index) => {
      const competes = !runs[index]!.cell.failed;
      const isBest = isDecided && competes && reading !== null && order(reading, best, spec) === 0;
      return { text: reading === null ? NONE : readingText(reading, spec), isBest, competes };
    }),
    difference:
      ordered.length < 2 ? '' : isDecided ? differenceText(best, worst, spec) : equalText(runs, readings),
    spread: 0,
    isSummary: true,
  };
}

/** `equal`, with the letters of those that compete where not all do. */
function equalText(runs: readonly ComparedRun[], readings: readonly (Reading | null)[]): string {
  const letters = runs.flatMap(({ cell }, index) =>
    readings[index] !== null && !cell.failed ? [signAt(index).letter] : [],
  );
  return letters.length === runs.length ? EQUAL : `${EQUAL}: ${letters.join(' ')}`;
}

function readingOf(cell: RankedCell, { ofCell, boundOf, quantity }: RowSpec): Reading | null {
  if (!cell.eventReached) return null;
  const value = ofCell(cell);
  const bound = value === null && !cell.failed ? (boundOf?.(cell) ?? null) : null;
  const known = value ?? bound;
  if (known === null || !Number.isFinite(known)) return null;
  return { shown: Number(numberText(known, quantity)), isBound: value === null };
}

/** Below zero where the first is better. */
function order(a: Reading, b: Reading, { better }: RowSpec): number {
  const bySize = better === 'less' ? a.shown - b.shown : b.shown - a.shown;
  return Number(a.isBound) - Number(b.isBound) || bySize;
}

function readingText({ shown, isBound }: Reading, { quantity, unit }: RowSpec): string {
  return `${isBound ? '> ' : ''}${numberText(shown, quantity)}${unit}`;
}

function differenceText(best: Reading, worst: Reading, { quantity, unit }: RowSpec): string {
  const size = numberText(Math.abs(best.shown - worst.shown), quantity);
  return `${worst.isBound ? '> ' : ''}${size}${unit}`;
}

/** How far apart the competing runs are in each cost term, times its weight. */
function costSpreads(runs: readonly ComparedRun[]): Map<string, number> {
  const costs = new Map<string, number[]>();
  for (const { cell } of runs.filter((run) => !run.cell.failed)) {
    for (const { name, cost, weight } of termCosts(cell.metrics)) {
      costs.set(name, [...(costs.get(name) ?? []), cost * weight]);
    }
  }
  return new Map([...costs].map(([name, values]) => [name, Math.max(...values) - Math.min(...values)]));
}
