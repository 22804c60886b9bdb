/**
 * The finalists of a sweep as a table: their numbers, how they fare, how sure their rank is, what they trade for what.
 */
import { COST_GROUPS } from '../measure/scales.js';
import { columnRooms, firstThatFits, type ColumnRoom } from './fitting-table.js';
import { GLYPHS } from './glyphs.js';
import { numberText } from './quantities.js';
import { stripPieces } from './rank-row.js';
import { table, type TableCell, type TableColumn, type TableSpec } from './table.js';
import type { FinalistView, SweepView } from './sweep-view.js';
import type { WhyOptions } from './why-lines.js';
import { plainNumber } from './why-sentences.js';

/** Words for the numbers that a sweep may move, short enough for a column. */
const SHORT: Readonly<Record<string, string>> = {
  proportionalAPerDeg: 'proportional',
  rateAPerDegPerS: 'rate',
  integralAPerDegS: 'integral',
};

/** What a number of a profile is called at the head of a column. */
export function rangeName({ path }: Pick<SweepView['ranges'][number], 'path'>): string {
  const key = path.at(-1)!;
  return SHORT[key] ?? key;
}

/** What of a finalist a table shows: so many of its numbers, the three groups of costs, a sign for each scenario. */
export interface TableRoom {
  numbers: ColumnRoom;
  groups: boolean;
  strip: boolean;
}

/** The table, no wider than the width where columns can shrink, and what it has room for. */
export function finalistTable(view: SweepView, options: WhyOptions): { rows: string[]; room: TableRoom } {
  const counts = columnRooms(view.ranges.length);
  const rooms: TableRoom[] = [
    { numbers: counts[0]!, groups: true, strip: true },
    { numbers: counts[0]!, groups: true, strip: false },
    ...counts.map((numbers) => ({ numbers, groups: false, strip: false })),
  ];
  const specs = rooms.map((room) => specOf(view, room, options));
  const place = firstThatFits(specs, options.width);
  return { rows: table(specs[place]!), room: rooms[place]! };
}

/** Columns for the first of the swept numbers, and one that says how many there are beside them. */
export function numberColumns(ranges: SweepView['ranges'], { count, leastWidth }: ColumnRoom): TableColumn[] {
  const left = ranges.length - count;
  return [
    ...ranges.slice(0, count).map((range): TableColumn => {
      return { header: rangeName(range), align: 'right', shrinks: true, leastWidth };
    }),
    ...(left === 0 ? [] : [{ header: `+${left} more`, align: 'right' as const }]),
  ];
}

/** The cells of these columns. */
export function numberCells(values: readonly number[], { count }: ColumnRoom): string[] {
  return [...values.slice(0, count).map(plainNumber), ...(values.length === count ? [] : [''])];
}

function specOf(view: SweepView, room: TableRoom, { width, symbols, paint }: WhyOptions): TableSpec {
  const columns: TableColumn[] = [
    { header: '#', align: 'right' },
    { header: 'name', align: 'left' },
    ...numberColumns(view.ranges, room.numbers),
    { header: 'falls', align: 'right' },
    { header: 'score', align: 'right' },
    { header: 'rank', align: 'right' },
    { header: 'disk', align: 'right' },
    ...(room.groups ? COST_GROUPS.map((group): TableColumn => ({ header: group, align: 'right' })) : []),
    { header: 'front', align: 'left' },
    ...(room.strip ? [{ header: 'each scenario', align: 'left' as const }] : []),
  ];
  const rows = view.finalists.map((finalist, index) => rowOf(view, finalist, { index, room, symbols }));
  return { columns, rows, paint, maxWidth: width, ellipsis: GLYPHS[symbols].ellipsis };
}

function rowOf(
  view: SweepView,
  finalist: FinalistView,
  { index, room, symbols }: { index: number; room: TableRoom; symbols: WhyOptions['symbols'] },
): TableCell[] {
  const { result, values, interval, groups, isOnFront, leastDisk } = finalist;
  const ascii = symbols === 'ascii';
  return [
    String(index + 1),
    result.name,
    ...numberCells(values, room.numbers),
    `${result.failures}/${result.cells.length}`,
    numberText(result.score, 'ratio'),
    interval.low === interval.high ? String(interval.low) : `${interval.low}-${interval.high}`,
    leastDisk === null ? '-' : leastDisk.margin.toFixed(2),
    ...(room.groups ? COST_GROUPS.map((group) => groups[group].toFixed(2)) : []),
    isOnFront ? (ascii ? '*' : '◆') : '',
    ...(room.strip ? [stripPieces(result, view.scenarios, ascii)] : []),
  ];
}
