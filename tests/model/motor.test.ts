/** Torque constant, back voltage and current lag of the motor against makers' relations and published machines. */
import { describe, expect, it } from 'vitest';
import { lagDecay } from '../../src/model/motor.js';
import { plantOf } from '../../src/model/plant.js';
import { boardSchema } from '../../src/quantity/board-file.js';
import { solveReference } from '../../src/simulate/reference.js';
import { boardWith, riderWith } from '../rigs.js';

/** Torque constant [Nm/A] of a board that gives only its no-load speed constant [rpm/V]. */
function torqueConstantNmPerA(speedConstantRpmPerV: number): number {
  const { torqueConstantNmPerA: _given, ...motor } = boardWith().motor;
  const board = boardSchema.parse({ ...boardWith(), motor: { ...motor, speedConstantRpmPerV } });
  return plantOf(board, riderWith()).motor.torqueConstantNmPerA;
}

describe('torque constant from speed constant', () => {
  // maxon motor, "DC motor and EC motor: key information": k_M k_n = 30000 / pi in mNm/A and rpm/V.
  it.each([5, 16.5, 24, 190])("obeys a motor maker's k_M k_n = 30000 / pi at %d rpm/V", (rpmPerV) => {
    expect(1000 * torqueConstantNmPerA(rpmPerV) * rpmPerV).toBeCloseTo(30000 / Math.PI, 8);
  });

  // A paper's table of a servo motor: K_e 51 V per 1000 rpm, K_t 0.49 Nm/A (encyclopedia2.thefreedictionary.com,
  // "torque constant"): 0.487 V s/rad, which the table rounds up.
  it('gives 0.487 Nm/A for a published servo motor of 51 V per 1000 rpm, sold as 0.49', () => {
    expect(torqueConstantNmPerA(1000 / 51)).toBeCloseTo(0.487, 3);
    expect(Math.abs(torqueConstantNmPerA(1000 / 51) - 0.49)).toBeLessThan(0.005);
  });

  // DC motor of the control tutorials of the University of Michigan: K_t = K_e in SI units, by energy.
  it('makes power electrical and mechanical alike: K_t i w = (K_e w) i at the no-load speed of one volt', () => {
    const noLoadRadPerSPerV = (10 * 2 * Math.PI) / 60;
    expect(torqueConstantNmPerA(10) * noLoadRadPerSPerV).toBeCloseTo(1, 12);
  });
});

describe('current lag', () => {
  it('leaves 1/e of the gap after one time constant, and none without a lag', () => {
    expect(lagDecay(0.0015, 0.0015)).toBeCloseTo(Math.exp(-1), 15);
    expect(lagDecay(0, 0.0015)).toBe(1);
    expect(lagDecay(0.001, 0)).toBe(0);
    expect(lagDecay(0, 0)).toBe(0);
  });

  it('solves i = (request - i) / lag exactly (against odex)', () => {
    const end = solveReference((_t, [i]) => [(40 - i!) / 0.0015], [-10], { xEnd: 1 / 800, tolerance: 1e-12 });
    expect(40 + (-10 - 40) * lagDecay(1 / 800, 0.0015)).toBeCloseTo(end![0]!, 9);
  });
});
