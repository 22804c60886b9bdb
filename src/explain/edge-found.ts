/**
 * What is known of the distance to the edge? For each rider the edges that were found, and where the headroom lift should begin.
 */
import type { Ending } from './edge.js';
import type { LiftStart } from './edge-headroom.js';
import type { EdgeKind } from './edge-scenarios.js';

/** How a run ended that was not survived, and its seed of chance. */
export interface FoundEnding extends Ending {
  seed: number;
}

/**
 * An edge that was looked for, sizes in `unit`; survived is what is survived under every seed. `survived` is null where the rig
 * falls with nothing added at all, `failed` and `ending` are null where even the largest size tried is survived.
 */
export interface Edge extends Pick<EdgeKind, 'name' | 'unit' | 'speedKmPerH' | 'chargePercent' | 'pushNS'> {
  survived: number | null;
  failed: number | null;
  ending: FoundEnding | null;
  largestTried: number;
  /** The least push found to be survived with one foot light for a while, N s; null where there is none, or no push that grows. */
  footLightFrom: number | null;
}

/** The edges under one rider, in the same order for all riders, and where the headroom lift should begin under him. */
export interface RiderEdges {
  rider: string;
  edges: Edge[];
  lifts: LiftStart[];
  /** Delay that the linear view says the loop can spare at the speed of the edges, ms; 0 for one that is lost, null where none is known. */
  spareDelayMs: number | null;
}

/**
 * The edges of one profile on one rig under some seeds; there is at least one rider. `liftBelowShare` is the headroom at which the
 * profile's own lift begins, null without one.
 */
export interface EdgeReport {
  seeds: number[];
  statedPushNS: number;
  riders: RiderEdges[];
  liftBelowShare: number | null;
}
