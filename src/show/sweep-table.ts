/**
 * The finalists of a sweep as a table: their numbers, how they fare, how sure their rank is, what they trade for what.
 */
import { COST_GROUPS } from '../measure/scales.js';
import { GLYPHS } from './glyphs.js';
import { numberText } from './quantities.js';
import { stripPieces } from './rank-row.js';
import { table, type TableCell, type TableColumn } from './table.js';
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

/** Fewest columns with the three groups of costs, and with a sign for each scenario. */
const WITH_GROUPS = 88;
const WITH_STRIP = 96;

/** What there is room for. */
interface Room {
  groups: boolean;
  strip: boolean;
}

/** The table, no wider than the width where columns can shrink. */
export function finalistRows(view: SweepView, { width, symbols, paint }: WhyOptions): string[] {
  const room = { groups: width >= WITH_GROUPS, strip: width >= WITH_STRIP };
  const columns: TableColumn[] = [
    { header: '#', align: 'right' },
    { header: 'name', align: 'left' },
    ...view.ranges.map((range): TableColumn => ({ header: rangeName(range), align: 'right', shrinks: true })),
    { header: 'falls', align: 'right' },
    { header: 'score', align: 'right' },
    { header: 'rank', align: 'right' },
    { header: 'disk', align: 'right' },
    ...(room.groups ? COST_GROUPS.map((group): TableColumn => ({ header: group, align: 'right' })) : []),
    { header: 'front', align: 'left' },
    ...(room.strip ? [{ header: 'each scenario', align: 'left' as const }] : []),
  ];
  const rows = view.finalists.map((finalist, index) => rowOf(view, finalist, { index, room, symbols }));
  return table({ columns, rows, paint, maxWidth: width, ellipsis: GLYPHS[symbols].ellipsis });
}

function rowOf(
  view: SweepView,
  finalist: FinalistView,
  { index, room, symbols }: { index: number; room: Room; symbols: WhyOptions['symbols'] },
): TableCell[] {
  const { result, values, interval, groups, isOnFront, leastDisk } = finalist;
  const ascii = symbols === 'ascii';
  return [
    String(index + 1),
    result.name,
    ...values.map(plainNumber),
    `${result.failures}/${result.cells.length}`,
    numberText(result.score, 'ratio'),
    interval.low === interval.high ? String(interval.low) : `${interval.low}-${interval.high}`,
    leastDisk === null ? '-' : leastDisk.margin.toFixed(2),
    ...(room.groups ? COST_GROUPS.map((group) => groups[group].toFixed(2)) : []),
    isOnFront ? (ascii ? '*' : '◆') : '',
    ...(room.strip ? [stripPieces(result, view.scenarios, ascii)] : []),
  ];
}
