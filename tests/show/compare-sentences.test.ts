/** Do the sentences name the better profile and the moment of parting rightly? */
import { describe, expect, it } from 'vitest';
import { RAD_PER_DEG } from '../../src/quantity/units.js';
import { bestIndexes, partingSentence, verdictSentence } from '../../src/show/compare-sentences.js';
import { comparedRun, fallen, pair } from './compared-runs.js';

const costing = (name: string, reboundPercent: number) =>
  comparedRun({ name, metrics: { reboundPercent, leastHeadroomShare: 0 } });

describe('which is better over all', () => {
  it('is the one that costs less', () => {
    const runs = pair();
    expect(bestIndexes(runs)).toEqual([0]);
    expect(verdictSentence(runs)).toMatch(
      /^A linen is better over all, at less cost: 0\.\d\d against 0\.\d\d for B\.$/,
    );
    expect(bestIndexes(runs.toReversed())).toEqual([1]);
  });

  it('is the one that stays up, whatever the other costs', () => {
    const runs = [fallen(), pair()[1]];
    expect(bestIndexes(runs)).toEqual([1]);
    expect(verdictSentence(runs)).toBe(
      'B satin is better over all, the only one that does not fail (A: nose strike at 3.00 s).',
    );
  });

  it('is told of three with all that cost more, cheapest first, and what fails', () => {
    const runs = [costing('wool', 90), fallen(), costing('felt', 0), costing('tweed', 50)];
    expect(verdictSentence(runs)).toMatch(
      /^C felt is best over all, at the least cost: \S+ against \S+ for D and \S+ for A; B: nose strike at 3\.00 s\.$/,
    );
  });

  it('is none where costs are shown alike, or where all fail', () => {
    const equal = [costing('wool', 0), costing('felt', 0.001), costing('tweed', 50)];
    expect(bestIndexes(equal)).toEqual([0, 1]);
    expect(verdictSentence(equal)).toMatch(
      /^A wool and B felt come out equal over all, at the same cost: \S+ against \S+ for C\.$/,
    );
    expect(bestIndexes([fallen(), fallen('felt')])).toEqual([]);
    expect(verdictSentence([fallen(), fallen('felt')])).toBe(
      'None is better over all, both fail here: A: nose strike at 3.00 s; B: nose strike at 3.00 s.',
    );
  });

  it('says so where a run never met its event', () => {
    const astray = comparedRun({ name: 'felt', eventReached: false, metrics: { measuredS: 0 } });
    expect(verdictSentence([pair()[0], astray])).toContain('(B: never came to the event that is measured)');
  });
});

describe('the parting', () => {
  const parted = { row: 960, timeS: 1.2, between: [0, 1] as [number, number], by: 'pitch' as const };

  it('is told with its time, the event before, and both pitches', () => {
    const pitchesRad = [2.1 * RAD_PER_DEG, -1.4 * RAD_PER_DEG];
    expect(partingSentence(pair(), { ...parted, pitchesRad })).toBe(
      'A and B move apart by more than 0.5° at 1.20 s, 0.20 s after the kerb: A nose down 2.1°, B nose up 1.4°.',
    );
    const early = { ...parted, row: 400, timeS: 0.5, pitchesRad };
    expect(partingSentence(pair(), early)).toContain('at 0.50 s: A nose down');
  });

  it('is told as an end, with who has ended how', () => {
    const ending = { row: 2401, timeS: 3.00125, between: [1, 2] as [number, number], by: 'ending' as const };
    expect(partingSentence([...pair(), fallen()], { ...ending, pitchesRad: [0, 0, null] })).toBe(
      'B and C part at 3.00 s, 2.00 s after the kerb: B level, C has ended (nose strike).',
    );
  });

  it('is none', () => {
    expect(partingSentence(pair(), null)).toBe(
      'They never part: from where each begins, their pitches stay within 0.5° of one another.',
    );
  });
});
