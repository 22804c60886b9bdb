/** Is a sweep told from its numbers: what was looked through, the finalists, what is dangerous about the best? */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { sweepLines } from '../../src/show/sweep-lines.js';
import { bestSentences, lookedSentences } from '../../src/show/sweep-sentences.js';
import type { FinalistView, SweepView } from '../../src/show/sweep-view.js';
import { fallOf, resultOf } from '../explain/made-results.js';
import { fallingFinalist, sampleFinalist, sampleSweep } from './sample-sweep.js';

const PLAIN = { width: 100, symbols: 'braille', paint: createPaint('none') } as const;
const text = (view: SweepView, width = 100) => sweepLines(view, { ...PLAIN, width }).join('\n');
const bestWith = (changes: Partial<FinalistView>, ...others: FinalistView[]) =>
  bestSentences(sampleSweep({ finalists: [sampleFinalist('c00012', changes), ...others] })).join(' ');

describe('what was looked through', () => {
  it('is told in numbers', () => {
    expect(lookedSentences(sampleSweep())).toEqual([
      'Board otter, riders kim and lee; 2 scenarios, 4 cells: each scenario with each rider and state of the pack.',
      '60 candidates spread over proportional 3 to 70 A/deg and rate 0.1 to 6 A/(deg/s), and 40 more on the way downhill from ' +
        'the best: 7 could not hold the board up by the linear view and were not run, 77 were dropped on the way and 16 were ' +
        'run in every cell. 700 runs in all.',
    ]);
  });

  it('leaves out what there was none of, and names the one scenario', () => {
    const counts = { tried: 1, spread: 1, hopeless: 1, dropped: 0, inEveryCell: 0 };
    const [where, what] = lookedSentences(
      sampleSweep({ scenarios: ['kerb'], cellCount: 1, runs: 1, isGrid: true, counts }),
    );
    expect(where).toBe(
      'Board otter, riders kim and lee; kerb, 1 cell: each scenario with each rider and state of the pack.',
    );
    expect(what).toMatch(
      /^1 candidate on a grid over [^:]*: 1 could not hold the board up by the linear view and were not run\. 1 run in all\.$/,
    );
  });

  it('says so where nobody was dropped', () => {
    const counts = { tried: 100, spread: 100, hopeless: 0, dropped: 0, inEveryCell: 100 };
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

describe('where nobody stays up', () => {
  const lost = () => {
    const result = { ...resultOf(fallOf('kerb', 2), fallOf('hill', 2, 'lee')), name: 'c1' };
    return sampleFinalist('c1', { result, notFor: ['kim', 'lee'] });
  };

  it('in every cell, it is said before the table', () => {
    expect(text(sampleSweep({ finalists: [fallingFinalist('c1')] }))).toMatch(
      /Nobody stays up in every cell[^]*falls  score/,
    );
    expect(text(sampleSweep())).not.toContain('Nobody stays up');
  });

  it('in any, nothing is said of slips, cliffs and what is left to find', () => {
    const said = text(sampleSweep({ finalists: [lost()] }));
    expect(said).toMatch(/All of them fall in every cell[^]*falls  score/);
    expect(said).toContain('c1 falls in both cells');
    expect(said).not.toMatch(/dangerous|Left to find|cliff/);
  });
});

describe('the table has room', () => {
  const legend = (width: number) => text(sampleSweep(), width).replaceAll('\n', ' ');

  it('for what its legend explains, and the legend explains no other', () => {
    expect(legend(80)).not.toMatch(/their share of the cost|composed, . marginal/);
    expect(legend(100)).toContain('comfort, reserve, agility: their share of the cost');
    expect(legend(100)).not.toMatch(/composed, . marginal/);
    expect(legend(120)).toMatch(/front +each scenario .*composed, . marginal/);
  });

  it('for falls and score however many numbers were swept, and says how many it leaves out', () => {
    const { ranges } = sampleSweep();
    const many = Array.from({ length: 8 }, (_, index) => ({
      ...ranges[index % 2]!,
      path: ['gains', `n${index}LongNameAPerDeg`],
    }));
    const values = many.map((_, index) => 11.1 + index);
    const view = sampleSweep({ ranges: many, finalists: [sampleFinalist('c1', { values })] });
    const rows = text(view, 80).split('\n');
    expect(rows.find((row) => row.includes('falls  score'))).toMatch(
      /^#  name .*\+\d more  falls  score  rank  disk  front$/,
    );
    expect(rows.find((row) => row.startsWith('1  c1'))).toMatch(/ 0\/2 /);
    expect(rows.join(' ')).toMatch(/c1 has n0LongNameAPerDeg 11\.1 .*n7LongNameAPerDeg\s+18\.1 /);
    expect(text(sampleSweep(), 80)).not.toContain('c00012 has');
  });
});

describe('the best', () => {
  it('is told beside the profile from which all begin, and that it is no better', () => {
    expect(bestWith({})).toMatch(
      /^c00012 stays up in both cells, score 0\.\d\d; plain, from which all begin, falls in 1 of 2 cells, score \d\.\d\d\. /,
    );
    const base = { ...sampleFinalist('x').result, name: 'plain' };
    const [gain] = bestSentences(sampleSweep({ base }));
    expect(gain).toMatch(/: it is no better than plain\.$/);
  });

  it('is told where it is weakest, with its margin', () => {
    expect(bestWith({})).toMatch(
      /c00012 is weakest in kerb with kim: rebounds by 20\.0 %\. Its smallest disk margin is 0\.62, under lee at 12 km\/h\./,
    );
    expect(bestWith({ leastDisk: null })).not.toContain('disk margin');
  });

  it('is told with how it feels, beside the others that feel alike', () => {
    const stiff = { feel: { rider: 'kim', words: ['stiff', 'buzzy'] } };
    const alike = sampleFinalist('c2', stiff);
    expect(bestWith(stiff, alike, sampleFinalist('c3'))).toContain(
      'Under kim they feel stiff and buzzy (c00012 and c2); composed (c3).',
    );
    expect(bestWith(stiff, alike)).toContain('Under kim all 2 feel stiff and buzzy.');
    expect(bestWith(stiff)).toContain('Under kim it feels stiff and buzzy.');
    const many = ['c4', 'c5', 'c6'].map((name) => sampleFinalist(name, stiff));
    expect(bestWith(stiff, alike, ...many, sampleFinalist('c3'))).toContain(
      'they feel stiff and buzzy (c00012, c2, c4 and 2 others); composed (c3).',
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
      cell: 'kerb/kim/80/1',
      metric: 'overshoot',
      unit: '%',
      quick: 1,
      reference: 2,
      scaledDifference: 0.031,
    };
    const halfStep = { cellsChecked: 4, agreementRatio: 0.02, agrees: false, largestDifference: difference };
    expect(bestWith({ halfStep }, sampleFinalist('c2'))).toContain(
      'Run again with half the step (6 runs) c00012 comes out OTHERWISE, most of all overshoot of c00012 in kerb with kim: ' +
        '1 against 2 %; with odex (4 runs) all come out the same, within 0.01 % of each scale of the score. The score of such ' +
        'a one hangs on how finely it is computed: rather take one of the others.',
    );
    const other = { ...difference, metric: 'outcome', unit: '', quick: 'upright', reference: 'tail strike' };
    expect(bestWith({ halfStep: { ...halfStep, largestDifference: other } })).toContain(
      'outcome of c00012 in kerb with kim: upright against tail strike; with',
    );
    expect(bestWith({ halfStep: { ...halfStep, agrees: true } })).toContain(
      'it comes out the same, within 3.1 % of',
    );
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

  it('says nothing of a gain that no score shows', () => {
    const left = { ...sampleSweep().left, gainIfBetter: 0.004, gainOfSearch: 0.001 };
    const said = bestSentences(sampleSweep({ left })).at(-1)!;
    expect(said).toMatch(/1 in 100\.$/);
  });

  it('is nobody where nobody is left, with what to do then', () => {
    const nobody = (changes: Partial<SweepView>) =>
      bestSentences(sampleSweep({ finalists: [], ...changes })).join(' ');
    expect(nobody({})).toMatch(/^Nobody holds the board up; plain, .*Look between other ends/);
    const counts = { tried: 9, spread: 9, hopeless: 9, dropped: 0, inEveryCell: 0 };
    expect(nobody({ counts })).toMatch(/^No candidate can hold the board up by the linear view; /);
    const base = sampleSweep().base;
    const fallen = { ...base, failures: base.cells.length };
    expect(nobody({ base: fallen })).toMatch(
      /falls in both cells, .*look at the board, the riders and the scenarios\.$/,
    );
  });
});

it('a sweep never says that anything is safe', () => {
  expect(text(sampleSweep())).not.toMatch(/\bsafe/i);
});
