/**
 * When a run is over before its time: a tip of the deck under the road, a rider past saving, or numbers that
 * are no longer numbers.
 */
import { isBelowRoad } from '../model/ground.js';
import * as at from '../model/state.js';
import { GRAVITY_M_PER_S2 } from '../quantity/units.js';
import type { Moment } from './moment.js';
import type { Outcome } from './outcome.js';
import type { Trial } from './trial.js';

/** Feet this far above the deck have left it, m (common practice, no source). */
const FEET_CLEAR_M = 0.05;

/** Legs shorter than this share of their length have buckled (common practice, no source). */
const BUCKLED_RATIO = 0.6;

/** How the run has just ended, or undefined while board and rider are up. */
export function fallOf({ plant, road, tickS }: Trial, { state, tick }: Moment): Outcome | undefined {
  const x = state[at.X]!;
  const z = state[at.Z]!;
  const pitch = state[at.PITCH]!;
  const lean = state[at.LEAN]!;
  const leg = state[at.LEG]!;
  const atS = tick * tickS;
  if (!Number.isFinite(x + z + pitch + lean + leg)) {
    return { kind: 'solver stopped', atS, detail: 'the state is no longer finite' };
  }
  const ct = Math.cos(pitch);
  const st = Math.sin(pitch);
  const tipX = x - plant.tipBelowAxleM * st;
  const tipZ = z - plant.tipBelowAxleM * ct;
  if (isBelowRoad(road, tipX + plant.reachM * ct, tipZ - plant.reachM * st))
    return { kind: 'nose strike', atS };
  if (isBelowRoad(road, tipX - plant.reachM * ct, tipZ + plant.reachM * st))
    return { kind: 'tail strike', atS };
  const longestM =
    plant.legLengthM + (plant.riderMassKg * GRAVITY_M_PER_S2) / plant.legStiffnessNPerM + FEET_CLEAR_M;
  if (Math.abs(lean) > plant.leanLimitRad || leg > longestM || leg < BUCKLED_RATIO * plant.legLengthM) {
    return { kind: 'rider off', atS };
  }
  return undefined;
}
