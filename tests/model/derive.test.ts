import { describe, expect, it } from 'vitest';
import { derive } from '../../src/model/derive.js';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import { chance, planeRoad, plantWith } from '../rigs.js';
import { kaneAccelerations, type Loads } from './kane.js';
import { drawBodies, drawRates } from './wide-draws.js';

const COORDINATES = [at.X, at.Z, at.PITCH, at.LEAN, at.LEG];

interface Case {
  plant: Plant;
  slope: number;
  inputs: Float64Array;
  state: Float64Array;
  out: Float64Array;
}

/** A rig, a slope and a state drawn wide: decks on their nose, leans of 60 deg, buckled legs, wheels in the air. */
function drawCase(next: () => number): Case {
  const between = (low: number, high: number) => low + (high - low) * next();
  const plant = plantWith(drawBodies(between));
  const slope = between(-0.4, 0.4);
  const state = new Float64Array(at.STATE_SIZE);
  state[at.X] = between(-20, 20);
  state[at.Z] =
    slope * state[at.X]! + plant.wheelRadiusM * Math.sqrt(1 + slope * slope) + between(-0.03, 0.02);
  state[at.PITCH] = between(-0.5, 0.5);
  state[at.LEAN] = between(-1, 1);
  state[at.LEG] = between(0.6, 1.05);
  state[at.TREAD] = between(-0.02, 0.02);
  drawRates(state, between);
  const inputs = Float64Array.of(between(-60, 60), between(-150, 150), between(-300, 300), 0.65, 0.05);
  const out = new Float64Array(at.DERIVE_SIZE);
  derive(plant, planeRoad(slope), inputs, state, out);
  return { plant, slope, inputs, state, out };
}

/** Loads by the table of force elements, from the state alone; the road is a plane, so its geometry is elementary. */
function loadsOf({ plant, slope, inputs, state }: Case): Loads & { wheelLoadN: number; treadN: number } {
  const rate = (place: number) => state[place + at.RATE]!;
  const alpha = Math.atan(slope);
  const distance = -Math.sin(alpha) * state[at.X]! + Math.cos(alpha) * state[at.Z]!;
  const squash = plant.wheelRadiusM - distance;
  const away = -Math.sin(alpha) * rate(at.X) + Math.cos(alpha) * rate(at.Z);
  const along = Math.cos(alpha) * rate(at.X) + Math.sin(alpha) * rate(at.Z);
  const spring = plant.verticalStiffnessNPerM * squash - plant.verticalDampingNSPerM * away;
  const wheelLoadN = squash > 0 ? Math.max(0, spring) : 0;
  const shear =
    plant.treadStiffnessNPerM * state[at.TREAD]! +
    plant.treadDampingNSPerM * (plant.wheelRadiusM * rate(at.WHEEL) - along);
  const grip = inputs[at.GRIP]! * wheelLoadN;
  const treadN = Math.min(grip, Math.max(-grip, shear));
  const legN = Math.max(
    0,
    plant.legStiffnessNPerM * (plant.legLengthM - state[at.LEG]!) -
      plant.legDampingNSPerM * rate(at.LEG) +
      plant.riderMassKg * 9.80665,
  );
  const limit = legN * plant.halfStanceM;
  const wish =
    inputs[at.RIDER_TORQUE]! -
    plant.passiveStiffnessNmPerRad * (state[at.LEAN]! - state[at.PITCH]!) -
    plant.passiveDampingNmSPerRad * (rate(at.LEAN) - rate(at.PITCH));
  const riderX =
    rate(at.X) +
    plant.ankleAboveAxleM * Math.cos(state[at.PITCH]!) * rate(at.PITCH) +
    Math.sin(state[at.LEAN]!) * rate(at.LEG) +
    state[at.LEG]! * Math.cos(state[at.LEAN]!) * rate(at.LEAN);
  return {
    axleX: treadN * Math.cos(alpha) - wheelLoadN * Math.sin(alpha),
    axleZ: treadN * Math.sin(alpha) + wheelLoadN * Math.cos(alpha),
    motorNm: inputs[at.MOTOR_TORQUE]!,
    footNm: Math.min(limit, Math.max(-limit, wish)),
    legN,
    pushN: inputs[at.SHOVE]! - plant.halfDragAreaKgPerM * riderX * Math.abs(riderX),
    wheelLoadN,
    treadN,
  };
}

/** Drawn and derived anew by each test, which so can be seen to hold the equations by itself. */
function drawCases(): Case[] {
  const next = chance(20240607);
  return Array.from({ length: 800 }, () => drawCase(next));
}

describe('equations of motion against a full assembly by Kane', () => {
  it('meets every kind of state: rolling, sliding, in the air, legs slack, one foot light', () => {
    const cases = drawCases();
    const loads = cases.map(loadsOf);
    const share = (hit: (load: (typeof loads)[number], index: number) => boolean) =>
      loads.filter(hit).length / cases.length;
    expect(share((load) => load.wheelLoadN === 0)).toBeGreaterThan(0.2);
    expect(share((load) => load.wheelLoadN > 0)).toBeGreaterThan(0.3);
    expect(share((load) => load.legN === 0)).toBeGreaterThan(0.05);
    expect(
      share((load, index) => Math.abs(load.treadN) < 0.65 * load.wheelLoadN && cases[index]!.slope > 0),
    ).toBeGreaterThan(0.01);
    expect(
      share((load, index) => {
        const { plant } = cases[index]!;
        return load.legN > 0 && Math.abs(load.footNm) === load.legN * plant.halfStanceM;
      }),
    ).toBeGreaterThan(0.01);
  });

  it('agrees in all five accelerations', () => {
    let worst = 0;
    for (const drawn of drawCases()) {
      const motion = {
        at: COORDINATES.map((place) => drawn.state[place]!),
        rate: COORDINATES.map((place) => drawn.state[place + at.RATE]!),
      };
      const expected = kaneAccelerations(drawn.plant, motion, loadsOf(drawn));
      const scale = Math.max(...expected.map(Math.abs), 9.80665);
      COORDINATES.forEach((place, index) => {
        worst = Math.max(worst, Math.abs(drawn.out[place + at.RATE]! - expected[index]!) / scale);
      });
    }
    expect(worst).toBeLessThan(1e-9);
  });

  it('turns the wheel by motor, tread and rolling resistance alone', () => {
    for (const drawn of drawCases()) {
      const { wheelLoadN, treadN, motorNm } = loadsOf(drawn);
      const { plant, inputs, state, out } = drawn;
      const r = plant.wheelRadiusM;
      const rolling = inputs[at.ROLLING]! * wheelLoadN * r * Math.tanh(state[at.WHEEL + at.RATE]! / 0.5);
      const expected = (motorNm - r * treadN - rolling) / plant.wheelInertiaKgM2;
      expect(Math.abs(out[at.WHEEL + at.RATE]! - expected)).toBeLessThanOrEqual(
        1e-9 * (1 + Math.abs(expected)),
      );
    }
  });

  it('reports the forces behind them, and the feet ride on the deck', () => {
    for (const drawn of drawCases()) {
      const loads = loadsOf(drawn);
      const { plant, state, out } = drawn;
      const near = (actual: number, expected: number) =>
        expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(expected)));
      near(out[at.WHEEL_LOAD]!, loads.wheelLoadN);
      near(out[at.TREAD_FORCE]!, loads.treadN);
      near(out[at.LEG_FORCE]!, loads.legN);
      near(out[at.FOOT_TORQUE]!, loads.footNm);
      const theta = state[at.PITCH]!;
      const turn = state[at.PITCH + at.RATE]!;
      near(
        out[at.FEET_ACCELERATION]!,
        out[at.Z + at.RATE]! -
          plant.ankleAboveAxleM *
            (Math.sin(theta) * out[at.PITCH + at.RATE]! + Math.cos(theta) * turn * turn),
      );
    }
  });
});
