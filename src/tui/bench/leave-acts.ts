/**
 * What keys do to close things and to leave.
 */
import { withFreshItems } from './chooser-acts.js';
import { editedProfiles } from './choices.js';
import { gainsView } from './gains-acts.js';
import type { Act } from './binding.js';

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

/** Leaves the bench; unsaved changes ask once. */
export const leave: Act = (state) => {
  const unsaved = editedProfiles(state);
  if (unsaved.length > 0 && !state.leaving) {
    const text = `${unsaved.join(', ')}: changed and not saved; the same key again leaves that behind`;
    return { ...state, leaving: true, notice: { text, isFault: true } };
  }
  return { ...state, errands: [...state.errands, { kind: 'leave', interrupted: false }] };
};

/** Leaves at once. */
export const interrupt: Act = (state) => ({
  ...state,
  errands: [...state.errands, { kind: 'leave', interrupted: true }],
});

/** Gives the terminal back for a while. */
export const suspend: Act = (state) => ({ ...state, errands: [...state.errands, { kind: 'suspend' }] });
