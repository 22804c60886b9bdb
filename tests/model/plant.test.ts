/** From the values of files to SI: each that is changed on the way, worked by hand. */
import { describe, expect, it } from 'vitest';
import { plantOf } from '../../src/model/plant.js';
import { boardWith, riderWith } from '../rigs.js';

describe('a plant', () => {
  it('adds up its masses: 6 + 8 + 78 kg', () => {
    expect(plantOf(boardWith(), riderWith()).totalMassKg).toBe(92);
  });

  it('has half of air density times drag area: 0.5 x 1.2 kg/m3 x 0.6 m2 = 0.36 kg/m', () => {
    const body = { massKg: 78, statureM: 1.8, dragAreaM2: 0.6 };
    expect(plantOf(boardWith(), riderWith({ body })).halfDragAreaKgPerM).toBeCloseTo(0.36, 12);
  });

  it('stands on half of its stance to either side', () => {
    const rider = riderWith({ stance: { widthM: 0.5 } });
    expect(plantOf(boardWith(), rider).halfStanceM).toBe(0.25);
  });

  it('has angles in radians: 36 degrees of lean are pi / 5', () => {
    const balance = { delayS: 0.14, frequencyRadPerS: 2, dampingRatio: 0.8, leanLimitDeg: 36 };
    expect(plantOf(boardWith(), riderWith({ balance })).leanLimitRad).toBeCloseTo(Math.PI / 5, 12);
  });

  it('has the lag of its current in seconds', () => {
    const board = boardWith({ motor: { currentLagMs: 2.5 } });
    expect(plantOf(board, riderWith()).motor.lagS).toBeCloseTo(0.0025, 15);
  });

  it('has a pack of strings of cells: 20 in series and 4 side by side, of 12 milliohm and 5 Ah each', () => {
    const pack = { seriesCells: 20, parallelCells: 4, cellResistanceMilliohm: 12, cellCapacityAh: 5 };
    const plant = plantOf(boardWith({ pack }), riderWith());
    expect(plant.pack.resistanceOhm).toBeCloseTo((20 * 0.012) / 4, 12);
    expect(plant.pack.capacityC).toBe(4 * 5 * 3600);
  });

  it('refuses a motor without a constant, which no checked board has', () => {
    const { torqueConstantNmPerA: _given, ...motor } = boardWith().motor;
    expect(() => plantOf({ ...boardWith(), motor }, riderWith())).toThrow('torqueConstantNmPerA');
  });
});
