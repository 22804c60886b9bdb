/** How far it is to the edge, really found, for the question of a state. */
import type { EdgeReport } from '../../src/explain/edge-found.js';
import { findEdge } from '../../src/tasks/edge.js';
import type { BenchState } from '../../src/tui/bench/state.js';

/** Finds the edge of the profile that a state asks about. */
export function edgeFor({ why }: BenchState): Promise<EdgeReport> {
  return findEdge(why!.plan, { threads: 1 });
}
