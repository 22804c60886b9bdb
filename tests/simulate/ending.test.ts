/** How runs end: whatever happens in them is an outcome with its time and never an exception. No outside source. */
import { describe, expect, it } from 'vitest';
import * as at from '../../src/model/state.js';
import { fallOf } from '../../src/simulate/ending.js';
import { run, SOLVERS } from '../../src/simulate/run.js';
import { TAPE_COLUMNS } from '../../src/simulate/tape.js';
import {
  boardWith,
  columnOf,
  COMPOSED,
  largest,
  momentWith,
  profileWith,
  riderWith,
  scenarioWith,
  trialWith,
} from '../rigs.js';

const TRIAL = trialWith();
const { plant } = TRIAL;
const DEG = Math.PI / 180;

/** The outcome of standing with the axle at a height [m] and a pitch [rad], at a place [m]. */
function outcomeAt(state: Record<number, number>, trial = TRIAL) {
  return fallOf(trial, momentWith({ [at.Z]: plant.wheelRadiusM, [at.LEG]: plant.legLengthM, ...state }))
    ?.kind;
}

describe('deck ends', () => {
  /** Tip at P + reach e(theta) - tip u(theta): its height is z - reach sin(theta) - tip cos(theta). */
  function strikePitch(height: number): number {
    let [clear, struck] = [0, 60 * DEG];
    for (let pass = 0; pass < 60; pass++) {
      const middle = (clear + struck) / 2;
      const tip = height - plant.reachM * Math.sin(middle) - plant.tipBelowAxleM * Math.cos(middle);
      if (tip > 0) clear = middle;
      else struck = middle;
    }
    return clear;
  }

  it.each([0.14, 0.127, 0.1])(
    'strike on the level at the pitch of plane geometry, axle at %d m',
    (height) => {
      const pitch = strikePitch(height);
      expect(outcomeAt({ [at.Z]: height, [at.PITCH]: pitch - 1e-9 })).toBeUndefined();
      expect(outcomeAt({ [at.Z]: height, [at.PITCH]: pitch + 1e-9 })).toBe('nose strike');
      expect(outcomeAt({ [at.Z]: height, [at.PITCH]: -pitch + 1e-9 })).toBeUndefined();
      expect(outcomeAt({ [at.Z]: height, [at.PITCH]: -pitch - 1e-9 })).toBe('tail strike');
    },
  );

  it('strike a slope sooner by just its angle', () => {
    const slope = 0.12;
    const alpha = Math.atan(slope);
    const road = [{ lengthM: 60, gradePercent: 12 }];
    const trial = trialWith({ scenario: scenarioWith({ road }) });
    const pitch = strikePitch(plant.wheelRadiusM);
    const axle = {
      [at.X]: 30 - plant.wheelRadiusM * Math.sin(alpha),
      [at.Z]: 30 * slope + plant.wheelRadiusM * Math.cos(alpha),
    };
    expect(outcomeAt({ ...axle, [at.PITCH]: pitch - alpha - 1e-6 }, trial)).toBeUndefined();
    expect(outcomeAt({ ...axle, [at.PITCH]: pitch - alpha + 1e-6 }, trial)).toBe('nose strike');
    expect(outcomeAt({ ...axle, [at.PITCH]: -pitch - alpha + 1e-6 }, trial)).toBeUndefined();
    expect(outcomeAt({ ...axle, [at.PITCH]: -pitch - alpha - 1e-6 }, trial)).toBe('tail strike');
  });

  it('meet the bare road: a kerb that the tyre has not reached yet stops the nose', () => {
    const road = [{ lengthM: 10 }, { lengthM: 10, stepUpM: 0.15 }];
    const trial = trialWith({ scenario: scenarioWith({ road }) });
    expect(outcomeAt({ [at.X]: 10 - plant.reachM - 0.01 }, trial)).toBeUndefined();
    expect(outcomeAt({ [at.X]: 10 - plant.reachM + 0.01 }, trial)).toBe('nose strike');
  });
});

describe('rider', () => {
  const limit = plant.leanLimitRad;
  it('is off past his lean limit, either way', () => {
    expect(limit).toBeCloseTo(40 * DEG, 12);
    for (const side of [1, -1]) {
      expect(outcomeAt({ [at.LEAN]: side * (limit - 1e-9) })).toBeUndefined();
      expect(outcomeAt({ [at.LEAN]: side * (limit + 1e-9) })).toBe('rider off');
    }
  });

  it('is off when his feet have left the deck by 5 cm, or his legs have buckled to six tenths', () => {
    // Legs stop pushing where the spring has let go of his whole weight: L + m g / k.
    const free = plant.legLengthM + (plant.riderMassKg * 9.80665) / plant.legStiffnessNPerM;
    expect(outcomeAt({ [at.LEG]: free + 0.05 - 1e-9 })).toBeUndefined();
    expect(outcomeAt({ [at.LEG]: free + 0.05 + 1e-9 })).toBe('rider off');
    expect(outcomeAt({ [at.LEG]: 0.6 * plant.legLengthM + 1e-9 })).toBeUndefined();
    expect(outcomeAt({ [at.LEG]: 0.6 * plant.legLengthM - 1e-9 })).toBe('rider off');
  });
});

describe('numbers that stop being numbers', () => {
  for (const solver of SOLVERS) {
    it.each([NaN, Infinity, 1e300])(`end a run at their time, ${solver} solver: a shove of %d N`, (shove) => {
      const trial = trialWith({ scenario: scenarioWith({ durationS: 1 }) });
      trial.script.shoveN[400] = shove;
      const { outcome, tape } = run(trial, profileWith(COMPOSED), { solver });
      expect(outcome).toMatchObject({ kind: 'solver stopped', atS: 401 / 800 });
      expect(outcome.detail).toMatch(/no longer finite|did not converge/);
      expect(tape.length).toBe(401);
      for (const column of TAPE_COLUMNS) {
        expect(columnOf(tape, column).every((value) => Number.isFinite(value))).toBe(true);
      }
    });
  }

  it('are looked for in every place of the state', () => {
    for (let place = 0; place < at.STATE_SIZE; place++) {
      expect(outcomeAt({ [place]: NaN })).toBe('solver stopped');
    }
  });
});

describe('absurd gains and rigs', () => {
  const climbing = scenarioWith({
    durationS: 3,
    start: { speedKmPerH: 10 },
    road: [{ lengthM: 60, gradePercent: 5 }],
    speeds: [{ atS: 0, speedKmPerH: 10 }],
  });
  const profiles = [
    profileWith([0, 0]),
    profileWith([1e-3, 0]),
    profileWith([0, 100]),
    profileWith([500, 0]),
    profileWith([500, 100, 1000], { integralLimitA: 500, progressiveStiffnessPerDeg: 1 }),
    profileWith([0, 0, 1000], { integralLimitA: 0 }),
  ];
  const boards = [
    boardWith(),
    boardWith({ wheel: { massKg: 0.5, inertiaKgM2: 0.001 }, deck: { massKg: 1, inertiaKgM2: 0.02 } }),
    boardWith({ motor: { driveCurrentA: 1000, brakeCurrentA: 1000, torqueConstantNmPerA: 5 } }),
    boardWith({ controller: { delayTicks: 40, loopRateHz: 100 } }),
    boardWith({ pack: { seriesCells: 1, cellResistanceMilliohm: 300 } }),
  ];

  it('end as an outcome within the run, with numbers only on the tape', () => {
    const kinds = new Set<string>();
    for (const board of boards) {
      const trial = trialWith({ board, scenario: climbing, noiseRatio: 1 });
      for (const profile of profiles) {
        const { outcome, tape } = run(trial, profile, { solver: 'fixed' });
        kinds.add(outcome.kind);
        expect(outcome.atS).toBeGreaterThan(0);
        expect(outcome.atS).toBeLessThanOrEqual(climbing.durationS);
        for (const column of TAPE_COLUMNS) {
          expect(columnOf(tape, column).every((value) => Number.isFinite(value))).toBe(true);
        }
      }
    }
    expect(kinds.size).toBeGreaterThan(1);
  });

  it('begin with the deck on its end at most when the gains are too weak to hold the load', () => {
    const { outcome, tape } = run(trialWith({ scenario: climbing }), profileWith([0, 0]), {
      solver: 'fixed',
    });
    expect(outcome).toEqual({ kind: 'nose strike', atS: 1 / 800 });
    expect(largest(columnOf(tape, 'pitchRad'))).toBeCloseTo(Math.PI / 2, 9);
  });
});

describe('a run that falls', () => {
  it('keeps the rows before the fall, and its outcome is one tick after the last of them', () => {
    const trial = trialWith({ rider: riderWith(), scenario: scenarioWith({ start: { noseUpDeg: 6 } }) });
    const { outcome, tape } = run(trial, profileWith([2, 0.1]), { solver: 'fixed' });
    expect(['nose strike', 'tail strike']).toContain(outcome.kind);
    expect(outcome.atS).toBeCloseTo(tape.length / 800, 12);
    expect(columnOf(tape, 'timeS').at(-1)).toBeCloseTo((tape.length - 1) / 800, 12);
  });
});
