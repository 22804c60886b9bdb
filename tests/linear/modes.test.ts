/**
 * Are the modes those of the loop, all of them and no others? Against the eigenvalues of the whole loop with every tick of the
 * rider's delay as a state of its own, which is possible while the delay is short.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { loopView, type LoopView } from '../../src/linear/loop-view.js';
import { modesOf } from '../../src/linear/modes.js';
import { steadyRide } from '../../src/linear/steady-ride.js';
import { INPUTS, OUTPUTS } from '../../src/linear/tick-map.js';
import { boardWith, COMPOSED, profileWith, riderWith } from '../rigs.js';

const WEIGHTS = { deckInertiaKgM2: 0.4, riderInertiaKgM2: 80, totalMassKg: 92 };

/** Eigenvalues of the closed loop as rates [1/s], from states, memory of the rider and rings of what he senses. */
function ratesOf({ map, rider }: LoopView): { re: number; im: number }[] {
  const { A, B, C } = map;
  const whole = Math.floor(rider.delayTicks);
  const part = rider.delayTicks - whole;
  const length = whole + 1;
  const states = A.rows;
  const [memory, rings] = [states, states + 3];
  const size = rings + 3 * length;
  const all = Matrix.zeros(size, size);
  const row = (name: (typeof OUTPUTS)[number]) => C.getRowVector(OUTPUTS.indexOf(name));
  const column = (name: (typeof INPUTS)[number]) => B.getColumnVector(INPUTS.indexOf(name));
  all.setSubMatrix(Matrix.add(A, column('request').mmul(row('asked'))), 0, 0);
  all.setSubMatrix(rider.A, memory, memory);
  (['lean', 'leanRate', 'speed'] as const).forEach((name, signal) => {
    const first = rings + signal * length;
    all.setSubMatrix(row(name), first, 0);
    for (let back = 1; back < length; back++) all.set(first + back, first + back - 1, 1);
    // Ring place k holds what was sensed k + 1 ticks ago.
    const weights: [number, number][] = [
      [first + whole - 1, 1 - part],
      [first + whole, part],
    ];
    for (const [place, weight] of weights) {
      for (let k = 0; k < 3; k++) all.set(memory + k, place, weight * rider.B.get(k, signal));
      const push = Matrix.mul(column('riderTorque'), weight * rider.D.get(0, signal));
      all.setSubMatrix(push, 0, place);
    }
  });
  const push = column('riderTorque').mmul(rider.C);
  all.setSubMatrix(Matrix.add(all.subMatrix(0, states - 1, memory, memory + 2), push), 0, memory);
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(all);
  return realEigenvalues.map((re, k) => {
    const im = imaginaryEigenvalues[k]!;
    return { re: Math.log(Math.hypot(re, im)) / map.tickS, im: Math.atan2(im, re) / map.tickS };
  });
}

describe('modes', () => {
  it.each([
    ['standing', 0, 0.025],
    ['at 18 km/h', 18, 0.03],
    ['at 18 km/h with a delay between ticks', 18, 0.0207],
  ])('%s are the eigenvalues of the whole loop', (_name, speedKmPerH, delayS) => {
    const rider = riderWith({ balance: { delayS, frequencyRadPerS: 2, dampingRatio: 0.8 } });
    const where = { speedKmPerH, gradePercent: 0, chargePercent: 80 };
    const view = loopView(
      steadyRide({ board: boardWith(), rider, profile: profileWith(COMPOSED), ...where }),
    );
    const felt = ratesOf(view)
      .filter(({ re, im }) => im > -1e-6 && re > -50 && Math.hypot(re, im) > 0.01)
      .sort((a, b) => a.re - b.re || a.im - b.im);
    const modes = modesOf(view, WEIGHTS)
      .filter(({ growthPerS }) => growthPerS > -50)
      .sort((a, b) => a.growthPerS - b.growthPerS || a.swingRadPerS - b.swingRadPerS);
    expect(modes.length).toBe(felt.length);
    expect(modes.length).toBeGreaterThan(6);
    modes.forEach(({ growthPerS, swingRadPerS, dampingRatio, frequencyHz }, k) => {
      const { re, im } = felt[k]!;
      expect(Math.hypot(growthPerS - re, swingRadPerS - im) / Math.hypot(re, im)).toBeLessThan(1e-5);
      expect(-dampingRatio * frequencyHz * 2 * Math.PI).toBeCloseTo(growthPerS, 9);
    });
  });

  it('say who moves: shares of one, the tyre in its own bounce at sqrt(k / m) (mechanics)', () => {
    const where = { speedKmPerH: 0, gradePercent: 0, chargePercent: 80 };
    const ride = steadyRide({
      board: boardWith(),
      rider: riderWith(),
      profile: profileWith(COMPOSED),
      ...where,
    });
    const modes = modesOf(loopView(ride), WEIGHTS);
    for (const { shares } of modes) {
      expect(Object.values(shares).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    }
    const { plant } = ride.plan.trial;
    // Two masses, legs between them, tyre below: the slower of the two bounces, undamped, from the 2 x 2 problem.
    const [mLow, mHigh] = [plant.wheelMassKg + plant.deckMassKg, plant.riderMassKg];
    const [k, c] = [plant.verticalStiffnessNPerM, plant.legStiffnessNPerM];
    const half = ((k + c) / mLow + c / mHigh) / 2;
    const slow = Math.sqrt(half - Math.sqrt(half * half - (k * c) / (mLow * mHigh)));
    const bounces = modes.filter(({ shares }) => shares.tyre > 0.9);
    const nearest = Math.min(
      ...bounces.map(({ frequencyHz }) => Math.abs((frequencyHz * 2 * Math.PI) / slow - 1)),
    );
    expect(bounces.length).toBeGreaterThan(0);
    // Damping moves it by a few percent.
    expect(nearest).toBeLessThan(0.1);
  });
});
