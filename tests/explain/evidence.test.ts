/** Is a cause shown where it costs most, at the moment that a tape holds, and is one thing told once? */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/explain/blame.js';
import { greatestRelief, mergedFindings, momentOf } from '../../src/explain/evidence.js';
import { CEILINGS, createTape } from '../../src/simulate/tape.js';
import { cellOf, fallOf, resultOf } from './made-results.js';

const finding = (cause: string, rival: string | null = null): Finding => ({
  cause,
  family: 'power',
  relief: 1,
  share: 0.5,
  failuresCured: 1,
  cured: ['hill/kim/80/1'],
  sureness: rival === null ? 'sure' : 'not sure',
  rival,
});

it('the cell is the one that gains most', () => {
  const before = resultOf(cellOf('kerb', { reboundPercent: 50 }), fallOf('hill'), cellOf('shove'));
  const after = resultOf(cellOf('kerb'), cellOf('hill'), cellOf('shove'));
  expect(greatestRelief(before, after)).toBe(1);
  expect(greatestRelief(before, after, (index) => index !== 1)).toBe(0);
});

describe('findings', () => {
  it('of a low pack and its low voltage are one, which goes by the name of the heavier', () => {
    const merged = mergedFindings([finding('low pack'), finding('grip'), finding('voltage ceiling')]);
    expect(merged.map(({ causes }) => causes)).toEqual([['low pack', 'voltage ceiling'], ['grip']]);
    expect(merged.map(({ finding: { cause } }) => cause)).toEqual(['low pack', 'grip']);
  });

  it('stay as they are where only one of the two is there, or another is the rival', () => {
    const alone = [finding('low pack', 'grip'), finding('grip')];
    expect(mergedFindings(alone).map(({ finding: one }) => one)).toEqual(alone);
    const other = mergedFindings([finding('voltage ceiling', 'grip'), finding('low pack')]);
    expect(other[0]!.finding.rival).toBe('grip');
  });
});

describe('a moment', () => {
  const tape = createTape(100, 0.01);
  tape.length = 100;
  tape.columns.pitchRad[40] = -0.2;
  tape.columns.speedMPerS[40] = 3;
  const window = { kind: 'ride', firstRow: 10, endRow: 100, bandRad: 0.02 } as const;

  it('is the largest tilt measured; no ceiling where none cut', () => {
    expect(momentOf(tape, window)).toEqual({
      peak: { timeS: 0.4, speedMPerS: 3, pitchRad: -0.2 },
      firstCut: null,
    });
  });

  it('has the first tick that was cut, and by which ceiling', () => {
    tape.columns.bindingCeiling[25] = CEILINGS.indexOf('voltage');
    tape.columns.bindingCeiling[60] = CEILINGS.indexOf('drive');
    expect(momentOf(tape, window).firstCut).toMatchObject({ timeS: 0.25, ceiling: 'voltage' });
  });
});
