/**
 * The map and the front of a sweep: the plot under its sentence, and beside it or below it what is known of the candidate under the
 * cursor.
 */
import { beside } from '../../show/beside.js';
import {
  mapLegend,
  mapRows,
  mapSentence,
  prepareMap,
  type MapSpec,
  type PreparedMap,
} from '../../show/sweep-map.js';
import type { PlaneOptions } from '../../show/sweep-plane.js';
import { scatterRows, scatterSentence } from '../../show/sweep-scatter.js';
import type { BenchState } from '../bench/state.js';
import { currentCandidate, mapSpecOf, scatterSpecOf } from '../bench/sweep-items.js';
import { candidateText } from '../bench/sweep-read-out.js';
import { say, sayInOne, type Area } from './say.js';

/** Fewest columns with the read-out beside the plot, and its part of them. */
const SIDE_BY_SIDE = 76;
const PLOT_SHARE = 0.66;

/** Most rows of the read-out below the plot. */
const BELOW_ROWS = 5;

/** Fewest rows with two for the sentence and for what signs mean, and with what they mean at all. */
const WITH_TWO_ROWS = 20;
const WITH_LEGEND = 14;

/** A plot, its sentence, and what its signs mean. */
interface Plot {
  sentence: string;
  legend: string;
  rows: (options: PlaneOptions) => string[];
}

const prepared = new WeakMap<MapSpec, { key: string; map: PreparedMap }>();

/** The map of a spec at a size, drawn up once. */
function mapAt(spec: MapSpec, { width, height, symbols }: PlaneOptions): PreparedMap {
  const key = `${width} ${height} ${symbols}`;
  const known = prepared.get(spec);
  if (known?.key === key) return known.map;
  const map = prepareMap(spec, { width, height, symbols });
  prepared.set(spec, { key, map });
  return map;
}

/** The map with its read-out. */
export function mapViewRows(state: BenchState, area: Area): string[] {
  const spec = mapSpecOf(state);
  if (spec === null) return [];
  const name = currentCandidate(state)?.name ?? null;
  const plot = {
    sentence: mapSentence(spec),
    legend: mapLegend(spec, state.options.symbols),
    rows: (options: PlaneOptions) => mapRows(mapAt(spec, options), name, options),
  };
  return withReadOut(state, plot, area);
}

/** The front with its read-out. */
export function frontViewRows(state: BenchState, area: Area): string[] {
  const spec = scatterSpecOf(state);
  if (spec === null) return [];
  const name = currentCandidate(state)?.name ?? null;
  const mark = state.options.symbols === 'ascii' ? '*' : '◆';
  const plot = {
    sentence: scatterSentence(spec),
    legend: `Digits and letters are the finalists in their order; ${mark} nobody is better in one of comfort, reserve and agility without being worse in another.`,
    rows: (options: PlaneOptions) => scatterRows(spec, name, options),
  };
  return withReadOut(state, plot, area);
}

function withReadOut(state: BenchState, plot: Plot, { width, height }: Area): string[] {
  const { options } = state;
  const { symbols, paint } = options;
  const most = height < WITH_TWO_ROWS ? 1 : 2;
  const sentence = clipped(state, plot.sentence, { width, height: most }).map(paint.bold);
  const legend =
    height < WITH_LEGEND ? [] : clipped(state, plot.legend, { width, height: most }).map(paint.dim);
  const room = height - sentence.length - legend.length;
  const at = (place: Area) => plot.rows({ ...place, symbols, paint });
  if (width >= SIDE_BY_SIDE) {
    const leftWidth = Math.floor(width * PLOT_SHARE);
    const left = at({ width: leftWidth, height: room });
    const right = clipped(state, candidateText(state), { width: width - leftWidth - 2, height: room });
    return [...sentence, ...beside(left, right, { leftWidth, gap: 2 }), ...legend];
  }
  const below = clipped(state, candidateText(state), {
    width,
    height: Math.min(BELOW_ROWS, Math.floor(room / 3)),
  });
  return [...sentence, ...at({ width, height: room - below.length }), ...below, ...legend];
}

/** A text in as many rows as there are; the last one says that there is more. */
function clipped({ options }: BenchState, text: string, { width, height }: Area): string[] {
  const lines = say(text, width, options);
  if (lines.length <= height) return lines;
  const rest = lines.slice(Math.max(0, height - 1)).join(' ');
  return [
    ...lines.slice(0, Math.max(0, height - 1)),
    ...(height > 0 ? [sayInOne(rest, width, options)] : []),
  ];
}
