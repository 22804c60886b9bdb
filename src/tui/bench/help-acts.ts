/**
 * What keys do in the help and in the list of problems.
 */
import type { Act } from './binding.js';
import type { BenchState } from './state.js';

/** Opens the help. */
export const openHelp: Act = (state) => ({
  ...state,
  entry: null,
  overlay: { kind: 'help', search: '', top: 0 },
});

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
  return { ...state, overlay: { kind: 'help', search: change(overlay.search).slice(0, 40), top: 0 } };
}

/** Adds to what is searched for. */
export function searchHelp(text: string): Act {
  return (state) => withSearch(state, (search) => search + text);
}

/** Takes back the letter typed last. */
export const unsearchHelp: Act = (state) => withSearch(state, (search) => search.slice(0, -1));
