/**
 * What keys do to look at another run without leaving Trace or Compare, and at the same one in words.
 */
import type { Act } from './binding.js';
import { shownRows } from './rows.js';
import { cursorS, leadingLook } from './time-acts.js';

/** The same trial with the next or previous profile of the table, at the same moment. */
export function moveProfile(by: 1 | -1): Act {
  return (state) => {
    const names = shownRows(state).map(({ name }) => name);
    const here = names.indexOf(state.view.profiles[0] ?? '');
    const next = here === -1 && by === -1 ? names.length - 1 : here + by;
    const name = names[(next + names.length) % names.length];
    if (name === undefined) return state;
    // The moment that was wanted, not the end of a shorter run that it fell back to.
    const timeS = state.playhead.timeS ?? (leadingLook(state) === null ? null : cursorS(state));
    return {
      ...state,
      playhead: { ...state.playhead, playing: false, timeS },
      view: { ...state.view, profiles: [name] },
      looks: [],
    };
  };
}

/** Says the pictures in words, or draws them again. */
export const toggleWords: Act = (state) => ({
  ...state,
  view: { ...state.view, inWords: !state.view.inWords },
});

/** The next or previous trial of the plan, at its peak. */
export function moveTrial(by: 1 | -1): Act {
  return (state) => {
    const count = state.work?.trials.length ?? 0;
    if (count === 0) return state;
    const trial = (state.view.trial + by + count) % count;
    const playhead = { ...state.playhead, timeS: null, playing: false, span: null };
    return { ...state, view: { ...state.view, trial }, playhead, looks: [] };
  };
}
