/**
 * From what happens outside of the bench to the next state: rows that were computed, runs, files, the size of the terminal.
 */
import type { ProfileResult } from '../../measure/profile-result.js';
import type { Problem } from '../../quantity/problem.js';
import { problemLine } from '../../show/problems.js';
import type { Look } from '../../tasks/looks.js';
import type { Shelf } from '../../tasks/shelf.js';
import type { Standing } from '../../tasks/standing-rank.js';
import { withFreshItems } from './chooser-acts.js';
import { replanned } from './choices.js';
import { begun } from './time-acts.js';
import type { BenchState } from './state.js';

/**
 * The state with what is known of the plan's rows; news of another plan is none. A row whose numbers are being computed
 * again keeps its last ones until then.
 */
export function ranked(
  state: BenchState,
  standing: Standing,
  unedited: ReadonlyMap<string, ProfileResult>,
): BenchState {
  if (standing.plan !== state.work?.plan) return state;
  const before = new Map(state.rows.map((row) => [row.name, row]));
  const rows = standing.rows.map((row) =>
    row.result === null ? { ...row, result: before.get(row.name)?.result ?? null } : row,
  );
  const { doneCells, allCells } = standing;
  return { ...state, rows, unedited, progress: { doneCells, allCells } };
}

/** The state with the runs that it looks at. */
export function looked(state: BenchState, looks: readonly (Look | null)[]): BenchState {
  const same =
    looks.length === state.looks.length && looks.every((look, index) => look === state.looks[index]);
  if (same) return state;
  return state.screen === 'rank' ? { ...state, looks } : begun({ ...state, looks });
}

/** The state with the files as they stand now; a new problem, or that the last one is gone, is told. */
export function shelved(state: BenchState, shelf: Shelf): BenchState {
  if (shelf === state.shelf) return state;
  const next = withFreshItems(replanned(state, { shelf }));
  const known = new Set(state.shelf.problems.map(problemLine));
  const fresh = shelf.problems.map(problemLine).find((line) => !known.has(line));
  if (fresh !== undefined) return { ...next, notice: { text: fresh, isFault: true } };
  const isMended = known.size > 0 && shelf.problems.length === 0;
  return isMended ? told(next, 'no file has a problem any more') : next;
}

/** The state at another size of the terminal. */
export function resized(state: BenchState, size: BenchState['size']): BenchState {
  return { ...state, size };
}

/** The state with something to be told: what was done, or what was wrong. */
export function told(state: BenchState, said: string | readonly Problem[]): BenchState {
  const isFault = typeof said !== 'string';
  const text = isFault ? said.map(problemLine).join('; ') : said;
  return { ...state, notice: { text, isFault } };
}
