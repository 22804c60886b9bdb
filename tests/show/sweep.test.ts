/** Is a sweep told from its numbers: what was looked through, the finalists, what is dangerous about the best? */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { sweepLines } from '../../src/show/sweep-lines.js';
import { bestSentences, lookedSentences } from '../../src/show/sweep-sentences.js';
import type { FinalistView, SweepView } from '../../src/show/sweep-view.js';
import { fallingFinalist, sampleFinalist, sampleSweep } from './sample-sweep.js';

const PLAIN = { width: 100, symbols: 'braille', paint: createPaint('none') } as const;
const text = (view: SweepView, width = 100) => sweepLines(view, { ...PLAIN, width }).join('\n');
const bestWith = (changes: Partial<FinalistView>, ...others: FinalistView[]) =>
  bestSentences(sampleSweep({ finalists: [sampleFinalist('c00012', changes), ...others] })).join(' ');

describe('what was looked through', () => {
  it('is told in numbers', () => {
    expect(lookedSentences(sampleSweep())).toEqual([
      'Board otter, riders kim and lee; 2 scenarios, 4 cells.',
      '100 candidates with proportional 3 to 70 A/deg and rate 0.1 to 6 A/(deg/s): 7 could not hold the board up by the linear ' +
        'view and were not run; 77 were dropped on the way, 16 were run in every cell. 700 runs in all.',
    ]);
  });

  it('says so where nobody was dropped', () => {
    const counts = { tried: 100, hopeless: 0, dropped: 0, inEveryCell: 100 };
    expect(lookedSentences(sampleSweep({ isExhaustive: true, counts }))[1]).toMatch(
      /A\/\(deg\/s\): 100 were run in every cell\. 700 runs in all\.$/,
    );
  });
});

describe('the table', () => {
  it('has a row for each finalist, best first', () => {
    const rows = text(sampleSweep()).split('\n');
    expect(rows.find((row) => row.includes('c00012'))).toMatch(
      /^ *1 +c00012 +20 +1\.2 +0\/2 +0\.\d+ +1-3 +0\.62 +0\.30 +0\.20 +0\.10 +◆/,
    );
    expect(rows.find((row) => row.includes('c00040'))).toMatch(/^ *2 +c00040 .* 1\/2 /);
  });

  it.each([40, 60, 80, 100, 200])('and all else is never wider than %i columns where it can be', (width) => {
    const lines = sweepLines(sampleSweep(), { ...PLAIN, width, symbols: 'ascii' });
    const isTable = (line: string) => /c000|falls/.test(line);
    expect(Math.max(...lines.filter((line) => !isTable(line)).map(textWidth))).toBeLessThanOrEqual(width);
    expect(lines.join('\n')).toMatch(/^[\n -~]*$/);
  });
});

describe('the best', () => {
  it('is told where it is weakest, with its margin', () => {
    expect(bestWith({})).toMatch(
      /^c00012 is weakest in kerb with kim: rebounds by 20\.0 %\. Its smallest disk margin is 0\.62, under lee at 12 km\/h\./,
    );
    expect(bestWith({ leastDisk: null })).not.toContain('disk margin');
  });

  it('is told with how it feels, beside the others that feel alike', () => {
    const stiff = { feel: { rider: 'kim', words: ['stiff', 'buzzy'] } };
    const alike = sampleFinalist('c2', stiff);
    expect(bestWith(stiff, alike, sampleFinalist('c3'))).toContain(
      'Under kim they feel stiff and buzzy (c00012 and c2); composed (c3).',
    );
  });

  it('says whom it is not for', () => {
    const view = sampleSweep({ finalists: [fallingFinalist('c1')] });
    expect(bestSentences(view).join(' ')).toContain('Not for lee (falls in hill with the pack at 80 %).');
    expect(bestWith({})).not.toContain('Not for');
  });

  it('says which slip is dangerous, which is costly, and that none is', () => {
    const slip = (moreFailures: number, scoreRatio: number) => ({
      range: 0,
      slip: 'ten times it' as const,
      values: [200, 1.2],
      failures: moreFailures,
      score: 1,
      moreFailures,
      scoreRatio,
    });
    expect(bestWith({ slips: [slip(2, 30), slip(0, 1.2)] })).toContain(
      'Dangerous to get wrong: proportional 200 (ten times it): 2 more falls.',
    );
    expect(bestWith({ slips: [slip(1, 9)] })).toContain('(ten times it): 1 more fall.');
    expect(bestWith({ slips: [slip(0, 2)] })).toContain(
      'Costly to get wrong: proportional 200 (ten times it): 2 times the score.',
    );
    expect(bestWith({ slips: [slip(0, 1.4), slip(-1, 3)] })).not.toContain('Dangerous');
    expect(bestWith({ slips: [slip(0, 1.4)] })).toContain(
      'No number of c00012 is dangerous to get a little wrong',
    );
  });

  it('says how far it can be believed', () => {
    const difference = {
      profile: 'c00012',
      cell: 'kerb',
      metric: 'overshoot',
      unit: '%',
      quick: 1,
      reference: 2,
      scaledDifference: 0.031,
    };
    const halfStep = { cellsChecked: 4, agreementRatio: 0.02, agrees: false, largestDifference: difference };
    expect(bestWith({ halfStep })).toContain(
      'Run again with half the step 4 runs of the finalists DISAGREE for c00012 (largest difference 3.1 % of a scale), ' +
        'with odex 2 runs of the finalists agree (largest difference 0.0 % of a scale).',
    );
    const other = { ...halfStep, largestDifference: { ...difference, scaledDifference: Infinity } };
    expect(bestWith({ halfStep: other })).toContain('(largest difference another outcome)');
  });

  it('says what is believed to be left', () => {
    expect(bestWith({})).toContain(
      'one more candidate drawn like the 99 would be better than all of them with a chance of 1 in 100, by about 0.02.',
    );
    const left = { ...sampleSweep().left, gainOfSearch: 0.05 };
    expect(bestSentences(sampleSweep({ left })).join(' ')).toContain(
      'Going on downhill would bring about 0.05 more',
    );
  });

  it('is nobody where nobody is left', () => {
    expect(text(sampleSweep({ finalists: [] }))).toContain('Nobody holds the board up.');
  });
});

it('a sweep never says that anything is safe', () => {
  expect(text(sampleSweep())).not.toMatch(/\bsafe/i);
});
