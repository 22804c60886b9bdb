/**
 * From what happens outside of the bench to the next state of the shortlist: how far a proof is, that it has come to its end, and
 * what was computed for a preview.
 */
import type { KeepProgress } from '../../tasks/keep.js';
import type { RankPlan } from '../../tasks/plan.js';
import { isSameWish, previewWish } from './shortlist-items.js';
import type { Preview, PreviewWish } from './shortlist-state.js';
import type { BenchState, Entry, ShortlistErrand } from './state.js';

/** The state with how far the proof of a plan is; news of one that is not wanted any more is none. */
export function keepingOn(state: BenchState, plan: RankPlan, progress: KeepProgress): BenchState {
  const { queue } = state.shortlist;
  if (queue.every((one) => one.plan !== plan)) return state;
  const next = queue.map((one) => (one.plan === plan ? { ...one, progress } : one));
  return { ...state, shortlist: { ...state.shortlist, queue: next } };
}

/** The state without a plan among what waits. */
export function keepingOver(state: BenchState, plan: RankPlan): BenchState {
  const queue = state.shortlist.queue.filter((one) => one.plan !== plan);
  return { ...state, shortlist: { ...state.shortlist, queue } };
}

/** What may be told of a preview. */
export type PreviewNews = Partial<Pick<Preview, 'done' | 'all' | 'answer' | 'problems'>>;

/** The state with news of what a view needs; news of another view is none. */
export function previewed(state: BenchState, wish: PreviewWish, news: PreviewNews): BenchState {
  if (!isSameWish(previewWish(state), wish)) return state;
  const before = state.shortlist.preview;
  const known =
    before !== null && isSameWish(before.wish, wish)
      ? before
      : { wish, done: 0, all: null, answer: null, problems: [] };
  return { ...state, shortlist: { ...state.shortlist, preview: { ...known, ...news } } };
}

/** The line that an errand of the shortlist came from, with the text it had; null where it came from none. */
function lineOf(errand: ShortlistErrand): Entry | null {
  if (errand.kind === 'note') return { purpose: 'note', text: errand.note, isOffered: false };
  if (errand.kind === 'felt') return { purpose: 'felt', text: errand.text, isOffered: false };
  return errand.kind === 'carry' ? { purpose: 'carry', text: errand.path, isOffered: false } : null;
}

/** The state with the line of an errand open again, where nothing else was opened meanwhile and it is about the same profile. */
export function reopened(state: BenchState, errand: ShortlistErrand): BenchState {
  const { screen, overlay, entry, shortlist } = state;
  const isFree = screen === 'shortlist' && overlay === null && entry === null;
  return isFree && shortlist.cursor === errand.name ? { ...state, entry: lineOf(errand) } : state;
}
