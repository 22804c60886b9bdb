/**
 * Mechanical energy and horizontal momentum of a rig, for balances: kinetic, height, and what springs
 * hold. Forces without a potential (dampers, rolling, air, motor, active torque) are not in it.
 */
import { GRAVITY_M_PER_S2 } from '../quantity/units.js';
import { readGround, type Ground } from './ground.js';
import type { Plant } from './plant.js';
import * as at from './state.js';

interface Velocities {
  deckX: number;
  deckZ: number;
  riderX: number;
  riderZ: number;
}

function velocities(plant: Plant, state: Float64Array): Velocities {
  const read = (index: number) => state[index]!;
  const [theta, phi, leg] = [read(at.PITCH), read(at.LEAN), read(at.LEG)];
  const thetaRate = read(at.PITCH + at.RATE);
  const phiRate = read(at.LEAN + at.RATE);
  const legRate = read(at.LEG + at.RATE);
  const x = read(at.X + at.RATE);
  const z = read(at.Z + at.RATE);
  const { deckForwardM: a, deckAboveAxleM: b, ankleAboveAxleM: hf } = plant;
  return {
    deckX: x + thetaRate * (b * Math.cos(theta) - a * Math.sin(theta)),
    deckZ: z - thetaRate * (a * Math.cos(theta) + b * Math.sin(theta)),
    riderX: x + hf * thetaRate * Math.cos(theta) + legRate * Math.sin(phi) + leg * phiRate * Math.cos(phi),
    riderZ: z - hf * thetaRate * Math.sin(theta) + legRate * Math.cos(phi) - leg * phiRate * Math.sin(phi),
  };
}

/** Horizontal momentum of wheel, deck and rider, N s. */
export function horizontalMomentum(plant: Plant, state: Float64Array): number {
  const v = velocities(plant, state);
  return (
    plant.wheelMassKg * state[at.X + at.RATE]! + plant.deckMassKg * v.deckX + plant.riderMassKg * v.riderX
  );
}

/** Kinetic energy plus height plus springs (tyre, tread, legs, passive ankle), J. */
export function mechanicalEnergy(plant: Plant, ground: Ground, state: Float64Array): number {
  const read = (index: number) => state[index]!;
  const v = velocities(plant, state);
  const kinetic =
    0.5 *
    (plant.wheelMassKg * (read(at.X + at.RATE) ** 2 + read(at.Z + at.RATE) ** 2) +
      plant.wheelInertiaKgM2 * read(at.WHEEL + at.RATE) ** 2 +
      plant.deckMassKg * (v.deckX ** 2 + v.deckZ ** 2) +
      plant.deckInertiaKgM2 * read(at.PITCH + at.RATE) ** 2 +
      plant.riderMassKg * (v.riderX ** 2 + v.riderZ ** 2) +
      plant.riderInertiaKgM2 * read(at.LEAN + at.RATE) ** 2);
  return kinetic + heightEnergy(plant, state) + springEnergy(plant, ground, state);
}

function heightEnergy(plant: Plant, state: Float64Array): number {
  const z = state[at.Z]!;
  const theta = state[at.PITCH]!;
  const deckZ = z - plant.deckForwardM * Math.sin(theta) + plant.deckAboveAxleM * Math.cos(theta);
  const riderZ = z + plant.ankleAboveAxleM * Math.cos(theta) + state[at.LEG]! * Math.cos(state[at.LEAN]!);
  return GRAVITY_M_PER_S2 * (plant.wheelMassKg * z + plant.deckMassKg * deckZ + plant.riderMassKg * riderZ);
}

function springEnergy(plant: Plant, ground: Ground, state: Float64Array): number {
  const road = new Float64Array(at.DERIVE_SIZE);
  readGround(ground, state[at.X]!, road);
  const slope = road[at.ROAD_SLOPE]!;
  const squash = (road[at.ROAD_HEIGHT]! + plant.wheelRadiusM - state[at.Z]!) / Math.sqrt(1 + slope * slope);
  const bend = plant.legLengthM - state[at.LEG]!;
  return (
    0.5 * plant.verticalStiffnessNPerM * Math.max(0, squash) ** 2 +
    0.5 * plant.treadStiffnessNPerM * state[at.TREAD]! ** 2 +
    0.5 * plant.legStiffnessNPerM * bend ** 2 +
    plant.riderMassKg * GRAVITY_M_PER_S2 * bend +
    0.5 * plant.passiveStiffnessNmPerRad * (state[at.LEAN]! - state[at.PITCH]!) ** 2
  );
}
