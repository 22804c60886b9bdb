/** Is everything that is wrong with a controller sheet told at once, each with its place? */
import { describe, expect, it } from 'vitest';
import { checkValue } from '../../src/quantity/check.js';
import { keyPath } from '../../src/quantity/key-path.js';
import type { Complaint } from '../../src/quantity/problem.js';
import { validSheet, type RawRow } from './valid-sheet.js';

const HOLD: RawRow = { label: 'Hold', quantity: 'proportionalAPerDeg', unit: 'A/deg' };
const CALM: RawRow = { label: 'Calm', quantity: 'rateAPerDegPerS', unit: 'A/(deg/s)' };

function complaints(raw: unknown): Complaint[] {
  const result = checkValue('sheet', raw);
  return result.ok ? [] : result.faults;
}

const told = (rows: readonly RawRow[], parts: object = {}) =>
  complaints({ ...validSheet(rows), ...parts }).map(({ path, received }) => `${keyPath(path)}: ${received}`);

it('a sheet as it should be has none', () => {
  expect(told([HOLD, CALM])).toEqual([]);
  expect(told([{ ...HOLD, unit: 'limit/rad' }], { currentLimitA: 60 })).toEqual([]);
});

describe('a unit', () => {
  it('that measures something else is told with those that can', () => {
    const [only, ...others] = complaints(validSheet([{ ...HOLD, unit: 'Hz' }]));
    expect(others).toEqual([]);
    expect(only).toMatchObject({
      path: ['rows', 0, 'unit'],
      expected:
        'a unit of current per angle for proportionalAPerDeg: A/deg, A/rad, mA/deg, mA/rad, limit/deg, limit/rad',
      received: "'Hz', which measures something else",
    });
  });

  it('that is none is told with the one that was probably meant, and only once', () => {
    const found = complaints(validSheet([HOLD, { ...CALM, unit: 'A/(deg/sec)' }]));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      received: "the unknown unit 'A/(deg/sec)'",
      suggestion: 'A/(deg/s)',
    });
  });

  it('in parts of the limit needs the limit', () => {
    expect(told([{ ...HOLD, unit: 'limit/deg' }])).toEqual([
      "rows[0].unit: 'limit/deg' without currentLimitA",
    ]);
  });
});

describe('rows', () => {
  it('take each number once, and have each label once, whatever its capitals', () => {
    expect(told([HOLD, { ...HOLD, label: 'HOLD' }])).toEqual([
      "rows[1].quantity: 'proportionalAPerDeg' again, as in row 1 of the sheet",
      "rows[1].label: 'HOLD' again, as in row 1 of the sheet",
    ]);
  });

  it('have decimals or a step, and a range that is one', () => {
    expect(told([{ ...HOLD, decimals: 1, step: 0.5 }])).toEqual(['rows[0].step: both']);
    expect(told([{ ...HOLD, least: 5, greatest: 5 }])).toEqual(['rows[0].greatest: 5']);
    expect(told([{ ...HOLD, least: 1, greatest: 9, whenLeftOut: 0 }])).toEqual(['rows[0].whenLeftOut: 0']);
  });

  it('have a label of one line', () => {
    for (const label of ['', ' Hold', 'two\nlines', 'x'.repeat(41)]) {
      expect(complaints(validSheet([{ ...HOLD, label }])).map(({ path }) => keyPath(path))).toEqual([
        'rows[0].label',
      ]);
    }
  });

  it('for a number that no profile has are told with the one that was probably meant', () => {
    const found = complaints(validSheet([{ ...HOLD, quantity: 'proportionalAPerDegree' }]));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ path: ['rows', 0, 'quantity'], suggestion: 'proportionalAPerDeg' });
  });
});

it('what means none is a number that can be typed', () => {
  const none = (row: object) =>
    complaints(validSheet([{ ...HOLD, quantity: 'slewLimitAPerS', unit: 'A/s', ...row }])).map(
      ({ path, expected }) => `${keyPath(path)}: ${expected}`,
    );
  expect(none({ decimals: 0, whenLeftOut: 0.5 })).toEqual([
    expect.stringMatching(/^rows\[0\]\.whenLeftOut: a number with 0 decimals/),
  ]);
  expect(none({ step: 7, whenLeftOut: 100 })).toEqual([
    expect.stringMatching(/^rows\[0\]\.whenLeftOut: a number in steps of 7, as the row takes it, such as 98/),
  ]);
  expect(none({ step: 0.1, whenLeftOut: 0.3 })).toEqual([]);
  expect(none({ decimals: 2, whenLeftOut: 99.99 })).toEqual([]);
  expect(none({ whenLeftOut: 0.123456 })).toEqual([]);
  // What is no grid is told alone, and crashes nothing.
  for (const grid of [{ decimals: 1000 }, { decimals: 1.5 }, { step: 1e-300 }, { step: -1 }])
    expect(none({ ...grid, whenLeftOut: 0.5 }).join()).not.toContain('whenLeftOut');
});

it('all of it at once', () => {
  const rows = [
    { ...HOLD, unit: 'A/s' },
    { ...CALM, label: 'hold', unit: 'limit/(rad/s)', decimals: 1, step: 1, least: 2, greatest: 1 },
    { label: 'Other', quantity: 'stifness', unit: 'A' },
  ];
  expect(
    told(rows, { loopRateHz: 5 })
      .map((line) => line.split(':')[0]!)
      .toSorted(),
  ).toEqual([
    'loopRateHz',
    'rows[0].unit',
    'rows[1].greatest',
    'rows[1].label',
    'rows[1].step',
    'rows[1].unit',
    'rows[2].quantity',
  ]);
});

it('what is no sheet at all is told without a crash', () => {
  for (const raw of [null, 3, [], { rows: 7 }, { rows: [null, 3, { label: 5 }] }]) {
    expect(complaints(raw).length).toBeGreaterThan(0);
  }
});
