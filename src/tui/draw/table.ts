/**
 * The table of the Rank screen: rows that fill in as runs finish, with cursor, picks, changes and the odex mark.
 */
import type { RowColumn } from '../../measure/row-order.js';
import type { Piece } from '../../show/cell-grid.js';
import { verdictMark } from '../../show/colour.js';
import { GLYPHS } from '../../show/glyphs.js';
import { figureTexts, stripPieces } from '../../show/rank-row.js';
import { orderSign } from '../../show/rank-table.js';
import { table, tableWidth, type TableCell, type TableColumn } from '../../show/table.js';
import { currentRow, shownRows, type ShownRow } from '../bench/rows.js';
import type { BenchState } from '../bench/state.js';
import { inSight, say, type Area } from './say.js';

/** Letters of picked profiles, in the order in which they were picked. */
export const LETTERS = ['A', 'B', 'C', 'D'] as const;

interface Column extends TableColumn {
  by: RowColumn | null;
  cell: (row: ShownRow, state: BenchState) => TableCell;
}

const figure =
  (name: keyof ReturnType<typeof figureTexts>) =>
  ({ result }: ShownRow): TableCell =>
    result === null ? '' : figureTexts(result)[name];

const COLUMNS = {
  cursor: { header: '', by: null, cell: cursorCell },
  rank: { header: '#', by: 'rank', align: 'right', cell: ({ rank }) => (rank === null ? '' : String(rank)) },
  profile: { header: 'profile', by: 'profile', align: 'left', shrinks: true, cell: nameCell },
  strip: { header: 'each scenario', by: null, align: 'left', shrinks: true, cell: stripCell },
  falls: { header: 'falls', by: 'falls', align: 'right', cell: figure('falls') },
  score: { header: 'score', by: 'score', align: 'right', cell: figure('score') },
  odex: { header: 'odex', by: null, align: 'left', cell: checkCell },
  mark: { header: '', by: null, align: 'left', cell: checkCell },
  overshoot: { header: 'overshoot', by: 'overshoot', align: 'right', cell: figure('overshoot') },
  settling: { header: 'settling', by: 'settling', align: 'right', cell: figure('settling') },
  cut: { header: 'cut', by: 'cut', align: 'right', cell: figure('cut') },
} as const satisfies Readonly<Record<string, Column>>;

type ColumnName = keyof typeof COLUMNS;

/** Columns from the widest table to the narrowest: the strip, which says where a profile fails, stays whole longest. */
const CHOICES: readonly (readonly ColumnName[])[] = [
  ['cursor', 'rank', 'profile', 'strip', 'falls', 'score', 'odex', 'overshoot', 'settling', 'cut'],
  ['cursor', 'rank', 'profile', 'strip', 'falls', 'score', 'mark', 'overshoot', 'settling', 'cut'],
  ['cursor', 'rank', 'profile', 'strip', 'falls', 'score', 'mark', 'overshoot', 'settling'],
  ['cursor', 'rank', 'profile', 'strip', 'falls', 'score', 'mark', 'overshoot'],
  ['cursor', 'rank', 'profile', 'strip', 'falls', 'score', 'mark'],
  ['cursor', 'rank', 'profile', 'strip', 'score', 'mark'],
  ['cursor', 'rank', 'profile', 'strip', 'score'],
];

function cursorCell(row: ShownRow, state: BenchState): TableCell {
  const { symbols } = state.options;
  const isHere = row.name === currentRow(state)?.name;
  const letter = LETTERS[state.rank.picked.indexOf(row.name)] ?? (row.isPicked ? '+' : ' ');
  const sign = isHere ? (symbols === 'ascii' ? '>' : '▸') : ' ';
  return [
    { text: sign, style: 'accent' },
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
  const at = column.cell === stripCell ? state.rank.column : null;
  const caret = at === null ? column.header : `${' '.repeat(at)}${ascii ? 'v' : '▾'}`;
  const sign = column.by !== null && column.by === order.by ? ` ${orderSign(order, ascii)}` : '';
  return { ...column, header: caret + sign };
}

/** Header and cells with as many columns as fit into a width; the fewest of all where none do. */
function tableFor(state: BenchState, rows: readonly ShownRow[], width: number) {
  const specs = CHOICES.map((names) => {
    const columns = names.map((name): Column => COLUMNS[name]);
    return {
      columns: columns.map((column) => headerOf(column, state)),
      rows: rows.map((row) => columns.map(({ cell }) => cell(row, state))),
    };
  });
  return specs.find((spec) => tableWidth(spec) <= width) ?? specs.at(-1)!;
}

/** Columns of the terminal that the whole table takes. */
export function wholeTableWidth(state: BenchState): number {
  return tableWidth(tableFor(state, shownRows(state), Infinity));
}

/** The table in at most as many rows as the area has, those around the cursor. */
export function tableRows(state: BenchState, { width, height }: Area): string[] {
  const { options, rank } = state;
  const rows = shownRows(state);
  const here = rows.findIndex(({ name }) => name === currentRow(state, rows)?.name);
  const drawn = table({
    ...tableFor(state, inSight(rows, here, height - 1), width),
    paint: options.paint,
    maxWidth: width,
    ellipsis: GLYPHS[options.symbols].ellipsis,
  });
  if (rows.length > 0) return drawn.slice(0, height);
  const none = `no profile has "${rank.filter}" in its name or summary; / changes the filter`;
  return [...drawn, ...say(none, width, options)].slice(0, height);
}
