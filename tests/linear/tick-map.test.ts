/**
 * Is the linear view that of the very ride? A tiny deviation is carried on by the maps, with rings for the delays, and by the
 * simulation itself; both must agree for as long as the deviation stays tiny.
 */
import { describe, expect, it } from 'vitest';
import { loopView } from '../../src/linear/loop-view.js';
import { steadyRide, type RidePoint } from '../../src/linear/steady-ride.js';
import { INPUTS, OUTPUTS } from '../../src/linear/tick-map.js';
import * as at from '../../src/model/state.js';
import { runTicks } from '../../src/simulate/loop.js';
import { createTape } from '../../src/simulate/tape.js';
import { boardWith, COMPOSED, profileWith, riderWith } from '../rigs.js';

const TICKS = 700;
const TINY_RAD = 1e-5;

/** Pitch of the simulation less that of the undisturbed ride, tick by tick, after the deck was turned a little. */
function simulated(point: RidePoint): number[] {
  const pitches = [0, TINY_RAD].map((turn) => {
    const { plan, moment } = steadyRide(point);
    moment.state[at.PITCH]! += turn;
    const tape = createTape(TICKS + 1, plan.trial.tickS);
    expect(runTicks(plan, moment, { tape, untilTick: TICKS })).toBeUndefined();
    return tape.columns.pitchRad;
  });
  return Array.from({ length: TICKS }, (_, row) => pitches[1]![row]! - pitches[0]![row]!);
}

/** The same by the maps. */
function mapped(point: RidePoint): number[] {
  const { map, rider } = loopView(steadyRide(point));
  const apply = (matrix: typeof map.A, vector: readonly number[]) =>
    matrix.to2DArray().map((row) => row.reduce((sum, value, index) => sum + value * vector[index]!, 0));
  let x: number[] = map.states.map((name) => (name === 'pitch' ? TINY_RAD : 0));
  let memory = [0, 0, 0];
  const past: number[][] = [];
  const late = (row: number) => past[row] ?? [0, 0, 0];
  const whole = Math.floor(rider.delayTicks);
  const part = rider.delayTicks - whole;
  return Array.from({ length: TICKS }, (_, tick) => {
    const y = apply(map.C, x);
    const output = (name: (typeof OUTPUTS)[number]) => y[OUTPUTS.indexOf(name)]!;
    past.push([output('lean'), output('leanRate'), output('speed')]);
    const sensed = late(tick - whole).map(
      (value, index) => value + part * (late(tick - whole - 1)[index]! - value),
    );
    const torque = apply(rider.C, memory)[0]! + apply(rider.D, sensed)[0]!;
    memory = apply(rider.A, memory).map((value, index) => value + apply(rider.B, sensed)[index]!);
    const inputs = INPUTS.map(
      (name) => ({ request: output('asked'), riderTorque: torque, gyro: 0, shove: 0 })[name],
    );
    const pushed = apply(map.B, inputs);
    x = apply(map.A, x).map((value, index) => value + pushed[index]!);
    return output('pitch');
  });
}

const rig = { board: boardWith(), rider: riderWith(), gradePercent: 0, chargePercent: 80 };
const composed = profileWith(COMPOSED);
const shaped = profileWith([20, 1.2, 30], {
  gyroLowPassHz: 60,
  blendTimeS: 2,
  progressiveStiffnessPerDeg: 0.05,
  loadFeedForward: { filterTimeS: 0.3, currentShare: 0.3, noseUpDegPerA: 0.02 },
});

describe('a tiny turn of the deck', () => {
  it.each<[string, RidePoint]>([
    ['standing', { ...rig, profile: composed, speedKmPerH: 0 }],
    ['at 15 km/h', { ...rig, profile: composed, speedKmPerH: 15 }],
    ['at 10 km/h up a grade of 6 %', { ...rig, profile: composed, speedKmPerH: 10, gradePercent: 6 }],
    ['at 15 km/h with every shaping', { ...rig, profile: shaped, speedKmPerH: 15 }],
    [
      'three ticks late, with another delay of the rider',
      {
        ...rig,
        board: boardWith({ controller: { loopRateHz: 800, delayTicks: 3 } }),
        rider: riderWith({ balance: { delayS: 0.1003, frequencyRadPerS: 2.4, dampingRatio: 0.6 } }),
        profile: composed,
        speedKmPerH: 8,
      },
    ],
  ])('%s goes on as the simulation says, for 700 ticks', (_name, point) => {
    const [actual, expected] = [mapped(point), simulated(point)];
    const largest = Math.max(...expected.map(Math.abs));
    const apart = Math.max(...expected.map((value, tick) => Math.abs(value - actual[tick]!)));
    expect(largest).toBeGreaterThan(0.9 * TINY_RAD);
    // What is left is the curvature of the equations: the deviation squared.
    expect(apart / largest).toBeLessThan(2e-6);
  });
});
