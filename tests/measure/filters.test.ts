/**
 * The two filters behind a metric: Wk of ISO 2631-1 against its table, the Butterworth high-pass
 * against its closed form, and both as they act on signals.
 */
import { describe, expect, it } from 'vitest';
import { butterworthHighPass, matchedSection, rootMeanSquareThrough } from '../../src/measure/biquad.js';
import type { Biquad } from '../../src/measure/biquad.js';
import { weightedFeetAccelerationMPerS2, weightingWk } from '../../src/measure/feet-vibration.js';
import { pitchRateActivityRadPerS } from '../../src/measure/pitch-rate-activity.js';
import { sampled } from './exact-response.js';

/** |H| of a chain of digital sections at a frequency. */
function magnitude(chain: readonly Biquad[], hz: number, rateHz: number): number {
  const w = (2 * Math.PI * hz) / rateHz;
  return chain.reduce((product, { b0, b1, b2, a1, a2 }) => {
    const above = Math.hypot(
      b0 + b1 * Math.cos(w) + b2 * Math.cos(2 * w),
      b1 * Math.sin(w) + b2 * Math.sin(2 * w),
    );
    const below = Math.hypot(
      1 + a1 * Math.cos(w) + a2 * Math.cos(2 * w),
      a1 * Math.sin(w) + a2 * Math.sin(2 * w),
    );
    return (product * above) / below;
  }, 1);
}

/**
 * |Wk| of the analog weighting, written out from ISO 8041 as printed in the manual of the Larson Davis HVM200, table 3.1:
 * f1 0.4, f2 100 (Q 1/sqrt 2), f3 = f4 12.5 (Q 0.63), f5 2.37, f6 3.35 (Q 0.91), gain 1.
 */
function analogWk(hz: number): number {
  const second = (corner: number, q: number): number => Math.hypot(1 - (hz / corner) ** 2, hz / (q * corner));
  const highPass = (hz / 0.4) ** 2 / second(0.4, Math.SQRT1_2);
  const lowPass = 1 / second(100, Math.SQRT1_2);
  const transition = Math.hypot(1, hz / 12.5) / second(12.5, 0.63);
  const upwardStep = ((second(2.37, 0.91) / second(3.35, 0.91)) * 2.37 ** 2) / 3.35 ** 2;
  return highPass * lowPass * transition * upwardStep;
}

// ISO 2631-1:1997 table 3, factors x 1000 at NOMINAL third-octave frequencies; 0.5 to 50 Hz as found in public code, the ends computed.
const WK_TABLE = [
  [0.1, 31],
  [0.125, 49],
  [0.16, 79],
  [0.2, 121],
  [0.25, 182],
  [0.315, 263],
  [0.4, 352],
  [0.5, 418],
  [0.63, 459],
  [0.8, 477],
  [1, 482],
  [1.25, 484],
  [1.6, 494],
  [2, 531],
  [2.5, 631],
  [3.15, 804],
  [4, 967],
  [5, 1039],
  [6.3, 1054],
  [8, 1036],
  [10, 988],
  [12.5, 902],
  [16, 768],
  [20, 636],
  [25, 513],
  [31.5, 405],
  [40, 314],
  [50, 246],
  [63, 186],
  [80, 132],
] as const;

describe('Wk at the feet', () => {
  it.each(WK_TABLE)('at %d Hz is %d thousandths, within one, at 800 Hz', (hz, thousandths) => {
    expect(Math.abs(1000 * magnitude(weightingWk(800), hz, 800) - thousandths)).toBeLessThan(1);
  });

  it('at 15.915 Hz (100 rad/s) is 0.7718 (computed)', () => {
    expect(magnitude(weightingWk(800), 100 / (2 * Math.PI), 800)).toBeCloseTo(0.7718, 4);
  });

  it.each([
    [4000, 80, 0.0001],
    [1000, 80, 0.0001],
    [800, 80, 0.0001],
    [400, 80, 0.002],
    [250, 80, 0.012],
    [200, 80, 0.04],
    [150, 67, 0.06],
    [100, 45, 0.06],
  ])(
    'at a rate of %d Hz keeps to the analog weighting up to %d Hz within %d of it',
    (rateHz, topHz, tolerance) => {
      const chain = weightingWk(rateHz);
      for (let hz = 0.5; hz <= topHz; hz *= 1.02) {
        expect(Math.abs(magnitude(chain, hz, rateHz) / analogWk(hz) - 1)).toBeLessThan(tolerance);
      }
    },
  );

  it('is stable at every rate a board may have', () => {
    for (let rateHz = 100; rateHz <= 4000; rateHz += 50) {
      for (const { a1, a2 } of weightingWk(rateHz)) {
        expect(Math.abs(a2)).toBeLessThan(1);
        expect(Math.abs(a1)).toBeLessThan(1 + a2);
      }
    }
  });

  it.each([
    [1, 482],
    [6.3, 1054],
    [20, 636],
  ])('weights a swing of %d Hz as an rms', (hz, thousandths) => {
    const swing = sampled((t) => 9.81 + 2 * Math.sin(2 * Math.PI * hz * t), 60, 1 / 800);
    const lateWholeSeconds = { ...swing, first: 20 * 800, end: 60 * 800 };
    const rms = weightedFeetAccelerationMPerS2(lateWholeSeconds);
    expect(Math.abs((1000 * rms) / Math.SQRT2 - thousandths)).toBeLessThan(1);
  });

  it('feels nothing in a steady acceleration, from the first row on', () => {
    expect(weightedFeetAccelerationMPerS2(sampled(() => 9.81, 5, 1 / 800))).toBeLessThan(1e-9);
  });
});

describe('pitch-rate activity', () => {
  // |H| of a second-order Butterworth high-pass: 1 / sqrt(1 + (fc/f)^4), any filter textbook.
  it.each([0.3, 1, 1.5, 3, 6, 12, 40])('passes %d Hz as a Butterworth high-pass at 3 Hz', (hz) => {
    const high = magnitude([butterworthHighPass(3, 800)], hz, 800);
    expect(Math.abs(high / (1 / Math.sqrt(1 + (3 / hz) ** 4)) - 1)).toBeLessThan(5e-4);
  });

  it.each([100, 400, 4000])('is down by a factor sqrt 2 at 3 Hz exactly, at a rate of %d Hz', (rateHz) => {
    expect(magnitude([butterworthHighPass(3, rateHz)], 3, rateHz)).toBeCloseTo(Math.SQRT1_2, 10);
  });

  it('is the rms of what shakes fast, and forgets what sways slowly', () => {
    const ride = sampled(
      (t) => 2 + Math.sin(2 * Math.PI * 0.2 * t) + 0.3 * Math.sin(2 * Math.PI * 20 * t),
      20,
      1 / 800,
    );
    const rms = pitchRateActivityRadPerS({ ...ride, first: 5 * 800, end: 20 * 800 });
    expect(rms).toBeCloseTo(0.3 / Math.SQRT2, 3);
  });

  it('halves the power of a swing of 3 Hz', () => {
    const swing = sampled((t) => Math.sin(2 * Math.PI * 3 * t), 10, 1 / 800);
    expect(pitchRateActivityRadPerS({ ...swing, first: 2 * 800, end: 10 * 800 })).toBeCloseTo(0.5, 6);
  });

  it('starts at rest: a constant rate is no activity', () => {
    expect(pitchRateActivityRadPerS(sampled(() => 4, 2, 1 / 800))).toBeLessThan(1e-12);
  });

  it('answers a unit jump with the energy 1/(2 sqrt 2 wc) of the closed-form step response', () => {
    // exp(-a t) (cos a t - sin a t) with a = wc / sqrt 2, squared and integrated from the jump on.
    const jump = sampled((t) => (t < 1 ? 4 : 5), 2, 1 / 4000);
    const energy = 1 / (2 * Math.SQRT2 * 2 * Math.PI * 3);
    expect(pitchRateActivityRadPerS(jump) / Math.sqrt(energy / 2)).toBeCloseTo(1, 2);
  });

  it('knows the past of a window that begins later', () => {
    const jump = sampled((t) => (t < 1 ? 0 : 1), 2, 1 / 800);
    expect(pitchRateActivityRadPerS({ ...jump, first: 808 })).toBeGreaterThan(0.1);
  });

  it('begins at rest on a steady value also where the filter lets it through', () => {
    const w = 2 * Math.PI * 5;
    const lowPass = { numerator: [2, 0, 0], denominator: [1, 1 / w, 1 / w ** 2] } as const;
    const section = matchedSection(lowPass, 800, [2, 20]);
    const steady = sampled(() => 3, 1, 1 / 800);
    expect(rootMeanSquareThrough([section], steady)).toBeCloseTo(6, 9);
    expect(rootMeanSquareThrough([section, section], steady)).toBeCloseTo(12, 9);
  });

  it('is 0 for an empty span', () => {
    expect(
      rootMeanSquareThrough([butterworthHighPass(3, 800)], { samples: [], first: 0, end: 0, tickS: 1 }),
    ).toBe(0);
  });
});

describe('a matched section', () => {
  it('is that of the fraction, however numerator and denominator are stretched together', () => {
    const w = 2 * Math.PI * 12;
    const plain = { numerator: [1.5, 0.5 / w, 0], denominator: [1, 1 / w, 1 / w ** 2] } as const;
    const stretched = { numerator: [6, 2 / w, 0], denominator: [4, 4 / w, 4 / w ** 2] } as const;
    const [expected, actual] = [plain, stretched].map((section) => matchedSection(section, 400, [8, 60]));
    for (const name of ['b0', 'b1', 'b2', 'a1', 'a2'] as const) {
      expect(actual![name]).toBeCloseTo(expected![name], 12);
    }
    expect(magnitude([actual!], 0, 400)).toBeCloseTo(1.5, 12);
  });

  it('refuses anchors that no real section can meet', () => {
    const w = 2 * Math.PI * 10;
    const highPass = { numerator: [0, 0, 1 / w ** 2], denominator: [1, 1 / w, 1 / w ** 2] } as const;
    expect(() => matchedSection(highPass, 100, [10, 49])).not.toThrow();
    const damped = { ...highPass, denominator: [1, 1 / (0.6 * w), 1 / w ** 2] } as const;
    expect(() => matchedSection(damped, 100, [5, 40])).toThrow(
      'no matched section at 100 Hz with anchors 5, 40 Hz',
    );
  });
});
