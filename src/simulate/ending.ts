/**
 * When a run is over before its time: a tip of the deck under the road, a rider past saving, or numbers that
 * are no longer numbers.
 */
import { isBelowRoad } from '../model/ground.js';
import type { Plant } from '../model/plant.js';
import * as at from '../model/state.js';
import { GRAVITY_M_PER_S2 } from '../quantity/units.js';
import type { Moment } from './moment.js';
import type { Outcome } from './outcome.js';
import type { Trial } from './trial.js';

/** Feet this far above the deck have left it, m (common practice, no source). */
const FEET_CLEAR_M = 0.05;

/** Legs shorter than this share of their length have buckled (common practice, no source). */
const BUCKLED_RATIO = 0.6;

function isFinite(state: Float64Array): boolean {
  for (let index = 0; index < state.length; index++) {
    if (!Number.isFinite(state[index])) return false;
  }
  return true;
}

/** How the run has just ended, or undefined while board and rider are up. */
export function fallOf({ plant, road, tickS }: Trial, { state, tips, tick }: Moment): Outcome | undefined {
  if (!isFinite(state)) {
    return { kind: 'solver stopped', atS: tick * tickS, detail: 'the state is no longer finite' };
  }
  placeTips(plant, state, tips);
  if (isBelowRoad(road, tips, NOSE)) return { kind: 'nose strike', atS: tick * tickS };
  if (isBelowRoad(road, tips, TAIL)) return { kind: 'tail strike', atS: tick * tickS };
  const lean = state[at.LEAN]!;
  const leg = state[at.LEG]!;
  const longestM =
    plant.legLengthM + (plant.riderMassKg * GRAVITY_M_PER_S2) / plant.legStiffnessNPerM + FEET_CLEAR_M;
  if (Math.abs(lean) > plant.leanLimitRad || leg > longestM || leg < BUCKLED_RATIO * plant.legLengthM) {
    return { kind: 'rider off', atS: tick * tickS };
  }
  return undefined;
}

const NOSE = 0;
const TAIL = 2;

/** Writes x and z of the nose tip, then of the tail tip, m. */
function placeTips(plant: Plant, state: Float64Array, tips: Float64Array): void {
  const ct = Math.cos(state[at.PITCH]!);
  const st = Math.sin(state[at.PITCH]!);
  const midX = state[at.X]! - plant.tipBelowAxleM * st;
  const midZ = state[at.Z]! - plant.tipBelowAxleM * ct;
  tips[NOSE] = midX + plant.reachM * ct;
  tips[NOSE + 1] = midZ - plant.reachM * st;
  tips[TAIL] = midX - plant.reachM * ct;
  tips[TAIL + 1] = midZ + plant.reachM * st;
}
