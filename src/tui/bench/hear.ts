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
import { missingSentences } from './missing.js';
import { savedProfile } from './entry-acts.js';
import { reopened } from './hear-shortlist.js';
import { begun } from './time-acts.js';
import { itemsOf } from './why-items.js';
import { openText } from './why-text.js';
import type { BenchState, Entry, Errand, ShortlistErrand, WhyState } from './state.js';
import type { SweepRunState, SweepState } from './sweep-state.js';

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
  const { screen } = state;
  return screen === 'trace' || screen === 'compare' ? begun({ ...state, looks }) : { ...state, looks };
}

/** What may be told of an explanation. */
export type WhyNews = Partial<Pick<WhyState, 'progress' | 'answer' | 'edgeRuns' | 'edge'>>;

/**
 * The state with news of an explanation; that of another plan is none. The cursor stays on the finding that it is on, and who
 * has begun to read is shown its paragraph in the new answer.
 */
export function explained(state: BenchState, plan: WhyState['plan'], news: WhyNews): BenchState {
  if (state.why === null || state.why.plan !== plan) return state;
  const why = { ...state.why, ...news };
  const here = itemsOf(state.why)[state.why.cursor];
  const there =
    here?.kind !== 'finding'
      ? -1
      : itemsOf(why).findIndex(
          (item) => item.kind === 'finding' && item.evidence.finding.cause === here.evidence.finding.cause,
        );
  if (news.answer === undefined) return { ...state, why };
  const next = { ...state, why: { ...why, cursor: Math.max(0, there) } };
  return state.why.read ? openText(next) : next;
}

/** What may be told of a sweep: how far it is, where its runs are kept, or what came of it. */
export type SweepNews = Partial<
  Pick<SweepRunState, 'isRunning' | 'progress' | 'best' | 'base' | 'kept' | 'outcome'>
>;

/** The Sweep screen with what is known of its sweep; at the end the cursor is on a finalist. */
function withRun(sweep: SweepState, run: SweepRunState): SweepState {
  if (run.outcome === null || run.outcome === sweep.run?.outcome) return { ...sweep, run };
  const { finalists } = run.outcome.answer;
  const isFinalist = finalists.some(({ candidate }) => candidate.name === sweep.cursor);
  const view = sweep.view === 'live' ? 'finalists' : sweep.view;
  return { ...sweep, run, view, cursor: isFinalist ? sweep.cursor : null };
}

/** The state with news of a sweep; that of another one is none. Its end is told where nobody watches. */
export function swept(state: BenchState, plan: SweepRunState['plan'], news: SweepNews): BenchState {
  const { run } = state.sweep;
  if (run === null || run.plan !== plan) return state;
  const next = { ...state, sweep: withRun(state.sweep, { ...run, ...news }) };
  const isMissed = news.outcome && state.screen !== 'sweep';
  return isMissed ? told(next, 'the sweep has come to its end: g on Rank shows it') : next;
}

/** The state with the files as they stand now; a new problem, what is missing now, or that no problem is left, is told. */
export function shelved(state: BenchState, shelf: Shelf): BenchState {
  if (shelf === state.files) return state;
  const next = withFreshItems(replanned(state, { shelf }));
  const known = new Set(state.shelf.problems.map(problemLine));
  const fresh = shelf.problems.map(problemLine).find((line) => !known.has(line));
  if (fresh !== undefined) return { ...next, notice: { text: fresh, isFault: true } };
  const missed = new Set(missingSentences(state));
  const missing = missingSentences(next).find((sentence) => !missed.has(sentence));
  if (missing !== undefined) return { ...next, notice: { text: missing, isFault: true } };
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

/** True for what is done with the file of a kept profile, or from it. */
export function isOfShortlist(errand: Errand): errand is ShortlistErrand {
  return ['note', 'felt', 'carry', 'remove'].includes(errand.kind);
}

/** The line that an errand came from, with the text it had; null where it came from none. */
function lineOf(errand: Errand): Entry | null {
  if (errand.kind === 'export') return { purpose: 'export', text: errand.path, isOffered: false };
  return errand.kind === 'save' ? { purpose: 'save', text: errand.name, isOffered: false } : null;
}

/**
 * The state after an errand that could not be done: the problems are told, and the line that it came from stands open again.
 * Where meanwhile something else was opened, that stays in front.
 */
export function refusedErrand(state: BenchState, errand: Errand, problems: readonly Problem[]): BenchState {
  const next = told(state, problems);
  if (isOfShortlist(errand)) return reopened(next, errand);
  const { screen, overlay, entry, rank } = state;
  const isSaving = screen === 'why' && errand.kind === 'save' && errand.from === savedProfile(state);
  const isFree =
    (screen === 'rank' || isSaving) && entry === null && (overlay === null || overlay.kind === 'gains');
  if (!isFree) return next;
  const from = errand.kind === 'save' ? errand.from : null;
  if (from === null) return { ...next, entry: lineOf(errand) };
  // The line saves the profile under the cursor or in the editor: it has to be the one that was meant.
  if (!state.shelf.profile.some(({ name }) => name === from)) return next;
  if (overlay?.kind === 'gains' && overlay.profile !== from) return next;
  return { ...next, rank: { ...rank, cursor: from }, entry: lineOf(errand) };
}
