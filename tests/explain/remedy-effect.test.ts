/** Is what a change did counted cell by cell and term by term, and is the verdict the one that the counts ask for? */
import { describe, expect, it } from 'vitest';
import type { Blame, Finding } from '../../src/explain/blame.js';
import {
  effectOf,
  isWorthTwo,
  orderRemedies,
  remedyOf,
  verdictOf,
  type Effect,
  type Remedy,
} from '../../src/explain/remedy-effect.js';
import type { Proposal } from '../../src/explain/remedies.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import { weightsWith } from '../../src/measure/scales.js';
import { cellOf, fallOf, resultOf } from './made-results.js';

const PROPOSAL: Proposal = {
  causes: [],
  edits: [],
  profile: profileSchema.parse({ summary: 'x', gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1 } }),
};

const NONE: Effect = {
  failuresBefore: 2,
  failuresAfter: 2,
  scoreBefore: 1,
  scoreAfter: 1,
  cured: [],
  newlyFailed: [],
  failing: ['hill', 'kerb'],
  better: [],
  worse: [],
};
const remedy = (effect: Partial<Effect>): Remedy => remedyOf(PROPOSAL, { ...NONE, ...effect });

describe('an effect', () => {
  const before = resultOf(
    cellOf('kerb', { reboundPercent: 50, commandActivityAPerS: 100 }),
    fallOf('hill'),
    cellOf('shove', { reboundPercent: 30 }),
  );
  const after = resultOf(
    cellOf('kerb', { reboundPercent: 10, commandActivityAPerS: 300 }),
    cellOf('hill'),
    fallOf('shove'),
  );
  const effect = effectOf(before, after, weightsWith());

  it('names the cells that are cured and those that newly fall', () => {
    expect(effect.cured.map(({ scenario }) => scenario)).toEqual(['hill']);
    expect(effect.newlyFailed.map(({ scenario }) => scenario)).toEqual(['shove']);
    expect([effect.failuresBefore, effect.failuresAfter]).toEqual([1, 1]);
  });

  it('sets terms side by side over the cells that stood both times', () => {
    expect(effect.better).toMatchObject([{ name: 'overshoot', before: 50, after: 10, unit: '%' }]);
    expect(effect.worse).toMatchObject([{ name: 'command-activity', before: 100, after: 300 }]);
    const weightSum = Object.values(weightsWith()).reduce((sum, weight) => sum + weight, 0);
    expect(effect.better[0]!.costChange).toBeCloseTo((2 * (10 - 50)) / 25 / weightSum, 12);
  });
});

describe('a change', () => {
  it.each<[string, Partial<Effect>, boolean]>([
    ['fewer falls', { failuresAfter: 1 }, true],
    ['as many falls and clearly less score', { scoreAfter: 0.95 }, true],
    ['as many falls and hardly less score', { scoreAfter: 0.98 }, false],
    ['less score but more falls', { failuresAfter: 3, scoreAfter: 0.5 }, false],
    [
      'fewer falls, but one that is new',
      { failuresAfter: 1, newlyFailed: resultOf(fallOf('kerb')).cells },
      false,
    ],
  ])('with %s', (_, effect, helps) => {
    expect(remedy(effect).helps).toBe(helps);
  });

  it('comes before others as profiles are ranked: falls first, then the score', () => {
    const [a, b, c] = [
      remedy({ failuresAfter: 1, scoreAfter: 0.9 }),
      remedy({ failuresAfter: 0, scoreAfter: 3 }),
      remedy({ failuresAfter: 1, scoreAfter: 0.8 }),
    ];
    expect(orderRemedies([a, b, c])).toEqual([b, c, a]);
  });

  it('of two things is worth it only where it does clearly more than each alone', () => {
    const singles = [remedy({ failuresAfter: 1, scoreAfter: 0.5 })];
    expect(isWorthTwo(remedy({ failuresAfter: 1, scoreAfter: 0.48 }), singles)).toBe(false);
    expect(isWorthTwo(remedy({ failuresAfter: 1, scoreAfter: 0.4 }), singles)).toBe(true);
    expect(isWorthTwo(remedy({ failuresAfter: 0, scoreAfter: 0.7 }), singles)).toBe(true);
  });
});

describe('the verdict', () => {
  const found = (cause: string, family: Finding['family'], ...cured: string[]): Finding => ({
    cause,
    family,
    relief: 0.4,
    share: 0.5,
    failuresCured: cured.length,
    cured,
    sureness: 'sure',
    rival: null,
  });
  const blameOf = (...findings: Finding[]): Blame => ({
    excess: 0,
    isProfileToBlame: false,
    isRigTroubled: true,
    findings,
  });
  const limitsOf = (blame: Blame, ...singles: Remedy[]) =>
    verdictOf(blame, singles, []).limits.map(({ cause }) => cause);

  it('tells one change that helps from two, and from none', () => {
    const [helps, doesNot] = [remedy({ failuresAfter: 1 }), remedy({})];
    expect(verdictOf(blameOf(), [doesNot, helps], []).kind).toBe('one change helps');
    expect(verdictOf(blameOf(), [doesNot], [helps]).kind).toBe('only two changes help');
    expect(verdictOf(blameOf(), [doesNot], []).kind).toBe('no change helps');
  });

  it('calls a limit what lies outside the profile and no change cures', () => {
    const voltage = found('voltage ceiling', 'power', 'hill');
    const cures = (...failing: string[]) => remedy({ failuresAfter: failing.length, failing });
    // As many fall less, but not the one that the voltage fells.
    expect(limitsOf(blameOf(voltage), cures('hill'))).toEqual(['voltage ceiling']);
    expect(limitsOf(blameOf(voltage), cures('kerb'))).toEqual([]);
    const delay = found("the rider's delay", 'rider');
    expect(limitsOf(blameOf(delay), remedy({ scoreAfter: 0.9 }))).toEqual(["the rider's delay"]);
    expect(limitsOf(blameOf(delay), remedy({ scoreAfter: 0.7 }))).toEqual([]);
    expect(limitsOf(blameOf(found('filter lag', 'profile', 'hill')), remedy({}))).toEqual([]);
    expect(limitsOf(blameOf(voltage, found('low pack', 'power', 'hill')), remedy({}))).toEqual([
      'voltage ceiling',
    ]);
  });
});
