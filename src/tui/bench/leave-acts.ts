/**
 * What keys do to close things and to leave.
 */
import { withFreshItems } from './chooser-acts.js';
import { editedProfiles } from './choices.js';
import { gainsView } from './gains-acts.js';
import type { Act } from './binding.js';
import { savedProfile } from './entry-acts.js';
import type { BenchState } from './state.js';

/** Closes what stands open over the screen; beneath the help there may be something that still does. */
export const closeOverlay: Act = (state) => {
  if (state.overlay?.kind !== 'help') return { ...state, overlay: null };
  const { overlay, entry } = state.overlay.beneath;
  const next = withFreshItems({ ...state, overlay, entry });
  const isGone = overlay?.kind === 'gains' && gainsView(next) === null;
  return isGone ? { ...next, overlay: null, entry: null } : next;
};

/** Opens the list of problems. */
export const openProblems: Act = (state) => ({ ...state, overlay: { kind: 'problems', top: 0 } });

/** Longest name that is said where one line has to say what is lost and by which key. */
const LONGEST_NAME = 18;

/** What would be lost, which key loses it and which one keeps it. */
function unsavedText(state: BenchState, unsaved: readonly string[]): string {
  const [first = ''] = unsaved;
  const one = first.length <= LONGEST_NAME ? first : 'one profile';
  const what =
    unsaved.length === 1
      ? `${one} has changes not saved`
      : `${unsaved.length} profiles have changes not saved`;
  // There is no room for both: what is lost is said rather than how it is saved.
  if (state.shortlist.queue.length > 0) return `${what}, a proof runs: q again leaves without them`;
  const isSaving = state.options.ownFolder && savedProfile(state) !== null;
  const saving = isSaving ? `, w saves${unsaved.length === 1 ? '' : ' one'}` : '';
  return `${what}: q again leaves without them${saving}`;
}

/** What is being proven and would be lost; empty where nothing is. */
function unprovenText({ shortlist: { queue } }: BenchState): string {
  const [proven, ...others] = queue;
  if (proven === undefined) return '';
  const waiting = others.length === 0 ? '' : `, ${others.length} ${others.length === 1 ? 'waits' : 'wait'}`;
  return `${proven.name} is still being proven${waiting}: q again leaves without ${waiting === '' ? 'it' : 'them'}`;
}

/** Leaves the bench; unsaved changes and what is being proven ask once. */
export const leave: Act = (state) => {
  const unsaved = editedProfiles(state);
  const text = unsaved.length > 0 ? unsavedText(state, unsaved) : unprovenText(state);
  if (text !== '' && !state.leaving) return { ...state, leaving: true, notice: { text, isFault: true } };
  return { ...state, errands: [...state.errands, { kind: 'leave', interrupted: false }] };
};

/** Leaves at once. */
export const interrupt: Act = (state) => ({
  ...state,
  errands: [...state.errands, { kind: 'leave', interrupted: true }],
});

/** Gives the terminal back for a while. */
export const suspend: Act = (state) => ({ ...state, errands: [...state.errands, { kind: 'suspend' }] });
