/** Sag, power balance and the matched load of the pack: elementary circuit theory, with worked values. */
import { describe, expect, it } from 'vitest';
import {
  CHARGE,
  drawCharge,
  MOTION_SIZE,
  MOTOR_CURRENT,
  MOTOR_SPEED,
  OPEN_VOLTAGE,
  PACK_CURRENT,
  PACK_SIZE,
  PACK_VOLTAGE,
  updatePack,
} from '../../src/model/battery.js';
import { plantOf, type Plant } from '../../src/model/plant.js';
import { boardWith, chance, riderWith } from '../rigs.js';

function packAt(
  plant: Plant,
  { charge, currentA, speed }: { charge: number; currentA: number; speed: number },
) {
  const motion = new Float64Array(MOTION_SIZE);
  motion[MOTOR_CURRENT] = currentA;
  motion[MOTOR_SPEED] = speed;
  const pack = new Float64Array(PACK_SIZE);
  pack[CHARGE] = charge;
  updatePack(plant, motion, pack);
  return pack;
}

const PLANT = plantOf(boardWith(), riderWith());

describe('pack', () => {
  // Worked values of V = S OCV - I (S / P) r: 40 A through 15 x 20 / 2 and 18 x 25 / 2 milliohm sag 6.0 and 9.0 V.
  it.each([
    { seriesCells: 15, parallelCells: 2, cellResistanceMilliohm: 20, packOhm: 0.15, sagV: 6 },
    { seriesCells: 18, parallelCells: 2, cellResistanceMilliohm: 25, packOhm: 0.225, sagV: 9 },
  ])('of $seriesCells x $parallelCells cells sags $sagV V at 40 A', ({ packOhm, sagV, ...pack }) => {
    const plant = plantOf(boardWith({ pack }), riderWith());
    expect(plant.pack.resistanceOhm).toBeCloseTo(packOhm, 12);
    const openV = pack.seriesCells * 3.751; // the published cell at half charge
    // The motor current that draws just 40 A at standstill: i^2 R_m = 40 (U - 40 R).
    const currentA = Math.sqrt((40 * (openV - 40 * packOhm)) / plant.motor.resistanceOhm);
    const now = packAt(plant, { charge: 0.5, currentA, speed: 0 });
    expect(now[OPEN_VOLTAGE]).toBeCloseTo(openV, 9);
    expect(now[PACK_CURRENT]).toBeCloseTo(40, 9);
    expect(now[OPEN_VOLTAGE]! - now[PACK_VOLTAGE]!).toBeCloseTo(sagV, 9);
  });

  it('balances power, V I = K_t i w + i^2 R_m, driving and braking (maxon, key information: U I = (pi/30000) n M + R I^2)', () => {
    const next = chance(5);
    const { torqueConstantNmPerA: kt, resistanceOhm } = PLANT.motor;
    for (let draw = 0; draw < 300; draw++) {
      const [charge, currentA, speed] = [next(), 160 * next() - 80, 160 * next() - 80];
      const power = kt * currentA * speed + currentA ** 2 * resistanceOhm;
      const now = packAt(PLANT, { charge, currentA, speed });
      if (power > now[OPEN_VOLTAGE]! ** 2 / (4 * PLANT.pack.resistanceOhm)) continue;
      expect(Math.abs(now[PACK_VOLTAGE]! * now[PACK_CURRENT]! - power)).toBeLessThan(
        1e-8 * (1 + Math.abs(power)),
      );
      expect(Math.sign(now[PACK_CURRENT]!)).toBe(Math.sign(power));
    }
  });

  it('gives at most U^2 / 4 R, into a matched load at half its voltage', () => {
    const now = packAt(PLANT, { charge: 0.5, currentA: 500, speed: 50 });
    const openV = now[OPEN_VOLTAGE]!;
    expect(now[PACK_VOLTAGE]).toBeCloseTo(openV / 2, 9);
    expect(now[PACK_VOLTAGE]! * now[PACK_CURRENT]!).toBeCloseTo(
      openV ** 2 / (4 * PLANT.pack.resistanceOhm),
      6,
    );
  });

  it('shows the voltage of its charge, joined by straight lines, and of its ends beyond them', () => {
    // The published cell: 2.5 V empty, 3.751 V at 50 %, 3.841 V at 60 %, 4.2 V full; 15 of them in series.
    for (const [charge, cellV] of [
      [0, 2.5],
      [0.55, 3.796],
      [0.505, 3.7555],
      [1, 4.2],
      [-0.1, 2.5],
      [1.1, 4.2],
    ] as const) {
      const now = packAt(PLANT, { charge, currentA: 0, speed: 0 });
      expect(now[OPEN_VOLTAGE]).toBeCloseTo(15 * cellV, 9);
      expect(now[PACK_VOLTAGE]).toBe(now[OPEN_VOLTAGE]);
    }
  });

  it('gives 1 % of 5 Ah, 180 C, in 36 s at 5 A, in one tick or in many', () => {
    const pack = new Float64Array(PACK_SIZE);
    pack[CHARGE] = 1;
    pack[PACK_CURRENT] = 5;
    drawCharge(PLANT, { tickS: 36 }, pack);
    expect(pack[CHARGE]).toBeCloseTo(0.99, 12);
    for (let tick = 0; tick < 72; tick++) drawCharge(PLANT, { tickS: 0.5 }, pack);
    expect(pack[CHARGE]).toBeCloseTo(0.98, 12);
  });

  it('empties by ampere seconds: an hour at its capacity in amperes takes all of it', () => {
    const pack = new Float64Array(PACK_SIZE);
    pack[CHARGE] = 1;
    pack[PACK_CURRENT] = 5;
    for (let second = 0; second < 1800; second++) drawCharge(PLANT, { tickS: 1 }, pack);
    expect(pack[CHARGE]).toBeCloseTo(0.5, 9);
    for (let second = 0; second < 3600; second++) drawCharge(PLANT, { tickS: 1 }, pack);
    expect(pack[CHARGE]).toBe(0);
    pack[PACK_CURRENT] = -50;
    for (let second = 0; second < 3600; second++) drawCharge(PLANT, { tickS: 1 }, pack);
    expect(pack[CHARGE]).toBe(1);
  });
});
