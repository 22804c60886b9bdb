/** Grip and rolling resistance of the named surfaces against rows of handbook tables, and what they do to a rig. */
import { describe, expect, it } from 'vitest';
import type { SurfaceName } from '../../src/scenario/surface.js';
import { SURFACE_VALUES } from '../../src/scenario/surface.js';
import { run } from '../../src/simulate/run.js';
import { boardWith, columnOf, COMPOSED, profileWith, riderWith, scenarioWith, trialWith } from '../rigs.js';

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

describe('rolling on', () => {
  it.each(['dry-asphalt', 'packed-gravel', 'soft-grass'] as const)(
    'at a steady speed takes a motor torque of C_rr M g r on %s',
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
