/** Is the blame laid where the costs say, cell by cell, on cells made by hand? */
import { describe, expect, it } from 'vitest';
import {
  blame,
  LEAST_EXCESS,
  LEAST_EXCESS_SHARE,
  LEAST_SHARE,
  TROUBLED_COST,
  whomToAsk,
  type Ablation,
  type Outcome,
} from '../../src/explain/blame.js';

/** Cells by their costs; null is a fall. */
const cells = (...costs: (number | null)[]): Outcome[] =>
  costs.map((cost, index) => ({ key: `cell ${index}`, failed: cost === null, cost: cost ?? 10 }));
/** The same cost in every cell of ten. */
const even = (cost: number) => cells(...Array<number>(10).fill(cost));
const taken = (cause: string, after: Outcome[], isUnderReference = false): Ablation => ({
  cause,
  cells: after,
  isUnderReference,
});

describe('blame', () => {
  it('is laid on the cause whose removal cures most of what the reference cures', () => {
    const said = blame(even(1.2), even(0.2), [
      taken('filter lag', even(0.9)),
      taken('too little rate gain', even(0.4)),
      taken('trim', even(1.15)),
    ]);
    expect(said.isProfileToBlame).toBe(true);
    expect(said.excess).toBeCloseTo(1, 12);
    expect(said.findings.map(({ cause }) => cause)).toEqual(['too little rate gain', 'filter lag']);
    expect(said.findings[0]).toMatchObject({ family: 'profile', sureness: 'sure', rival: null });
    expect(said.findings.map(({ share }) => share)).toEqual([
      expect.closeTo(0.8, 12),
      expect.closeTo(0.3, 12),
    ]);
  });

  it('is not sure where another suspect cures nearly as much, and names it', () => {
    const { findings } = blame(even(1.2), even(0.2), [
      taken('too little rate gain', even(0.3)),
      taken('too little proportional gain', even(0.35)),
    ]);
    expect(findings[0]).toMatchObject({ sureness: 'not sure', rival: 'too little proportional gain' });
    expect(findings[1]).toMatchObject({ sureness: 'sure', rival: null });
  });

  it('is laid on the rig under the reference where the profile is to blame too', () => {
    const profile = cells(null, null, 0.9, 0.9);
    const reference = cells(null, 0.2, 0.2, 0.2);
    const { findings } = blame(profile, reference, [
      taken('too much rate gain', cells(null, 0.25, 0.25, 0.25)),
      taken('voltage ceiling', cells(0.2, 0.2, 0.2, 0.2), true),
    ]);
    expect(findings.map(({ cause, failuresCured, cured }) => [cause, failuresCured, cured])).toEqual([
      ['too much rate gain', 1, ['cell 1']],
      ['voltage ceiling', 1, ['cell 0']],
    ]);
    expect(findings[0]!.relief).toBeCloseTo((9.75 + 0.65 + 0.65) / 4, 12);
  });

  it('is not hidden by a cell in which both fall, nor made up for by one in which the reference alone does', () => {
    const alone = whomToAsk(cells(0.8, 0.8, 0.8, 0.8), cells(0.2, 0.2, 0.2, 0.2));
    const bothFall = whomToAsk(cells(0.8, 0.8, 0.8, 0.8, null), cells(0.2, 0.2, 0.2, 0.2, null));
    const referenceFalls = whomToAsk(cells(0.8, 0.8, 0.8, 0.8, 0.3), cells(0.2, 0.2, 0.2, 0.2, null));
    expect(alone.excess).toBeCloseTo(0.6, 12);
    for (const { excess, isProfileToBlame } of [bothFall, referenceFalls]) {
      expect(excess).toBeCloseTo((4 * 0.6) / 5, 12);
      expect(isProfileToBlame).toBe(true);
    }
    expect([bothFall, referenceFalls].map(({ isRigTroubled }) => isRigTroubled)).toEqual([true, false]);
  });

  it('weighs what lies in the profile more than what lies elsewhere', () => {
    const profile = cells(null, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9);
    const reference = cells(null, ...Array<number>(9).fill(0.3));
    const { findings } = blame(profile, reference, [
      taken('too little rate gain', cells(null, ...Array<number>(9).fill(0.3))),
      taken('voltage ceiling', cells(0.3, ...Array<number>(9).fill(0.3)), true),
    ]);
    expect(findings[0]!.relief).toBeLessThan(findings[1]!.relief);
    expect(findings.map(({ cause }) => cause)).toEqual(['too little rate gain', 'voltage ceiling']);
  });

  it('is laid on what a ride is meant to meet only where that cures far more than anything else', () => {
    const namedFirst = (other: number) =>
      blame(even(2), even(2), [taken('bumps and steps', even(0.2)), taken('current ceiling', even(other))])
        .findings[0];
    expect(namedFirst(1.05)).toMatchObject({ cause: 'current ceiling', sureness: 'not sure' });
    expect(namedFirst(0.4)).toMatchObject({ cause: 'current ceiling', sureness: 'sure', rival: null });
    expect(namedFirst(1.6)).toMatchObject({ cause: 'bumps and steps', sureness: 'sure', rival: null });
  });

  it('tells a low pack and its low voltage as no rivals of each other', () => {
    const [first] = blame(even(2), even(2), [
      taken('voltage ceiling', even(0.2)),
      taken('low pack', even(0.21)),
      taken('grip', even(1.9)),
    ]).findings;
    expect(first).toMatchObject({ cause: 'voltage ceiling', sureness: 'sure', rival: null });
  });

  it('is laid on nothing where a profile costs no more than the reference and no cell is in trouble', () => {
    const said = blame(even(0.3), even(0.3), [
      taken('too much rate gain', even(0.1)),
      taken('grip', even(0.1)),
    ]);
    expect(said).toMatchObject({ isProfileToBlame: false, isRigTroubled: false, findings: [] });
  });
});

describe('the thresholds', () => {
  const isToBlame = (excess: number, usual: number) =>
    whomToAsk(even(usual + excess), even(usual)).isProfileToBlame;

  it('of what a profile costs more are absolute, and a share', () => {
    expect([isToBlame(0.99 * LEAST_EXCESS, 0.1), isToBlame(1.01 * LEAST_EXCESS, 0.1)]).toEqual([false, true]);
    const share = LEAST_EXCESS_SHARE * 2;
    expect([isToBlame(0.99 * share, 2), isToBlame(1.01 * share, 2)]).toEqual([false, true]);
  });

  it('of a troubled rig are a fall, and a mean cost', () => {
    const isTroubled = (outcomes: Outcome[]) => whomToAsk(outcomes, outcomes).isRigTroubled;
    expect([isTroubled(even(0.99 * TROUBLED_COST)), isTroubled(even(1.01 * TROUBLED_COST))]).toEqual([
      false,
      true,
    ]);
    expect(isTroubled(cells(...Array<number>(99).fill(0.1), null))).toBe(true);
  });

  it('of a suspect is a share of what can be cured', () => {
    const named = (share: number) =>
      blame(even(1.2), even(0.2), [taken('trim', even(1.2 - share))]).findings.length;
    expect([named(0.99 * LEAST_SHARE), named(1.01 * LEAST_SHARE)]).toEqual([0, 1]);
  });
});
