/**
 * What keys do in the help and in the list of problems.
 */
import type { Act } from './binding.js';
import type { BenchState } from './state.js';
import { appended, shortened } from './typed-text.js';

/** Opens the help; what stands open comes back when it is closed. */
export const openHelp: Act = (state) => {
  const { overlay, entry } = state;
  if (overlay?.kind === 'help') return state;
  return {
    ...state,
    entry: null,
    overlay: { kind: 'help', search: '', top: 0, beneath: { overlay, entry } },
  };
};

/** The state as it is beneath the help. */
export function beneathHelp(state: BenchState): BenchState {
  return state.overlay?.kind === 'help' ? { ...state, ...state.overlay.beneath } : state;
}

/** Scrolls the help or the problems by so many rows; what is drawn keeps within what there is. */
export function moveHelp(by: number): Act {
  return (state) => {
    const { overlay } = state;
    if (overlay?.kind !== 'help' && overlay?.kind !== 'problems') return state;
    return { ...state, overlay: { ...overlay, top: Math.max(0, overlay.top + by) } };
  };
}

function withSearch(state: BenchState, change: (search: string) => string): BenchState {
  const { overlay } = state;
  if (overlay?.kind !== 'help') return state;
  return { ...state, overlay: { ...overlay, search: change(overlay.search), top: 0 } };
}

/** Adds to what is searched for. */
export function searchHelp(text: string): Act {
  return (state) => withSearch(state, (search) => appended(search, text));
}

/** Takes back the letter typed last. */
export const unsearchHelp: Act = (state) => withSearch(state, shortened);
