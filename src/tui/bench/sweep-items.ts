/**
 * Who is there to look at on the Sweep screen, who is under its cursor, and what do map and front show of them?
 */
import { rowFigures, type ProfileResult } from '../../measure/profile-result.js';
import { COST_GROUPS } from '../../measure/scales.js';
import type { ProfileFile } from '../../quantity/profile-file.js';
import { percentText, secondsText } from './sweep-words.js';
import { mapPlace, type MapMetric, type MapSpec } from '../../show/sweep-map.js';
import type { PlanePoint } from '../../show/sweep-plane.js';
import { finalistSign, scatterPlace, type ScatterSpec, type TradedGroup } from '../../show/sweep-scatter.js';
import type { SweepView } from '../../show/sweep-view.js';
import { cellsText } from '../../show/sweep-words.js';
import { scoreText } from '../../show/why-sentences.js';
import { withNumbers } from '../../sweep/candidate.js';
import { sweepView } from '../../tasks/sweep-report.js';
import type { BenchState } from './state.js';
import type { SweepOutcome, SweepPoint, SweepRunState, SweepViewName } from './sweep-state.js';

/** One who was tried; `result` over the cells of its own, null for one that was not run. */
export interface ShownCandidate {
  name: string;
  values: readonly number[];
  result: ProfileResult | null;
}

/** A metric with how it is read off a point. */
export interface SweepMetric extends MapMetric {
  read: (point: SweepPoint) => number | null;
}

const figure = (read: (figures: ReturnType<typeof rowFigures>) => number | null) => (point: SweepPoint) =>
  point.shared === null ? null : read(rowFigures(point.shared.cells));

/** What can be mapped: falls over the cells that each was run in, all else over those that all were run in. */
export const SWEEP_METRICS: readonly SweepMetric[] = [
  { name: 'Score', text: scoreText, ofFallen: false, read: ({ shared }) => shared?.score ?? null },
  {
    name: 'Share of falls',
    text: (share) => percentText(100 * share),
    ofFallen: true,
    read: ({ own }) => (own === null ? null : own.failures / own.cells.length),
  },
  {
    name: 'Overshoot',
    text: percentText,
    ofFallen: false,
    read: figure(({ overshootPercent }) => overshootPercent),
  },
  {
    name: 'Settling',
    text: secondsText,
    ofFallen: false,
    read: figure(({ settlingTimeS }) => settlingTimeS),
  },
  {
    name: 'Ticks cut',
    text: (share) => percentText(100 * share),
    ofFallen: false,
    read: figure(({ saturationShare }) => saturationShare),
  },
];

/** The things that are traded, two at a time. */
export const TRADES: readonly (readonly [TradedGroup, TradedGroup])[] = COST_GROUPS.flatMap((x, index) =>
  COST_GROUPS.slice(index + 1).map((y) => [x, y] as const),
);

/** Pairs of the swept numbers, by their places in the ranges. */
export function pairsOf({ plan }: Pick<SweepRunState, 'plan'>): (readonly [number, number])[] {
  const { ranges } = plan;
  return ranges.flatMap((_, x) => ranges.slice(x + 1).map((_other, index) => [x, x + 1 + index] as const));
}

/** The views that there are now. */
export function viewsOf({ sweep }: Pick<BenchState, 'sweep'>): SweepViewName[] {
  const { run } = sweep;
  if (run === null) return ['ranges'];
  if (run.outcome === null) return ['live', 'ranges'];
  const plots = pairsOf(run).length === 0 ? (['front'] as const) : (['map', 'front'] as const);
  return run.outcome.answer.finalists.length === 0
    ? ['finalists', 'ranges']
    : ['finalists', ...plots, 'ranges'];
}

/** The view in front: the one that is wanted, where it is there. */
export function viewInFront(state: Pick<BenchState, 'sweep'>): SweepViewName {
  const views = viewsOf(state);
  return views.includes(state.sweep.view) ? state.sweep.view : views[0]!;
}

const finalViews = new WeakMap<SweepOutcome, SweepView>();

/** What is shown of a sweep that has come to its end, drawn up once. */
export function finalView(outcome: SweepOutcome): SweepView {
  const view = finalViews.get(outcome) ?? sweepView(outcome.answer);
  finalViews.set(outcome, view);
  return view;
}

/** The finalists, or the best so far, best first. */
export function leadersOf({ sweep }: Pick<BenchState, 'sweep'>): ShownCandidate[] {
  const { run } = sweep;
  if (run === null) return [];
  if (run.outcome === null)
    return run.best.map(({ values, result }) => ({ name: result.name, values, result }));
  return run.outcome.answer.finalists.map(({ candidate, result }) => {
    return { name: candidate.name, values: candidate.values, result };
  });
}

/** Who is under the cursor: the one named, else the first; undefined where there is nobody. */
export function currentCandidate(state: Pick<BenchState, 'sweep'>): ShownCandidate | undefined {
  const { cursor, run } = state.sweep;
  const leaders = leadersOf(state);
  const leading = leaders.find(({ name }) => name === cursor);
  if (leading !== undefined) return leading;
  const point = run?.outcome?.points.find(({ candidate }) => candidate.name === cursor);
  if (point === undefined) return leaders[0];
  return { name: point.candidate.name, values: point.candidate.values, result: point.own };
}

/** The profile of a candidate; null where no sweep has it. */
export function profileOf(
  { sweep }: Pick<BenchState, 'sweep'>,
  { values }: ShownCandidate,
): ProfileFile | null {
  if (sweep.run === null) return null;
  const { base, ranges } = sweep.run.plan;
  return withNumbers(base.value, ranges, values);
}

const maps = new WeakMap<SweepOutcome, Map<string, MapSpec>>();

/** The map in front; null where there is none. */
export function mapSpecOf({ sweep }: Pick<BenchState, 'sweep'>): MapSpec | null {
  const { run, metric, pair } = sweep;
  const pairs = run === null ? [] : pairsOf(run);
  const axes = pairs[pair % Math.max(1, pairs.length)];
  if (run === null || run.outcome === null || axes === undefined) return null;
  const known = maps.get(run.outcome) ?? new Map<string, MapSpec>();
  maps.set(run.outcome, known);
  const key = `${metric} ${axes.join(' ')}`;
  const spec = known.get(key) ?? drawnUp(run.outcome, run.plan.ranges, { metric, axes });
  known.set(key, spec);
  return spec;
}

function drawnUp(
  { answer, points }: SweepOutcome,
  ranges: MapSpec['ranges'],
  { metric, axes: [x, y] }: { metric: number; axes: readonly [number, number] },
): MapSpec {
  const signs = new Map(
    answer.finalists.map(({ candidate }, index) => [candidate.name, finalistSign(index)]),
  );
  const shown = SWEEP_METRICS[metric % SWEEP_METRICS.length]!;
  const candidates = points.map((point) => {
    const { name, values } = point.candidate;
    const falls = point.own === null || point.own.failures > 0;
    return { name, values, falls, value: shown.read(point), sign: signs.get(name) ?? null };
  });
  const shared = points.find((point) => point.shared !== null)?.shared?.cells.length ?? 0;
  const where = shown.ofFallen ? 'over the cells of each' : `over ${cellsText(shared)}`;
  return { ranges, x, y, candidates, metric: { ...shown, name: `${shown.name} ${where}` } };
}

/** The front that is shown; null where there is none. */
export function scatterSpecOf({ sweep }: Pick<BenchState, 'sweep'>): ScatterSpec | null {
  const { run, trade } = sweep;
  if (run === null || run.outcome === null) return null;
  const [x, y] = TRADES[trade % TRADES.length]!;
  const points = run.outcome.answer.finalists.map(({ candidate, groups, isOnFront }, index) => {
    return { name: candidate.name, groups, isOnFront, sign: finalistSign(index) };
  });
  return { x, y, points };
}

/** Where candidates stand in the plane of the view in front; none where it has no plane. */
export function placesInView(state: Pick<BenchState, 'sweep'>): { name: string; place: PlanePoint }[] {
  const { view } = state.sweep;
  const map = view === 'map' ? mapSpecOf(state) : null;
  if (map !== null) return map.candidates.map(({ name, values }) => ({ name, place: mapPlace(map, values) }));
  const scatter = view === 'front' ? scatterSpecOf(state) : null;
  if (scatter === null) return [];
  return scatter.points.map((point) => ({ name: point.name, place: scatterPlace(scatter, point) }));
}
