/**
 * Does MuJoCo, which knows none of the project's equations, accelerate the same rig the same way? Random rigs in random
 * states, in the air and on the road, with motor, rider, shove and air; and whether each parameter matters to the answer.
 */
import { describe, expect, it } from 'vitest';
import { derive } from '../../src/model/derive.js';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import { drawBodies, drawRates, type Between } from '../model/wide-draws.js';
import { chance, planeRoad, plantWith } from '../rigs.js';
import { multibodyOf, startEngine, type Found, type Multibody, type RoadForces } from './multibody.js';

const RIGS = 300;
const IN_THE_AIR = 4;
const ON_THE_ROAD = 2;
const GRAVITY = 9.80665;
const ROLLING_RATIO = 0.05;
const NAMES = ['x', 'z', 'wheel', 'pitch', 'lean', 'leg'];

function drawPlant(between: Between): Plant {
  return plantWith({
    wheelRadiusM: between(0.08, 0.25),
    ...drawBodies(between),
    legLengthM: between(0.7, 1.1),
    legStiffnessNPerM: between(0, 40_000),
    legDampingNSPerM: between(0, 3000),
    passiveStiffnessNmPerRad: between(0, 400),
    passiveDampingNmSPerRad: between(0, 60),
    halfStanceM: between(0.05, 0.5),
    halfDragAreaKgPerM: between(0, 1),
  });
}

/** Half of the states as wide as a ride gets, half with deck and rider at any angle. */
function drawState(between: Between, anyAngle: boolean): Float64Array {
  const state = new Float64Array(at.STATE_SIZE);
  state[at.X] = between(-20, 20);
  state[at.WHEEL] = between(-50, 50);
  state[at.PITCH] = anyAngle ? between(-Math.PI, Math.PI) : between(-0.5, 0.5);
  state[at.LEAN] = anyAngle ? between(-Math.PI, Math.PI) : between(-1, 1);
  state[at.LEG] = between(0.6, 1.05);
  state[at.TREAD] = between(-0.02, 0.02);
  drawRates(state, between);
  return state;
}

interface Case {
  state: Float64Array;
  inputs: Float64Array;
  out: Float64Array;
  found: Found;
}

/** One state of a rig, told to both; the wheel squashed into a road of some slope or above it. */
function drawCase(between: Between, rig: { plant: Plant; body: Multibody }, where: 'road' | 'air'): Case {
  const { plant, body } = rig;
  const slope = between(-0.4, 0.4);
  const state = drawState(between, between(0, 1) < 0.5);
  const above = where === 'road' ? between(-0.03, -0.005) : between(0.001, 2);
  state[at.Z] = slope * state[at.X]! + plant.wheelRadiusM * Math.hypot(1, slope) + above;
  const inputs = Float64Array.of(
    between(-60, 60),
    between(-150, 150),
    between(-300, 300),
    0.65,
    ROLLING_RATIO,
  );
  const out = new Float64Array(at.DERIVE_SIZE);
  derive(plant, planeRoad(slope, plant.wheelRadiusM), inputs, state, out);
  return { state, inputs, out, found: body.accelerate(state, inputs, roadForces(plant, state, out)) };
}

/** The road as the tyre's law has it; what it does to the bodies is left to the engine. */
function roadForces(plant: Plant, state: Float64Array, out: Float64Array): RoadForces {
  const wheelLoadN = out[at.WHEEL_LOAD]!;
  const resists = -ROLLING_RATIO * wheelLoadN * plant.wheelRadiusM;
  const rollingNm = resists * Math.tanh(state[at.WHEEL + at.RATE]! / 0.5);
  return { wheelLoadN, treadN: out[at.TREAD_FORCE]!, slope: out[at.ROAD_SLOPE]!, rollingNm };
}

/** Differences over the largest acceleration of the case or g; the wheel, which spins up fastest by far, on its own. */
function differences({ out, found }: Case): number[] {
  const own = NAMES.map((_, index) => out[at.RATE + index]!);
  const others = found.accelerations.filter((_, index) => index !== at.WHEEL);
  const scale = Math.max(GRAVITY, ...others.map(Math.abs));
  const wheelScale = Math.max(GRAVITY, Math.abs(found.accelerations[at.WHEEL]!));
  return own.map(
    (value, index) =>
      Math.abs(value - found.accelerations[index]!) / (index === at.WHEEL ? wheelScale : scale),
  );
}

const worstOf = (cases: Case[]) =>
  NAMES.map((_, index) => Math.max(...cases.map((each) => differences(each)[index]!)));

const engine = await startEngine();
const next = chance(20250311);
const between: Between = (low, high) => low + (high - low) * next();

/** States of one rig; the engine may be told of another one. */
function drawCases(plant: Plant, told: Plant, counts: { air: number; road: number }) {
  const body = multibodyOf(engine, told);
  const rig = { plant, body };
  const air = Array.from({ length: counts.air }, () => drawCase(between, rig, 'air'));
  const road = Array.from({ length: counts.road }, () => drawCase(between, rig, 'road'));
  body.release();
  return { air, road };
}

const DRAWN = Array.from({ length: RIGS }, () => {
  const plant = drawPlant(between);
  return drawCases(plant, plant, { air: IN_THE_AIR, road: ON_THE_ROAD });
});
const AIR = DRAWN.flatMap(({ air }) => air);
const ROAD = DRAWN.flatMap(({ road }) => road);

const count = (cases: Case[], hit: (each: Case) => boolean) => cases.filter(hit).length;
const legsSlack = ({ found }: Case) => found.legsSlack;
const oneFootLight = ({ found }: Case) => found.oneFootLight && !found.legsSlack;
const loadOf = ({ out }: Case) => out[at.WHEEL_LOAD]!;
const holds = ({ out }: Case) => Math.abs(out[at.TREAD_FORCE]!) < 0.65 * out[at.WHEEL_LOAD]!;

describe('accelerations by a general multibody engine', () => {
  it('are asked for in 1,200 states in the air and 600 on the road, at every limit of legs, feet and grip', () => {
    expect(engine.mj_versionString()).toBe('3.14.0');
    expect([AIR.length, ROAD.length]).toEqual([1200, 600]);
    expect(count(AIR, (each) => loadOf(each) > 0)).toBe(0);
    expect(count(AIR, legsSlack)).toBeGreaterThan(300);
    expect(count(AIR, oneFootLight)).toBeGreaterThan(100);
    expect(count(AIR, (each) => !each.found.oneFootLight)).toBeGreaterThan(500);
    expect(count(ROAD, (each) => loadOf(each) > 0)).toBeGreaterThan(500);
    expect(count(ROAD, holds)).toBeGreaterThan(50);
  });

  for (const [where, cases] of [
    ['in the air', AIR],
    ['on the road', ROAD],
  ] as const) {
    it(`are the same in all six coordinates ${where}`, () => {
      for (const worst of worstOf(cases)) expect(worst).toBeLessThan(1e-9);
    });

    it(`come from legs that are slack in the same states ${where}`, () => {
      for (const { out, found } of cases) expect(out[at.LEG_FORCE] === 0).toBe(found.legsSlack);
    });
  }
});

describe('an engine told of a rig that is wrong by a thousandth in one value', () => {
  for (const field of [
    'wheelRadiusM',
    'wheelMassKg',
    'wheelInertiaKgM2',
    'deckMassKg',
    'deckInertiaKgM2',
    'deckForwardM',
    'deckAboveAxleM',
    'ankleAboveAxleM',
    'riderMassKg',
    'riderInertiaKgM2',
    'legLengthM',
    'legStiffnessNPerM',
    'legDampingNSPerM',
    'passiveStiffnessNmPerRad',
    'passiveDampingNmSPerRad',
    'halfStanceM',
    'halfDragAreaKgPerM',
  ] as const) {
    it(`contradicts: ${field}`, () => {
      const plant = drawPlant(between);
      const { air, road } = drawCases(
        plant,
        { ...plant, [field]: 1.001 * plant[field] },
        { air: 20, road: 20 },
      );
      expect(Math.max(...worstOf([...air, ...road]))).toBeGreaterThan(1e-6);
    });
  }
});
