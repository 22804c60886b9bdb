/**
 * Energy and momentum of a rig: closed forms of single motions, and the power and momentum theorems of mechanics for any
 * motion: energy grows by what motor, feet and shove put in, momentum by the forces from outside.
 */
import { describe, expect, it } from 'vitest';
import { derive } from '../../src/model/derive.js';
import { horizontalMomentum, mechanicalEnergy } from '../../src/model/energy.js';
import * as at from '../../src/model/state.js';
import { chance, LOSSLESS, planeRoad, plantWith } from '../rigs.js';

const G = 9.80665;
const LEVEL = planeRoad(0);
const PLANT = plantWith({ ...LOSSLESS, deckForwardM: 0.03, deckAboveAxleM: -0.02, halfStanceM: 100 });

/** Standing upright one metre up, legs at rest length, and what is set. */
function stateWith(set: Record<number, number>): Float64Array {
  const state = new Float64Array(at.STATE_SIZE);
  state[at.Z] = 1;
  state[at.LEG] = PLANT.legLengthM;
  for (const [place, value] of Object.entries(set)) state[Number(place)] = value;
  return state;
}

const energyOf = (set: Record<number, number>) => mechanicalEnergy(PLANT, LEVEL, stateWith(set));
const grown = (set: Record<number, number>) => energyOf(set) - energyOf({});

describe('energy by hand', () => {
  const { deckMassKg: md, riderMassKg: m, totalMassKg: total, legLengthM: L, ankleAboveAxleM: hf } = PLANT;
  const spread = PLANT.deckForwardM ** 2 + PLANT.deckAboveAxleM ** 2;

  it('of moving as a whole is M v^2 / 2, of turning alone I w^2 / 2', () => {
    expect(grown({ [at.X + at.RATE]: 3, [at.Z + at.RATE]: 4 })).toBeCloseTo((total * 25) / 2, 8);
    expect(grown({ [at.WHEEL + at.RATE]: 20 })).toBeCloseTo((PLANT.wheelInertiaKgM2 * 400) / 2, 8);
    expect(grown({ [at.PITCH + at.RATE]: 2 })).toBeCloseTo(
      2 * (PLANT.deckInertiaKgM2 + md * spread + m * hf ** 2),
      8,
    );
    expect(grown({ [at.LEAN + at.RATE]: 2 })).toBeCloseTo(2 * (PLANT.riderInertiaKgM2 + m * L ** 2), 8);
    expect(grown({ [at.LEG + at.RATE]: 2 })).toBeCloseTo(2 * m, 8);
  });

  it('of height is M g z, and of a lean what the body sinks by, besides what the ankles store', () => {
    expect(grown({ [at.Z]: 3 })).toBeCloseTo(total * G * 2, 8);
    expect(grown({ [at.LEAN]: 0.4 })).toBeCloseTo(
      m * G * L * (Math.cos(0.4) - 1) + (PLANT.passiveStiffnessNmPerRad * 0.16) / 2,
      8,
    );
  });

  it('of springs is k s^2 / 2: tread, tyre, and legs besides the weight they carry', () => {
    expect(grown({ [at.TREAD]: 0.01 })).toBeCloseTo(PLANT.treadStiffnessNPerM / 2e4, 8);
    const touching = energyOf({ [at.Z]: PLANT.wheelRadiusM });
    const squashed = energyOf({ [at.Z]: PLANT.wheelRadiusM - 0.01 });
    expect(squashed - touching).toBeCloseTo(PLANT.verticalStiffnessNPerM / 2e4 - total * G * 0.01, 8);
    // The constant force with which the legs carry the body takes up just what it loses by sinking 5 cm.
    expect(grown({ [at.LEG]: L - 0.05 })).toBeCloseTo(PLANT.legStiffnessNPerM * 0.00125, 8);
  });
});

interface Motion {
  slope: number;
  state: Float64Array;
  inputs: Float64Array;
  rates: Float64Array;
}

/** Any motion, squashed or in the air, with motor, feet and shove at work; grip holds and legs push. */
function drawMotion(next: () => number): Motion {
  const within = (most: number) => most * (2 * next() - 1);
  const slope = within(0.3);
  const state = new Float64Array(at.STATE_SIZE);
  state[at.X] = within(10);
  state[at.Z] = slope * state[at.X]! + PLANT.wheelRadiusM * Math.hypot(1, slope) + within(0.02);
  state[at.PITCH] = within(0.5);
  state[at.LEAN] = within(0.8);
  state[at.LEG] = PLANT.legLengthM - 0.1 * next();
  state[at.TREAD] = within(0.01);
  for (const place of [at.X, at.Z, at.PITCH, at.LEAN, at.LEG]) state[place + at.RATE] = within(3);
  state[at.WHEEL + at.RATE] = within(30);
  const inputs = Float64Array.of(within(40), within(60), within(100), 1e9, 0);
  const rates = new Float64Array(at.DERIVE_SIZE);
  derive(PLANT, planeRoad(slope), inputs, state, rates);
  return { slope, state, inputs, rates };
}

/** Growth a second of something along a motion, by a central difference. */
function growth({ state, rates }: Motion, of: (state: Float64Array) => number): number {
  const h = 1e-5;
  const moved = (sense: number) => of(state.map((value, place) => value + sense * h * rates[place]!));
  return (moved(1) - moved(-1)) / (2 * h);
}

describe('the theorems of mechanics', () => {
  it('energy grows by the power of motor, feet and shove', () => {
    const next = chance(31);
    for (let draw = 0; draw < 300; draw++) {
      const motion = drawMotion(next);
      const { slope, state, inputs, rates } = motion;
      // A tread in the air keeps its shear, which the loop lets go: it stores what no force gives back.
      if (rates[at.WHEEL_LOAD] === 0) state[at.TREAD] = 0;
      const rate = (place: number) => state[place + at.RATE]!;
      const riderXRate =
        rate(at.X) +
        PLANT.ankleAboveAxleM * rate(at.PITCH) * Math.cos(state[at.PITCH]!) +
        rate(at.LEG) * Math.sin(state[at.LEAN]!) +
        state[at.LEG]! * rate(at.LEAN) * Math.cos(state[at.LEAN]!);
      const power =
        inputs[at.MOTOR_TORQUE]! * (rate(at.WHEEL) - rate(at.PITCH)) +
        inputs[at.RIDER_TORQUE]! * (rate(at.LEAN) - rate(at.PITCH)) +
        inputs[at.SHOVE]! * riderXRate;
      const energy = (now: Float64Array) => mechanicalEnergy(PLANT, planeRoad(slope), now);
      expect(Math.abs(growth(motion, energy) - power)).toBeLessThan(1e-6 * (1000 + Math.abs(power)));
    }
  });

  it('momentum along the level grows by the road and the shove alone', () => {
    const next = chance(32);
    for (let draw = 0; draw < 300; draw++) {
      const motion = drawMotion(next);
      const { slope, inputs, rates } = motion;
      const alpha = Math.atan(slope);
      const road = rates[at.TREAD_FORCE]! * Math.cos(alpha) - rates[at.WHEEL_LOAD]! * Math.sin(alpha);
      const grows = growth(motion, (now) => horizontalMomentum(PLANT, now));
      expect(Math.abs(grows - road - inputs[at.SHOVE]!)).toBeLessThan(1e-6 * (100 + Math.abs(road)));
    }
  });
});
