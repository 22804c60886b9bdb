/**
 * Which rows does the Rank screen show, in which order, and what is under the cursor?
 */
import { orderRows } from '../../measure/row-order.js';
import type { ProfileResult, RankedCell } from '../../measure/profile-result.js';
import { rankProfiles } from '../../measure/score.js';
import type { LookWish } from '../../tasks/looks.js';
import type { StandingRow } from '../../tasks/standing-rank.js';
import { trialIndex } from './carry-over.js';
import { editedProfiles } from './choices.js';
import { problemOfProfile } from './faulty-files.js';
import { shownEvidence, whyRuns } from './why-items.js';
import type { BenchState } from './state.js';

/** A row to be shown; rank counts from 1 and is null while the row is not computed. */
export interface ShownRow extends StandingRow {
  rank: number | null;
  isEdited: boolean;
  isPicked: boolean;
  /** True where its file has a problem now, and its last good version is ranked. */
  isFaulty: boolean;
  /** Rank and result of an edited profile as its file has it, where they are known. */
  unedited: { result: ProfileResult; rank: number } | null;
}

/** The rank that a result has among others of other names, from 1. */
function rankAmong(result: ProfileResult, others: readonly ProfileResult[]): number {
  const all = rankProfiles([result, ...others.filter(({ name }) => name !== result.name)]);
  return all.indexOf(result) + 1;
}

/** The results that are there, best first. */
export function rankedResults({ rows }: Pick<BenchState, 'rows'>): ProfileResult[] {
  return rankProfiles(rows.flatMap(({ result }) => (result === null ? [] : [result])));
}

const drawnUp = new WeakMap<BenchState, readonly ShownRow[]>();

/** The rows in their order, those still to be computed last; a filter keeps the names and summaries that hold it. */
export function shownRows(state: BenchState): readonly ShownRow[] {
  const rows = drawnUp.get(state) ?? drawUp(state);
  drawnUp.set(state, rows);
  return rows;
}

function drawUp(state: BenchState): ShownRow[] {
  const { work, rank, rows } = state;
  if (work === null) return [];
  const ranked = rankedResults(state);
  const isEdited = new Set(editedProfiles(state));
  const known = new Map(rows.map((row) => [row.name, row]));
  const ordered = orderRows(ranked, rank.order).map(({ name }) => name);
  const waiting = work.plan.profiles.map(({ name }) => name).filter((name) => !ordered.includes(name));
  const wanted = rank.filter.toLowerCase();
  const summaryOf = new Map(work.plan.profiles.map(({ name, value }) => [name, value.summary.toLowerCase()]));
  return [...ordered, ...waiting]
    .filter((name) => summaryOf.has(name))
    .filter((name) => name.includes(wanted) || summaryOf.get(name)!.includes(wanted))
    .map((name) => {
      const row = known.get(name) ?? { name, result: null, check: null };
      const place = ranked.findIndex((result) => result.name === name);
      const hasFile = state.files.profile.some((file) => file.name === name);
      const asFile = hasFile && isEdited.has(name) ? state.unedited.get(name) : undefined;
      return {
        ...row,
        rank: place === -1 ? null : place + 1,
        isEdited: isEdited.has(name),
        isPicked: rank.picked.includes(name),
        isFaulty: problemOfProfile(state.shelf, name) !== null,
        unedited: asFile === undefined ? null : { result: asFile, rank: rankAmong(asFile, ranked) },
      };
    });
}

/** The row under the cursor: the one named, else the first; undefined where there is none. */
export function currentRow(state: BenchState, rows = shownRows(state)): ShownRow | undefined {
  return rows.find(({ name }) => name === state.rank.cursor) ?? rows[0];
}

/** The cell that is meant in a row: the worst of the scenario under the cursor, else the worst of all. */
export function currentCell({ rank, work }: BenchState, row: ShownRow | undefined): RankedCell | null {
  if (!row?.result || work === null) return null;
  const scenario = rank.column === null ? undefined : work.plan.scenarios[rank.column]?.name;
  if (scenario === undefined) return row.result.worst;
  const cells = row.result.cells.filter((cell) => cell.scenario === scenario);
  return cells.toSorted((a, b) => b.cost - a.cost)[0] ?? null;
}

/** The place of a cell's trial in the plan. */
export function trialOfCell({ work }: Pick<BenchState, 'work'>, cell: RankedCell): number {
  return Math.max(0, trialIndex(work, cell));
}

/** The runs that the screen wants to show, in its order. */
export function wishesOf(state: BenchState): LookWish[] {
  const { work, screen, view } = state;
  if (work === null || screen === 'sweep' || screen === 'shortlist') return [];
  const wish = (name: string, index: number): LookWish[] => {
    const profile = work.plan.profiles.find((candidate) => candidate.name === name);
    const trial = work.trials[index];
    return profile && trial ? [{ plan: work.plan, profile, trial }] : [];
  };
  if (screen === 'why') {
    const cell = shownEvidence(state)?.cell ?? state.why?.answer?.explanation.result.worst;
    const trial = work.trials[trialIndex(work, cell)];
    return trial === undefined ? [] : whyRuns(state).map((profile) => ({ plan: work.plan, profile, trial }));
  }
  if (screen !== 'rank') return view.profiles.flatMap((name) => wish(name, view.trial));
  const row = currentRow(state);
  const cell = currentCell(state, row);
  return row && cell ? wish(row.name, trialOfCell(state, cell)) : [];
}
