/**
 * Are stiffness, foot path and noise those that the law and the simulation have?
 */
import { describe, expect, it } from 'vitest';
import { deckStiffnessNmPerRad, footPath, noiseInRequestA } from '../../src/linear/feel-paths.js';
import { loopView } from '../../src/linear/loop-view.js';
import { steadyRide, type RidePoint } from '../../src/linear/steady-ride.js';
import { normals, STREAMS } from '../../src/scenario/random.js';
import { runTicks } from '../../src/simulate/loop.js';
import { createTape } from '../../src/simulate/tape.js';
import { boardWith, COMPOSED, profileWith, riderWith } from '../rigs.js';

const DEG = Math.PI / 180;
const point: RidePoint = {
  board: boardWith(),
  rider: riderWith(),
  profile: profileWith(COMPOSED),
  speedKmPerH: 10,
  gradePercent: 0,
  chargePercent: 80,
};

describe('the stiffness of the deck', () => {
  it('is torque constant x |P + j w D| where the accelerometer counts for nothing (the law, by hand)', () => {
    const ride = steadyRide({ ...point, profile: profileWith(COMPOSED, { blendTimeS: 60 }) });
    const torqueConstant = ride.plan.trial.plant.motor.torqueConstantNmPerA;
    const view = loopView(ride);
    const [P, D] = COMPOSED;
    for (const frequencyHz of [1, 2, 4]) {
      const byHand = torqueConstant * Math.hypot(P, 2 * Math.PI * frequencyHz * D);
      const perDeg = deckStiffnessNmPerRad(view, torqueConstant, frequencyHz) * DEG;
      // What is left is the blend's 1 / (2 pi f 60 s) and the sampling.
      expect(Math.abs(perDeg / byHand - 1)).toBeLessThan(0.01);
    }
  });

  it('doubles with the gains', () => {
    const stiffness = (gains: readonly [number, number]) => {
      const ride = steadyRide({ ...point, profile: profileWith(gains, { blendTimeS: 60 }) });
      return deckStiffnessNmPerRad(loopView(ride), 1, 1);
    };
    expect(stiffness([40, 2.4]) / stiffness([20, 1.2])).toBeCloseTo(2, 1);
  });
});

describe('the way from foot to acceleration', () => {
  it('at 1 Hz is that of a simulated foot that presses to and fro, size within 1 % and lag within 5 ms', () => {
    const durationS = 20;
    const { plan, moment } = steadyRide(point, durationS);
    const { script, tickS } = plan.trial;
    const [amplitudeNm, radPerS] = [0.05, 2 * Math.PI];
    script.noseDownTorqueNm.forEach((_, tick) => {
      script.noseDownTorqueNm[tick] = amplitudeNm * Math.sin(radPerS * tick * tickS);
    });
    const tickCount = Math.round(durationS / tickS);
    const tape = createTape(tickCount + 1, tickS);
    expect(runTicks(plan, moment, { tape, untilTick: tickCount })).toBeUndefined();
    // The last eight swings of the speed, by correlation; its rate is the acceleration.
    const speed = tape.columns.speedMPerS;
    let [inPhase, ahead] = [0, 0];
    const first = tickCount - Math.round(8 / tickS);
    for (let tick = first; tick < tickCount; tick++) {
      inPhase += (2 / (tickCount - first)) * speed[tick]! * Math.sin(radPerS * tick * tickS);
      ahead += (2 / (tickCount - first)) * speed[tick]! * Math.cos(radPerS * tick * tickS);
    }
    const gain = (radPerS * Math.hypot(inPhase, ahead)) / amplitudeNm;
    const lagS = -(Math.atan2(ahead, inPhase) + Math.PI / 2) / radPerS;
    const { gainAt1Hz, delayAt1HzS } = footPath(loopView(steadyRide(point)));
    expect(Math.abs(gainAt1Hz / gain - 1)).toBeLessThan(0.01);
    expect(Math.abs(delayAt1HzS - lagS)).toBeLessThan(0.005);
  });
});

describe('noise of the gyro', () => {
  it('comes out as the current that a simulation with it shows, within 3 %', () => {
    const deviation = 0.02 * DEG;
    const durationS = 30;
    const { plan, moment } = steadyRide(point, durationS);
    const { noise, tickS } = plan.trial;
    noise.gyro.set(normals(7, STREAMS.gyro, noise.gyro.length).map((number) => number * deviation));
    const tickCount = Math.round(durationS / tickS);
    const tape = createTape(tickCount + 1, tickS);
    expect(runTicks(plan, moment, { tape, untilTick: tickCount })).toBeUndefined();
    const asked = tape.columns.askedCurrentA.subarray(Math.round(5 / tickS), tickCount);
    const mean = asked.reduce((sum, value) => sum + value, 0) / asked.length;
    const rms = Math.sqrt(asked.reduce((sum, value) => sum + (value - mean) ** 2, 0) / asked.length);
    const predicted = noiseInRequestA(loopView(steadyRide(point)), deviation);
    expect(Math.abs(predicted / rms - 1)).toBeLessThan(0.03);
  });
});
