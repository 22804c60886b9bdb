/**
 * Step metrics against the exact second-order response over a grid of damping ratios.
 * Formulas: K. Ogata, Modern Control Engineering, section 5-3, and N. S. Nise, Control Systems
 * Engineering, section 4.6 (from memory). The 10-90 % column is Nise's table as found in public class
 * notes (Lesson 10, FEECONS); the settling columns are computed from the closed form, not the
 * envelope 4/(zeta wn), which is a different number.
 */
import { describe, expect, it } from 'vitest';
import { settlingTimeS } from '../../src/measure/settling-time.js';
import { overshootPercent, riseTimeS } from '../../src/measure/step-response.js';
import { exactSettlingTimeS, sampled, secondOrderError } from './exact-response.js';

const UNIT_STEP = { initial: 0, final: 1 };

// zeta, overshoot %, 10-90 % rise, 2 % settling, 5 % settling; times are in units of 1/wn.
const TABLE = [
  [0.1, 72.925, 1.104, 38.383, 28.968],
  [0.2, 52.662, 1.203, 19.602, 13.744],
  [0.3, 37.233, 1.321, 11.23, 10.137],
  [0.4, 25.383, 1.463, 8.409, 7.609],
  [0.5, 16.303, 1.638, 8.076, 5.289],
  [0.6, 9.478, 1.854, 5.943, 5.229],
  [0.7, 4.599, 2.126, 5.979, 2.9],
  [0.78, 1.992, 2.393, 3.605, 3.277],
  [0.8, 1.516, 2.467, 3.756, 3.385],
  [0.9, 0.152, 2.883, null, null],
] as const;

describe.each(TABLE)('damping ratio %d', (zeta, overshoot, rise, settling2, settling5) => {
  const wn = 1;
  const signal = sampled((t) => 1 - secondOrderError(zeta, wn)(t), 60, 0.001);

  it('has the overshoot exp(-pi zeta / sqrt(1 - zeta^2))', () => {
    const measured = overshootPercent(signal, UNIT_STEP);
    expect(measured).toBeCloseTo(100 * Math.exp((-Math.PI * zeta) / Math.sqrt(1 - zeta ** 2)), 4);
    expect(Math.abs(measured - overshoot)).toBeLessThan(5.1e-4);
  });

  it('has the rise time of the published table', () => {
    expect(Math.abs((riseTimeS(signal, UNIT_STEP) ?? NaN) - rise)).toBeLessThan(1.1e-3);
  });

  it.each([
    [0.02, settling2],
    [0.05, settling5],
  ])('settles into a band of %d as the closed form says', (band, tabled) => {
    const measured = settlingTimeS(signal, 1, band) ?? NaN;
    expect(measured).toBeCloseTo(exactSettlingTimeS(zeta, wn, band), 5);
    if (tabled !== null) expect(Math.abs(measured - tabled)).toBeLessThan(5.1e-4);
  });

  it('measures the same percentages and scaled times on a faster, larger, downward step', () => {
    const fast = sampled((t) => 3 - 2 * (1 - secondOrderError(zeta, 20)(t)), 3, 0.00005);
    const step = { initial: 3, final: 1 };
    expect(overshootPercent(fast, step)).toBeCloseTo(overshootPercent(signal, UNIT_STEP), 4);
    expect((riseTimeS(fast, step) ?? NaN) * 20).toBeCloseTo(riseTimeS(signal, UNIT_STEP) ?? NaN, 5);
    expect((settlingTimeS(fast, 1, 0.04) ?? NaN) * 20).toBeCloseTo(settlingTimeS(signal, 1, 0.02) ?? NaN, 5);
  });
});

describe('between rows', () => {
  it('times of a coarse recording are off by far less than a row', () => {
    const tickS = 0.05;
    const coarse = sampled((t) => 1 - secondOrderError(0.4, 1)(t), 60, tickS);
    expect(Math.abs((settlingTimeS(coarse, 1, 0.02) ?? NaN) - 8.409)).toBeLessThan(tickS / 20);
    expect(Math.abs((riseTimeS(coarse, UNIT_STEP) ?? NaN) - 1.4635)).toBeLessThan(tickS / 20);
  });
});

describe('critically damped and first order', () => {
  it('zeta = 1: no overshoot; rise 3.3579, settling 5.834 and 4.744 (1 - (1 + t) exp(-t), computed)', () => {
    const signal = sampled((t) => 1 - (1 + t) * Math.exp(-t), 40, 0.001);
    expect(overshootPercent(signal, UNIT_STEP)).toBe(0);
    expect(riseTimeS(signal, UNIT_STEP)).toBeCloseTo(3.3579, 4);
    expect(settlingTimeS(signal, 1, 0.02)).toBeCloseTo(5.834, 3);
    expect(settlingTimeS(signal, 1, 0.05)).toBeCloseTo(4.744, 3);
  });

  it('first order: rise tau ln 9, settling tau ln 50 and tau ln 20 (any control textbook)', () => {
    const tau = 0.7;
    const signal = sampled((t) => 1 - Math.exp(-t / tau), 30, 0.001);
    expect(overshootPercent(signal, UNIT_STEP)).toBe(0);
    expect(riseTimeS(signal, UNIT_STEP)).toBeCloseTo(tau * Math.log(9), 6);
    expect(settlingTimeS(signal, 1, 0.02)).toBeCloseTo(tau * Math.log(50), 6);
    expect(settlingTimeS(signal, 1, 0.05)).toBeCloseTo(tau * Math.log(20), 6);
  });
});
