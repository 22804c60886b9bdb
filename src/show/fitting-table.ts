/**
 * Which of several tables fits? The fullest whose columns all have room; a column that may shrink needs but a part of its head.
 */
import { createPaint } from './colour.js';
import { textWidth, truncated } from './fit-text.js';
import { table, type TableSpec } from './table.js';

/** So many of some columns, with heads of so many characters at least. */
export interface ColumnRoom {
  count: number;
  leastWidth: number;
}

/** Heads that can be read without knowing them, and such as are just told apart, in characters. */
const READABLE_HEAD = 12;
const SHORT_HEAD = 6;

/** Fewest columns that are kept with heads to be read rather than more of them with short ones. */
const FEW = 2;

/** How some columns may be shown, the fullest way first: all, then fewer, then few with short heads, then none. */
export function columnRooms(length: number): ColumnRoom[] {
  const countsFrom = (most: number, least: number) =>
    Array.from({ length: Math.max(0, most - least + 1) }, (_, index) => most - index);
  const few = Math.min(FEW, length);
  return [
    ...countsFrom(length, few).map((count) => ({ count, leastWidth: READABLE_HEAD })),
    ...countsFrom(few, 0).map((count) => ({ count, leastWidth: SHORT_HEAD })),
  ];
}

const NO_PAINT = createPaint('none');

/** The place of the first of these tables that fits a width in columns; the last where none does. */
export function firstThatFits(specs: readonly TableSpec[], width: number): number {
  const place = specs.findIndex((spec) => Math.max(...table(barest(spec)).map(textWidth)) <= width);
  return place === -1 ? specs.length - 1 : place;
}

/** A table as narrow as it may become, unpainted. */
function barest({ columns, rows }: TableSpec): TableSpec {
  const shrunk = columns.map((column) =>
    column.shrinks
      ? { ...column, header: truncated(column.header, column.leastWidth ?? SHORT_HEAD, '.') }
      : column,
  );
  return { columns: shrunk, rows, paint: NO_PAINT };
}
