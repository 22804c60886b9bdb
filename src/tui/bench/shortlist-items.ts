/**
 * What is there on the Shortlist screen, what is under its cursor, and what has to be computed for the view of it?
 */
import type { KeptFile } from '../../quantity/kept-file.js';
import type { Problem } from '../../quantity/problem.js';
import type { Named } from '../../tasks/plan.js';
import { problemOfFile } from './faulty-files.js';
import type { Keeping, Preview, PreviewWish } from './shortlist-state.js';
import type { BenchState } from './state.js';

/** A row of the list: a profile that is kept, or one that is being proven or waits for it. */
export type ShortlistRow =
  | { kind: 'kept'; name: string; kept: Named<KeptFile>; problem: Problem | null }
  | { kind: 'keeping'; name: string; keeping: Keeping; isFirst: boolean };

/** The rows: what is kept by name, then what waits. */
export function shortlistRowsOf({
  shelf,
  shortlist,
}: Pick<BenchState, 'shelf' | 'shortlist'>): ShortlistRow[] {
  return [
    ...shelf.kept.map((kept) => ({
      kind: 'kept' as const,
      name: kept.name,
      kept,
      problem: problemOfFile(shelf, 'kept', kept.name),
    })),
    ...shortlist.queue.map((keeping, index) => ({
      kind: 'keeping' as const,
      name: keeping.name,
      keeping,
      isFirst: index === 0,
    })),
  ];
}

/** The row under the cursor: the one named, else the first; undefined where there is none. */
export function currentShortlistRow(
  state: Pick<BenchState, 'shelf' | 'shortlist'>,
  rows = shortlistRowsOf(state),
): ShortlistRow | undefined {
  return rows.find(({ name }) => name === state.shortlist.cursor) ?? rows[0];
}

/** The kept profile under the cursor; undefined where there is none. */
export function currentKept(state: Pick<BenchState, 'shelf' | 'shortlist'>): Named<KeptFile> | undefined {
  const row = currentShortlistRow(state);
  return row?.kind === 'kept' ? row.kept : undefined;
}

/** The state after its row was taken out, with the cursor on the row that is in its place now, or on the last one. */
export function withNearRow(before: BenchState, after: BenchState): BenchState {
  const { cursor } = before.shortlist;
  const at = shortlistRowsOf(before).findIndex(({ name }) => name === cursor);
  const rows = shortlistRowsOf(after);
  if (at === -1 || cursor !== after.shortlist.cursor || rows.some(({ name }) => name === cursor))
    return after;
  const name = rows[Math.min(at, rows.length - 1)]?.name ?? null;
  return { ...after, shortlist: { ...after.shortlist, cursor: name, read: 0 } };
}

/** The sheet that was chosen, as the files have it; undefined where none is, or where it is gone. */
export function chosenSheet({ shelf, shortlist }: Pick<BenchState, 'shelf' | 'shortlist'>) {
  return shelf.sheet.find(({ name }) => name === shortlist.sheet);
}

/** What is wrong with the file of the sheet that was chosen; null where nothing is. */
export function sheetProblem(state: Pick<BenchState, 'shelf' | 'shortlist'>): Problem | null {
  const sheet = chosenSheet(state);
  return sheet === undefined ? null : problemOfFile(state.shelf, 'sheet', sheet.name);
}

/** What has to be computed for the view in front; null where nothing has. */
export function previewWish(state: BenchState): PreviewWish | null {
  if (state.screen !== 'shortlist') return null;
  const kept = currentKept(state);
  const { view } = state.shortlist;
  if (kept === undefined) return null;
  if (view === 'plan') return { kind: 'plan', kept };
  const sheet = view === 'sheet' ? chosenSheet(state) : undefined;
  if (sheet === undefined) return null;
  const { scenarios } = kept.value.cells;
  const ridden = state.shelf.scenario.filter(({ name }) => scenarios.includes(name));
  return { kind: 'sheet', kept, sheet, scenarios: ridden };
}

/** True where two wishes have the same answer: what a rider says of a profile changes nothing of it. */
export function isSameWish(a: PreviewWish | null, b: PreviewWish | null): boolean {
  if (a === null || b === null) return a === b;
  if (a.kept.name !== b.kept.name || a.kept.value.seal !== b.kept.value.seal) return false;
  if (a.kind === 'plan' || b.kind === 'plan') return a.kind === b.kind;
  return (
    a.sheet === b.sheet &&
    a.scenarios.length === b.scenarios.length &&
    a.scenarios.every((scenario, index) => scenario === b.scenarios[index])
  );
}

/** What is known of what the view in front needs; null where that is nothing, or where it needs nothing. */
export function previewNow(state: BenchState): Preview | null {
  const { preview } = state.shortlist;
  const wish = previewWish(state);
  return wish !== null && preview !== null && isSameWish(preview.wish, wish) ? preview : null;
}
