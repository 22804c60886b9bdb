/**
 * The body of Sweep: the form of ranges, the best so far while it runs, and the finalists, the map and the front once it is done; all
 * but the form in words too.
 */
import type { BenchState } from '../bench/state.js';
import { viewInFront } from '../bench/sweep-items.js';
import { listRows } from './overlays.js';
import type { Area } from './say.js';
import { sweepFormRows } from './sweep-form.js';
import { liveRows } from './sweep-live.js';
import { finalistViewRows } from './sweep-finalists.js';
import { sweepTextRows } from './sweep-text.js';
import { frontViewRows, mapViewRows } from './sweep-plots.js';

/** The body, in at most as many rows as the area has. */
export function sweepRows(state: BenchState, area: Area): string[] {
  const { overlay } = state;
  if (overlay?.kind === 'chooser') return listRows(state, overlay.chooser, area);
  const rows = sweepTextRows(state, area) ?? VIEWS[viewInFront(state)](state, area);
  return rows.slice(0, area.height);
}

const VIEWS: Readonly<Record<BenchState['sweep']['view'], (state: BenchState, area: Area) => string[]>> = {
  ranges: sweepFormRows,
  live: liveRows,
  finalists: finalistViewRows,
  map: mapViewRows,
  front: frontViewRows,
};
