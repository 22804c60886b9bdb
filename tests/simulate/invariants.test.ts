/**
 * What no equation of motion may break, whatever its algebra: energy, momentum, free fall. Published list of
 * invariants of the wheeled pendulum: energy with no torque and no loss, momentum with the wheel floating.
 */
import { describe, expect, it } from 'vitest';
import { horizontalMomentum, mechanicalEnergy } from '../../src/model/energy.js';
import * as at from '../../src/model/state.js';
import { fixedStep } from '../../src/simulate/fixed-step.js';
import { referenceStep } from '../../src/simulate/reference.js';
import { largest, LOSSLESS, planeRoad, plantWith } from '../rigs.js';
import { exactly, gap, letGo, quickly, THROWN, wholeOf, type Start } from './motions.js';

const GRAVITY = 9.80665;
const STICKY = { [at.GRIP]: 1000 };

/** Let go on a plane with the wheel settled across it: pitched, leaning, knees springing, rolling. */
function rollingStart(slope: number): Start {
  const plant = plantWith();
  const s = Math.sqrt(1 + slope * slope);
  const squash = (plant.totalMassKg * GRAVITY) / s / plant.verticalStiffnessNPerM;
  const speed = 1.5;
  return {
    inputs: STICKY,
    state: {
      [at.Z]: (plant.wheelRadiusM - squash) * s + 0.002,
      [at.PITCH]: 0.06,
      [at.LEAN]: -0.05,
      [at.LEG]: 0.93,
      [at.X + at.RATE]: speed,
      [at.Z + at.RATE]: slope * speed,
      [at.WHEEL + at.RATE]: (speed * s) / plant.wheelRadiusM,
      [at.PITCH + at.RATE]: 0.4,
    },
  };
}

/** Wheel two metres up, everything turning. */
const AIRBORNE: Start = {
  currentA: 20,
  inputs: { [at.RIDER_TORQUE]: 30, [at.GRIP]: 0.65, [at.ROLLING]: 0.02 },
  state: { ...THROWN, [at.Z]: 8 },
};

describe('energy with no loss and no drive', () => {
  for (const slope of [0, 0.12, -0.12]) {
    const plant = plantWith({ ...LOSSLESS, deckForwardM: 0.02 });
    const road = planeRoad(slope);
    const drift = (states: Float64Array[]) => {
      const energies = states.map((state) => mechanicalEnergy(plant, road, state));
      return largest(energies.map((energy) => energy - energies[0]!)) / energies[0]!;
    };

    it(`is constant to 1e-12 with odex on a slope of ${slope}`, () => {
      const time = { tickS: 1 / 800, forS: 0.45 };
      expect(drift(letGo(referenceStep(plant, road, time), rollingStart(slope), time))).toBeLessThan(1e-12);
    });

    it(`is constant to 1e-8 with the fixed step on a slope of ${slope}, and halving the step gains 16 times or more`, () => {
      const at800 = { tickS: 1 / 800, forS: 0.45 };
      const at1600 = { tickS: 1 / 1600, forS: 0.45 };
      const coarse = drift(
        letGo(fixedStep(plant, road, { ...at800, stepsPerTick: 1 }), rollingStart(slope), at800),
      );
      const fine = drift(
        letGo(fixedStep(plant, road, { ...at1600, stepsPerTick: 1 }), rollingStart(slope), at1600),
      );
      expect(coarse).toBeLessThan(1e-8);
      expect(coarse / fine).toBeGreaterThan(14);
    });
  }

  it('moves between its forms meanwhile', () => {
    const plant = plantWith(LOSSLESS);
    const road = planeRoad(0);
    const end = exactly(plant, road, { start: rollingStart(0), forS: 0.6, tolerance: 1e-10 });
    expect(Math.abs(end[at.LEAN]! + 0.05)).toBeGreaterThan(0.05);
    expect(Math.abs(end[at.X + at.RATE]! - 1.5)).toBeGreaterThan(0.1);
  });
});

describe('order of the fixed step on the smooth plant', () => {
  for (const [what, plant, rates] of [
    ['without loss', plantWith(LOSSLESS), [800, 1600, 3200]],
    ['with all its dampers', plantWith(), [400, 800, 1600]],
  ] as const) {
    it(`is 4 ${what}: half the step, a sixteenth of the error`, () => {
      const road = planeRoad(0);
      const run = { start: rollingStart(0), forS: 0.4 };
      const exact = exactly(plant, road, { ...run, tolerance: 1e-13 });
      const errors = rates.map((rate) => gap(quickly(plant, road, { ...run, stepS: 1 / rate }), exact));
      const orders = errors.slice(1).map((error, index) => Math.log2(errors[index]! / error));
      for (const order of orders) expect(Math.abs(order - 4)).toBeLessThan(0.25);
    });
  }
});

describe('wheel in the air', () => {
  const plant = plantWith({ halfDragAreaKgPerM: 0, deckForwardM: 0.03 });
  const time = { tickS: 1 / 800, forS: 1 };
  const states = letGo(referenceStep(plant, planeRoad(0), time), AIRBORNE, time);
  const wholes = states.map((state) => wholeOf(plant, state));
  const first = wholes[0]!;

  it('keeps its horizontal momentum, though motor, feet and legs work', () => {
    const momenta = states.map((state) => horizontalMomentum(plant, state));
    const own = first.massKg * first.xRate;
    expect(Math.abs(momenta[0]! - own)).toBeLessThan(1e-9 * own);
    expect(largest(momenta.map((momentum) => momentum - own))).toBeLessThan(1e-9 * own);
  });

  it('keeps its spin about the centre of mass: the motor turns the deck as much as it turns the wheel', () => {
    expect(Math.abs(states.at(-1)![at.WHEEL + at.RATE]! - 25)).toBeGreaterThan(100);
    expect(largest(wholes.map((whole) => whole.spinKgM2PerS - first.spinKgM2PerS))).toBeLessThan(1e-8);
  });

  it('falls freely: the centre of mass follows z0 + v0 t - g t^2 / 2', () => {
    wholes.forEach((whole, tick) => {
      const t = tick * time.tickS;
      expect(Math.abs(whole.z - (first.z + first.zRate * t - (GRAVITY * t * t) / 2))).toBeLessThan(1e-9);
      expect(Math.abs(whole.x - (first.x + first.xRate * t))).toBeLessThan(1e-9);
    });
  });

  it('touches nothing: no wheel load and no tread force', () => {
    expect(states.every((state) => state[at.Z]! > plant.wheelRadiusM)).toBe(true);
  });
});
