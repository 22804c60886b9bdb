/**
 * The bench as a component: the rows of the screen in front, drawn anew when something other than the moment at the cursor
 * changes.
 */
import { useSyncExternalStore } from 'react';
import type { BenchState } from '../bench/state.js';
import type { Store } from '../bench/store.js';
import { isTooSmall } from '../draw/areas.js';
import { screenRows } from '../draw/screen-rows.js';
import { Lines } from './lines.js';

/** True where the body is painted from outside. */
export function isPainted({ screen, overlay, size }: BenchState): boolean {
  return (screen === 'trace' || screen === 'compare') && overlay === null && !isTooSmall({ size });
}

/** The whole bench on a terminal. */
export function Bench({ store }: { store: Store }) {
  const state = useSyncExternalStore(store.subscribe, store.calm);
  return <Lines rows={screenRows(state)} />;
}
