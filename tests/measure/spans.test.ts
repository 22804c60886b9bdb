/** The metrics that count row by row, on a few rows that can be counted by hand, with others before and behind them. */
import { describe, expect, it } from 'vitest';
import { commandActivityAPerS } from '../../src/measure/command-activity.js';
import { leastPackV, packEnergyJ, peakCurrentA, rmsCurrentA } from '../../src/measure/electrical.js';
import { peakPitch } from '../../src/measure/peak-pitch.js';
import { oneFootLightS } from '../../src/measure/rider-work.js';
import { saturation } from '../../src/measure/saturation.js';
import type { Span } from '../../src/measure/window.js';

function rows(samples: number[], first: number, end: number): Span {
  return { samples, first, end, tickS: 0.1 };
}

describe('a span', () => {
  it('has the peaks of its own rows, in either order', () => {
    const peaks = { noseDownRad: 0.1, noseUpRad: 0.2 };
    expect(peakPitch(rows([0.9, 0.1, -0.2, -0.1, 0.8], 1, 4))).toEqual(peaks);
    expect(peakPitch(rows([0.9, -0.2, 0.1, 0.05, -0.8], 1, 4))).toEqual(peaks);
    expect(peakCurrentA(rows([90, 2, -3, 1, -80], 1, 4))).toBe(3);
    expect(leastPackV(rows([40, 52, 50, 51, 41], 1, 4))).toBe(50);
  });

  it('has its rms and its energy: 1, 7, 5 A at 50 V, two strips of 0.1 s', () => {
    const current = rows([90, 1, 7, 5, -80], 1, 4);
    expect(rmsCurrentA(current)).toBeCloseTo(5, 12);
    expect(packEnergyJ(rows([9, 50, 50, 50, 9], 1, 4), current)).toBeCloseTo(50 * (0.1 * 4 + 0.1 * 6), 10);
  });

  it('has one foot light while the torque is at its limit or past it', () => {
    expect(oneFootLightS(rows([5, 5, -5, 4, 6, 5], 1, 5), rows([5, 5, 5, 5, 5, 5], 1, 5))).toBeCloseTo(
      0.3,
      12,
    );
  });

  it('has its share of ticks at each ceiling, and the longest stretch of them', () => {
    // Codes as a tape has them: 1 drive, 2 brake, 3 voltage, 4 pack out, 5 pack in; four ticks in a row are cut at most.
    const codes = [1, 0, 3, 3, 2, 0, 4, 5, 1, 3, 0, 2, 2, 2, 2, 2];
    const { share, longestS, byCeiling } = saturation(rows(codes, 1, 11));
    expect(share).toBeCloseTo(0.7, 12);
    expect(longestS).toBeCloseTo(0.4, 12);
    expect(byCeiling).toEqual({ drive: 0.1, brake: 0.1, voltage: 0.3, 'pack out': 0.1, 'pack in': 0.1 });
  });

  it('has its moves a second, from two rows on', () => {
    const samples = [9, 9, 1, 4, 2, 100];
    expect(commandActivityAPerS(rows(samples, 2, 5))).toBeCloseTo((3 + 2) / 0.2, 9);
    expect(commandActivityAPerS(rows(samples, 2, 4))).toBeCloseTo(3 / 0.1, 9);
    expect(commandActivityAPerS(rows(samples, 3, 4))).toBe(0);
    expect(commandActivityAPerS(rows(samples, 3, 3))).toBe(0);
  });
});
