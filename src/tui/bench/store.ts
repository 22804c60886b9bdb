/**
 * Where the state lives: changed by functions from one state to the next, and heard of by whoever listens.
 */
import type { BenchState } from './state.js';

/** The state, and who is told of it. */
export interface Store {
  get: () => BenchState;
  /** The state as it was when something other than the moment at the cursor changed last: a playing run does not change it. */
  calm: () => BenchState;
  change: (next: (state: BenchState) => BenchState) => void;
  subscribe: (listener: () => void) => () => void;
}

/** True where nothing but the moment at the cursor differs. */
function isSameButMoment(a: BenchState, b: BenchState): boolean {
  const keys = Object.keys(a) as (keyof BenchState)[];
  const { playing, rate, span } = a.playhead;
  const isSamePlayhead =
    playing === b.playhead.playing && rate === b.playhead.rate && span === b.playhead.span;
  return isSamePlayhead && keys.every((key) => key === 'playhead' || a[key] === b[key]);
}

/** A store that begins with a state. */
export function createStore(first: BenchState): Store {
  let state = first;
  let calm = first;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    calm: () => calm,
    change: (next) => {
      const changed = next(state);
      if (changed === state) return;
      if (!isSameButMoment(state, changed)) calm = changed;
      state = changed;
      for (const listener of listeners) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
