/**
 * Our equations of motion against equations.py: the same picture put through Lagrange's equations by a computer algebra
 * system, evaluated with 50 digits and rounded once (`vectors.json`, made by vectors.py).
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive } from '../../src/model/derive.js';
import type { Ground } from '../../src/model/ground.js';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import { largest, plantWith } from '../rigs.js';
import { jacobianOf } from './jacobian.js';

interface Vector {
  rig: Partial<Plant>;
  road: { slope: number; heightM: number };
  inputs: {
    motorTorqueNm: number;
    riderTorqueNm: number;
    shoveN: number;
    gripRatio: number;
    rollingResistanceRatio: number;
  };
  state: number[];
  derivative: number[];
}

interface Case extends Vector {
  kind: string;
  where: Record<'wheel' | 'tread' | 'legs' | 'feet', string>;
}

interface LinearVector extends Vector {
  name: string;
  A: number[][];
  B: number[][];
}

const { cases, operatingPoints, gravityMPerS2 } = JSON.parse(
  readFileSync(new URL('vectors.json', import.meta.url), 'utf8'),
) as { cases: Case[]; operatingPoints: LinearVector[]; gravityMPerS2: number };

/** A plane as a round tyre meets it, in one piece around the wheel, so that its height is exact to the last bits. */
function planeUnder({ road: { slope, heightM }, rig, state }: Vector): Ground {
  const originM = Math.floor(state[at.X]!) - 1;
  const spacingM = 4;
  const lift = rig.wheelRadiusM! * (Math.sqrt(1 + slope * slope) - 1);
  const height = (xM: number) => heightM + slope * xM + lift;
  return {
    originM,
    spacingM,
    knots: Float64Array.of(height(originM), slope * spacingM, height(originM + spacingM), slope * spacingM),
    bareHeightM: Float64Array.of(0, 0),
  };
}

function setUp(vector: Vector) {
  const { inputs: given } = vector;
  return {
    plant: plantWith({
      ...vector.rig,
      totalMassKg: vector.rig.wheelMassKg! + vector.rig.deckMassKg! + vector.rig.riderMassKg!,
    }),
    road: planeUnder(vector),
    state: Float64Array.from(vector.state),
    inputs: Float64Array.of(
      given.motorTorqueNm,
      given.riderTorqueNm,
      given.shoveN,
      given.gripRatio,
      given.rollingResistanceRatio,
    ),
  };
}

/** Largest difference of the rates, each against the largest acceleration of its case or g. */
function differenceOf(vector: Vector): number {
  const { plant, road, state, inputs } = setUp(vector);
  const out = new Float64Array(at.DERIVE_SIZE);
  derive(plant, road, inputs, state, out);
  const scale = Math.max(largest(vector.derivative.slice(at.RATE, at.TREAD)), gravityMPerS2);
  return largest(vector.derivative.map((expected, place) => (out[place]! - expected) / scale));
}

describe('equations of motion against a symbolic derivation', () => {
  it('is asked about every branch of every force law', () => {
    const branches = (part: keyof Case['where']) => new Set(cases.map((one) => one.where[part]));
    expect(cases.length).toBeGreaterThanOrEqual(60);
    for (const part of ['wheel', 'tread', 'legs', 'feet'] as const) {
      expect(branches(part).size, part).toBeGreaterThanOrEqual(2);
    }
    expect(Math.min(...cases.map((one) => one.road.slope))).toBeLessThan(-0.1);
    expect(Math.max(...cases.map((one) => one.road.slope))).toBeGreaterThan(0.1);
  });

  it.each(cases.map((one, index) => ({ ...one, index })))('$kind, case $index', (vector) => {
    expect(differenceOf(vector)).toBeLessThan(1e-12);
  });

  it('would see a thousandth of a millimetre in a length', () => {
    const moved = cases.map((vector) => {
      const rig = { ...vector.rig, deckAboveAxleM: vector.rig.deckAboveAxleM! + 1e-6 };
      return differenceOf({ ...vector, rig });
    });
    expect(Math.min(...moved)).toBeGreaterThan(1e-12);
  });
});

describe('Jacobians against the symbolic derivatives', () => {
  it.each(operatingPoints)('about $name', (point) => {
    const { plant, road, state, inputs } = setUp(point);
    const { A, B } = jacobianOf(plant, road, { state, inputs });
    expect(differenceOf(point)).toBeLessThan(1e-12);
    for (let row = 0; row < at.STATE_SIZE; row++) {
      const expected = [...point.A[row]!, ...point.B[row]!];
      const found = [...A.getRow(row), B.get(row, at.MOTOR_TORQUE), B.get(row, at.RIDER_TORQUE)];
      const scale = largest(expected);
      expect(largest(expected.map((value, column) => found[column]! - value)), `row ${row}`).toBeLessThan(
        1e-8 * scale,
      );
    }
  });
});
