/**
 * Does the check find everything that is wrong with a value, all at once, and say it in words that
 * help?
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkValue } from '../../src/quantity/check.js';
import { FILE_KINDS, type FileKind } from '../../src/quantity/file-kind.js';
import { keyPath } from '../../src/quantity/key-path.js';
import type { Complaint } from '../../src/quantity/problem.js';
import {
  altered,
  validBoard,
  validKept,
  validProfile,
  validRider,
  validScenario,
  validSheet,
} from './valid-values.js';

const VALID = {
  board: validBoard,
  rider: validRider,
  profile: validProfile,
  scenario: validScenario,
  sheet: validSheet,
  kept: validKept,
};

function complaints(kind: FileKind, raw: unknown): Complaint[] {
  const result = checkValue(kind, raw);
  return result.ok ? [] : result.faults;
}

function places(kind: FileKind, raw: unknown): string[] {
  return complaints(kind, raw).map(({ path }) => keyPath(path));
}

function only(kind: FileKind, raw: unknown): Complaint {
  const found = complaints(kind, raw);
  expect(found).toHaveLength(1);
  return found[0] as Complaint;
}

describe('a value as it should be', () => {
  it.each(FILE_KINDS)('passes: %s', (kind) => {
    expect(checkValue(kind, VALID[kind]())).toMatchObject({ ok: true });
  });

  it('comes back with its defaults filled in', () => {
    const result = checkValue('board', validBoard());
    expect(result).toMatchObject({
      ok: true,
      value: { tyre: { verticalStiffnessNPerM: 70_000 }, controller: { loopRateHz: 800, delayTicks: 1 } },
    });
  });
});

describe('a field that is wrong', () => {
  const cases: [string, unknown, string][] = [
    ['text', 'high', "text 'high'"],
    ['a number in quotes', '20', "text '20'"],
    ['empty text', '', 'empty text'],
    ['NaN', NaN, 'NaN'],
    ['infinity', Infinity, 'infinity'],
    ['minus infinity', -Infinity, 'minus infinity'],
    ['nothing', null, 'nothing'],
    ['a list', [1, 2], 'a list of 2 entries'],
    ['an empty list', [], 'an empty list'],
    ['a section', { a: 1 }, 'a section'],
    ['a truth value', true, 'true'],
    ['below the range', -0.5, '-0.5'],
    ['above the range', 501, '501'],
  ];
  it.each(cases)('is told with its unit and what came: %s', (_what, value, received) => {
    const raw = altered(validProfile(), ['gains', 'proportionalAPerDeg'], value);
    expect(only('profile', raw)).toEqual({
      path: ['gains', 'proportionalAPerDeg'],
      expected: 'a number from 0 to 500 A/deg',
      received,
    });
  });

  it('both ends of a range are inside it', () => {
    expect(complaints('profile', altered(validProfile(), ['gains', 'rateAPerDegPerS'], 0))).toEqual([]);
    expect(complaints('profile', altered(validProfile(), ['gains', 'rateAPerDegPerS'], 100))).toEqual([]);
  });

  it('a missing one is told where it belongs', () => {
    const raw = altered(validProfile(), ['gains'], { proportionalAPerDeg: 20 });
    expect(only('profile', raw)).toEqual({
      path: ['gains', 'rateAPerDegPerS'],
      expected: 'a number from 0 to 100 A/(deg/s)',
      received: 'nothing',
    });
  });

  it('a fraction is no count', () => {
    const raw = altered(validBoard(), ['pack', 'seriesCells'], 15.5);
    expect(only('board', raw)).toMatchObject({
      expected: 'a whole number from 1 to 60 cells',
      received: '15.5',
    });
  });

  it('an escape sequence in a summary is refused', () => {
    const raw = altered(validProfile(), ['summary'], 'calm \u001b[31mred');
    expect(only('profile', raw)).toMatchObject({
      path: ['summary'],
      expected: 'text of 1 to 600 characters without control characters',
    });
  });

  it('a long text is cut where it is quoted', () => {
    const { received } = only(
      'profile',
      altered(validProfile(), ['gains', 'rateAPerDegPerS'], 'x'.repeat(9000)),
    );
    expect(received).toBe(`text '${'x'.repeat(60)}…' (9000 characters)`);
  });

  it('a mistyped word gets a suggestion', () => {
    const raw = altered(validScenario(), ['road', 0, 'surface'], 'wet-leafs');
    expect(only('scenario', raw)).toMatchObject({ path: ['road', 0, 'surface'], suggestion: 'wet-leaves' });
  });
});

describe('a value that is no section at all', () => {
  it.each([null, undefined, 5, 'text', [], [[]], true, NaN])('is told: %s', (raw) => {
    expect(only('rider', raw)).toMatchObject({
      path: [],
      expected: 'a section with summary, body, stance, balance, pace',
    });
  });
});

describe('an unknown key', () => {
  it('is told with the keys there are and the one probably meant', () => {
    expect(only('profile', altered(validProfile(), ['gains', 'integralAPerDegs'], 1))).toEqual({
      path: ['gains', 'integralAPerDegs'],
      expected: 'one of the keys proportionalAPerDeg, rateAPerDegPerS, integralAPerDegS',
      received: "the unknown key 'integralAPerDegs'",
      suggestion: 'integralAPerDegS',
    });
  });

  it('gets no suggestion when none is near', () => {
    expect(only('profile', altered(validProfile(), ['colour'], 'red'))).not.toHaveProperty('suggestion');
  });

  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty'])('is told even when it is %s', (key) => {
    const raw = altered(altered(validProfile(), [key], { a: 1 }), ['gains', key], { b: 1 });
    expect(places('profile', raw).toSorted()).toEqual([key, `gains.${key}`].toSorted());
    expect(Reflect.get({}, 'a')).toBeUndefined();
  });

  it('is found in sections with defaults and in lists', () => {
    const board = altered(validBoard(), ['tyre'], { verticalStiffness: 70_000 });
    expect(only('board', board)).toMatchObject({
      path: ['tyre', 'verticalStiffness'],
      suggestion: 'verticalStiffnessNPerM',
    });
    const scenario = altered(validScenario(), ['shoves', 0, 'forwardn'], 5);
    expect(only('scenario', scenario)).toMatchObject({
      path: ['shoves', 0, 'forwardn'],
      suggestion: 'forwardN',
    });
  });
});

describe('several faults', () => {
  it('are told all at once, those across fields too', () => {
    const raw = {
      summary: 5,
      wheel: { radiusM: 'big', massKg: NaN, inertiaKgM2: 0.05, masKg: 6 },
      deck: validBoard().deck,
      motor: { ...validBoard().motor, speedConstantRpmPerV: 30, resistanceOhm: 'low' },
      pack: {
        ...validBoard().pack,
        seriesCells: 0,
        openCircuit: [
          { chargePercent: 50, cellV: 3.6 },
          { chargePercent: 40, cellV: 3.7 },
        ],
      },
    };
    expect(places('board', raw).toSorted()).toEqual(
      [
        'summary',
        'wheel.radiusM',
        'wheel.massKg',
        'wheel.masKg',
        'motor.resistanceOhm',
        'motor.torqueConstantNmPerA',
        'pack.seriesCells',
        'pack.openCircuit[1].chargePercent',
      ].toSorted(),
    );
  });

  it('no place is complained about twice for the same reason', () => {
    const found = complaints('profile', altered(validProfile(), ['summary'], '\u0007'.repeat(700)));
    expect(found).toHaveLength(1);
  });
});

it('no value makes the check throw', () => {
  const anything = fc.anything({ withBigInt: true, withNullPrototype: true, maxDepth: 4 });
  fc.assert(
    fc.property(fc.constantFrom(...FILE_KINDS), anything, (kind, raw) => {
      expect(complaints(kind, raw).length).toBeGreaterThan(0);
    }),
    { seed: 1, numRuns: 300 },
  );
});

it('no value at any place of a valid file makes the check throw', () => {
  const steps = ['road', 'speeds', 'shifts', 'shoves', 'measure', 'start', 'durationS'] as const;
  fc.assert(
    fc.property(fc.constantFrom(...steps), fc.anything({ maxDepth: 3 }), (step, put) => {
      for (const { path, expected, received } of complaints(
        'scenario',
        altered(validScenario(), [step], put),
      )) {
        expect(path.length).toBeGreaterThan(0);
        expect(expected).not.toBe('');
        expect(received).not.toBe('');
      }
    }),
    { seed: 2, numRuns: 300 },
  );
});
