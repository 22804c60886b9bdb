/** Is what is typed a number that the controller takes, digit by digit? */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { typedNumber } from '../../src/quantity/sheet-text.js';

describe('digits', () => {
  it.each([
    [{ decimals: 2 }, 14.3239, '14.32'],
    [{ decimals: 0 }, -1200.4, '-1200'],
    [{ decimals: 3 }, -0.0001, '0.000'],
    [{ step: 0.25 }, 14.4, '14.50'],
    [{ step: 5 }, 1147, '1145'],
    [{ step: 1e-7 }, 1.23456e-4, '0.0001235'],
    [{ step: 1e9 }, 2.6e9, '3000000000'],
    [{}, 1145.9155902616465, '1145.916'],
    [{}, 20, '20'],
    [{}, 4.363323129985824e-5, '0.00004363323'],
    [{}, 1.5e20, '150000000000000000000'],
  ])('%j of %d', (row, exact, text) => {
    expect(typedNumber(row, exact)).toMatchObject({ text, value: Number(text), limited: false });
  });

  it('tells what rounding changed, and nothing else', () => {
    expect(typedNumber({ decimals: 2 }, 14.32).rounded).toBe(false);
    expect(typedNumber({ decimals: 1 }, 0.1 + 0.2).rounded).toBe(false);
    expect(typedNumber({ decimals: 1 }, 0.30001).rounded).toBe(true);
    expect(typedNumber({ step: 5 }, 0).rounded).toBe(false);
  });
});

describe('limits', () => {
  it.each([
    [{ greatest: 100, decimals: 1 }, 120, '100.0'],
    [{ least: -9.99, decimals: 1 }, -12, '-9.9'],
    [{ greatest: 1, step: 0.3 }, 5, '0.9'],
    [{ greatest: 0.3, step: 0.1 }, 5, '0.3'],
    [{ least: 0.2, greatest: 0.25, decimals: 0 }, 0.24, '0.2'],
    [{ greatest: 12.345 }, 99, '12.345'],
    [{ greatest: 9.96, decimals: 1 }, 9.96, '9.9'],
  ])('%j of %d', (row, exact, text) => {
    expect(typedNumber(row, exact)).toMatchObject({ text, limited: true });
  });
});

it('is on the grid, inside the limits, next to the number, and never has an exponent', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.integer({ min: 0, max: 9 }),
      (exact, decimals) => {
        const row = { decimals, least: -5000, greatest: 7000 };
        const { text, value, limited } = typedNumber(row, exact);
        expect(text).toMatch(new RegExp(decimals === 0 ? '^-?\\d+$' : `^-?\\d+\\.\\d{${decimals}}$`));
        expect(text).not.toMatch(/^-0*\.?0*$/);
        expect(value).toBe(Number(text));
        expect(value >= -5000 && value <= 7000).toBe(true);
        if (!limited) expect(Math.abs(value - exact)).toBeLessThanOrEqual(0.5001 * 10 ** -decimals);
        else expect(exact < -5000 || exact > 7000 - 0.5).toBe(true);
      },
    ),
    { numRuns: 500, seed: 7 },
  );
});
