/** Do words tell of the best so far and of the finalists what their tables tell, and how near a cliff is? */
import { describe, expect, it } from 'vitest';
import { aboutSentences, bestSoFarWords, finalistWords } from '../../src/show/sweep-words.js';
import type { FinalistView, SlipView } from '../../src/show/sweep-view.js';
import { sampleFinalist, sampleSweep } from './sample-sweep.js';

const slip = (changes: Partial<SlipView>): SlipView => ({
  range: 0,
  slip: 'ten times it',
  values: [200, 1.2],
  moreFailures: 0,
  scoreRatio: 1,
  ...changes,
});
const aboutWith = (changes: Partial<FinalistView>) => {
  const finalist = sampleFinalist('c00012', changes);
  return aboutSentences(sampleSweep({ finalists: [finalist] }), finalist);
};

describe('the best so far', () => {
  it('are told one by one with their numbers', () => {
    const { ranges, finalists } = sampleSweep();
    const words = bestSoFarWords(
      ranges,
      finalists.map(({ values, result }) => ({ values, result })),
    );
    expect(words[0]).toMatch(
      /^1\. c00012 with proportional 20 A\/deg, rate 1\.2 A\/\(deg\/s\): falls in 0 of 2 cells, score 0\.\d\d\.$/,
    );
    expect(words[1]).toMatch(/^2\. c00040 with .*: falls in 1 of 2 cells, score \d+\.\d\d\.$/);
  });
});

describe('the finalists', () => {
  it('are told as the table has them: falls, score, rank, front, worst cell, margin, and who falls', () => {
    const [looked, about, list] = finalistWords(sampleSweep(), 0);
    expect(looked![1]).toMatch(/^60 candidates/);
    expect(about![0]).toMatch(/^c00012 stays up/);
    expect(about![1]).toMatch(/^c00012 is weakest in kerb/);
    expect(list![0]).toBe('The finalists, best first:');
    expect(list![1]).toMatch(
      /^1\. c00012 with .*: falls in 0 of 2 cells, score 0\.\d\d, rank 1 to 3, on the front; weakest in kerb with kim: rebounds by 20\.0 %; smallest disk margin 0\.62, under lee at 12 km\/h; no cliff within .*; feels composed under kim; nobody falls with it\.$/,
    );
    expect(list![2]).toMatch(/^2\. c00040 .* falls in 1 of 2 cells, .*; not for lee\.$/);
    expect(list![2]).not.toContain('on the front');
  });

  it('are told without one of them in front where nobody is under the cursor, and where there are none', () => {
    expect(finalistWords(sampleSweep(), null)).toHaveLength(2);
    expect(finalistWords(sampleSweep({ finalists: [] }), null)[1]![0]).toMatch(/^Nobody holds the board up/);
  });

  it('say of one whose every ride a ceiling cuts nothing of its margin', () => {
    const bare = sampleFinalist('c3', { leastDisk: null });
    const text = finalistWords(sampleSweep({ finalists: [bare] }), 0)
      .flat()
      .join(' ');
    expect(text).not.toContain('disk margin');
  });
});

describe('the nearest cliff', () => {
  const far = slip({ moreFailures: 5 });
  const near = slip({ range: 1, slip: 'a tenth more', values: [20, 1.32], moreFailures: 1 });
  const sign = slip({ range: 1, slip: 'the other sign', values: [20, -1.2], moreFailures: 9 });

  it.each([
    [
      'the smallest slip',
      [far, near, sign],
      'rate 1.32 A/(deg/s) in place of 1.2 (a tenth more), 1 more fall',
    ],
    [
      'the only one',
      [slip({ slip: 'a tenth less', values: [18, 1.2] }), far],
      'proportional 200 A/deg in place of 20 (ten times it), 5 more falls',
    ],
    ['the other sign', [sign], 'rate -1.2 A/(deg/s) in place of 1.2 (the other sign), 9 more falls'],
  ])('is %s with which it falls more often', (_, slips, text) => {
    expect(aboutWith({ slips })[2]).toBe(`Nearest cliff: ${text}.`);
  });

  it('is not there where no slip makes it fall more often', () => {
    expect(aboutWith({ slips: [slip({ scoreRatio: 9 })] }).join(' ')).not.toContain('cliff');
  });
});
