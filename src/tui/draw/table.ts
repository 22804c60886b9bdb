/**
 * The table of the Rank screen: rows that fill in as runs finish, with cursor, picks, changes and the odex mark.
 */
import type { Piece } from '../../show/cell-grid.js';
import { verdictMark } from '../../show/colour.js';
import { textWidth } from '../../show/fit-text.js';
import { GLYPHS } from '../../show/glyphs.js';
import { COMPARE_SIGNS } from '../../show/compare-run.js';
import { stripPieces } from '../../show/rank-row.js';
import { table, type TableCell } from '../../show/table.js';
import { currentRow, shownRows, type ShownRow } from '../bench/rows.js';
import type { BenchState } from '../bench/state.js';
import { inSight, say, type Area } from './say.js';
import { COLUMNS, figureIn, fittedColumns, headerOf, type ColumnName } from './table-columns.js';

/** What every cell of one drawing needs; scenarios `from` up to but without `to` are in sight. */
interface Drawing {
  state: BenchState;
  ascii: boolean;
  scenarios: readonly string[];
  here: ShownRow | undefined;
  from: number;
  to: number;
}

function cursorCell(row: ShownRow, { state, here, ascii }: Drawing): TableCell {
  const letter = COMPARE_SIGNS[state.rank.picked.indexOf(row.name)]?.letter ?? (row.isPicked ? '+' : ' ');
  const sign = row === here ? (ascii ? '>' : '▸') : ' ';
  return [
    { text: sign, style: 'accent' },
    { text: letter, style: 'bold' },
  ];
}

function nameCell(row: ShownRow, { here }: Drawing): TableCell {
  return [
    { text: row.name, style: row === here ? 'bold' : null },
    { text: row.isEdited ? ' ~' : '', style: 'warn' },
    { text: row.isFaulty ? ' !' : '', style: 'bad' },
  ];
}

/** The signs of the scenarios in sight; an ellipsis in place of the first or the last where there are more. */
function stripCell(row: ShownRow, drawing: Drawing): TableCell {
  const { state, here, ascii, scenarios, from, to } = drawing;
  const seen = scenarios.slice(from, to);
  const pieces: Piece[] = stripPieces(row.result ?? { cells: [...(row.some ?? [])] }, seen, ascii);
  if (from > 0) pieces[0] = { text: ascii ? '<' : '…', style: 'dim' };
  if (to < scenarios.length) pieces[pieces.length - 1] = { text: ascii ? '>' : '…', style: 'dim' };
  const { column } = state.rank;
  const marked = row === here && column !== null ? pieces[column - from] : undefined;
  return pieces.map((piece) => (piece === marked ? { ...piece, style: 'inverse' } : piece));
}

function checkCell({ check, result }: ShownRow, { ascii }: Drawing): TableCell {
  if (result === null) return '';
  if (check === null) return [{ text: ascii ? '.' : '·', style: 'dim' }];
  const verdict = check.agrees ? 'ok' : 'bad';
  return [{ text: verdictMark(verdict, ascii), style: verdict }];
}

function cellOf(name: ColumnName, row: ShownRow, drawing: Drawing): TableCell {
  if (name === 'cursor') return cursorCell(row, drawing);
  if (name === 'rank') return String(row.rank ?? '');
  if (name === 'profile') return nameCell(row, drawing);
  if (name === 'strip') return stripCell(row, drawing);
  if (name === 'odex' || name === 'mark') return checkCell(row, drawing);
  return figureIn(row, name);
}

/** The top of the strip: with a scenario under the cursor a caret above it, and its name beside the caret where it fits. */
function stripHeader({ state, ascii, scenarios, from }: Drawing, width: number): string {
  const { column } = state.rank;
  if (column === null) return headerOf('strip', state);
  const caret = ascii ? 'v' : '▾';
  const at = column - from;
  const name = scenarios[column] ?? '';
  if (at + 2 + textWidth(name) <= width) return `${' '.repeat(at)}${caret} ${name}`;
  return textWidth(name) < at ? `${name.padStart(at - 1)} ${caret}` : ' '.repeat(at) + caret;
}

/** The part of the strip that is in sight: around the scenario under the cursor, which is never behind an ellipsis. */
function stripInSight(count: number, column: number | null, width: number): { from: number; to: number } {
  const room = Math.max(3, Math.min(count, width));
  const from = Math.max(0, Math.min(count - room, (column ?? 0) - Math.floor(room / 2)));
  return { from, to: from + room };
}

/** The table in at most as many rows as the area has, those around the cursor. */
export function tableRows(state: BenchState, { width, height }: Area): string[] {
  const { options, rank, work } = state;
  const rows = shownRows(state);
  const here = currentRow(state, rows);
  const scenarios = work?.plan.scenarios.map(({ name }) => name) ?? [];
  const columns = fittedColumns(state, width);
  const stripWidth = columns.find(({ name }) => name === 'strip')!.width;
  const drawing: Drawing = {
    state,
    ascii: options.symbols === 'ascii',
    scenarios,
    here,
    ...stripInSight(scenarios.length, rank.column, stripWidth),
  };
  const seen = inSight(rows, here === undefined ? 0 : rows.indexOf(here), height - 1);
  const drawn = table({
    columns: columns.map((column) => ({
      header: column.name === 'strip' ? stripHeader(drawing, stripWidth) : headerOf(column.name, state),
      align: COLUMNS[column.name].align,
      shrinks: column.name === 'profile',
      leastWidth: column.width,
      fullWidth: column.width,
    })),
    rows: seen.map((row) => columns.map(({ name }) => cellOf(name, row, drawing))),
    paint: options.paint,
    maxWidth: width,
    ellipsis: GLYPHS[options.symbols].ellipsis,
  });
  if (rows.length > 0) return drawn.slice(0, height);
  const none = `no profile has "${rank.filter}" in its name or summary; / changes the filter`;
  return [...drawn, ...say(none, width, options)].slice(0, height);
}
