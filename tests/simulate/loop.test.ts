/**
 * The sampled loop does things in the order that the design fixes: sense, estimate, control, ceilings, delay to the
 * motor, rider, motion. Each check here follows from that order alone; there is no outside source.
 */
import { describe, expect, it } from 'vitest';
import { SENSED_LEAN, SENSED_LEAN_RATE, SENSED_SPEED } from '../../src/control/rider-feedback.js';
import { controlLaw } from '../../src/control/law.js';
import { GRIP, ROLLING } from '../../src/model/state.js';
import { loopPlan, runTicks } from '../../src/simulate/loop.js';
import { integratorFor, run, type RunOptions } from '../../src/simulate/run.js';
import { startMoment } from '../../src/simulate/start.js';
import { createTape, TAPE_COLUMNS, type Tape, type TapeColumn } from '../../src/simulate/tape.js';
import type { Trial } from '../../src/simulate/trial.js';
import { boardWith, columnOf, COMPOSED, profileWith, riderWith, scenarioWith, trialWith } from '../rigs.js';

const PROFILE = profileWith(COMPOSED);
const SHOVED = scenarioWith({
  durationS: 2,
  start: { speedKmPerH: 10 },
  speeds: [{ atS: 0, speedKmPerH: 10 }],
  road: [{ lengthM: 60, roughness: 'B' }],
  shoves: [{ atS: 0.3, forS: 0.2, forwardN: 80 }],
});
const QUICK: RunOptions = { solver: 'fixed' };

const bytesOf = (tape: Tape) =>
  TAPE_COLUMNS.map((column) => Buffer.from(columnOf(tape, column).slice().buffer).toString('base64'));

/** First row at which a column differs from its first value. */
function firstChange(tape: Tape, column: TapeColumn): number {
  const values = columnOf(tape, column);
  return values.findIndex((value) => value !== values[0]);
}

/** A loop that can be stopped and looked at. */
function openLoop(trial: Trial) {
  const law = controlLaw(PROFILE, trial.board);
  const plan = loopPlan(trial, law, integratorFor(trial, QUICK));
  return { plan, moment: startMoment(trial, law), tape: createTape(trial.script.tickCount + 1, trial.tickS) };
}

describe('delay from request to motor', () => {
  for (const delayTicks of [0, 1, 3]) {
    it(`shifts by exactly ${delayTicks} ticks: the current follows the request of that many ticks before`, () => {
      const board = boardWith({ controller: { delayTicks } });
      const { tape } = run(trialWith({ board, scenario: SHOVED, noiseRatio: 1 }), PROFILE, QUICK);
      const requests = columnOf(tape, 'requestedCurrentA');
      const currents = columnOf(tape, 'currentA');
      const keep = Math.exp(-(1 / 800) / 0.0015);
      for (let tick = 0; tick + 1 < tape.length; tick++) {
        const followed = tick >= delayTicks ? requests[tick - delayTicks]! : currents[0]!;
        expect(currents[tick + 1]).toBeCloseTo(followed + keep * (currents[tick]! - followed), 11);
      }
      expect(new Set(requests).size).toBeGreaterThan(1000);
    });
  }
});

describe('order of events', () => {
  const board = boardWith({ controller: { delayTicks: 2 } });
  const rider = riderWith({
    stance: { passiveStiffnessNmPerRad: 0, passiveDampingNmSPerRad: 0 },
    balance: { delayS: 0.14 },
  });
  const scenario = scenarioWith({
    durationS: 0.5,
    shifts: [{ atS: 0.1, forS: 0.4, noseDownNm: 10 }],
  });
  const { tape } = run(trialWith({ board, rider, scenario }), PROFILE, QUICK);

  it('a shift of weight at tick 80 is felt after it, sensed and answered at once, and reaches the motor two ticks later', () => {
    expect(firstChange(tape, 'riderTorqueNm')).toBe(81);
    expect(firstChange(tape, 'pitchRateRadPerS')).toBe(81);
    expect(firstChange(tape, 'estimatedPitchRad')).toBe(81);
    expect(firstChange(tape, 'requestedCurrentA')).toBe(81);
    expect(firstChange(tape, 'currentA')).toBe(81 + 2 + 1);
  });

  it('the rider answers his own lean 112 ticks after it: torque is the script until then', () => {
    const torque = columnOf(tape, 'riderTorqueNm');
    expect(firstChange(tape, 'leanRateRadPerS')).toBe(81);
    for (let tick = 81; tick <= 81 + 112; tick++) expect(torque[tick]).toBeCloseTo(-10, 12);
    expect(Math.abs(torque[81 + 112 + 1]! + 10)).toBeGreaterThan(1e-6);
  });

  it('a shove shows in speed one tick after it, and its last tick still counts', () => {
    const shoves = [{ atS: 0.1, forS: 0.05, forwardN: 50 }];
    const shoved = trialWith({ scenario: scenarioWith({ durationS: 0.5, shoves }) });
    expect(firstChange(run(shoved, PROFILE, QUICK).tape, 'speedMPerS')).toBe(81);
    expect(shoved.script.shoveN[119]).toBe(50);
    expect(shoved.script.shoveN[120]).toBe(0);
  });
});

describe('engage ramp', () => {
  const profile = profileWith([20, 0], { engageRampS: 0.5 });
  const start = { noseUpDeg: 3, takesOver: true };
  const tapeOf = (changes: object) =>
    run(
      trialWith({ scenario: scenarioWith({ durationS: 1, start: { ...start, ...changes } }) }),
      profile,
      QUICK,
    ).tape;

  it('fades the gains in with the ticks since the board took over', () => {
    const tape = tapeOf({});
    const asked = columnOf(tape, 'askedCurrentA');
    const pitch = columnOf(tape, 'estimatedPitchRad');
    for (const tick of [0, 1, 100, 200, 399, 400, 401, 600]) {
      const whole = (20 * pitch[tick]! * 180) / Math.PI;
      expect(asked[tick]).toBeCloseTo(Math.min(1, tick / 400) * whole, 9);
    }
    expect(Math.abs(asked[1]!)).toBeLessThan(0.2);
  });

  it('leaves a board alone that already rides', () => {
    expect(columnOf(tapeOf({ takesOver: false }), 'askedCurrentA')[0]).toBeCloseTo(-60, 0);
  });
});

describe('surface under the wheel', () => {
  it('changes at a border on the way out, and back to what it was when the board rolls back over it', () => {
    const trial = trialWith({
      scenario: scenarioWith({
        durationS: 4,
        start: { speedKmPerH: 4 },
        speeds: [{ atS: 0, speedKmPerH: -6 }],
        road: [
          { lengthM: 0.2, gripRatio: 0.7, rollingResistanceRatio: 0.01 },
          { lengthM: 0.1, gripRatio: 0.6, rollingResistanceRatio: 0.04 },
          { lengthM: 20, gripRatio: 0.5, rollingResistanceRatio: 0.02 },
        ],
      }),
    });
    const { plan, moment, tape } = openLoop(trial);
    const met: number[] = [];
    for (let tick = 0; tick < trial.script.tickCount; tick++) {
      expect(runTicks(plan, moment, { tape, untilTick: tick + 1 })).toBeUndefined();
      const x = tape.columns.positionM[tick]!;
      const piece = x < 0.2 ? 0 : x < 0.2 + 0.1 ? 1 : 2;
      expect(moment.inputs[GRIP]).toBe([0.7, 0.6, 0.5][piece]);
      expect(moment.inputs[ROLLING]).toBe([0.01, 0.04, 0.02][piece]);
      if (met.at(-1) !== piece) met.push(piece);
    }
    expect(met).toEqual([0, 1, 2, 1, 0]);
  });
});

describe("delay of the rider's nerves", () => {
  it.each([
    [0, 800],
    [0.0007, 800],
    [0.14, 800],
    [0.1404, 800],
    [0.2, 800],
    [0.14, 500],
  ])('of %d s reads lean, lean rate and speed between two ticks, at %d Hz', (delayS, loopRateHz) => {
    const trial = trialWith({
      board: boardWith({ controller: { loopRateHz } }),
      rider: riderWith({ balance: { delayS } }),
      scenario: SHOVED,
      noiseRatio: 1,
    });
    const { plan, moment, tape } = openLoop(trial);
    for (const untilTick of [1, 50, 113, 300, 600, 601]) {
      expect(runTicks(plan, moment, { tape, untilTick })).toBeUndefined();
      const place = untilTick - 1 - delayS * loopRateHz;
      for (const [column, sensed] of [
        ['leanRad', SENSED_LEAN],
        ['leanRateRadPerS', SENSED_LEAN_RATE],
        ['speedMPerS', SENSED_SPEED],
      ] as const) {
        const at = (tick: number) => tape.columns[column][Math.max(0, tick)]!;
        const below = Math.floor(place);
        const expected = at(below) + (place - below) * (at(below + 1) - at(below));
        const known = place >= untilTick - 1 ? at(untilTick - 1) : expected;
        expect(moment.sensed[sensed]).toBeCloseTo(known, 10);
      }
    }
  });
});

describe('same inputs, same bytes', () => {
  const trial = trialWith({ scenario: SHOVED, noiseRatio: 1 });

  it.each(['fixed', 'reference'] as const)('with the %s solver, twice, from trials made twice', (solver) => {
    const again = trialWith({ scenario: SHOVED, noiseRatio: 1 });
    const [one, other] = [run(trial, PROFILE, { solver }), run(again, PROFILE, { solver })];
    expect(other.outcome).toEqual(one.outcome);
    expect(bytesOf(other.tape)).toEqual(bytesOf(one.tape));
  });

  it('on a tape that another run has used before', () => {
    const used = run(trialWith({ scenario: scenarioWith() }), PROFILE, QUICK).tape;
    expect(bytesOf(run(trial, PROFILE, { ...QUICK, tape: used }).tape)).toEqual(
      bytesOf(run(trial, PROFILE, QUICK).tape),
    );
  });

  it('in two halves from a copied moment', () => {
    const whole = run(trial, PROFILE, QUICK);
    const { plan, moment, tape } = openLoop(trial);
    runTicks(plan, moment, { tape, untilTick: 777 });
    const copy = structuredClone(moment);
    // The first goes on and spoils whatever it might share with the copy.
    runTicks(plan, moment, { tape: createTape(2000, trial.tickS), untilTick: 1500 });
    const later = openLoop(trial).plan;
    expect(runTicks(later, copy, { tape, untilTick: trial.script.tickCount })).toBeUndefined();
    const rows = trial.script.tickCount;
    expect(tape.length).toBe(rows);
    expect(bytesOf(tape)).toEqual(bytesOf({ ...whole.tape, length: rows }));
  });
});

describe('chance', () => {
  const level = scenarioWith({ durationS: 2, start: { noseUpDeg: 2 } });
  const tapeOf = (scenario: typeof level, seed: number, noiseRatio: number) =>
    bytesOf(run(trialWith({ scenario, seed, noiseRatio }), PROFILE, QUICK).tape);

  it('plays no part on a smooth road with noise ratio 0, and does with 1', () => {
    expect(tapeOf(level, 2, 0)).toEqual(tapeOf(level, 1, 0));
    expect(tapeOf(level, 2, 1)).not.toEqual(tapeOf(level, 1, 1));
  });

  it('leaves the road its unevenness with noise ratio 0', () => {
    expect(tapeOf(SHOVED, 2, 0)).not.toEqual(tapeOf(SHOVED, 1, 0));
  });
});
