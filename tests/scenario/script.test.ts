/** The rider's script at the ticks of the loop, by hand. */
import { describe, expect, it } from 'vitest';
import { sampleScript } from '../../src/scenario/script.js';
import { scenarioWith } from '../rigs.js';

describe('script', () => {
  const script = sampleScript(
    scenarioWith({
      durationS: 4,
      speeds: [
        { atS: 1, speedKmPerH: 3.6 },
        { atS: 3, speedKmPerH: 10.8 },
      ],
      shifts: [
        { atS: 0.5, forS: 1, noseDownNm: 12 },
        { atS: 1, forS: 1, noseDownNm: 8, frequencyHz: 2 },
      ],
      shoves: [{ atS: 2, forS: 0.1, forwardN: -90 }],
    }),
    100,
  );

  it('has a value for the start, for the end and for every tick between', () => {
    expect(script.tickCount).toBe(400);
    for (const list of [script.wantedSpeedMPerS, script.noseDownTorqueNm, script.shoveN]) {
      expect(list).toHaveLength(401);
    }
  });

  it('holds the first speed before its time, runs straight between times, holds the last after', () => {
    expect([0, 100, 150, 200, 300, 400].map((tick) => script.wantedSpeedMPerS[tick]!.toFixed(9))).toEqual(
      [1, 1, 1.5, 2, 3, 3].map((speed) => speed.toFixed(9)),
    );
  });

  it('adds shifts that overlap, a sine from its own start', () => {
    expect(script.noseDownTorqueNm[49]).toBe(0);
    expect(script.noseDownTorqueNm[50]).toBe(12);
    expect(script.noseDownTorqueNm[125]).toBeCloseTo(12 + 8 * Math.sin(2 * Math.PI * 2 * 0.25), 9);
    expect(script.noseDownTorqueNm[137]).toBeCloseTo(12 + 8 * Math.sin(2 * Math.PI * 2 * 0.37), 9);
    expect(script.noseDownTorqueNm[160]).toBeCloseTo(8 * Math.sin(2 * Math.PI * 2 * 0.6), 9);
    expect(script.noseDownTorqueNm[200]).toBe(0);
  });

  it('shoves for just its time: forS times loop rate ticks', () => {
    expect(script.shoveN.filter((force) => force === -90)).toHaveLength(10);
    expect(script.shoveN[200]).toBe(-90);
    expect(script.shoveN[210]).toBe(0);
  });

  it('lasts as long at any rate and time: 0.05 s from 0.1 s, where sums of decimals are a bit off', () => {
    for (const rate of [100, 800, 1000, 4000]) {
      for (let tenth = 1; tenth < 20; tenth++) {
        const shoves = [{ atS: tenth / 10, forS: 0.05, forwardN: 1 }];
        const { shoveN } = sampleScript(scenarioWith({ durationS: 3, shoves }), rate);
        expect(shoveN.reduce((sum, force) => sum + force, 0)).toBe(0.05 * rate);
      }
    }
  });
});
