/**
 * A run begins in balance: left alone, nothing moves. What the balance must be is known from statics: on a slope the
 * motor carries M g r sin(alpha), on the level rolling resistance and air (relations of the planar wheeled pendulum:
 * K. Pathak, J. Franch, S. K. Agrawal, IEEE Trans. Robotics 21 (2005) 505, from memory).
 */
import { describe, expect, it } from 'vitest';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import type { ScenarioFile } from '../../src/quantity/scenario-file.js';
import { run, type Solver } from '../../src/simulate/run.js';
import type { Tape, TapeColumn } from '../../src/simulate/tape.js';
import { columnOf, COMPOSED, largest, profileWith, scenarioWith, trialWith } from '../rigs.js';

const GRAVITY = 9.80665;

function rolling(speedKmPerH: number, gradePercent = 0, durationS = 3): ScenarioFile {
  return scenarioWith({
    durationS,
    start: { speedKmPerH },
    road: [{ lengthM: 100, gradePercent }],
    speeds: [{ atS: 0, speedKmPerH }],
  });
}

function drift(tape: Tape, column: TapeColumn): number {
  const values = columnOf(tape, column);
  return largest(values.map((value) => value - values[0]!));
}

function tapeOf(scenario: ScenarioFile, profile: ProfileFile, solver: Solver = 'fixed'): Tape {
  const { outcome, tape } = run(trialWith({ scenario }), profile, { solver });
  expect(outcome).toEqual({ kind: 'upright', atS: scenario.durationS });
  return tape;
}

const PROFILES = {
  plain: profileWith(COMPOSED),
  'with integral': profileWith([20, 1.2, 10]),
  'with an integral at its limit, trim, progressive stiffness and load feed-forward': profileWith(
    [20, 1.2, 10],
    {
      integralLimitA: 3,
      restTrimNoseUpDeg: 2,
      progressiveStiffnessPerDeg: 0.1,
      loadFeedForward: { filterTimeS: 0.5, currentShare: 0.3, noseUpDegPerA: 0.02 },
    },
  ),
};

describe('a steady start stays steady', () => {
  it.each(['fixed', 'reference'] as const)('standing still for ten seconds, %s solver', (solver) => {
    const tape = tapeOf(rolling(0, 0, 10), PROFILES.plain, solver);
    for (const column of ['pitchRad', 'leanRad', 'positionM', 'wheelRateRadPerS', 'currentA'] as const) {
      expect(drift(tape, column)).toBeLessThan(1e-12);
    }
    expect(drift(tape, 'axleHeightM')).toBeLessThan(1e-12);
    expect(drift(tape, 'legLengthM')).toBeLessThan(1e-12);
  });

  for (const [what, profile] of Object.entries(PROFILES)) {
    it.each([0, 10, 25, -10])(`rolling on the level at %d km/h: ${what}`, (speedKmPerH) => {
      const tape = tapeOf(rolling(speedKmPerH), profile);
      for (const column of ['pitchRad', 'leanRad', 'speedMPerS', 'currentA'] as const) {
        expect(drift(tape, column)).toBeLessThan(1e-11);
      }
    });

    // The road's grid meets a round tyre at the nearest of its points, which leaves it ripples of 1e-8 m on a slope.
    it.each([
      [0, 8.33],
      [10, 12],
      [25, 8.33],
      [10, -12],
    ])(`rolling at %d km/h on a grade of %d percent: ${what}`, (speedKmPerH, gradePercent) => {
      const tape = tapeOf(rolling(speedKmPerH, gradePercent), profile);
      for (const column of ['pitchRad', 'leanRad', 'speedMPerS'] as const) {
        expect(drift(tape, column)).toBeLessThan(1e-5);
      }
      expect(drift(tape, 'currentA')).toBeLessThan(1e-3);
    });
  }
});

describe('a steady start with the nose already lifted for lack of headroom', () => {
  // Lift and request feed each other once a tick with a gain of P y / (x% of the ceiling): 20 x 1 / (0.8 x 80) here; from
  // a gain of 1 on they never settle.
  const lifting = profileWith(COMPOSED, { headroomLift: { belowPercent: 80, upToDeg: 1, rateDegPerS: 20 } });

  it('stays steady, its set-point raised by just what the headroom asks for', () => {
    const tape = tapeOf(rolling(10, 12), lifting);
    for (const column of ['pitchRad', 'leanRad', 'setPointRad'] as const) {
      expect(drift(tape, column)).toBeLessThan(1e-5);
    }
    const headroom = 1 - columnOf(tape, 'currentA')[0]! / 80;
    expect(headroom).toBeLessThan(0.7);
    const liftDeg = (-columnOf(tape, 'setPointRad')[0]! * 180) / Math.PI;
    expect(liftDeg).toBeCloseTo(1 - headroom / 0.8, 3);
  });
});

describe('the current that a steady start needs', () => {
  it.each([3, 8.33, 12, -12])('standing on %d percent is M g r sin(alpha) / K_t', (gradePercent) => {
    const trial = trialWith({ scenario: rolling(0, gradePercent) });
    const { totalMassKg, wheelRadiusM, motor } = trial.plant;
    const sine = Math.sin(Math.atan(gradePercent / 100));
    const expected = (totalMassKg * GRAVITY * wheelRadiusM * sine) / motor.torqueConstantNmPerA;
    const [currentA] = columnOf(tapeOf(trial.scenario, PROFILES.plain), 'currentA');
    expect(currentA! / expected).toBeCloseTo(1, 6);
  });

  it.each([10, 25, 30])('at %d km/h on the level is r (C_rr M g + rho CdA v^2 / 2) / K_t', (speedKmPerH) => {
    const trial = trialWith({ scenario: rolling(speedKmPerH) });
    const { totalMassKg, wheelRadiusM, motor } = trial.plant;
    const speed = speedKmPerH / 3.6;
    const air = 0.5 * 1.2 * trial.rider.body.dragAreaM2 * speed * speed;
    const resistance = 0.015 * totalMassKg * GRAVITY;
    const expected = (wheelRadiusM * (resistance + air)) / motor.torqueConstantNmPerA;
    const tape = tapeOf(trial.scenario, PROFILES.plain);
    expect(columnOf(tape, 'currentA').at(-1)! / expected).toBeCloseTo(1, 9);
    expect(columnOf(tape, 'packCurrentA').at(-1)! * columnOf(tape, 'packV').at(-1)!).toBeCloseTo(
      expected * motor.torqueConstantNmPerA * (speed / wheelRadiusM) +
        expected * expected * motor.resistanceOhm,
      6,
    );
  });

  it('carries the rider where statics puts him: ahead against the air, his feet taking the motor torque', () => {
    const trial = trialWith({ scenario: rolling(25) });
    const { plant } = trial;
    const tape = tapeOf(trial.scenario, PROFILES.plain);
    const read = (column: TapeColumn) => columnOf(tape, column)[100]!;
    const speed = 25 / 3.6;
    const airN = 0.5 * 1.2 * trial.rider.body.dragAreaM2 * speed * speed;
    const lean = read('leanRad');
    const [weightN, leg] = [plant.riderMassKg * GRAVITY, read('legLengthM')];
    // About the ankles: weight tips forward, air back, and the feet give the rest.
    expect(read('riderTorqueNm')).toBeCloseTo(leg * (airN * Math.cos(lean) - weightN * Math.sin(lean)), 8);
    // About the axle: the deck's and the rider's loads on it against the motor's reaction.
    const pitch = read('pitchRad');
    const loads =
      plant.deckMassKg * GRAVITY * plant.deckAboveAxleM * Math.sin(pitch) +
      plant.ankleAboveAxleM * (weightN * Math.sin(pitch) - airN * Math.cos(pitch));
    expect(read('riderTorqueNm')).toBeCloseTo(loads - plant.motor.torqueConstantNmPerA * read('currentA'), 8);
  });
});
