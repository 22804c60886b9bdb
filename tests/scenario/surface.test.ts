/** Grip and rolling resistance of the named surfaces against rows of handbook tables, and what they do to a rig. */
import { describe, expect, it } from 'vitest';
import * as at from '../../src/model/state.js';
import type { SurfaceName } from '../../src/scenario/surface.js';
import { SURFACE_VALUES } from '../../src/scenario/surface.js';
import { referenceStep } from '../../src/simulate/reference.js';
import { run } from '../../src/simulate/run.js';
import { deckAlone } from '../model/rolling.js';
import {
  boardWith,
  columnOf,
  COMPOSED,
  momentWith,
  planeRoad,
  profileWith,
  riderWith,
  scenarioWith,
  trialWith,
} from '../rigs.js';

/** Rolling resistance, range of the row. Engineering ToolBox "rolling resistance"; grass and gravel as said. */
const ROLLING: [SurfaceName, number, number, string][] = [
  ['dry-asphalt', 0.01, 0.015, 'car tyre on new asphalt or concrete, Engineering ToolBox'],
  ['wet-asphalt', 0.01, 0.015, 'the same; water is not in the table'],
  ['worn-cobbles', 0.03, 0.03, 'large worn cobbles, Engineering ToolBox'],
  [
    'packed-gravel',
    0.01,
    0.02,
    'rolled gravel, Carvill 1993 and Bosch (from memory); 0.02 Engineering ToolBox',
  ],
  ['soft-grass', 0.05, 0.1, 'short grass 0.05 to 0.10 (from memory); medium-hard soil 0.08, Carvill 1993'],
  ['loose-sand', 0.2, 0.4, 'loose sand, Engineering ToolBox'],
];

/** Grip, range of the row: sliding values. Noon 1994 as said, Wong from memory. */
const GRIP: [SurfaceName, number, number, string][] = [
  ['dry-asphalt', 0.65, 0.75, 'asphaltic concrete dry 0.65, Noon 1994; 0.75 sliding, Wong'],
  ['wet-asphalt', 0.45, 0.6, 'asphaltic concrete wet 0.50, Noon 1994; 0.45 to 0.6 sliding, Wong'],
  ['packed-gravel', 0.35, 0.55, 'gravel 0.55 sliding, Wong; gravel or dirt road 0.35, Noon 1994'],
  ['soft-grass', 0.2, 0.55, 'between wet grass 0.20, Noon 1994, and wet earth 0.4 to 0.55, Wong'],
  ['wet-leaves', 0.15, 0.25, 'as packed snow: 0.20 to 0.25, Noon 1994; 0.15 sliding, Wong'],
];

describe('surfaces', () => {
  it.each(ROLLING)('%s rolls with %d to %d (%s)', (name, low, high) => {
    expect(SURFACE_VALUES[name].rollingResistanceRatio).toBeGreaterThanOrEqual(low);
    expect(SURFACE_VALUES[name].rollingResistanceRatio).toBeLessThanOrEqual(high);
  });

  it.each(GRIP)('%s grips with %d to %d (%s)', (name, low, high) => {
    expect(SURFACE_VALUES[name].gripRatio).toBeGreaterThanOrEqual(low);
    expect(SURFACE_VALUES[name].gripRatio).toBeLessThanOrEqual(high);
  });
});

describe('coasting', () => {
  // A deck that hangs below the axle rolls on by itself. Newton: (M + I_w / r^2) a = -C_rr M g.
  it.each([0.015, 0.08])('slows by C_rr g M / (M + I_w / r^2) with C_rr %d and no air', (ratio) => {
    const wheel = { wheelRadiusM: 0.14, wheelMassKg: 6, wheelInertiaKgM2: 0.055 };
    const hanging = deckAlone({ ...wheel, deckMassKg: 86, deckInertiaKgM2: 0.42, deckAboveAxleM: -0.1 });
    const plant = { ...hanging, treadDampingNSPerM: 300, verticalDampingNSPerM: 350 };
    const weightN = plant.totalMassKg * 9.80665;
    const share = plant.totalMassKg / (plant.totalMassKg + 0.055 / 0.14 ** 2);
    const deceleration = ratio * 9.80665 * share;
    const moment = momentWith(
      {
        [at.Z]: 0.14 - weightN / plant.verticalStiffnessNPerM,
        [at.X + at.RATE]: 5,
        [at.WHEEL + at.RATE]: 5 / 0.14,
        [at.LEG]: plant.legLengthM,
        // The deck hangs still against the slowing axle: tan(theta) = a / g, forward below is tail side up.
        [at.PITCH]: Math.atan(-deceleration / 9.80665),
        [at.TREAD]: (-deceleration * plant.totalMassKg) / plant.treadStiffnessNPerM,
      },
      { [at.GRIP]: 0.65, [at.ROLLING]: ratio },
    );
    const integrator = referenceStep(plant, planeRoad(0), { tickS: 0.01 });
    for (let tick = 0; tick < 200; tick++) integrator.advance(moment);
    expect((5 - moment.state[at.X + at.RATE]!) / 2 / deceleration).toBeCloseTo(1, 4);
  });

  it.each(['dry-asphalt', 'packed-gravel', 'soft-grass'] as const)(
    'is prevented on %s by a motor torque of C_rr M g r',
    (surface) => {
      const scenario = scenarioWith({
        durationS: 6,
        road: [{ lengthM: 60, surface }],
        start: { speedKmPerH: 10 },
        speeds: [{ atS: 0, speedKmPerH: 10 }],
      });
      const rider = riderWith({ body: { massKg: 78, statureM: 1.8, dragAreaM2: 0 } });
      const { tape, outcome } = run(trialWith({ rider, scenario }), profileWith(COMPOSED), {
        solver: 'fixed',
      });
      expect(outcome.kind).toBe('upright');
      const currents = columnOf(tape, 'currentA').subarray(Math.round(tape.length / 2));
      const meanNm = (0.62 * currents.reduce((sum, current) => sum + current, 0)) / currents.length;
      const totalKg = boardWith().wheel.massKg + boardWith().deck.massKg + 78;
      expect(
        meanNm / (SURFACE_VALUES[surface].rollingResistanceRatio * totalKg * 9.80665 * 0.14),
      ).toBeCloseTo(1, 6);
    },
  );
});
