/**
 * What do the finalists trade for what? Two of comfort, reserve and agility against each other, each finalist with its sign; a
 * dotted line joins those whom nobody matches in both.
 */
import { COST_GROUPS } from '../measure/scales.js';
import { onFront, type GroupCosts } from '../sweep/front.js';
import { createCellGrid, gridRow, setCharacter, setDot, type CellGrid } from './cell-grid.js';
import { GLYPHS } from './glyphs.js';
import {
  framedPlane,
  placeIn,
  planeSize,
  type PlaneAxes,
  type PlaneOptions,
  type PlaneSize,
} from './sweep-plane.js';

/** One of the things that are traded. */
export type TradedGroup = (typeof COST_GROUPS)[number];

/** A finalist as the scatter has it; `sign` is one character. */
export interface ScatterPoint {
  name: string;
  groups: GroupCosts;
  isOnFront: boolean;
  sign: string;
}

/** What is held against what. */
export interface ScatterSpec {
  x: TradedGroup;
  y: TradedGroup;
  points: readonly ScatterPoint[];
}

/** From where to where an axis goes, in costs. */
interface Extent {
  low: number;
  high: number;
}

/** Signs of finalists in their order: digits, then letters. */
export function finalistSign(index: number): string {
  return '123456789abcdefghijklmnopqrstuvwxyz'[index] ?? '+';
}

/** Part of the extent that stays free on either side. */
const MARGIN = 0.06;

function extentOf(values: readonly number[]): Extent {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const free = (high > low ? high - low : Math.max(Math.abs(low), 0.1)) * MARGIN;
  return { low: low - free, high: high + free };
}

const extentsOf = ({ x, y, points }: ScatterSpec) => ({
  x: extentOf(points.map(({ groups }) => groups[x])),
  y: extentOf(points.map(({ groups }) => groups[y])),
});

/** The place of a finalist in the plane, 0 to 1. */
export function scatterPlace(spec: ScatterSpec, { groups }: Pick<ScatterPoint, 'groups'>) {
  const { x, y } = extentsOf(spec);
  const place = ({ low, high }: Extent, value: number) => (value - low) / (high - low);
  return { x: place(x, groups[spec.x]), y: place(y, groups[spec.y]) };
}

/** Decimals with which the labels of an axis differ. */
const decimalsOf = ({ low, high }: Extent) =>
  Math.min(6, Math.max(2, 1 - Math.floor(Math.log10(high - low))));

const axisOf = (group: TradedGroup, extent: Extent) => ({
  name: `${group}, less is better`,
  ticks: [0, 1, 0.5].map((place) => {
    const value = extent.low + place * (extent.high - extent.low);
    return { place, text: value.toFixed(decimalsOf(extent)) };
  }),
});

/** The scatter with a finalist under the cursor; no rows where there is no room. */
export function scatterRows(spec: ScatterSpec, cursor: string | null, options: PlaneOptions): string[] {
  if (spec.points.length === 0) return [];
  const extents = extentsOf(spec);
  const axes: PlaneAxes = { x: axisOf(spec.x, extents.x), y: axisOf(spec.y, extents.y) };
  const size = planeSize(axes, options);
  if (size.rows === 0) return [];
  const { symbols } = options;
  const grid = createCellGrid(GLYPHS[symbols], size.columns, size.rows);
  drawFront(spec, grid, size);
  const here = spec.points.find(({ name }) => name === cursor);
  const inOrder = [...spec.points.filter((point) => point !== here).toReversed(), ...(here ? [here] : [])];
  for (const point of inOrder.filter(({ isOnFront }) => isOnFront)) {
    const { column, row } = placeIn(scatterPlace(spec, point), size);
    const beside = column + 1 < size.columns ? column + 1 : column - 1;
    const mark = symbols === 'ascii' ? '*' : '◆';
    setCharacter(grid, { column: beside, row, layer: 'over' }, { text: mark, style: 'accent' });
  }
  for (const point of inOrder) {
    const { column, row } = placeIn(scatterPlace(spec, point), size);
    const style = point === here ? 'inverse' : point.isOnFront ? 'bold' : null;
    setCharacter(grid, { column, row, layer: 'over' }, { text: point.sign, style });
  }
  const rows = Array.from({ length: size.rows }, (_, row) => gridRow(grid, row));
  const point = here === undefined ? null : scatterPlace(spec, here);
  return framedPlane(rows, axes, { ...options, cursor: point });
}

/** Points that nobody matches in both, from left to right. */
function frontOfTwo({ x, y, points }: ScatterSpec): ScatterPoint[] {
  const isFront = onFront(points.map(({ groups }) => [groups[x], groups[y]]));
  return points.filter((_, index) => isFront[index]).toSorted((a, b) => a.groups[x] - b.groups[x]);
}

/** Steps from one to the next: what lies right above them is worse than one of them. */
function drawFront(spec: ScatterSpec, grid: CellGrid, size: PlaneSize): void {
  const { dotsWide, dotsHigh } = grid.glyphs;
  const dots = frontOfTwo(spec).map((point) => {
    const { column, row } = placeIn(scatterPlace(spec, point), size);
    return { dotColumn: column * dotsWide, dotRow: row * dotsHigh + Math.floor(dotsHigh / 2) };
  });
  dots.slice(1).forEach((to, index) => {
    const from = dots[index]!;
    const line = { line: 'dotted', style: 'dim' } as const;
    for (let column = from.dotColumn; column <= to.dotColumn; column += dotsWide)
      setDot(grid, { dotColumn: column, dotRow: from.dotRow }, line);
    for (let row = Math.min(from.dotRow, to.dotRow); row <= Math.max(from.dotRow, to.dotRow); row += 2)
      setDot(grid, { dotColumn: to.dotColumn, dotRow: row }, line);
  });
}

/** The scatter in one sentence. */
export function scatterSentence(spec: ScatterSpec): string {
  const { x, y, points } = spec;
  const least = (group: TradedGroup) => points.toSorted((a, b) => a.groups[group] - b.groups[group])[0];
  const [alongX, alongY] = [least(x), least(y)];
  const start = `${x[0]!.toUpperCase()}${x.slice(1)} against ${y}`;
  if (alongX === undefined || alongY === undefined) return `${start}: there is no finalist.`;
  const best = (group: TradedGroup, { name, groups }: ScatterPoint) =>
    `least cost of ${group} ${groups[group].toFixed(2)} with ${name}`;
  const front = frontOfTwo(spec).length;
  return (
    `${start}: of ${points.length} finalists ${front} ${front === 1 ? 'is' : 'are'} matched by nobody in both; ` +
    `${best(x, alongX)}, ${best(y, alongY)}.`
  );
}
