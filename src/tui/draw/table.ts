/**
 * The table of the Rank screen: rows that fill in as runs finish, with cursor, picks, changes and the odex mark.
 */
import type { ProfileResult } from '../../measure/profile-result.js';
import type { RowColumn } from '../../measure/row-order.js';
import type { Piece } from '../../show/cell-grid.js';
import { verdictMark } from '../../show/colour.js';
import { figureTexts, stripPieces } from '../../show/rank-row.js';
import { orderSign } from '../../show/rank-table.js';
import { table, type TableCell, type TableColumn } from '../../show/table.js';
import { currentRow, shownRows, type ShownRow } from '../bench/rows.js';
import type { BenchState } from '../bench/state.js';
import { inSight, say, type Area } from './say.js';

/** Letters of picked profiles, in the order in which they were picked. */
export const LETTERS = ['A', 'B', 'C', 'D'] as const;

interface Column extends TableColumn {
  by: RowColumn | null;
  /** Narrowest table that has the column. */
  from: number;
  cell: (row: ShownRow, state: BenchState) => TableCell;
}

const figure =
  (name: keyof ReturnType<typeof figureTexts>) =>
  ({ result }: ShownRow): TableCell =>
    result === null ? '' : figureTexts(result)[name];

const COLUMNS: readonly Column[] = [
  { header: '', by: null, from: 0, cell: (row, state) => cursorCell(row, state) },
  {
    header: '#',
    by: 'rank',
    align: 'right',
    from: 0,
    cell: ({ rank }) => (rank === null ? '' : String(rank)),
  },
  {
    header: 'profile',
    by: 'profile',
    align: 'left',
    shrinks: true,
    leastWidth: 6,
    from: 0,
    cell: (row, state) => nameCell(row, state),
  },
  {
    header: 'each scenario',
    by: null,
    align: 'left',
    shrinks: true,
    leastWidth: 6,
    from: 0,
    cell: (row, state) => stripCell(row, state),
  },
  { header: 'falls', by: 'falls', align: 'right', from: 46, cell: figure('falls') },
  { header: 'score', by: 'score', align: 'right', from: 0, cell: figure('score') },
  { header: 'odex', by: null, align: 'left', from: 86, cell: (row, state) => checkCell(row, state) },
  { header: '', by: null, align: 'left', from: 40, cell: (row, state) => checkCell(row, state) },
  { header: 'overshoot', by: 'overshoot', align: 'right', from: 60, cell: figure('overshoot') },
  { header: 'settling', by: 'settling', align: 'right', from: 70, cell: figure('settling') },
  { header: 'cut', by: 'cut', align: 'right', from: 54, cell: figure('cut') },
];

/** A wide table has a column with a name for the check, a narrow one a bare mark. */
const columnsFor = (width: number) =>
  COLUMNS.filter(({ from }) => width >= from).filter(({ from }) => !(width >= 86 && from === 40));

function cursorCell(row: ShownRow, state: BenchState): TableCell {
  const { paint, symbols } = state.options;
  const isHere = row.name === currentRow(state)?.name;
  const letter = LETTERS[state.rank.picked.indexOf(row.name)] ?? (row.isPicked ? '+' : ' ');
  const sign = isHere ? (symbols === 'ascii' ? '>' : '▸') : ' ';
  return [
    { text: sign, style: paint.mode === 'none' ? null : 'accent' },
    { text: letter, style: 'bold' },
  ];
}

function nameCell(row: ShownRow, state: BenchState): TableCell {
  const isHere = row.name === currentRow(state)?.name;
  return [
    { text: row.name, style: isHere ? 'bold' : null },
    { text: row.isEdited ? ' ~' : '', style: 'warn' },
  ];
}

function stripCell(row: ShownRow, state: BenchState): TableCell {
  const scenarios = state.work?.plan.scenarios.map(({ name }) => name) ?? [];
  const ascii = state.options.symbols === 'ascii';
  const pieces: Piece[] = row.result
    ? stripPieces(row.result, scenarios, ascii)
    : scenarios.map(() => ({ text: ascii ? '.' : '·', style: 'dim' }));
  const { column } = state.rank;
  if (column === null || row.name !== currentRow(state)?.name) return pieces;
  return pieces.map((piece, index) => (index === column ? { ...piece, style: 'inverse' } : piece));
}

function checkCell({ check, result }: ShownRow, { options }: BenchState): TableCell {
  const ascii = options.symbols === 'ascii';
  if (result === null) return '';
  if (check === null) return [{ text: ascii ? '.' : '·', style: 'dim' }];
  const verdict = check.agrees ? 'ok' : 'bad';
  return [{ text: verdictMark(verdict, ascii), style: verdict }];
}

function headerOf(column: Column, state: BenchState): TableColumn {
  const ascii = state.options.symbols === 'ascii';
  const { order } = state.rank;
  const at = column.header === 'each scenario' ? state.rank.column : null;
  const caret = at === null ? column.header : `${' '.repeat(at)}${ascii ? 'v' : '▾'}`;
  const sign = column.by !== null && column.by === order.by ? ` ${orderSign(order, ascii)}` : '';
  return { ...column, header: caret + sign };
}

/** The table in at most as many rows as the area has, those around the cursor. */
export function tableRows(state: BenchState, { width, height }: Area): string[] {
  const rows = shownRows(state);
  const here = rows.findIndex(({ name }) => name === currentRow(state, rows)?.name);
  const seen = inSight(rows, here, height - 1);
  const columns = columnsFor(width);
  const drawn = table({
    columns: columns.map((column) => headerOf(column, state)),
    rows: seen.map((row) => columns.map(({ cell }) => cell(row, state))),
    paint: state.options.paint,
    maxWidth: width,
    ellipsis: state.options.symbols === 'ascii' ? '..' : '…',
  });
  if (rows.length > 0) return drawn.slice(0, height);
  const none = `no profile has "${state.rank.filter}" in its name or summary; / changes the filter`;
  return [...drawn, ...say(none, width, state.options)].slice(0, height);
}

/** Columns that a table takes when nothing is cut. */
export const TABLE_WIDTH = 92;

/** The first sentence of what there is to do: which profile to try first here. */
export function firstToTry(best: ProfileResult | undefined): string {
  if (best === undefined) return '';
  return best.failures < best.cells.length ? `${best.name} comes first` : 'every profile falls in every run';
}
