/**
 * Rigs whose tyre, legs or slow loop are too stiff for one step a tick: the fixed step must take more by itself, or it
 * would report falls that are its own. Stability limit of the classical Runge-Kutta method: 2.78 on the negative real
 * axis, 2.83 on the imaginary one (J. C. Butcher, Numerical Methods for Ordinary Differential Equations).
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { derive } from '../../src/model/derive.js';
import { plantOf, type Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import { stepsFor } from '../../src/simulate/fixed-step.js';
import { run } from '../../src/simulate/run.js';
import {
  boardWith,
  chance,
  columnOf,
  COMPOSED,
  largest,
  planeRoad,
  profileWith,
  riderWith,
  scenarioWith,
  trialWith,
} from '../rigs.js';

/** Largest magnitude of an eigenvalue of a rig that stands upright on its squashed tyre, 1/s. */
function fastestRate(plant: Plant): number {
  const inputs = Float64Array.of(0, 0, 0, 1e6, 0);
  const state = new Float64Array(at.STATE_SIZE);
  state[at.Z] = plant.wheelRadiusM - (plant.totalMassKg * 9.80665) / plant.verticalStiffnessNPerM;
  state[at.LEG] = plant.legLengthM;
  const road = planeRoad(0, plant.wheelRadiusM);
  const rates = (place: number, step: number) => {
    const moved = state.slice();
    moved[place]! += step;
    const out = new Float64Array(at.DERIVE_SIZE);
    derive(plant, road, inputs, moved, out);
    return out;
  };
  const h = 1e-6;
  const jacobian = Matrix.zeros(at.STATE_SIZE, at.STATE_SIZE);
  for (let place = 0; place < at.STATE_SIZE; place++) {
    const [after, before] = [rates(place, h), rates(place, -h)];
    for (let row = 0; row < at.STATE_SIZE; row++)
      jacobian.set(row, place, (after[row]! - before[row]!) / (2 * h));
  }
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(jacobian);
  return Math.max(...realEigenvalues.map((real, index) => Math.hypot(real, imaginaryEigenvalues[index]!)));
}

const next = chance(404);
const between = (low: number, high: number) => low + (high - low) * next();

function drawnRig() {
  const board = boardWith({
    wheel: { radiusM: between(0.1, 0.2), massKg: between(1, 12), inertiaKgM2: between(0.01, 0.15) },
    tyre: {
      verticalStiffnessNPerM: between(2e4, 4e5),
      verticalDampingNSPerM: between(0, 5000),
      longitudinalStiffnessNPerM: between(2e4, 4e5),
      longitudinalDampingNSPerM: between(0, 5000),
    },
    deck: { massKg: between(2, 20), inertiaKgM2: between(0.05, 1.5), centreAboveAxleM: between(-0.2, 0.2) },
  });
  const rider = riderWith({
    stance: { legDampingNSPerM: between(50, 10_000), passiveDampingNmSPerRad: between(0, 400) },
  });
  return { board, rider };
}

describe('steps of the fixed step for a rig', () => {
  it('are one for the usual rig from 150 ticks a second on', () => {
    const plant = plantOf(boardWith(), riderWith());
    for (const loopRateHz of [150, 400, 800, 4000]) expect(stepsFor(plant, 1 / loopRateHz)).toBe(1);
    expect(stepsFor(plant, 1 / 100)).toBe(2);
  });

  it('keep the fastest motion of any rig, by the eigenvalues of its equations, inside the stable region', () => {
    for (let draw = 0; draw < 200; draw++) {
      const { board, rider } = drawnRig();
      const plant = plantOf(board, rider);
      const tickS = 1 / between(100, 4000);
      const ratio = (fastestRate(plant) * tickS) / stepsFor(plant, tickS);
      expect(ratio).toBeLessThan(2.78);
    }
  });
});

describe('a stiff rig at a slow loop', () => {
  it('rides as it does with the reference solver, where one step a tick would report a fall of its own making', () => {
    const board = boardWith({
      tyre: { verticalDampingNSPerM: 1500, longitudinalDampingNSPerM: 4500 },
      controller: { loopRateHz: 300 },
    });
    const scenario = scenarioWith({
      durationS: 2,
      start: { speedKmPerH: 8 },
      speeds: [{ atS: 0, speedKmPerH: 8 }],
      road: [{ lengthM: 20, gradePercent: 2, roughness: 'B' }],
    });
    const trial = trialWith({ board, scenario, noiseRatio: 1 });
    const profile = profileWith(COMPOSED);
    const reference = run(trial, profile, { solver: 'reference' });
    const quick = run(trial, profile, { solver: 'fixed' });
    expect(reference.outcome.kind).toBe('upright');
    expect(quick.outcome).toEqual(reference.outcome);
    const pitch = columnOf(reference.tape, 'pitchRad');
    expect(largest(columnOf(quick.tape, 'pitchRad').map((value, tick) => value - pitch[tick]!))).toBeLessThan(
      1e-3,
    );
    expect(run(trial, profile, { solver: 'fixed', stepsPerTick: 1 }).outcome.kind).not.toBe('upright');
  });
});
