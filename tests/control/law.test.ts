/**
 * The control law piece by piece, against its own equation written out by hand: asked = P e (1 + s |e|) + D rate + I in
 * amperes and degrees, conditional integration (K. J. Astrom, T. Hagglund, PID Controllers, 1995), and shaping.
 */
import { describe, expect, it } from 'vitest';
import {
  CEILINGS_SIZE,
  DRIVE_CEILING,
  LOWER,
  LOWER_CAUSE,
  LOWER_FULL,
  BRAKE_CEILING,
  NO_CEILING,
  UPPER,
  UPPER_CAUSE,
  UPPER_FULL,
} from '../../src/control/ceilings.js';
import { ESTIMATED_PITCH, ESTIMATED_RATE, ESTIMATOR_SIZE } from '../../src/control/estimator.js';
import * as law from '../../src/control/law.js';
import { boardWith, profileWith } from '../rigs.js';

const RAD = Math.PI / 180;

interface Desk {
  law: law.ControlLaw;
  memory: Float64Array;
  tick(pitchDeg: number, rateDegPerS?: number): number;
}

type Shaping = Parameters<typeof profileWith>[1];

/** A controller at 800 Hz on a desk, between ceilings of +80 and -60 A. */
function desk(gains: readonly [number, number, number?], shaping: Shaping = {}, loopRateHz = 800): Desk {
  const controller = law.controlLaw(profileWith(gains, shaping), boardWith({ controller: { loopRateHz } }));
  const memory = new Float64Array(law.CONTROLLER_SIZE);
  memory[law.RAMP] = 1;
  memory[law.HEADROOM] = 1;
  const estimator = new Float64Array(ESTIMATOR_SIZE);
  const ceilings = new Float64Array(CEILINGS_SIZE);
  ceilings[UPPER] = ceilings[UPPER_FULL] = 80;
  ceilings[LOWER_FULL] = 60;
  ceilings[LOWER] = -60;
  ceilings[UPPER_CAUSE] = DRIVE_CEILING;
  ceilings[LOWER_CAUSE] = BRAKE_CEILING;
  return {
    law: controller,
    memory,
    tick(pitchDeg, rateDegPerS = 0) {
      estimator[ESTIMATED_PITCH] = pitchDeg * RAD;
      estimator[ESTIMATED_RATE] = rateDegPerS * RAD;
      law.control(controller, { estimator, ceilings, controller: memory });
      return memory[law.REQUESTED]!;
    },
  };
}

describe('proportional and rate', () => {
  it('ask for P e + D rate in degrees, forward for a nose that is down', () => {
    expect(desk([7, 0]).tick(2)).toBeCloseTo(14, 12);
    expect(desk([0, 0.5]).tick(0, 30)).toBeCloseTo(15, 12);
    expect(desk([7, 0.5]).tick(-2, 10)).toBeCloseTo(-9, 12);
  });

  it('stiffen with the error: P e (1 + s |e|)', () => {
    expect(desk([7, 0], { progressiveStiffnessPerDeg: 0.25 }).tick(2)).toBeCloseTo(21, 12);
    expect(desk([7, 0], { progressiveStiffnessPerDeg: 0.25 }).tick(-2)).toBeCloseTo(-21, 12);
  });

  it('aim at the rest trim, nose up', () => {
    expect(desk([7, 0], { restTrimNoseUpDeg: 1.5 }).tick(-1.5)).toBeCloseTo(0, 12);
  });

  it('are cut at the ceilings, with the cause and the headroom that is left', () => {
    const bench = desk([7, 0]);
    expect(bench.tick(20)).toBe(80);
    expect(bench.memory[law.ASKED]).toBeCloseTo(140, 9);
    expect(bench.memory[law.BINDING]).toBe(DRIVE_CEILING);
    expect(bench.memory[law.HEADROOM]).toBe(0);
    expect(bench.tick(-20)).toBe(-60);
    expect(bench.memory[law.BINDING]).toBe(BRAKE_CEILING);
    expect(bench.tick(20 / 7)).toBeCloseTo(20, 12);
    expect(bench.memory[law.BINDING]).toBe(0);
    expect(bench.memory[law.HEADROOM]).toBeCloseTo(60 / 80, 12);
    bench.tick(-15 / 7);
    expect(bench.memory[law.HEADROOM]).toBeCloseTo(45 / 60, 12);
  });

  it('are not cut where they just meet a ceiling', () => {
    for (const edgeA of [80, -60]) {
      const bench = desk([0, 0]);
      bench.memory[law.INTEGRAL] = edgeA;
      expect(bench.tick(0)).toBe(edgeA);
      expect(bench.memory[law.BINDING]).toBe(NO_CEILING);
      expect(bench.memory[law.HEADROOM]).toBe(0);
    }
  });

  it('lower ceilings of a profile hold, higher ones do not raise those of the board', () => {
    expect(desk([1, 0], { driveCeilingA: 30, brakeCeilingA: 25 }).law.ceilings).toEqual({
      driveCurrentA: 30,
      brakeCurrentA: 25,
    });
    expect(desk([1, 0], { driveCeilingA: 300 }).law.ceilings.driveCurrentA).toBe(80);
  });
});

describe('integral', () => {
  it('grows by I e dt from tick to tick', () => {
    const bench = desk([0, 0, 8]);
    for (let tick = 0; tick < 800; tick++) bench.tick(0.5);
    expect(bench.memory[law.INTEGRAL]).toBeCloseTo(4, 9);
    expect(bench.tick(0)).toBeCloseTo(4, 9);
  });

  it('stops at its limit, either way', () => {
    const bench = desk([0, 0, 100], { integralLimitA: 12 });
    for (let tick = 0; tick < 800; tick++) bench.tick(3);
    expect(bench.memory[law.INTEGRAL]).toBe(12);
    for (let tick = 0; tick < 1600; tick++) bench.tick(-3);
    expect(bench.memory[law.INTEGRAL]).toBe(-12);
  });

  it('holds while the request is cut and growth would push further, and unwinds at once', () => {
    const bench = desk([7, 0, 50], { integralLimitA: 500 });
    for (let tick = 0; tick < 80; tick++) bench.tick(4);
    const before = bench.memory[law.INTEGRAL]!;
    expect(before).toBeGreaterThan(15);
    for (let tick = 0; tick < 80; tick++) bench.tick(30);
    expect(bench.memory[law.INTEGRAL]).toBe(before);
    bench.tick(-1);
    expect(bench.memory[law.INTEGRAL]).toBeCloseTo(before - 50 / 800, 9);
  });
});

describe('shaping', () => {
  it('slew lets the request move by so many amperes a second', () => {
    const bench = desk([10, 0], { slewLimitAPerS: 800 });
    expect([bench.tick(5), bench.tick(5), bench.tick(5)]).toEqual([1, 2, 3]);
    for (let tick = 0; tick < 100; tick++) bench.tick(5);
    expect(bench.tick(5)).toBeCloseTo(50, 12);
    expect(bench.tick(-5)).toBeCloseTo(49, 12);
    expect(desk([10, 0], { slewLimitAPerS: 800 }, 200).tick(5)).toBeCloseTo(4, 12);
  });

  it('the engage ramp scales all gains', () => {
    const bench = desk([10, 1]);
    bench.memory[law.RAMP] = 0.25;
    expect(bench.tick(4, 4)).toBeCloseTo(11, 12);
  });

  it('the engage ramp leaves the load of the feed-forward whole: it is no gain', () => {
    const bench = desk([10, 0], { loadFeedForward: { filterTimeS: 0.5, currentShare: 0.5 } });
    for (const ramp of [0, 0.25, 1]) {
      bench.memory[law.RAMP] = ramp;
      bench.memory[law.LOAD] = bench.memory[law.REQUESTED] = 20;
      expect(bench.tick(2)).toBeCloseTo(ramp * 20 + 0.5 * 20, 12);
    }
  });

  it('load feed-forward filters the request exactly: 1 - 1/e after one time constant', () => {
    const bench = desk([10, 0], { loadFeedForward: { filterTimeS: 0.5, currentShare: 0 } });
    for (let tick = 0; tick <= 400; tick++) {
      bench.tick(2);
      expect(bench.memory[law.LOAD]).toBeCloseTo(20 * (1 - Math.exp(-tick / 400)), 9);
    }
    expect(bench.memory[law.LOAD]).toBeCloseTo(20 * (1 - Math.exp(-1)), 9);
  });

  it('load feed-forward adds its share of the load and moves the set-point', () => {
    const bench = desk([10, 0], {
      loadFeedForward: { filterTimeS: 0.5, currentShare: 0.5, noseUpDegPerA: 0.1 },
    });
    bench.memory[law.LOAD] = bench.memory[law.REQUESTED] = 20;
    expect(bench.tick(-2)).toBeCloseTo(10, 12);
    expect(bench.memory[law.SET_POINT]! / RAD).toBeCloseTo(-2, 12);
  });

  it('headroom lift raises the nose while headroom is short, at its rate, as far as it is short', () => {
    const bench = desk([10, 0], { headroomLift: { belowPercent: 40, upToDeg: 6, rateDegPerS: 8 } });
    const wish = 6.4; // 64 A of 80: a headroom of 20 %, half of what it should be
    const setPointDeg = () => bench.memory[law.SET_POINT]! / RAD;
    bench.tick(wish);
    for (let tick = 0; tick < 100; tick++) bench.tick(wish + setPointDeg());
    expect(setPointDeg()).toBeCloseTo(-1, 9);
    for (let tick = 0; tick < 700; tick++) bench.tick(wish + setPointDeg());
    expect(setPointDeg()).toBeCloseTo(-3, 1);
    bench.memory[law.HEADROOM] = 0.2;
    law.findLiftGoal(bench.law, bench.memory);
    expect(bench.memory[law.LIFT_GOAL]! / RAD).toBeCloseTo(3, 12);
    for (let tick = 0; tick < 801; tick++) bench.tick(setPointDeg());
    expect(Math.abs(setPointDeg())).toBe(0);
  });
});

describe('without a headroom lift', () => {
  it('the nose has nowhere to rise to, be there headroom or none', () => {
    const bench = desk([10, 0]);
    for (const headroom of [0, 0.5, 1]) {
      bench.memory[law.HEADROOM] = headroom;
      law.findLiftGoal(bench.law, bench.memory);
      expect(bench.memory[law.LIFT_GOAL]).toBe(0);
    }
    bench.tick(50);
    expect(bench.memory[law.HEADROOM]).toBe(0);
    bench.tick(50);
    expect(bench.memory[law.SET_POINT]).toBeCloseTo(0, 12);
  });
});

describe('settled pitch', () => {
  it('holds 16 A with P alone at 16 / 8 = 2 degrees, and with an integral that is wide enough at none', () => {
    const alone = law.settledPitch(desk([8, 0.5]).law, 16);
    expect(alone.integralA).toBe(0);
    expect(alone.pitchRad / RAD).toBeCloseTo(2, 12);
    const relieved = law.settledPitch(desk([8, 0.5, 20], { integralLimitA: 60 }).law, 16);
    expect(relieved.integralA).toBe(16);
    expect(relieved.pitchRad).toBe(0);
  });

  const profiles = [
    [[8, 0.5], {}],
    [[8, 0.5], { progressiveStiffnessPerDeg: 0.3, restTrimNoseUpDeg: 1 }],
    [[8, 0.5, 20], { integralLimitA: 6 }],
    [[8, 0.5, 20], { integralLimitA: 60 }],
    [
      [8, 0.5, 4],
      { integralLimitA: 3, loadFeedForward: { filterTimeS: 0.3, currentShare: 0.6, noseUpDegPerA: -0.05 } },
    ],
  ] as const;

  it.each(profiles)('is a fixed point of the law with gains %j and shaping %j', (gains, shaping) => {
    for (const currentA of [-23, -4, 0, 5, 31]) {
      const bench = desk(gains, shaping);
      const { pitchRad, integralA } = law.settledPitch(bench.law, currentA);
      bench.memory[law.INTEGRAL] = integralA;
      bench.memory[law.LOAD] = bench.memory[law.REQUESTED] = currentA;
      for (let tick = 0; tick < 800; tick++) bench.tick(pitchRad / RAD);
      expect(bench.memory[law.REQUESTED]).toBeCloseTo(currentA, 9);
      expect(bench.memory[law.INTEGRAL]).toBeCloseTo(integralA, 9);
    }
  });
});
