/**
 * Are values of a board that contradict one another found, and is a person told which ampere counts?
 */
import { describe, expect, it } from 'vitest';
import { crossCheckBoard } from '../../src/quantity/board-cross-check.js';
import { torqueConstantOf } from '../../src/quantity/motor-constant.js';
import { validBoard } from './valid-values.js';

function motorWith(constants: object): unknown {
  const { torqueConstantNmPerA: _left, ...motor } = validBoard().motor;
  return { ...validBoard(), motor: { ...motor, ...constants } };
}

describe('the two constants of the motor', () => {
  it('kM x kn = 9549.3 in mNm/A and rpm/V (maxon, "DC motor and EC motor - key information": 30000/pi)', () => {
    expect(torqueConstantOf(1) * 1000).toBeCloseTo(9549.3, 1);
    expect(torqueConstantOf(20)).toBeCloseTo(0.4775, 4);
  });

  it('one of the two is enough', () => {
    expect(crossCheckBoard(motorWith({ torqueConstantNmPerA: 0.62 }))).toEqual([]);
    expect(crossCheckBoard(motorWith({ speedConstantRpmPerV: 15.4 }))).toEqual([]);
  });

  it('neither is refused', () => {
    expect(crossCheckBoard(motorWith({}))).toEqual([
      {
        path: ['motor', 'torqueConstantNmPerA'],
        expected: 'torqueConstantNmPerA in Nm/A or speedConstantRpmPerV in rpm/V',
        received: 'neither',
      },
    ]);
  });

  it.each([0.951, 1, 1.049])('both pass when the ratio is %s', (ratio) => {
    const constants = { torqueConstantNmPerA: torqueConstantOf(15) * ratio, speedConstantRpmPerV: 15 };
    expect(crossCheckBoard(motorWith(constants))).toEqual([]);
  });

  it.each([0.5, 0.949, 1.051, 3])('both are refused when the ratio is %s', (ratio) => {
    const constants = { torqueConstantNmPerA: torqueConstantOf(15) * ratio, speedConstantRpmPerV: 15 };
    expect(crossCheckBoard(motorWith(constants))).toHaveLength(1);
  });

  it('the complaint has both numbers and the ampere that is meant', () => {
    const [complaint] = crossCheckBoard(motorWith({ torqueConstantNmPerA: 0.9, speedConstantRpmPerV: 15.4 }));
    expect(complaint?.expected).toContain('60/(2 pi x 15.4 rpm/V) = 0.6201 Nm/A');
    expect(complaint?.expected).toContain('per ampere of the equivalent direct-current motor');
    expect(complaint?.received).toBe('0.9 Nm/A, which is 45.14 % off');
  });

  it('a constant per ampere of a phase is recognised (sqrt(3)/2 peak, sqrt(3/2) rms: three-phase algebra)', () => {
    const said = (ratio: number) => {
      const constants = { torqueConstantNmPerA: torqueConstantOf(20) * ratio, speedConstantRpmPerV: 20 };
      return crossCheckBoard(motorWith(constants))[0]?.received;
    };
    expect(said(0.866)).toContain('as if it were per the peak ampere of one phase');
    expect(said(1.2247)).toContain('as if it were per the rms ampere of one phase');
    expect(said(2)).not.toContain('as if');
  });

  it('a constant of a wrong type counts as given, and is left to the field', () => {
    expect(crossCheckBoard(motorWith({ torqueConstantNmPerA: 'strong' }))).toEqual([]);
    expect(crossCheckBoard({ motor: null })).toHaveLength(1);
    expect(crossCheckBoard({})).toEqual([]);
  });
});

describe('the open-circuit curve', () => {
  const board = (openCircuit: unknown) => ({ ...validBoard(), pack: { ...validBoard().pack, openCircuit } });

  it('passes when both columns rise', () => {
    const points = [3.0, 3.6, 4.2].map((cellV, i) => ({ chargePercent: 50 * i, cellV }));
    expect(crossCheckBoard(board(points))).toEqual([]);
  });

  it('is refused wherever a column stands still or falls', () => {
    const points = [
      { chargePercent: 0, cellV: 3.0 },
      { chargePercent: 50, cellV: 3.0 },
      { chargePercent: 40, cellV: 3.9 },
      { chargePercent: 100, cellV: 3.8 },
    ];
    expect(crossCheckBoard(board(points)).map(({ path, received }) => [path.slice(2), received])).toEqual([
      [[2, 'chargePercent'], '40 %'],
      [[1, 'cellV'], '3 V'],
      [[3, 'cellV'], '3.8 V'],
    ]);
  });

  it('steps over points that are no points', () => {
    const points = [
      { chargePercent: 60, cellV: 3.7 },
      null,
      { chargePercent: 'all' },
      { chargePercent: 50, cellV: 4 },
    ];
    expect(crossCheckBoard(board(points)).map(({ path }) => path)).toEqual([
      ['pack', 'openCircuit', 3, 'chargePercent'],
    ]);
  });
});
