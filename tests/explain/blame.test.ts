/** Is the blame laid where the costs say, on tolls made by hand? */
import { describe, expect, it } from 'vitest';
import { blame, type Ablation } from '../../src/explain/blame.js';

const toll = (mean: number, failures = 0) => ({ mean, failures });
const taken = (cause: string, mean: number, underReference: number | null = null): Ablation => ({
  cause,
  toll: toll(mean),
  underReference: underReference === null ? null : toll(underReference),
});

describe('blame', () => {
  it('is laid on the cause whose removal cures most of what the reference cures', () => {
    const said = blame(toll(1.2), toll(0.2), [
      taken('filter lag', 0.9),
      taken('too little rate gain', 0.4),
      taken('trim', 1.15),
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
    const { findings } = blame(toll(1.2), toll(0.2), [
      taken('too little rate gain', 0.3),
      taken('too little proportional gain', 0.35),
    ]);
    expect(findings[0]).toMatchObject({ sureness: 'not sure', rival: 'too little proportional gain' });
    expect(findings[1]).toMatchObject({ sureness: 'sure', rival: null });
  });

  it('is laid on the rig under the reference where the profile is to blame for more', () => {
    const { findings } = blame(toll(5), toll(2), [
      taken('too much rate gain', 2.2),
      taken('voltage ceiling', 4.9, 0.4),
    ]);
    expect(findings.map(({ cause, relief }) => [cause, relief])).toEqual([
      ['too much rate gain', expect.closeTo(2.8, 12)],
      ['voltage ceiling', expect.closeTo(1.6, 12)],
    ]);
  });

  it('is laid on what a ride is meant to meet only where that cures far more than anything else', () => {
    const namedFirst = (otherMean: number) =>
      blame(toll(2, 1), toll(2, 1), [taken('bumps and steps', 0.2), taken('current ceiling', otherMean)])
        .findings[0];
    expect(namedFirst(1.05)).toMatchObject({ cause: 'current ceiling', sureness: 'not sure' });
    expect(namedFirst(0.4)).toMatchObject({ cause: 'current ceiling', sureness: 'sure', rival: null });
    expect(namedFirst(1.6)).toMatchObject({ cause: 'bumps and steps', sureness: 'sure', rival: null });
  });

  it('is laid on nothing where a profile costs no more than the reference and no cell is in trouble', () => {
    const said = blame(toll(0.3), toll(0.3), [taken('too much rate gain', 0.1), taken('grip', 0.1, 0.1)]);
    expect(said).toMatchObject({ isProfileToBlame: false, findings: [] });
  });
});
