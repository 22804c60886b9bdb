/**
 * Which columns has the table of the Rank screen, how wide are they, and which of them fit? Widths are those of all rows,
 * in sight or not, so that nothing moves sideways while a person scrolls.
 */
import type { RowColumn } from '../../measure/row-order.js';
import { textWidth } from '../../show/fit-text.js';
import { orderSign } from '../../show/rank-table.js';
import { shownRows, type ShownRow } from '../bench/rows.js';
import type { BenchState } from '../bench/state.js';
import { factsOf, type RowFacts } from './row-facts.js';

/** A column: its name at the top, what rows are ordered by in it, and the columns that its text takes in a row. */
interface Column {
  header: string;
  by: RowColumn | null;
  align: 'left' | 'right';
  width: (row: ShownRow) => number;
}

/** The text of a figure in a row; empty while it is computed. */
export function figureIn({ result }: ShownRow, name: keyof RowFacts['figures']): string {
  return result === null ? '' : factsOf(result).figures[name];
}

const figure = (name: keyof RowFacts['figures']): Column => ({
  header: name,
  by: name,
  align: 'right',
  width: (row) => textWidth(figureIn(row, name)),
});

/** Every column there may be; the width of the strip is that of its scenarios. */
export const COLUMNS = {
  cursor: { header: '', by: null, align: 'left', width: () => 2 },
  rank: { header: '#', by: 'rank', align: 'right', width: ({ rank }) => String(rank ?? '').length },
  profile: {
    header: 'profile',
    by: 'profile',
    align: 'left',
    width: ({ name, isEdited, isFaulty }) => textWidth(name) + (isEdited ? 2 : 0) + (isFaulty ? 2 : 0),
  },
  strip: { header: 'each scenario', by: null, align: 'left', width: () => 0 },
  falls: figure('falls'),
  score: figure('score'),
  odex: { header: 'odex', by: null, align: 'left', width: () => 1 },
  mark: { header: '', by: null, align: 'left', width: () => 1 },
  overshoot: figure('overshoot'),
  settling: figure('settling'),
  cut: figure('cut'),
} as const satisfies Readonly<Record<string, Column>>;

/** The name of a column. */
export type ColumnName = keyof typeof COLUMNS;

/** Columns from the widest table to the narrowest: the strip, which says where a profile fails, stays whole longest. */
const CHOICES: readonly (readonly ColumnName[])[] = [
  ['cursor', 'rank', 'profile', 'strip', 'falls', 'score', 'odex', 'overshoot', 'settling', 'cut'],
  ['cursor', 'rank', 'profile', 'strip', 'falls', 'score', 'mark', 'overshoot', 'settling', 'cut'],
  ['cursor', 'rank', 'profile', 'strip', 'falls', 'score', 'mark', 'overshoot', 'settling'],
  ['cursor', 'rank', 'profile', 'strip', 'falls', 'score', 'mark', 'overshoot'],
  ['cursor', 'rank', 'profile', 'strip', 'falls', 'score', 'mark'],
  ['cursor', 'rank', 'profile', 'strip', 'score', 'mark'],
  ['cursor', 'rank', 'profile', 'strip', 'score'],
  ['cursor', 'rank', 'profile', 'strip'],
];

const GAP = 2;

/** Fewest columns that a long name is cut to before a column is left out. */
const LEAST_NAME = 14;

/** The header of a column with the sign of the order. */
export function headerOf(name: ColumnName, { rank: { order }, options }: BenchState): string {
  const { header, by } = COLUMNS[name];
  return by !== null && by === order.by
    ? `${header} ${orderSign(order, options.symbols === 'ascii')}`
    : header;
}

/** A column of the table with its width. */
export interface FittedColumn {
  name: ColumnName;
  width: number;
}

const measured = new WeakMap<BenchState, ReadonlyMap<ColumnName, number>>();

/** The width of every column where nothing is cut. */
function fullWidths(state: BenchState): ReadonlyMap<ColumnName, number> {
  const widths = measured.get(state) ?? measure(state);
  measured.set(state, widths);
  return widths;
}

function measure(state: BenchState): Map<ColumnName, number> {
  const rows = shownRows(state);
  const names = Object.keys(COLUMNS) as ColumnName[];
  return new Map(
    names.map((name) => {
      const cells = rows.map((row) => COLUMNS[name].width(row));
      const strip = name === 'strip' ? (state.work?.plan.scenarios.length ?? 0) : 0;
      return [name, Math.max(textWidth(headerOf(name, state)), strip, ...cells)];
    }),
  );
}

function widthOf(columns: readonly FittedColumn[]): number {
  return columns.reduce((sum, { width }) => sum + width, GAP * (columns.length - 1));
}

function columnsOf(state: BenchState, names: readonly ColumnName[]): FittedColumn[] {
  const widths = fullWidths(state);
  return names.map((name) => ({ name, width: widths.get(name)! }));
}

/** Takes what is too wide from a column, but leaves it some width. */
function cut(columns: readonly FittedColumn[], from: ColumnName, at: { least: number; width: number }) {
  const excess = Math.max(0, widthOf(columns) - at.width);
  return columns.map((column) =>
    column.name === from
      ? { ...column, width: Math.min(column.width, Math.max(at.least, column.width - excess)) }
      : column,
  );
}

/** Columns of the terminal that the whole table takes. */
export function wholeTableWidth(state: BenchState): number {
  return widthOf(columnsOf(state, CHOICES[0]!));
}

/** As many columns as fit into a width; where not even the fewest do, the strip is cut, and then the names. */
export function fittedColumns(state: BenchState, width: number): FittedColumn[] {
  const withShortNames = CHOICES.map((names) =>
    cut(columnsOf(state, names), 'profile', { least: LEAST_NAME, width }),
  );
  const fitting = withShortNames.find((columns) => widthOf(columns) <= width);
  if (fitting !== undefined) return fitting;
  const fewest = withShortNames.at(-2)!;
  return cut(cut(fewest, 'strip', { least: LEAST_NAME, width }), 'profile', { least: 1, width });
}
