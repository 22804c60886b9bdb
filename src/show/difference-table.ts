/**
 * How does the difference table look? One row a metric, one column a profile, a sign at the better value, and the
 * difference between best and worst. Where rows are few, those stay that drive the costs apart.
 */
import type { CellStyle, Piece } from './cell-grid.js';
import type { Paint } from './colour.js';
import { signAt, type ComparedRun } from './compare-run.js';
import { differenceRows, EQUAL, type DifferenceRow } from './difference-rows.js';
import { textWidth, wrapped } from './fit-text.js';
import { GLYPHS, type SymbolSet } from './glyphs.js';
import { plainText } from './plain-text.js';
import { writable } from './plot-frame.js';
import { table, type TableCell } from './table.js';

/** How the table is to be shown: at most `width` columns and `height` rows, its header among them. */
export interface DifferenceTableOptions {
  width: number;
  height: number;
  symbols: SymbolSet;
  paint: Paint;
}

const NOTE =
  'Values that are shown alike count as equal. A run that fails is cut short and is best in nothing. Cost: the ' +
  'weighted mean of the metrics, each over its own fixed scale; less is better.';

/** Fewest rows in which the table says something: header, cost, two metrics, and how many are left out. */
export const LEAST_TABLE_ROWS = 5;

/** Longest name of a profile above its column. */
const LONGEST_NAME = 12;

/** The sign at the better value. */
export function betterSign(symbols: SymbolSet): string {
  return symbols === 'ascii' ? '*' : '◆';
}

/** The lines of the table; the last one says how many rows are left out, if any; else notes follow if they fit. */
export function differenceTable(runs: readonly ComparedRun[], options: DifferenceTableOptions): string[] {
  const { width, height, paint } = options;
  if (height < 2) return [];
  const all = differenceRows(runs);
  const isWhole = all.length + 1 <= height;
  const rows = isWhole ? all : mostTelling(all, height < LEAST_TABLE_ROWS ? height - 1 : height - 2);
  const lines = tableLines(runs, rows, options);
  if (isWhole) {
    const notes = noteLines(options);
    return lines.length + notes.length <= height ? [...lines, ...notes] : lines;
  }
  if (height < LEAST_TABLE_ROWS) return lines.slice(0, height);
  const left = all.length - rows.length;
  const note = left === 1 ? '1 more row that matters less' : `${left} more rows that matter less`;
  return [...lines, textWidth(note) <= width ? paint.dim(note) : ''];
}

/** What counts as a difference, and whose numbers do, for where there is room below the whole table. */
function noteLines({ width, paint }: Pick<DifferenceTableOptions, 'width' | 'paint'>): string[] {
  return ['', ...wrapped(NOTE, Math.max(2, width)).map(paint.dim)];
}

/** The columns that the whole table wants. */
export function differenceTableWidth(
  runs: readonly ComparedRun[],
  options: Pick<DifferenceTableOptions, 'symbols' | 'paint'>,
): number {
  const lines = tableLines(runs, differenceRows(runs), { ...options, width: Infinity });
  return Math.max(...lines.map(textWidth));
}

/** The rows of the whole table, and with the notes below it. */
export function differenceTableRows(
  runs: readonly ComparedRun[],
  options: Omit<DifferenceTableOptions, 'height'>,
): { whole: number; noted: number } {
  const whole = differenceRows(runs).length + 1;
  return { whole, noted: whole + noteLines(options).length };
}

/** The rows that differ most in cost, in the order of the table; cost, and outcomes that differ, before all else. */
function mostTelling(rows: readonly DifferenceRow[], count: number): DifferenceRow[] {
  const byRank = (a: DifferenceRow, b: DifferenceRow) =>
    Number(b.isSummary) - Number(a.isSummary) || b.spread - a.spread;
  const kept = new Set(rows.toSorted(byRank).slice(0, count));
  return rows.filter((row) => kept.has(row));
}

function tableLines(
  runs: readonly ComparedRun[],
  rows: readonly DifferenceRow[],
  { width, symbols, paint }: Pick<DifferenceTableOptions, 'width' | 'symbols' | 'paint'>,
): string[] {
  const glyphs = GLYPHS[symbols];
  const better = betterSign(symbols);
  const written = (text: string) => writable(text, glyphs);
  const header: TableCell[] = [
    [{ text: `${better} better`, style: 'dim' }],
    ...runs.map((run, index) => headerCell(run, index)),
    [{ text: 'difference', style: 'dim' }],
  ];
  const body = rows.map((row): TableCell[] => [
    row.name,
    ...row.cells.map(({ text, isBest, competes }): Piece[] => [
      { text: written(text), style: valueStyle({ isBest, competes }) },
      { text: isBest ? better : ' ', style: 'ok' },
    ]),
    [{ text: written(row.difference), style: row.difference === EQUAL ? 'dim' : null }],
  ]);
  const columns = [
    { header: '', align: 'left', shrinks: true, leastWidth: 9 } as const,
    ...runs.map(() => ({ header: '', align: 'right', shrinks: true, leastWidth: 8 }) as const),
    { header: '', align: 'right', shrinks: true } as const,
  ];
  const fit = Number.isFinite(width) ? { maxWidth: width } : {};
  // The header is a row of its own: its cells have styles.
  return table({ columns, rows: [header, ...body], paint, ellipsis: glyphs.ellipsis, ...fit }).slice(1);
}

function headerCell({ name }: ComparedRun, index: number): Piece[] {
  const { letter, style } = signAt(index);
  const plain = plainText(name);
  return [
    { text: letter, style },
    { text: ` ${plain.slice(0, LONGEST_NAME)} `, style: 'bold' },
  ];
}

function valueStyle({ isBest, competes }: { isBest: boolean; competes: boolean }): CellStyle {
  if (isBest) return 'bold';
  return competes ? null : 'dim';
}
