/**
 * What is known of the distance to the edge? The edges that were found, and where the headroom lift should begin.
 */
import type { Ending } from './edge.js';
import type { LiftStart } from './edge-headroom.js';
import type { EdgeKind } from './edge-scenarios.js';

/**
 * An edge that was looked for, sizes in `unit`. `survived` is null where the rig falls with nothing added at all, `failed` and
 * `ending` are null where even the largest size tried is survived.
 */
export interface Edge extends Pick<EdgeKind, 'name' | 'unit' | 'speedKmPerH' | 'chargePercent' | 'pushNS'> {
  survived: number | null;
  failed: number | null;
  ending: Ending | null;
  largestTried: number;
}

/** The edges of one profile on one rig; `liftBelowShare` is the headroom at which its own lift begins, null without one. */
export interface EdgeReport {
  rider: string;
  seed: number;
  statedPushNS: number;
  edges: Edge[];
  lifts: LiftStart[];
  liftBelowShare: number | null;
}
