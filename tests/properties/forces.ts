/**
 * Which forces act on a rig, element by element? Written from the laws in words (spring, damper, friction, air), so
 * that balances can be drawn up without the equations that are under test. Each force that has a limit also comes as it
 * would be without: the difference is what the limit takes.
 */
import { readGround, type Ground } from '../../src/model/ground.js';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import { GRAVITY_M_PER_S2 } from '../../src/quantity/units.js';

/** Spin within which rolling resistance fades in, rad/s: a constant of the model. */
const ROLLING_WIDTH_RAD_PER_S = 0.5;

const road = new Float64Array(at.DERIVE_SIZE);

const within = (value: number, most: number) => Math.max(-most, Math.min(most, value));

/** The road on the tyre: along its normal (load) and along itself (tread), N; speeds in m/s, squash in m. */
export function roadForces(plant: Plant, ground: Ground, inputs: Float64Array, state: Float64Array) {
  readGround(ground, state[at.X]!, road);
  const slope = road[at.ROAD_SLOPE]!;
  const long = Math.hypot(1, slope);
  const along = [1 / long, slope / long] as const;
  const [xRate, zRate] = [state[at.X + at.RATE]!, state[at.Z + at.RATE]!];
  const awaySpeed = zRate * along[0] - xRate * along[1];
  const alongSpeed = xRate * along[0] + zRate * along[1];
  const slide = plant.wheelRadiusM * state[at.WHEEL + at.RATE]! - alongSpeed;
  const squash = (road[at.ROAD_HEIGHT]! + plant.wheelRadiusM - state[at.Z]!) / long;
  const touches = squash > 0;
  const elasticLoad = touches ? plant.verticalStiffnessNPerM * squash : 0;
  const dampedLoad = touches ? plant.verticalDampingNSPerM * awaySpeed : 0;
  const load = Math.max(0, elasticLoad - dampedLoad);
  const elasticTread = plant.treadStiffnessNPerM * state[at.TREAD]!;
  const dampedTread = plant.treadDampingNSPerM * slide;
  const tread = within(elasticTread + dampedTread, inputs[at.GRIP]! * load);
  const rollingNm =
    -inputs[at.ROLLING]! *
    load *
    plant.wheelRadiusM *
    Math.tanh(state[at.WHEEL + at.RATE]! / ROLLING_WIDTH_RAD_PER_S);
  return {
    slope,
    along,
    awaySpeed,
    alongSpeed,
    slide,
    squash,
    load,
    freeLoad: elasticLoad - dampedLoad,
    dampedLoad,
    tread,
    freeTread: elasticTread + dampedTread,
    dampedTread,
    rollingNm,
    x: tread * along[0] - load * along[1],
    z: tread * along[1] + load * along[0],
  };
}

/** Between rider and deck: legs [N, pushing apart] and feet [Nm, on the rider]. */
export function riderForces(plant: Plant, inputs: Float64Array, state: Float64Array) {
  const bend = plant.legLengthM - state[at.LEG]!;
  const legGrows = state[at.LEG + at.RATE]!;
  const apart = state[at.LEAN + at.RATE]! - state[at.PITCH + at.RATE]!;
  const freeLeg =
    plant.legStiffnessNPerM * bend + plant.riderMassKg * GRAVITY_M_PER_S2 - plant.legDampingNSPerM * legGrows;
  const leg = Math.max(0, freeLeg);
  const freeFeetNm =
    inputs[at.RIDER_TORQUE]! -
    plant.passiveStiffnessNmPerRad * (state[at.LEAN]! - state[at.PITCH]!) -
    plant.passiveDampingNmSPerRad * apart;
  const feetNm = within(freeFeetNm, leg * plant.halfStanceM);
  return { legGrows, apart, leg, freeLeg, feetNm, freeFeetNm };
}

/** What pushes the rider from outside, N: shove, and air against his own speed [m/s]. */
export function outsidePush(plant: Plant, inputs: Float64Array, speedMPerS: number) {
  return {
    shove: inputs[at.SHOVE]!,
    air: -plant.halfDragAreaKgPerM * speedMPerS * Math.abs(speedMPerS),
  };
}
