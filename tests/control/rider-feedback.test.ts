/**
 * The rider's two loops against their formulas written out by hand, and against published models of standing. Gains
 * from the body: A = 1 + m L / (r m_eff), K = (m g L + J w^2) / A, D = 2 zeta w J / A.
 */
import { Matrix, solve } from 'ml-matrix';
import { beforeEach, describe, expect, it } from 'vitest';
import * as rider from '../../src/control/rider-feedback.js';
import { derive } from '../../src/model/derive.js';
import { plantOf } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import { solveReference } from '../../src/simulate/reference.js';
import { boardWith, planeRoad, riderWith } from '../rigs.js';

const TICK = 1 / 800;
const G = 9.80665;
const FILE = riderWith({ balance: { delayS: 0.14, frequencyRadPerS: 2, dampingRatio: 0.8 } });
const PLANT = plantOf(boardWith(), FILE);

/** Made anew for each test, which so can be seen to hold it by itself. */
let usualLaw: rider.RiderLaw;
beforeEach(() => {
  usualLaw = rider.riderLaw(FILE, PLANT, TICK);
});

interface Sense {
  lean?: number;
  leanRate?: number;
  speed?: number;
  wanted?: number;
  scripted?: number;
}

function step(memory: Float64Array, sense: Sense, law = usualLaw): number {
  const sensed = new Float64Array(rider.SENSED_SIZE);
  sensed[rider.SENSED_LEAN] = sense.lean ?? 0;
  sensed[rider.SENSED_LEAN_RATE] = sense.leanRate ?? 0;
  sensed[rider.SENSED_SPEED] = sense.speed ?? 0;
  sensed[rider.WANTED_SPEED] = sense.wanted ?? 0;
  sensed[rider.SCRIPTED_TORQUE] = sense.scripted ?? 0;
  rider.riderStep(law, sensed, memory);
  return memory[rider.ACTIVE_TORQUE]!;
}

/** Lean acceleration of an upright rider on a wheel that rolls without slip, his ankles in the axle and the deck held level by the motor. */
function leanAcceleration(leanRad: number, torqueNm: number): number {
  const plant = { ...PLANT, ankleAboveAxleM: 0, deckAboveAxleM: 0, passiveStiffnessNmPerRad: 0 };
  const weightN = plant.totalMassKg * G;
  const evaluate = (treadN: number, motorNm: number) => {
    const state = new Float64Array(at.STATE_SIZE);
    state[at.Z] = 0.14 - weightN / plant.verticalStiffnessNPerM;
    state[at.LEG] = plant.legLengthM;
    state[at.LEAN] = leanRad;
    state[at.TREAD] = treadN / plant.treadStiffnessNPerM;
    const out = new Float64Array(at.DERIVE_SIZE);
    derive(plant, planeRoad(0), Float64Array.of(motorNm, torqueNm, 0, 1e6, 0), state, out);
    return [0.14 * out[at.WHEEL + at.RATE]! - out[at.X + at.RATE]!, out[at.PITCH + at.RATE]!, out] as const;
  };
  const [base, driven, turned] = [evaluate(0, 0), evaluate(1, 0), evaluate(0, 1)];
  const effect = new Matrix([
    [driven[0] - base[0], turned[0] - base[0]],
    [driven[1] - base[1], turned[1] - base[1]],
  ]);
  const [treadN, motorNm] = solve(effect, Matrix.columnVector([-base[0], -base[1]])).to1DArray();
  return evaluate(treadN!, motorNm!)[2][at.LEAN + at.RATE]!;
}

const fresh = () => new Float64Array(rider.RIDER_SIZE);

describe('inner loop', () => {
  it('has gains from the body, worked by hand for 78 kg on 14 kg of board', () => {
    const J = 9.5 + 78 * 0.95 ** 2; // 79.895 kg m2
    const A = 1 + (78 * 0.95) / (0.14 * (92 + 0.055 / 0.14 ** 2)); // 6.583
    expect(A).toBeCloseTo(6.583, 3);
    expect(usualLaw.stiffnessNmPerRad).toBeCloseTo((78 * G * 0.95 + J * 4) / A, 9);
    expect(usualLaw.stiffnessNmPerRad).toBeCloseTo(158.9, 0);
    expect(usualLaw.dampingNmSPerRad).toBeCloseTo((2 * 0.8 * 2 * J) / A, 9);
    expect(usualLaw.delayTicks).toBeCloseTo(0.14 * 800, 9);
  });

  it('answers lean and lean rate with -K and -D, and takes the script as it comes', () => {
    expect(step(fresh(), { lean: 0.1 })).toBeCloseTo(-0.1 * usualLaw.stiffnessNmPerRad, 12);
    expect(step(fresh(), { leanRate: 0.1 })).toBeCloseTo(-0.1 * usualLaw.dampingNmSPerRad, 12);
    expect(step(fresh(), { scripted: -17 })).toBeCloseTo(-17, 12);
  });

  it('counts foot torque A-fold, as the plant does: it also drives the board under him while the deck is held level', () => {
    const [lean, torque] = [1e-5, 1e-3];
    const [still, leaning, pushing] = [
      leanAcceleration(0, 0),
      leanAcceleration(lean, 0),
      leanAcceleration(0, torque),
    ];
    const A = 1 + (78 * 0.95) / (0.14 * (92 + 0.055 / 0.14 ** 2));
    const perRad = (leaning - still) / lean;
    const perNm = (pushing - still) / torque;
    expect(perNm / perRad).toBeCloseTo(A / (78 * G * 0.95), 8);
    // The rolling board takes m^2 L^2 / m_eff off the inertia, which the gains leave in: with no delay and a deck that
    // is held level he would return at 3.8 rad/s where his file says 2.
    expect(1 / perNm).toBeCloseTo(
      (9.5 + 78 * 0.95 ** 2 - (78 * 0.95) ** 2 / (92 + 0.055 / 0.14 ** 2)) / A,
      6,
    );
    expect(Math.sqrt(usualLaw.stiffnessNmPerRad * perNm - perRad)).toBeCloseTo(3.8, 1);
  });

  // R. J. Peterka, J. Neurophysiology 88 (2002) 1097 (from memory): stiffness about 1.3 m g h, damping 0.3 to 0.45 m g h s;
  // a table of published sets spans 1.2 to 1.6.
  it('is as stiff, for its effect, as published standing: 1.2 to 1.6 times m g h', () => {
    const A = 1 + (78 * 0.95) / (0.14 * (92 + 0.055 / 0.14 ** 2));
    const share = (A * usualLaw.stiffnessNmPerRad) / (78 * G * 0.95);
    expect(share).toBeGreaterThan(1.2);
    expect(share).toBeLessThan(1.6);
    const damping = (A * usualLaw.dampingNmSPerRad) / (78 * G * 0.95);
    expect(damping).toBeGreaterThan(0.3);
    expect(damping).toBeLessThan(0.52);
  });
});

describe('outer loop', () => {
  it('smooths the wish as a critically damped filter at w_f, exactly while it is held', () => {
    const memory = fresh();
    for (let tick = 0; tick < 480; tick++) step(memory, { wanted: 0.5 });
    const w = 3;
    const t = 480 * TICK;
    expect(memory[rider.SMOOTH_ACCELERATION]).toBeCloseTo(0.5 * (1 - (1 + w * t) * Math.exp(-w * t)), 12);
    expect(memory[rider.SMOOTH_ACCELERATION_RATE]).toBeCloseTo(0.5 * w * w * t * Math.exp(-w * t), 12);
    const [end] = solveReference((_t, [a, rate]) => [rate!, w * w * (0.5 - a!) - 2 * w * rate!], [0, 0], {
      xEnd: t,
      tolerance: 1e-12,
    })!;
    expect(memory[rider.SMOOTH_ACCELERATION]).toBeCloseTo(end!, 9);
  });

  it('asks for no more than he dares: +0.8 and -1.2 m/s2', () => {
    for (const [wanted, most] of [
      [20, 0.8],
      [-20, -1.2],
    ] as const) {
      const memory = fresh();
      for (let tick = 0; tick < 8000; tick++) step(memory, { wanted });
      expect(memory[rider.SMOOTH_ACCELERATION]).toBeCloseTo(most, 9);
    }
  });

  it('leans for it: (1 + kappa) atan(a / g), and pushes the board along with -m_t r a', () => {
    const memory = fresh();
    memory[rider.SMOOTH_ACCELERATION] = 0.6;
    const kappa = (92 * 0.14) / (78 * 0.95);
    const lean = (1 + kappa) * Math.atan(0.6 / G);
    const torque = step(memory, { wanted: 0, speed: 0, lean });
    expect(torque).toBeCloseTo(-92 * 0.14 * 0.6, 9);
  });

  it('trims his lean by (1 + kappa) / g e / (T_v T_i) a second', () => {
    const memory = fresh();
    for (let tick = 0; tick < 800; tick++) step(memory, { wanted: 0.3 });
    const kappa = (92 * 0.14) / (78 * 0.95);
    expect(memory[rider.LEAN_TRIM]).toBeCloseTo(((1 + kappa) / G) * (0.3 / 4), 12);
  });

  it('wishes for e / T_v and trims by T_v T_i, each of its own', () => {
    const law = rider.riderLaw(riderWith({ pace: { speedTimeS: 2, trimTimeS: 3 } }), PLANT, TICK);
    const memory = fresh();
    for (let tick = 0; tick < 800; tick++) step(memory, { wanted: 0.3 }, law);
    const kappa = (92 * 0.14) / (78 * 0.95);
    expect(memory[rider.LEAN_TRIM]).toBeCloseTo(((1 + kappa) / G) * (0.3 / 6), 12);
    for (let tick = 800; tick < 8000; tick++) step(memory, { wanted: 0.3 }, law);
    expect(memory[rider.SMOOTH_ACCELERATION]).toBeCloseTo(0.3 / 2, 9);
  });

  it('moves with his trim: the lean rate that he aims for is that of trim and wish together', () => {
    const memory = fresh();
    memory[rider.SMOOTH_ACCELERATION] = 0.6;
    memory[rider.SMOOTH_ACCELERATION_RATE] = 0.4;
    const kappa = (92 * 0.14) / (78 * 0.95);
    const lean = (1 + kappa) * Math.atan(0.6 / G);
    const wishRate = ((1 + kappa) * (0.4 / G)) / (1 + (0.6 / G) ** 2);
    const trimRate = ((1 + kappa) / G) * (0.3 / 4);
    const torque = step(memory, { wanted: 0.3, lean, leanRate: wishRate + trimRate });
    expect(torque).toBeCloseTo(-92 * 0.14 * 0.6, 9);
  });

  it('holds the trim while the wish is clamped, unless that would unwind it', () => {
    const memory = fresh();
    for (let tick = 0; tick < 80; tick++) step(memory, { wanted: 5 });
    expect(memory[rider.LEAN_TRIM]).toBe(0);
    memory[rider.LEAN_TRIM] = -0.1;
    step(memory, { wanted: 5 });
    expect(memory[rider.LEAN_TRIM]).toBeGreaterThan(-0.1);
  });

  it('goes on trimming when the clamped wish has got through and the speed still moves the wrong way', () => {
    const memory = fresh();
    memory[rider.SMOOTH_ACCELERATION] = -1.2;
    memory[rider.LAST_SPEED] = 6;
    step(memory, { wanted: 0, speed: 6.01 });
    expect(memory[rider.LEAN_TRIM]).toBeLessThan(0);
    const gaining = fresh();
    gaining[rider.SMOOTH_ACCELERATION] = -1.2;
    gaining[rider.LAST_SPEED] = 6;
    step(gaining, { wanted: 0, speed: 5.99 });
    expect(gaining[rider.LEAN_TRIM]).toBe(0);
    const even = fresh();
    even[rider.SMOOTH_ACCELERATION] = -1.2;
    even[rider.LAST_SPEED] = 6;
    step(even, { wanted: 0, speed: 6 });
    expect(even[rider.LEAN_TRIM]).toBe(0);
  });

  it('has patience until nine tenths of the clamped wish have got through', () => {
    for (const [through, insists] of [
      [0.85, false],
      [0.95, true],
    ] as const) {
      const memory = fresh();
      memory[rider.SMOOTH_ACCELERATION] = -1.2 * through;
      memory[rider.LAST_SPEED] = 6;
      step(memory, { wanted: 0, speed: 6.01 });
      expect(memory[rider.LEAN_TRIM]! < 0).toBe(insists);
    }
  });

  it('then leans further for the acceleration he asked for: (1 + kappa) / g a / T_i a second', () => {
    const law = rider.riderLaw(riderWith({ pace: { speedTimeS: 2, trimTimeS: 3 } }), PLANT, TICK);
    const memory = fresh();
    memory[rider.SMOOTH_ACCELERATION] = -1.2;
    memory[rider.LAST_SPEED] = 6;
    step(memory, { wanted: 0, speed: 6.01 }, law);
    const kappa = (92 * 0.14) / (78 * 0.95);
    expect(memory[rider.LEAN_TRIM]).toBeCloseTo((((1 + kappa) / G) * (-1.2 / 3)) / 800, 12);
  });

  it('trims no further than 0.25 rad, and then does not swing on as if it did', () => {
    const memory = fresh();
    memory[rider.LEAN_TRIM] = 0.25;
    const torque = step(memory, { wanted: 0.3, lean: 0.25 });
    expect(memory[rider.LEAN_TRIM]).toBe(0.25);
    expect(torque).toBeCloseTo(0, 12);
  });
});
