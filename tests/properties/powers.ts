/**
 * What do the forces of a rig do, in watts, and how fast does what is stored change? Element by element, for balances:
 * the sum of the powers must be the rate of the store.
 *
 * Two ways to draw the line. With the road outside, its load and tread force work on axle and wheel, whatever the road's
 * shape. With tyre and tread inside, their springs store and their dampers and sliding lose; the squash of the tyre is
 * measured along the slope, so on a road that curves its spring has no exact energy, and this line holds on
 * straight road only.
 */
import type { Ground } from '../../src/model/ground.js';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import { GRAVITY_M_PER_S2 } from '../../src/quantity/units.js';
import { bodiesOf, riderSpeed } from './bodies.js';
import { outsidePush, riderForces, roadForces } from './forces.js';

/** Powers by element, W, positive into the rig. */
export type Powers = Record<string, number>;

/** The sum of powers, W. */
export function total(powers: Powers): number {
  return Object.values(powers).reduce((sum, power) => sum + power, 0);
}

/** The largest of powers by size, W. */
export function largestOf(powers: Powers): number {
  return Math.max(...Object.values(powers).map(Math.abs));
}

/** Of a force with a limit: what its damper takes, and what the limit takes. */
function lossOf(name: string, damped: number, limited: number): Powers {
  return { [`${name} damping`]: damped, [`${name} limit`]: limited };
}

/** Powers with the road outside: motor, feet, legs, push, and the road on axle and wheel. */
export function powersOnRoad(
  plant: Plant,
  ground: Ground,
  inputs: Float64Array,
  state: Float64Array,
): Powers {
  const road = roadForces(plant, ground, inputs, state);
  const wheelRate = state[at.WHEEL + at.RATE]!;
  return {
    ...powersWithin(plant, inputs, state),
    'rolling resistance': road.rollingNm * wheelRate,
    'load on the axle': road.load * road.awaySpeed,
    'tread on the axle': road.tread * road.alongSpeed,
    'tread on the wheel': -road.tread * plant.wheelRadiusM * wheelRate,
  };
}

/** Powers with tyre and tread inside, on straight road. */
export function powersWithTyre(
  plant: Plant,
  ground: Ground,
  inputs: Float64Array,
  state: Float64Array,
): Powers {
  const road = roadForces(plant, ground, inputs, state);
  return {
    ...powersWithin(plant, inputs, state),
    'rolling resistance': road.rollingNm * state[at.WHEEL + at.RATE]!,
    ...lossOf('tyre', -road.dampedLoad * road.awaySpeed, (road.load - road.freeLoad) * road.awaySpeed),
    ...lossOf('tread', -road.dampedTread * road.slide, (road.freeTread - road.tread) * road.slide),
  };
}

function powersWithin(plant: Plant, inputs: Float64Array, state: Float64Array): Powers {
  const within = riderForces(plant, inputs, state);
  const speed = riderSpeed(plant, state);
  const { shove, air } = outsidePush(plant, inputs, speed);
  const spin = state[at.WHEEL + at.RATE]! - state[at.PITCH + at.RATE]!;
  return {
    motor: inputs[at.MOTOR_TORQUE]! * spin,
    'rider at work': inputs[at.RIDER_TORQUE]! * within.apart,
    shove: shove * speed,
    air: air * speed,
    ...lossOf(
      'ankle',
      -plant.passiveDampingNmSPerRad * within.apart * within.apart,
      (within.feetNm - within.freeFeetNm) * within.apart,
    ),
    ...lossOf(
      'leg',
      -plant.legDampingNSPerM * within.legGrows * within.legGrows,
      (within.leg - within.freeLeg) * within.legGrows,
    ),
  };
}

/** How fast motion, height, legs and passive ankle take up energy under a state's derivative, W. */
export function storedRate(plant: Plant, state: Float64Array, rates: Float64Array): number {
  let rate = 0;
  for (const body of Object.values(bodiesOf(plant, state, rates))) {
    rate +=
      body.massKg * (body.xRate * body.xAcc + body.zRate * (body.zAcc + GRAVITY_M_PER_S2)) +
      body.inertiaKgM2 * body.spin * body.spinAcc;
  }
  const bend = plant.legLengthM - state[at.LEG]!;
  const apart = state[at.LEAN]! - state[at.PITCH]!;
  return (
    rate -
    (plant.legStiffnessNPerM * bend + plant.riderMassKg * GRAVITY_M_PER_S2) * rates[at.LEG]! +
    plant.passiveStiffnessNmPerRad * apart * (rates[at.LEAN]! - rates[at.PITCH]!)
  );
}

/** Energy in tyre and tread, J. */
export function tyreEnergy(plant: Plant, ground: Ground, state: Float64Array): number {
  const { squash } = roadForces(plant, ground, new Float64Array(at.INPUT_SIZE), state);
  const shear = state[at.TREAD]!;
  return (
    0.5 * plant.verticalStiffnessNPerM * Math.max(0, squash) ** 2 +
    0.5 * plant.treadStiffnessNPerM * shear * shear
  );
}

/** How fast tyre and tread take up energy on straight road, W. */
export function tyreRate(
  plant: Plant,
  ground: Ground,
  inputs: Float64Array,
  { state, rates }: { state: Float64Array; rates: Float64Array },
): number {
  const { squash, awaySpeed } = roadForces(plant, ground, inputs, state);
  return (
    -plant.verticalStiffnessNPerM * Math.max(0, squash) * awaySpeed +
    plant.treadStiffnessNPerM * state[at.TREAD]! * rates[at.TREAD]!
  );
}
