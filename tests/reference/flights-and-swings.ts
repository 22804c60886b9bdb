/**
 * Which motions are asked of the multibody engine? Flights start 40 m up. In swings the axle is held: in MuJoCo it is
 * bolted down, here it weighs 1e12 kg on a tyre to match. No rider hangs below it, because legs only push.
 */
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import { plantWith } from '../rigs.js';
import { THROWN, type Start } from '../simulate/motions.js';

const GRAVITY = 9.80665;

/** A rig let go, its axle free or held. */
export interface Motion {
  plant: Plant;
  start: Start;
  axle: 'free' | 'held';
  /** By MuJoCo's own steps, or by the test's over its accelerations, which know air and light feet too. */
  steps: 'its own' | 'ours';
}

const HIGH = { ...THROWN, [at.Z]: 40 };
const TUMBLING = {
  ...HIGH,
  [at.PITCH]: 0.4,
  [at.LEAN]: -0.3,
  [at.X + at.RATE]: -4,
  [at.PITCH + at.RATE]: -3,
  [at.LEAN + at.RATE]: -2,
  [at.LEG + at.RATE]: -1.5,
};
const EASED = { ...HIGH, [at.PITCH + at.RATE]: 0.3, [at.LEAN + at.RATE]: 0.2, [at.LEG + at.RATE]: -0.1 };

const STILL_AIR = { halfDragAreaKgPerM: 0 };
const LOOSE_ANKLE = { passiveStiffnessNmPerRad: 0, passiveDampingNmSPerRad: 0 };

/** A rider who is not held by his ankles: his legs push him off and he flies on alone. */
const PARTING = plantWith({ ...STILL_AIR, ...LOOSE_ANKLE, deckForwardM: 0.03 });

/** Legs that push softly, 8 N/m short of 2 m, so that they still push after two weightless seconds, on a wide stance. */
const TOGETHER = plantWith({
  ...STILL_AIR,
  wheelMassKg: 10,
  deckMassKg: 40,
  deckForwardM: 0.03,
  legStiffnessNPerM: 8,
  legDampingNSPerM: 2,
  legLengthM: 2 - (78 * GRAVITY) / 8,
  halfStanceM: 20,
});

/** All that the usual rig has: air, legs that go slack, feet that lift. */
const USUAL = plantWith({ deckForwardM: 0.03 });

const BOLTED_MASS_KG = 1e12;
const BOLTED_SQUASH_M = 0.05;
const BOLTED = {
  wheelMassKg: BOLTED_MASS_KG,
  verticalStiffnessNPerM: (BOLTED_MASS_KG * GRAVITY) / BOLTED_SQUASH_M,
  verticalDampingNSPerM: 0,
};
const BOLTED_AT = { [at.Z]: 0.14 - BOLTED_SQUASH_M };

/** A deck with so heavy a keel that it hangs and swings below the axle, with a light rider swaying on it. */
const KEEL = plantWith({
  ...BOLTED,
  ...STILL_AIR,
  deckMassKg: 100,
  deckInertiaKgM2: 8,
  deckAboveAxleM: -0.6,
  deckForwardM: 0.05,
  riderMassKg: 20,
  riderInertiaKgM2: 1.5,
  legLengthM: 0.6,
  passiveStiffnessNmPerRad: 400,
  halfStanceM: 20,
});
const UNDAMPED = { legDampingNSPerM: 0, passiveDampingNmSPerRad: 0 };
const AHEAD = { ...BOLTED_AT, [at.PITCH]: 0.5, [at.LEAN]: 0.2, [at.LEG]: 0.6, [at.WHEEL + at.RATE]: 5 };
const BEHIND = { ...AHEAD, [at.PITCH]: -0.4, [at.LEAN]: -0.1, [at.PITCH + at.RATE]: 0.5 };
const TIPPING = { ...BOLTED_AT, [at.PITCH]: 0.05, [at.LEAN]: 0.1, [at.LEG]: 0.95 };

const flight = (plant: Plant, start: Start, steps: Motion['steps']): Motion => ({
  plant,
  start,
  axle: 'free',
  steps,
});
const swing = (plant: Plant, state: Start['state'], steps: Motion['steps'] = 'its own'): Motion => ({
  plant,
  start: { state, inputs: {} },
  axle: 'held',
  steps,
});

const PARTING_DRIVEN = flight(PARTING, { state: HIGH, inputs: {}, currentA: 20 }, 'its own');
const TOGETHER_DRIVEN = flight(
  TOGETHER,
  { state: EASED, currentA: 2, inputs: { [at.RIDER_TORQUE]: 5, [at.SHOVE]: -20 } },
  'its own',
);
const USUAL_FLIGHT = flight(USUAL, { state: TUMBLING, inputs: {} }, 'ours');
const USUAL_DRIVEN = flight(
  USUAL,
  { state: HIGH, currentA: 2, inputs: { [at.RIDER_TORQUE]: 5, [at.SHOVE]: 40 } },
  'ours',
);
const KEEL_UNDAMPED = swing({ ...KEEL, ...UNDAMPED }, AHEAD);
const FROM_FAR_UP = { ...AHEAD, [at.PITCH]: 2, [at.LEAN]: 0.1 };

/** Two seconds each. */
export const MOTIONS: Record<string, Motion> = {
  'flight of deck and parting rider': flight(PARTING, { state: HIGH, inputs: {} }, 'its own'),
  'flight of deck and parting rider, motor on': PARTING_DRIVEN,
  'flight on springs and dampers': flight(TOGETHER, { state: EASED, inputs: {} }, 'its own'),
  'flight on springs and dampers with motor, rider and shove': TOGETHER_DRIVEN,
  'flight of the usual rig': USUAL_FLIGHT,
  'flight of the usual rig with motor, rider and shove': USUAL_DRIVEN,
  'swing of a damped rig from ahead': swing(KEEL, AHEAD),
  'swing of a damped rig from behind': swing(KEEL, BEHIND),
  'swing of an undamped rig': KEEL_UNDAMPED,
  'swing of the deck from far up under a rider whom nothing holds': swing(
    { ...KEEL, ...LOOSE_ANKLE },
    FROM_FAR_UP,
  ),
  'fall of the usual rig over its axle': swing(plantWith(BOLTED), TIPPING, 'ours'),
};
