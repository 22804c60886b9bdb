/**
 * Ceilings on the motor current, each binding in turn, against the laws they stand for: U I = K_t i w + i^2 R at the
 * pack, mod V = K_t w + i R at the motor (the power and voltage balance of a direct-current machine).
 */
import { describe, expect, it } from 'vitest';
import {
  BRAKE_CEILING,
  CEILINGS_SIZE,
  DRIVE_CEILING,
  findCeilings,
  LOWER,
  LOWER_CAUSE,
  PACK_IN_CEILING,
  PACK_OUT_CEILING,
  UPPER,
  UPPER_CAUSE,
  VOLTAGE_CEILING,
} from '../../src/control/ceilings.js';
import {
  CHARGE,
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
import { CEILINGS } from '../../src/simulate/tape.js';
import { boardWith, chance, riderWith } from '../rigs.js';

const PLANT = plantOf(boardWith(), riderWith());
const LAW = { driveCurrentA: 80, brakeCurrentA: 60 };

function limits(speed: number, { plant = PLANT, law = LAW, currentA = 0 } = {}) {
  const motion = new Float64Array(MOTION_SIZE);
  motion[MOTOR_SPEED] = speed;
  motion[MOTOR_CURRENT] = currentA;
  const pack = new Float64Array(PACK_SIZE);
  pack[CHARGE] = 0.8;
  updatePack(plant, motion, pack);
  const ceilings = new Float64Array(CEILINGS_SIZE);
  findCeilings(law, plant, { motion, pack, ceilings });
  return {
    upper: ceilings[UPPER]!,
    lower: ceilings[LOWER]!,
    upperCause: CEILINGS[ceilings[UPPER_CAUSE]!],
    lowerCause: CEILINGS[ceilings[LOWER_CAUSE]!],
    openV: pack[OPEN_VOLTAGE]!,
    packV: pack[PACK_VOLTAGE]!,
  };
}

/** Pack current [A] of a motor current at a speed. */
function packCurrent(currentA: number, speed: number, plant: Plant = PLANT): number {
  const motion = Float64Array.of(currentA, speed);
  const pack = new Float64Array(PACK_SIZE);
  pack[CHARGE] = 0.8;
  updatePack(plant, motion, pack);
  return pack[PACK_CURRENT]!;
}

describe('ceilings', () => {
  it('have the codes that a tape names', () => {
    expect(CEILINGS[DRIVE_CEILING]).toBe('drive');
    expect(CEILINGS[BRAKE_CEILING]).toBe('brake');
    expect(CEILINGS[VOLTAGE_CEILING]).toBe('voltage');
    expect(CEILINGS[PACK_OUT_CEILING]).toBe('pack out');
    expect(CEILINGS[PACK_IN_CEILING]).toBe('pack in');
  });

  it('drive and brake bind at low speed, and change sides with the way the motor turns', () => {
    expect(limits(5)).toMatchObject({ upper: 80, upperCause: 'drive', lower: -60, lowerCause: 'brake' });
    expect(limits(-5)).toMatchObject({ upper: 60, upperCause: 'brake', lower: -80, lowerCause: 'drive' });
  });

  it('standing still counts as rolling forward', () => {
    expect(limits(0)).toMatchObject({ upper: 80, upperCause: 'drive', lower: -60, lowerCause: 'brake' });
  });

  it('pack out binds where the pack gives just its most, driving either way', () => {
    const ahead = limits(60);
    expect(ahead.upperCause).toBe('pack out');
    expect(packCurrent(ahead.upper, 60)).toBeCloseTo(40, 9);
    const back = limits(-60);
    expect(back).toMatchObject({ lowerCause: 'pack out', lower: -ahead.upper });
  });

  it('pack in binds where the pack takes just its most, braking either way', () => {
    const ahead = limits(60);
    expect(ahead.lowerCause).toBe('pack in');
    expect(packCurrent(ahead.lower, 60)).toBeCloseTo(-20, 9);
    expect(packCurrent(ahead.lower + 0.5, 60)).toBeGreaterThan(-20);
    const back = limits(-60);
    expect(back).toMatchObject({ upperCause: 'pack in', upper: -ahead.lower });
  });

  it('pack in gives way to a brake ceiling that is nearer, braking either way', () => {
    const law = { driveCurrentA: 80, brakeCurrentA: 5 };
    expect(packCurrent(-5, 60)).toBeGreaterThan(-20);
    expect(limits(60, { law })).toMatchObject({ lower: -5, lowerCause: 'brake' });
    expect(limits(-60, { law })).toMatchObject({ upper: 5, upperCause: 'brake' });
  });

  it('voltage binds near the no-load speed: mod V = K_t w + i R, with the V that the pack has at that current', () => {
    const { upper, upperCause } = limits(90);
    expect(upperCause).toBe('voltage');
    const { packV } = limits(90, { currentA: upper });
    expect(upper * 0.1 + 0.62 * 90).toBeCloseTo(0.95 * packV, 9);
    expect(limits(-90).lower).toBeCloseTo(-upper, 9);
    expect(limits(-90).lowerCause).toBe('voltage');
  });

  it('voltage is the most current that any modulation up to the full one can make', () => {
    for (const cellResistanceMilliohm of [2, 12, 60, 300]) {
      const plant = plantOf(
        boardWith({ pack: { cellResistanceMilliohm, dischargeCurrentA: 500 } }),
        riderWith(),
      );
      for (const speed of [-40, 0, 40, 70, 88]) {
        const law = { driveCurrentA: 1e4, brakeCurrentA: 1e4 };
        const { upper, upperCause, openV } = limits(speed, { plant, law });
        let most = -Infinity;
        for (let duty = 0; duty <= 0.95; duty += 0.0005) {
          const ohm = 0.1 + duty ** 2 * plant.pack.resistanceOhm;
          most = Math.max(most, (duty * openV - 0.62 * speed) / ohm);
        }
        if (upperCause === 'voltage') expect(upper / most).toBeCloseTo(1, 2);
        else expect(upper).toBeLessThan(most * 1.0001);
        const mirrored = limits(-speed, { plant, law });
        expect(mirrored.lower).toBeCloseTo(-upper, 9);
        expect(mirrored.lowerCause).toBe(upperCause);
      }
    }
  });

  it('does not move with the current of the moment, which would drive the voltage ceiling to and fro', () => {
    expect(limits(90, { currentA: 30 }).upper).toBe(limits(90).upper);
  });

  it('past the no-load speed asks for braking whatever is wished, and voltage is the cause both ways', () => {
    const noLoad = (0.95 * 15 * 4.042) / 0.62;
    const { upper, lower } = limits(noLoad + 1);
    expect(upper).toBeCloseTo(-0.62 / (0.1 + 0.95 ** 2 * PLANT.pack.resistanceOhm), 2);
    expect(lower).toBeLessThan(upper);
    const far = limits(noLoad + 30);
    expect(far.lower).toBe(far.upper);
    expect(far).toMatchObject({ upperCause: 'voltage', lowerCause: 'voltage' });
    const back = limits(-noLoad - 30);
    expect(back.upper).toBeCloseTo(-far.lower, 9);
    expect(back.lower).toBe(back.upper);
  });

  it('a pack that cannot give its rated current is asked for its matched load at most', () => {
    const feeble = plantOf(boardWith({ pack: { cellResistanceMilliohm: 300 } }), riderWith());
    const { upper, upperCause, openV } = limits(0, {
      plant: feeble,
      law: { driveCurrentA: 900, brakeCurrentA: 900 },
    });
    const most = openV / (2 * feeble.pack.resistanceOhm);
    expect(most).toBeLessThan(40);
    // Matched load is the most that either way of looking at it allows: rounding decides which is named.
    expect(['pack out', 'voltage']).toContain(upperCause);
    expect(packCurrent(upper, 0, feeble)).toBeCloseTo(most, 4);
  });

  it('always leave a range, whatever the rig and speed', () => {
    const next = chance(17);
    for (let draw = 0; draw < 2000; draw++) {
      const plant = plantOf(
        boardWith({
          motor: { torqueConstantNmPerA: 0.02 + 4.9 * next() ** 3, resistanceOhm: 0.005 + 4 * next() ** 3 },
          pack: {
            cellResistanceMilliohm: 1 + 299 * next() ** 3,
            dischargeCurrentA: 1 + 499 * next(),
            chargeCurrentA: 500 * next() * Math.round(next()),
          },
        }),
        riderWith(),
      );
      const { upper, lower } = limits(400 * next() - 200, { plant, currentA: 200 * next() - 100 });
      expect(Number.isFinite(upper) && Number.isFinite(lower)).toBe(true);
      expect(lower).toBeLessThanOrEqual(upper);
    }
  });
});
