/** Edges of settling, rise and rebound: not settled, never left, noise, kicks, empty spans. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reboundPercent } from '../../src/measure/rebound.js';
import { settlingTimeS } from '../../src/measure/settling-time.js';
import { overshootPercent, riseTimeS } from '../../src/measure/step-response.js';
import { endingOf } from '../../src/measure/window.js';
import type { Span } from '../../src/measure/window.js';
import { sampled, secondOrderError } from './exact-response.js';

function spanOfSamples(samples: readonly number[], tickS = 0.1): Span {
  return { samples, first: 0, end: samples.length, tickS };
}

const EMPTY: Span = { samples: [], first: 0, end: 0, tickS: 0.1 };

describe('settling time', () => {
  it('is null while the last row is outside the band, and for an empty span', () => {
    expect(settlingTimeS(spanOfSamples([0, 1, 0, 1]), 0, 0.5)).toBeNull();
    expect(settlingTimeS(EMPTY, 0, 0.5)).toBeNull();
  });

  it('is 0 for a signal that never leaves the band', () => {
    expect(settlingTimeS(spanOfSamples([0.5, -0.5, 0]), 0, 0.5)).toBe(0);
  });

  it('counts from the start of the span, not of the recording', () => {
    const samples = [9, 9, 9, 1, 0, 0];
    expect(settlingTimeS({ samples, first: 3, end: 6, tickS: 0.1 }, 0, 0.5)).toBeCloseTo(0.05, 12);
  });

  it('finds the crossing of the side it comes from when a row jumps through the band', () => {
    expect(settlingTimeS(spanOfSamples([2, -0.4, 0, 0]), 0, 0.5)).toBeCloseTo((0.1 * 1.5) / 2.4, 12);
  });

  it('never grows with a wider band', () => {
    const samples = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 1, maxLength: 40 });
    const width = fc.double({ min: 0.01, max: 3, noNaN: true });
    fc.assert(
      fc.property(samples, width, width, (values, a, b) => {
        const narrow = settlingTimeS(spanOfSamples(values), 0, Math.min(a, b)) ?? Infinity;
        const wide = settlingTimeS(spanOfSamples(values), 0, Math.max(a, b)) ?? Infinity;
        expect(wide).toBeLessThanOrEqual(narrow);
      }),
    );
  });
});

describe('final value and calm', () => {
  it('averages the last fifth', () => {
    const signal = spanOfSamples([
      ...Array.from({ length: 80 }, () => 7),
      ...Array.from({ length: 20 }, () => 2),
    ]);
    expect(endingOf(signal, 0.1)).toEqual({ finalValue: 2, calm: true });
  });

  it('averages at least half a second of a short window', () => {
    const signal = spanOfSamples([0, 0, 0, 0, 0, 1, 1, 1, 1, 1].map((y) => 2 * y));
    expect(endingOf(signal, 0.1)).toEqual({ finalValue: 2, calm: true });
    expect(endingOf({ ...signal, end: 9 }, 0.1)).toEqual({ finalValue: 8 / 5, calm: false });
  });

  it('is not calm when it still swings out of the band', () => {
    expect(
      endingOf(
        sampled((t) => 0.52 * Math.sin(9 * t), 10, 0.01),
        0.5,
      )?.calm,
    ).toBe(false);
    expect(
      endingOf(
        sampled((t) => 0.48 * Math.sin(9 * t), 10, 0.01),
        0.5,
      )?.calm,
    ).toBe(true);
  });

  it('is calm while it just touches the band, and looks no further than its end', () => {
    const touching = [0, 0, 0, 0, 0, 1, -1, 0, 1, -1, 50];
    expect(endingOf({ ...spanOfSamples(touching), end: 10 }, 1)).toEqual({ finalValue: 0, calm: true });
    expect(endingOf({ ...spanOfSamples(touching), end: 10 }, 0.999)?.calm).toBe(false);
  });

  it('is unknown for an empty span', () => {
    expect(endingOf(EMPTY, 1)).toBeNull();
  });
});

describe('rise time and overshoot', () => {
  it('rises from the first row where it begins at 10 %, to where it first meets 90 %, up and down', () => {
    const samples = [0.1, 0.5, 0.9, 0.9, 0.9];
    expect(riseTimeS(spanOfSamples(samples), { initial: 0, final: 1 })).toBeCloseTo(0.2, 12);
    const downward = samples.map((y) => -y);
    expect(riseTimeS(spanOfSamples(downward), { initial: 0, final: -1 })).toBeCloseTo(0.2, 12);
  });

  it('have no rise without a step, or when 90 % is never reached', () => {
    expect(riseTimeS(spanOfSamples([1, 1]), { initial: 1, final: 1 })).toBeNull();
    expect(riseTimeS(spanOfSamples([0, 0.5, 0.8]), { initial: 0, final: 1 })).toBeNull();
    expect(overshootPercent(spanOfSamples([1, 2]), { initial: 1, final: 1 })).toBe(0);
    expect(overshootPercent(EMPTY, { initial: 0, final: 1 })).toBe(0);
  });
});

describe('rebound', () => {
  // For a system let go from an offset at rest, and for one that was struck, half a period apart the peaks
  // have the ratio exp(-pi zeta / sqrt(1 - zeta^2)): logarithmic decrement, any vibration textbook (from memory).
  it.each([0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7])('has the closed-form ratio at damping ratio %d', (zeta) => {
    const root = Math.sqrt(1 - zeta ** 2);
    const ratio = 100 * Math.exp((-Math.PI * zeta) / root);
    const offset = sampled(secondOrderError(zeta, 1), 60, 0.001);
    const struck = sampled((t) => -Math.exp(-zeta * t) * Math.sin(root * t), 60, 0.001);
    expect(reboundPercent(offset, 0, 0.01)).toBeCloseTo(ratio, 4);
    expect(reboundPercent(struck, 0, 0.01)).toBeCloseTo(ratio, 4);
  });

  it('is 0 when the signal stays in the band, creeps back, or is not there', () => {
    expect(reboundPercent(spanOfSamples([0.4, -0.5, 0.5]), 0, 0.5)).toBe(0);
    expect(
      reboundPercent(
        sampled((t) => Math.exp(-t), 20, 0.01),
        0,
        0.1,
      ),
    ).toBe(0);
    expect(reboundPercent(EMPTY, 0, 0.5)).toBe(0);
  });

  it('is not fooled by noise about zero: neither as first peak nor as end of a swing', () => {
    const noise = (k: number): number => (k % 2 === 0 ? 0.04 : -0.04);
    const clean = sampled((t) => (t < 1 ? 0 : Math.exp(-0.6 * (t - 1)) * Math.sin(2 * (t - 1))), 10, 0.005);
    const noisy = { ...clean, samples: Array.from(clean.samples, (y, k) => y + noise(k)) };
    const expected = reboundPercent(clean, 0, 0.25);
    expect(expected).toBeGreaterThan(30);
    // Each of the two peaks, about 0.65 and 0.26, is read at most 0.04 too large.
    expect(Math.abs(reboundPercent(noisy, 0, 0.25) - expected)).toBeLessThan(6);
  });

  it('passes over a kick that precedes the real answer', () => {
    const kickThenAnswer = [0, 0.6, 0, -1, -3, -1, 0.3, 1.5, 0.2, -0.1, 0, 0];
    expect(reboundPercent(spanOfSamples(kickThenAnswer), 0, 0.5)).toBeCloseTo(50, 10);
  });

  it('counts from the final value, on whichever side of zero the signal lives', () => {
    expect(reboundPercent(spanOfSamples([10, 7, 10, 11, 10, 10]), 10, 0.5)).toBeCloseTo(100 / 3, 10);
    expect(reboundPercent(spanOfSamples([-10, -7, -10, -11, -10, -10]), -10, 0.5)).toBeCloseTo(100 / 3, 10);
  });

  it('is that of the first swing back, not of a wider one later', () => {
    expect(reboundPercent(spanOfSamples([1, -0.3, 0.5, -0.9, 0, 0]), 0, 0.5)).toBeCloseTo(30, 10);
  });

  it('takes for the first peak one of just half of the largest deviation, which makes 200 % at most', () => {
    expect(reboundPercent(spanOfSamples([1, 0, -2, 0, 0, 0]), 0, 0.5)).toBeCloseTo(200, 10);
    expect(reboundPercent(spanOfSamples([0.99, 0, -2, 0.4, 0, 0]), 0, 0.5)).toBeCloseTo(20, 10);
  });

  it('ends a swing past a fifth of the band on the other side, not on that line', () => {
    expect(reboundPercent(spanOfSamples([0.8, -0.1, 1, -0.4, 0, 0]), 0, 0.5)).toBeCloseTo(40, 10);
    expect(reboundPercent(spanOfSamples([1, -0.2, 0.1, -0.4, 0, 0]), 0, 0.5)).toBeCloseTo(40, 10);
  });

  it('is the same when the signal is turned over, moved and stretched, and lies between 0 and 200 %', () => {
    const samples = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(samples, (values) => {
        const plain = reboundPercent(spanOfSamples(values), 0, 8);
        const turned = reboundPercent(spanOfSamples(values.map((y) => 16 - 4 * y)), 16, 32);
        expect(turned).toBe(plain);
        expect(plain).toBeGreaterThanOrEqual(0);
        expect(plain).toBeLessThanOrEqual(200);
      }),
    );
  });
});
