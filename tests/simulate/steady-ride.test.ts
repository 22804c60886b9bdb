/**
 * Statics and sensors of the whole loop once it has come to rest: a climb, a steady speeding-up, and what the
 * accelerometer makes of it. Relations of the planar wheeled pendulum, for deck and rider together about the axle:
 * climb sum(m_i g x_i) = tau = M g r sin(alpha); on the level sum(m_i g x_i) = sum(m_i z_i) a + tau, tau = (I_w / r + M r) a.
 */
import { describe, expect, it } from 'vitest';
import { ACCELEROMETER_PITCH, GYRO } from '../../src/control/estimator.js';
import { controlLaw } from '../../src/control/law.js';
import * as at from '../../src/model/state.js';
import { loopPlan, runTicks, tickOnce } from '../../src/simulate/loop.js';
import { integratorFor, run } from '../../src/simulate/run.js';
import { startMoment } from '../../src/simulate/start.js';
import { createTape, type Tape, type TapeColumn } from '../../src/simulate/tape.js';
import { columnOf, COMPOSED, profileWith, riderWith, scenarioWith, trialWith } from '../rigs.js';

const G = 9.80665;
const TORQUE_CONSTANT = 0.62;
const TOTAL_KG = 92;
/** No air, and legs too stiff to bend, so that lengths are those of the files. */
const RIDER = riderWith({
  body: { massKg: 78, statureM: 1.8, centreAboveAnkleM: 0.95, inertiaKgM2: 9.5, dragAreaM2: 0 },
  stance: { legStiffnessNPerM: 120_000 },
});

/** Moments about the axle of deck and rider: weight times lever, and mass times height, from a row of a tape. */
function levers(tape: Tape, row: number): { weightNm: number; heightKgM: number } {
  const read = (column: TapeColumn) => tape.columns[column][row]!;
  const [theta, phi, leg] = [read('pitchRad'), read('leanRad'), read('legLengthM')];
  const [deckX, deckZ] = [-0.02 * Math.sin(theta), -0.02 * Math.cos(theta)];
  const riderX = 0.03 * Math.sin(theta) + leg * Math.sin(phi);
  const riderZ = 0.03 * Math.cos(theta) + leg * Math.cos(phi);
  return { weightNm: G * (8 * deckX + 78 * riderX), heightKgM: 8 * deckZ + 78 * riderZ };
}

function slopeOf(tape: Tape, column: TapeColumn, [from, to]: readonly [number, number]): number {
  const values = columnOf(tape, column);
  return (values[to]! - values[from]!) / ((to - from) * tape.tickS);
}

describe('a ride that has come to rest', () => {
  it('climbs a ramp of 1 in 12 with the lean and the torque of statics, and no steady error of speed', () => {
    const scenario = scenarioWith({
      durationS: 50,
      road: [{ lengthM: 5 }, { lengthM: 150, gradePercent: 100 / 12, easeM: 10, rollingResistanceRatio: 0 }],
      start: { speedKmPerH: 8 },
      speeds: [{ atS: 0, speedKmPerH: 8 }],
    });
    const { tape, outcome } = run(trialWith({ rider: RIDER, scenario }), profileWith(COMPOSED), {
      solver: 'fixed',
    });
    expect(outcome.kind).toBe('upright');
    const row = tape.length - 1;
    const torque = TORQUE_CONSTANT * tape.columns.currentA[row]!;
    expect(torque / (TOTAL_KG * G * 0.14 * Math.sin(Math.atan(1 / 12)))).toBeCloseTo(1, 3);
    expect(levers(tape, row).weightNm / torque).toBeCloseTo(1, 3);
    expect(tape.columns.speedMPerS[row]! * 3.6).toBeCloseTo(8, 2);
  });

  it('speeds up evenly with the lean and the torque of a constant acceleration', () => {
    const scenario = scenarioWith({
      durationS: 24,
      road: [{ lengthM: 200, rollingResistanceRatio: 0 }],
      speeds: [
        { atS: 1, speedKmPerH: 0 },
        { atS: 25, speedKmPerH: 28.8 * 0.9 },
      ],
    });
    const { tape, outcome } = run(trialWith({ rider: RIDER, scenario }), profileWith(COMPOSED), {
      solver: 'fixed',
    });
    expect(outcome.kind).toBe('upright');
    const row = tape.length - 1;
    const a = slopeOf(tape, 'speedMPerS', [row - 80, row]);
    expect(a).toBeCloseTo(0.3, 2);
    const torque = (0.055 / 0.14 + TOTAL_KG * 0.14) * a;
    expect((TORQUE_CONSTANT * tape.columns.currentA[row]!) / torque).toBeCloseTo(1, 2);
    const { weightNm, heightKgM } = levers(tape, row);
    expect(weightNm / (heightKgM * a + torque)).toBeCloseTo(1, 2);
    // The estimate is pulled off nose up by atan(a / g): real boards do so too (Analog Devices AN-1057).
    const off = tape.columns.pitchRad[row]! - tape.columns.estimatedPitchRad[row]!;
    expect(off / Math.atan(a / G)).toBeCloseTo(1, 1);
  });
});

describe('sensors', () => {
  const scenario = scenarioWith({ durationS: 2, start: { noseUpDeg: 4, speedKmPerH: 6 } });
  const trial = trialWith({ scenario, noiseRatio: 1 });
  const law = controlLaw(profileWith(COMPOSED), trial.board);
  const plan = loopPlan(trial, law, integratorFor(trial, { solver: 'fixed' }));

  it('read the axle with its true acceleration, in the frame of the deck, with their noise once', () => {
    const moment = startMoment(trial, law);
    const tape = createTape(1601, trial.tickS);
    for (const untilTick of [1, 80, 300, 1200]) {
      runTicks(plan, moment, { tape, untilTick });
      const tick = moment.tick;
      tickOnce(plan, moment, tape);
      const theta = moment.state[at.PITCH]!;
      const [ax, az] = [moment.rates[at.X + at.RATE]!, moment.rates[at.Z + at.RATE]! + G];
      const forward = ax * Math.cos(theta) - az * Math.sin(theta) + trial.noise.forward[tick]!;
      const up = ax * Math.sin(theta) + az * Math.cos(theta) + trial.noise.up[tick]!;
      expect(moment.reading[ACCELEROMETER_PITCH]).toBeCloseTo(Math.atan2(-forward, up), 14);
      expect(moment.reading[GYRO]).toBe(moment.state[at.PITCH + at.RATE]! + trial.noise.gyro[tick]!);
    }
  });

  it('agree on the pitch of a deck at rest: the accelerometer alone finds it', () => {
    const still = trialWith({ scenario: scenarioWith({ road: [{ lengthM: 9, gradePercent: 8 }] }) });
    const moment = startMoment(still, law);
    tickOnce(
      loopPlan(still, law, integratorFor(still, { solver: 'fixed' })),
      moment,
      createTape(1, still.tickS),
    );
    expect(Math.abs(moment.state[at.PITCH]!)).toBeGreaterThan(0.005);
    expect(moment.reading[ACCELEROMETER_PITCH]).toBeCloseTo(moment.state[at.PITCH]!, 12);
  });

  it('have the noise of the board file, all of it scaled once by the noise ratio', () => {
    const long = scenarioWith({ durationS: 60 });
    const [whole, half] = [1, 0.5].map((noiseRatio) => trialWith({ scenario: long, noiseRatio }));
    const deviation = (values: Float64Array) =>
      Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
    // 48,000 samples: 0.3 % of standard error.
    expect(deviation(whole!.noise.gyro) / (0.05 * (Math.PI / 180))).toBeCloseTo(1, 1);
    expect(deviation(whole!.noise.forward) / 0.3).toBeCloseTo(1, 1);
    expect(deviation(whole!.noise.up) / 0.3).toBeCloseTo(1, 1);
    for (const channel of ['gyro', 'forward', 'up', 'tremor'] as const) {
      expect(half!.noise[channel]).toEqual(whole!.noise[channel].map((value) => value * 0.5));
    }
  });
});
