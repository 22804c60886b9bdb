/**
 * Where among two of the swept numbers is it good, and where does the cliff begin? Every place has the shade of the candidate
 * nearest to it, the fuller the better; signs mark the border beyond which candidates fall.
 */
import { placeOf, valueAt, type Range } from '../sweep/range.js';
import type { Piece } from './cell-grid.js';
import { verdictMark } from './colour.js';
import type { SymbolSet } from './glyphs.js';
import {
  framedPlane,
  placeIn,
  planeSize,
  type PlaneAxes,
  type PlaneOptions,
  type PlaneSize,
} from './sweep-plane.js';
import { rangeName } from './sweep-table.js';
import { plainNumber, plainQuantity } from './why-sentences.js';

/** A candidate as the map has it. */
export interface MapCandidate {
  name: string;
  values: readonly number[];
  /** True for one that falls in some cell, or cannot hold the board up at all. */
  falls: boolean;
  /** What is mapped, less is better; null where it is not known. */
  value: number | null;
  /** One sign for a finalist; null for all others. */
  sign: string | null;
}

/** What is mapped: `x` and `y` are places in `ranges`. */
export interface MapSpec {
  ranges: readonly Range[];
  x: number;
  y: number;
  candidates: readonly MapCandidate[];
  metric: MapMetric;
}

/** A metric of candidates: its name, its values in words, and whether it means something for one that falls. */
export interface MapMetric {
  name: string;
  text: (value: number) => string;
  ofFallen: boolean;
}

/** A map without its cursor: what stands at every place, row by row from the top. */
export interface PreparedMap {
  spec: MapSpec;
  axes: PlaneAxes;
  size: PlaneSize;
  rows: readonly (readonly Piece[])[];
}

/** Shades from the best to the worst. */
const SHADES: Readonly<Record<SymbolSet, string>> = { braille: '⣿⡷⠶⠒⠂', block: '█▓▒░·', ascii: '@%+:.' };

const nameOf = (range: Range) => `${rangeName(range)} ${range.unit}`.trim();

function axisOf(range: Range) {
  const places = range.min < range.max ? [0, 1, 0.5] : [0.5];
  return {
    name: nameOf(range),
    ticks: places.map((place) => ({ place, text: plainNumber(valueAt(range, place)) })),
  };
}

/** The place of a candidate in the plane of the map, 0 to 1. */
export function mapPlace({ ranges, x, y }: Pick<MapSpec, 'ranges' | 'x' | 'y'>, values: readonly number[]) {
  return { x: placeOf(ranges[x]!, values[x]!), y: placeOf(ranges[y]!, values[y]!) };
}

/** The greatest value of each shade: as many candidates in one as in the other. */
function shadeLimits({ candidates, metric }: MapSpec, symbols: SymbolSet): number[] {
  const values = candidates
    .filter(({ falls }) => metric.ofFallen || !falls)
    .flatMap(({ value }) => value ?? [])
    .sort((a, b) => a - b);
  const count = SHADES[symbols].length;
  const limits = Array.from(
    { length: count },
    (_, shade) => values[Math.ceil(((shade + 1) * values.length) / count) - 1]!,
  );
  return values.length === 0 ? [] : limits.filter((limit, shade) => limit !== limits[shade - 1]);
}

/** Draws the map up for a place; no rows where there is no room. */
export function prepareMap(
  spec: MapSpec,
  { width, height, symbols }: Omit<PlaneOptions, 'paint'>,
): PreparedMap {
  const axes = { x: axisOf(spec.ranges[spec.x]!), y: axisOf(spec.ranges[spec.y]!) };
  const size = planeSize(axes, { width, height });
  const limits = shadeLimits(spec, symbols);
  const nearest = nearestCandidates(spec, size);
  const isCliff = (column: number, row: number) =>
    nearest[row]![column]!.falls &&
    [
      nearest[row - 1]?.[column],
      nearest[row + 1]?.[column],
      nearest[row]![column - 1],
      nearest[row]![column + 1],
    ].some((other) => other !== undefined && !other.falls);
  const rows = nearest.map((line, row) =>
    line.map((candidate, column): Piece =>
      isCliff(column, row)
        ? { text: verdictMark('bad', symbols === 'ascii'), style: 'bad' }
        : {
            text: shadeOf(candidate, spec.metric, { limits, symbols }),
            style: candidate.falls ? 'warn' : 'lineA',
          },
    ),
  );
  for (const { values, sign } of spec.candidates) {
    if (sign === null || size.rows === 0) continue;
    const { column, row } = placeIn(mapPlace(spec, values), size);
    rows[row]![column] = { text: sign, style: 'bold' };
  }
  return { spec, axes, size, rows };
}

function shadeOf(
  { falls, value }: MapCandidate,
  { ofFallen }: MapMetric,
  { limits, symbols }: { limits: readonly number[]; symbols: SymbolSet },
): string {
  if (value === null || (falls && !ofFallen)) return ' ';
  const shade = limits.findIndex((limit) => value <= limit);
  return SHADES[symbols][shade] ?? ' ';
}

/** A character is about twice as high as wide. */
const ROW_PER_COLUMN = 2;

/** The candidate nearest to each place, the better one of two that are equally near. */
function nearestCandidates(spec: MapSpec, size: PlaneSize): MapCandidate[][] {
  const { columns, rows } = size;
  const best = spec.candidates.toSorted(
    (a, b) => Number(a.falls) - Number(b.falls) || (a.value ?? Infinity) - (b.value ?? Infinity) || 0,
  );
  const places = best.map(({ values }) => {
    const { x, y } = mapPlace(spec, values);
    return { column: x * columns - 0.5, row: (1 - y) * rows - 0.5 };
  });
  return Array.from({ length: best.length === 0 ? 0 : rows }, (_, row) =>
    Array.from({ length: columns }, (_unused, column) => {
      let least = Infinity;
      let nearest = 0;
      for (let index = 0; index < places.length; index++) {
        const place = places[index]!;
        const across = place.column - column;
        const up = ROW_PER_COLUMN * (place.row - row);
        const distance = across * across + up * up;
        if (distance < least) [least, nearest] = [distance, index];
      }
      return best[nearest]!;
    }),
  );
}

/** The map with a candidate under the cursor; no rows where there is no room. */
export function mapRows(map: PreparedMap, cursor: string | null, options: PlaneOptions): string[] {
  const { spec, axes, size } = map;
  if (map.rows.length === 0) return [];
  const here = spec.candidates.find(({ name }) => name === cursor);
  const point = here === undefined ? null : mapPlace(spec, here.values);
  const rows = map.rows.map((row) => [...row]);
  if (here !== undefined && point !== null) {
    const { column, row } = placeIn(point, size);
    const sign = here.sign ?? (options.symbols === 'ascii' ? 'O' : '●');
    rows[row]![column] = { text: sign, style: 'inverse' };
  }
  return framedPlane(rows, axes, { ...options, cursor: point });
}

/** What the shades and signs mean. */
export function mapLegend(spec: MapSpec, symbols: SymbolSet): string {
  const { metric } = spec;
  const shades = shadeLimits(spec, symbols).map(
    (limit, shade) => `${SHADES[symbols][shade]} to ${metric.text(limit)}`,
  );
  const cliff = `${verdictMark('bad', symbols === 'ascii')} the cliff: beyond it they fall`;
  return `${[...shades, cliff].join(', ')}; digits and letters: the finalists in their order.`;
}

/** The map in one sentence. */
export function mapSentence(spec: MapSpec): string {
  const { ranges, x, y, candidates, metric } = spec;
  const upright = candidates.filter(({ falls, value }) => !falls && value !== null);
  const best = upright.toSorted((a, b) => a.value! - b.value!)[0];
  const fallen = candidates.filter(({ falls }) => falls).length;
  const at = (index: number) =>
    `${rangeName(ranges[index]!)} ${plainQuantity(best!.values[index]!, ranges[index]!.unit)}`;
  const start = `${metric.name} by ${rangeName(ranges[x]!)} and ${rangeName(ranges[y]!)}`;
  const middle =
    best === undefined ? 'nobody stays up' : `best ${metric.text(best.value!)} at ${at(x)}, ${at(y)}`;
  return `${start}: ${middle}; ${fallen} of ${candidates.length} candidates fall.`;
}
