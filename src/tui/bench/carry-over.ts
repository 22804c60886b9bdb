/**
 * What becomes of cursor, picks, runs and lists when the plan is another one? They stay on what they name where that is
 * still there, and let go where it is not.
 */
import type { RankPlan, TrialKey } from '../../tasks/plan.js';
import { missingSentences } from './missing.js';
import { whyOf } from './why-items.js';
import type { BenchState, ScreenName, Work } from './state.js';

/** Fewest profiles that a screen can show. */
const LEAST_PROFILES: Readonly<Record<ScreenName, number>> = {
  rank: 0,
  trace: 1,
  compare: 2,
  why: 0,
  sweep: 0,
  shortlist: 0,
};

function areSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}

/** True where two plans differ in their profiles alone. */
function isSameRig(a: RankPlan, b: RankPlan): boolean {
  return (
    a.board === b.board &&
    areSame(a.riders, b.riders) &&
    areSame(a.scenarios, b.scenarios) &&
    areSame(a.charges, b.charges)
  );
}

/** The place of a trial in a plan; -1 where the plan has none like it. */
export function trialIndex(work: Work | null, wanted: TrialKey | undefined): number {
  return (work?.trials ?? []).findIndex(
    ({ key }) =>
      key.scenario === wanted?.scenario &&
      key.rider === wanted.rider &&
      key.chargePercent === wanted.chargePercent &&
      key.seed === wanted.seed,
  );
}

/** The next state, whose plan is a new one, with what the one before pointed at. */
export function carriedOver(before: BenchState, next: BenchState): BenchState {
  const { work, shelf } = next;
  const isThere = (name: string) => shelf.profile.some((profile) => profile.name === name);
  const { cursor, column, picked } = next.rank;
  const scenario = column === null ? undefined : before.work?.plan.scenarios[column]?.name;
  const columnNow = work?.plan.scenarios.findIndex(({ name }) => name === scenario) ?? -1;
  const rank = {
    ...next.rank,
    cursor: cursor !== null && isThere(cursor) ? cursor : null,
    column: columnNow === -1 ? null : columnNow,
    picked: picked.every(isThere) ? picked : picked.filter(isThere),
  };
  const hasSameRig = before.work !== null && work !== null && isSameRig(before.work.plan, work.plan);
  const rows = hasSameRig ? next.rows.filter(({ name }) => isThere(name)) : [];
  const isGone = next.overlay?.kind === 'gains' && !isThere(next.overlay.profile);
  const open = isGone ? { overlay: null, entry: null } : {};
  const seen = withView(before, { ...next, ...open, rank, rows });
  return withWhy(before, { ...seen, behind: stillBehind(seen) }, hasSameRig);
}

/** The screens behind that can still be shown. */
function stillBehind({ behind, work, view }: BenchState): BenchState['behind'] {
  const isThere = (screen: ScreenName) =>
    LEAST_PROFILES[screen] === 0 || (work !== null && view.profiles.length >= LEAST_PROFILES[screen]);
  return behind.every(isThere) ? behind : behind.filter(isThere);
}

/** The runs that were looked at; a screen that has too few of them left gives way to Rank. */
function withView(before: BenchState, next: BenchState): BenchState {
  const { screen, work, shelf, view } = next;
  const key = before.work?.trials[view.trial]?.key;
  const found = trialIndex(work, key);
  const last = Math.max(0, (work?.trials.length ?? 0) - 1);
  const trial = found === -1 ? Math.min(view.trial, last) : found;
  const profiles = view.profiles.filter((name) => shelf.profile.some((profile) => profile.name === name));
  const seen = { ...next, view: { ...view, trial, profiles } };
  if (screen !== 'trace' && screen !== 'compare') return seen;
  const still = { ...next.playhead, playing: false, timeS: null, span: null };
  if (work === null || profiles.length < LEAST_PROFILES[screen]) {
    const gone = view.profiles.filter((name) => !profiles.includes(name));
    const text =
      gone.length > 0 ? `${gone.join(', ')} is no longer there` : missingSentences(next).join('. ');
    const notice = { text, isFault: true };
    return { ...seen, screen: 'rank', behind: [], playhead: still, looks: [], notice };
  }
  if (found !== -1) return seen;
  const notice = { text: `${key?.scenario ?? 'this scenario'} is no longer there`, isFault: true };
  return { ...seen, playhead: still, looks: [], notice };
}

/** What is explained: asked anew where its file or its rig is another one now; let go with its profile. */
function withWhy(before: BenchState, next: BenchState, hasSameRig: boolean): BenchState {
  const { why, work, screen, behind } = next;
  if (why === null) return next;
  const { name } = why.plan.profiles[0]!;
  const fileIn = ({ shelf }: BenchState) => shelf.profile.find((profile) => profile.name === name);
  if (screen !== 'why' && !behind.includes('why')) return { ...next, why: null };
  if (work === null || fileIn(next) === undefined) {
    if (screen !== 'why') return { ...next, why: null, behind: behind.filter((one) => one !== 'why') };
    const text =
      fileIn(next) === undefined ? `${name} is no longer there` : missingSentences(next).join('. ');
    return { ...next, why: null, screen: 'rank', behind: [], looks: [], notice: { text, isFault: true } };
  }
  return hasSameRig && fileIn(before) === fileIn(next) ? next : { ...next, why: whyOf(work, name) };
}
