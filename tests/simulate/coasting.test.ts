/**
 * Rolling freely: a body that hangs below the axle coasts with its motor off. With rolling resistance C_rr N r on the
 * wheel the deceleration is C_rr g M / (M + I_w / r^2): C_rr g, as handbooks state it (Engineering ToolBox, rolling
 * resistance: F = c W), but for the spin that the wheel stores.
 */
import { describe, expect, it } from 'vitest';
import { mechanicalEnergy } from '../../src/model/energy.js';
import * as at from '../../src/model/state.js';
import { SURFACE_VALUES } from '../../src/scenario/surface.js';
import { fixedStep } from '../../src/simulate/fixed-step.js';
import { deckAlone } from '../model/rolling.js';
import { largest, planeRoad, plantWith } from '../rigs.js';
import { letGo } from './motions.js';

const GRAVITY = 9.80665;
const HANGING = {
  wheelRadiusM: 0.14,
  wheelMassKg: 6,
  wheelInertiaKgM2: 0.055,
  deckMassKg: 80,
  deckInertiaKgM2: 1,
  deckAboveAxleM: -0.1,
};
const TIME = { tickS: 1 / 800, forS: 1 };

function coast(rollingRatio: number, wheelInertiaKgM2 = HANGING.wheelInertiaKgM2) {
  const plant = deckAlone({ ...HANGING, wheelInertiaKgM2 });
  const massKg = plant.totalMassKg;
  const expected =
    (rollingRatio * GRAVITY * massKg) / (massKg + wheelInertiaKgM2 / HANGING.wheelRadiusM ** 2);
  // Under a lasting deceleration the body hangs ahead by atan(a / g), so that nothing swings.
  const states = letGo(
    fixedStep(plant, planeRoad(0), { tickS: TIME.tickS, stepsPerTick: 1 }),
    {
      inputs: { [at.GRIP]: 1, [at.ROLLING]: rollingRatio },
      state: {
        [at.Z]: plant.wheelRadiusM - (massKg * GRAVITY) / plant.verticalStiffnessNPerM,
        [at.PITCH]: -Math.atan(expected / GRAVITY),
        [at.LEG]: plant.legLengthM,
        [at.TREAD]: (-expected * massKg) / plant.treadStiffnessNPerM,
        [at.X + at.RATE]: 5,
        [at.WHEEL + at.RATE]: 5 / plant.wheelRadiusM,
      },
    },
    TIME,
  );
  const speeds = states.map((state) => state[at.X + at.RATE]!);
  return { measured: (speeds[0]! - speeds.at(-1)!) / TIME.forS, expected, states };
}

describe('coasting', () => {
  it.each(Object.entries(SURFACE_VALUES))(
    'on %s slows down by C_rr g M / (M + I_w / r^2)',
    (_name, surface) => {
      const { measured, expected } = coast(surface.rollingResistanceRatio);
      expect(Math.abs(measured / expected - 1)).toBeLessThan(1e-6);
    },
  );

  it('slows down by C_rr g itself when the wheel stores no spin worth the name', () => {
    const { measured } = coast(0.015, 1e-3);
    expect(Math.abs(measured / (0.015 * GRAVITY) - 1)).toBeLessThan(1e-3);
  });

  it('goes on for ever without rolling resistance', () => {
    expect(Math.abs(coast(0).measured)).toBeLessThan(1e-9);
  });
});

describe('losses', () => {
  // Second law: dampers, sliding tread and air take energy and never give it. A tread at its limit and a foot torque at
  // its limit hold less than their springs would, so energy is watched where neither happens.
  it.each([
    ['tyre damper', { verticalDampingNSPerM: 350 }],
    ['tread damper', { treadDampingNSPerM: 300 }],
    ['leg damper', { legDampingNSPerM: 900 }],
    ['ankle damper', { passiveDampingNmSPerRad: 8 }],
    ['air', { halfDragAreaKgPerM: 0.3 }],
  ])('by the %s alone only ever take energy', (_what, damper) => {
    const none = {
      verticalDampingNSPerM: 0,
      treadDampingNSPerM: 0,
      legDampingNSPerM: 0,
      passiveDampingNmSPerRad: 0,
      halfDragAreaKgPerM: 0,
    };
    const plant = plantWith({ ...none, ...damper });
    const road = planeRoad(0.05);
    const states = letGo(
      fixedStep(plant, road, { tickS: 1 / 1600, stepsPerTick: 1 }),
      {
        inputs: { [at.GRIP]: 1000 },
        state: {
          [at.Z]: 0.13,
          [at.PITCH]: 0.05,
          [at.LEAN]: -0.05,
          [at.LEG]: 0.93,
          [at.X + at.RATE]: 2,
          [at.Z + at.RATE]: 0.1,
          [at.WHEEL + at.RATE]: 14,
          [at.PITCH + at.RATE]: 0.5,
        },
      },
      { tickS: 1 / 1600, forS: 0.3 },
    );
    const energies = states.map((state) => mechanicalEnergy(plant, road, state));
    const gains = energies.slice(1).map((energy, tick) => energy - energies[tick]!);
    expect(largest(gains.filter((gain) => gain > 0))).toBeLessThan(1e-7 * energies[0]!);
    expect(energies.at(-1)! / energies[0]!).toBeLessThan(1 - 1e-6);
  });
});
