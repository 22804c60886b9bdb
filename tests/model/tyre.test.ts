/** Contact of tyre and road where a hand can follow it: a slope, the air, grip used up. Coulomb's law of friction. */
import { describe, expect, it } from 'vitest';
import * as at from '../../src/model/state.js';
import { releaseTread, tyreForces } from '../../src/model/tyre.js';
import { planeRoad, plantWith } from '../rigs.js';

const PLANT = plantWith();
const { wheelRadiusM: r, verticalStiffnessNPerM: kt, treadStiffnessNPerM: kx } = PLANT;
const GRIP = 0.5;

function forces(slope: number, set: Record<number, number>) {
  const state = new Float64Array(at.STATE_SIZE);
  for (const [place, value] of Object.entries(set)) state[Number(place)] = value;
  const inputs = new Float64Array(at.INPUT_SIZE);
  inputs[at.GRIP] = GRIP;
  const out = new Float64Array(at.DERIVE_SIZE);
  tyreForces(PLANT, planeRoad(slope), inputs, state, out);
  return {
    loadN: out[at.WHEEL_LOAD]!,
    treadN: out[at.TREAD_FORCE]!,
    slide: out[at.TREAD]!,
    state,
    inputs,
  };
}

/** Axle over the place x = 3 of a slope, its distance from the plane less than the radius by a squash. */
function squashed(slope: number, squashM: number): Record<number, number> {
  return { [at.X]: 3, [at.Z]: 3 * slope + (r - squashM) * Math.hypot(1, slope) };
}

describe('a tyre on a slope', () => {
  for (const slope of [0, 0.12, -0.4]) {
    it(`of ${slope} is squashed along the normal of the road`, () => {
      expect(forces(slope, squashed(slope, 0.01)).loadN).toBeCloseTo(kt * 0.01, 6);
      expect(forces(slope, squashed(slope, -1e-9)).loadN).toBe(0);
    });

    it(`of ${slope} feels speed into the road as load and speed along it as slide`, () => {
      const s = Math.hypot(1, slope);
      const into = forces(slope, {
        ...squashed(slope, 0.01),
        [at.X + at.RATE]: (0.2 * slope) / s,
        [at.Z + at.RATE]: -0.2 / s,
      });
      expect(into.loadN).toBeCloseTo(kt * 0.01 + PLANT.verticalDampingNSPerM * 0.2, 6);
      expect(into.slide).toBeCloseTo(0, 12);
      const along = forces(slope, {
        ...squashed(slope, 0.01),
        [at.X + at.RATE]: 2 / s,
        [at.Z + at.RATE]: (2 * slope) / s,
        [at.WHEEL + at.RATE]: 2.1 / r,
      });
      expect(along.loadN).toBeCloseTo(kt * 0.01, 6);
      expect(along.slide).toBeCloseTo(0.1, 12);
      expect(along.treadN).toBeCloseTo(PLANT.treadDampingNSPerM * 0.1, 9);
    });
  }

  it('never pulls: rising faster than the spring pushes, it is light', () => {
    const { loadN, treadN } = forces(0, {
      ...squashed(0, 0.001),
      [at.Z + at.RATE]: 1,
      [at.TREAD]: 0.01,
    });
    expect(loadN).toBe(0);
    expect(Math.abs(treadN)).toBe(0);
  });
});

describe('a tyre that does not touch', () => {
  it.each([
    ['clear of the road', -0.01],
    ['by a hair', -1e-9],
    ['just meeting it', 0],
  ])('%s bears nothing and drives nothing, however fast it comes down and spins', (_, squashM) => {
    const { loadN, treadN, slide } = forces(0, {
      ...squashed(0, squashM),
      [at.Z + at.RATE]: -3,
      [at.WHEEL + at.RATE]: 2 / r,
      [at.TREAD]: 0.01,
    });
    expect(loadN).toBe(0);
    expect(treadN).toBe(0);
    expect(slide).toBeCloseTo(2, 12);
  });
});

/** What `derive` leaves behind, with only a wheel load [N] in it. */
function ratesWith(loadN: number): Float64Array {
  const rates = new Float64Array(at.DERIVE_SIZE);
  rates[at.WHEEL_LOAD] = loadN;
  return rates;
}

describe('grip', () => {
  it('bounds the tread force by mu N, either way', () => {
    for (const sense of [1, -1]) {
      const { treadN } = forces(0, { ...squashed(0, 0.01), [at.TREAD]: sense * 0.05 });
      expect(treadN).toBeCloseTo(sense * GRIP * kt * 0.01, 9);
    }
  });

  it('brings the shear back to mu N / k_x after a slide, says so, and leaves what holds alone', () => {
    const most = (GRIP * 700) / kx;
    for (const [shear, left, released] of [
      [0.05, most, true],
      [-0.05, -most, true],
      [most, most, false],
      [-most, -most, false],
      [most / 2, most / 2, false],
      [-most / 2, -most / 2, false],
    ] as const) {
      const { state, inputs } = forces(0, { [at.TREAD]: shear });
      expect(releaseTread(PLANT, inputs, ratesWith(700), state)).toBe(released);
      expect(state[at.TREAD]).toBeCloseTo(left, 15);
    }
  });

  it('leaves no shear in the air', () => {
    const { state, inputs } = forces(0, { [at.TREAD]: 0.004 });
    releaseTread(PLANT, inputs, ratesWith(0), state);
    expect(state[at.TREAD]).toBe(0);
  });
});
