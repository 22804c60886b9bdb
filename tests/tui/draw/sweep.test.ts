/**
 * What does the Sweep screen show: the form, the best so far, the finalists, the map with its cliff and the front, each with what is
 * known of the candidate under the cursor?
 */
import { describe, expect, it } from 'vitest';
import { swept } from '../../../src/tui/bench/hear.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { currentCandidate } from '../../../src/tui/bench/sweep-items.js';
import { drawnRows } from './drawn-frame.js';
import { afterKeys, drawnState, type Wanted } from './drawn-state.js';
import { begunSweep, endedSweep, runningSweep } from './drawn-sweep.js';

const at = (columns: number, rows: number, options: Wanted['options'] = {}) =>
  drawnState({ size: { columns, rows }, options });
const textOf = async (state: BenchState) => (await drawnRows(state)).join('\n');
const flat = (text: string) => text.replaceAll(/\s+/g, ' ');

describe('the form', () => {
  it('stands whole at 80 x 24', async () => {
    const typed = ['4', 'return', 'right', '6', '0', 'return', 'down', '4', '.', '8', 'return', 'left'];
    const state = afterKeys(at(80, 24), 'g', ...typed, '0', '.', '1', 'return', 'right');
    expect((await drawnRows(state)).slice(0, 20)).toEqual([
      'Sweep  pebble under kim, all 4 scenarios                               not begun',
      'Candidates have numbers between these ends, evenly spread in their ratio; all',
      'else is as plain-one has it.',
      '',
      '   number                 least     greatest   unit       a profile may have',
      '   proportionalAPerDeg        4           60   A/deg      0 to 500',
      '▸  rateAPerDegPerS          0.1         [4.8]  A/(deg/s)  0 to 100',
      '   candidates               300                           1 to 20000',
      '   laid out as          [spread]        grid',
      '   run in               [a race]  every cell',
      '',
      'Motor current per degree per second of pitch rate: the damping. plain-one has',
      '1.2 A/(deg/s).',
      '',
      'They are run in what Rank ranks on: 4 scenarios, kim, one state of the pack:',
      '4 cells. A race drops the worse ones early, and goes on downhill from the best.',
      'What is found for one rider or one state of the pack need not hold for another:',
      'r and p on Rank choose more.',
      'Enter begins. Up and down go from row to row, left and right to the other end or',
      'choice; a digit begins another number.',
    ]);
  });

  it('keeps the row under the cursor in sight at 40 x 10', async () => {
    const text = await textOf(afterKeys(at(40, 10), 'g', 'down', 'down'));
    expect(text).toMatch(/^▸ +candidates +\[300\]/m);
  });

  it('says what is expected where a number is refused, above the line that is typed', async () => {
    const text = await textOf(afterKeys(at(80, 24), 'g', '9', '9', '9', 'return'));
    expect(text).toMatch(
      /! proportionalAPerDeg: expected a number from 0 to 500 A\/deg, received 999\nnumber: 999_/,
    );
  });
});

describe('the form of a grid', () => {
  const form = async (...keys: string[]) =>
    flat(await textOf(afterKeys(at(80, 24), 'g', 'down', 'down', 'down', 'right', ...keys)));

  it('says what its rows mean, and how many candidates and runs come of it', async () => {
    expect(await form()).toMatch(/on a grid .* points a number 12 2 to 141 ▸ laid out as spread \[grid\]/);
    expect(await form()).toContain('A plain grid: evenly spaced points of every number');
    expect(await form('up')).toContain('12 over 2 numbers are 144 candidates.');
    expect(await form('down', 'right')).toMatch(/race \[every cell\] Every candidate is run in every cell/);
    expect(await form('down', 'right')).toContain('Every one is run in every cell, 576 runs.');
    expect(await form('left')).toContain('A spread: no two candidates share a number');
  });

  it('says that it is too large, and that Enter cannot begin', async () => {
    const text = await form('up', '1', '0', '0', 'return', 'a', 'down', 'down', 'space', 'return');
    expect(text).toContain('Enter cannot begin: 100 points over 3 numbers are 1000000 candidates');
    expect(text).not.toContain('Enter begins.');
  });

  it('names the plain profile as what all else is taken from', async () => {
    const plain = afterKeys(at(80, 24), 'g', 'f', 'p', 'l', 'a', 'i', 'n', ',', 'return');
    expect(flat(await textOf(plain))).toContain('all else is as the plain profile for the rig has it.');
  });
});

describe('a sweep that runs', () => {
  it('shows stage, rate, runs and the best with their numbers', async () => {
    const text = await textOf(runningSweep(at(80, 24)));
    expect(flat(text)).toContain(
      'Racing, step 2 of 3: 120 of 480 runs, 52 runs a second, 7 s left of this step; 360 in all.',
    );
    expect(text).toMatch(/^▸ +1 {2}c\d{5} +\d[\d.]* +\d[\d.]* +0 +0\.\d\d +4$/m);
    expect(text.match(/^▸? +\d+ {2}c\d{5} /gm)).toHaveLength(10);
    expect(text).toContain('Runs are kept in sweeps/pebble-abc.ndjson');
  });

  it('says how far it is on Rank too, and that it is stopped', async () => {
    const [header] = await drawnRows(afterKeys(runningSweep(at(100, 30)), 'escape'));
    expect(header).toMatch(/^underfoot +pebble.* sweep: race 2 of 3, 25 % {2}ranked/);
    expect(await textOf(afterKeys(runningSweep(at(80, 24)), 'space'))).toMatch(
      /^Stopped; Space goes on\. Racing/m,
    );
  });

  it('says what is to come before anything is known', async () => {
    const begun = begunSweep(at(60, 20));
    expect(flat(await textOf(begun))).toContain('The sweep begins.');
    const kept = swept(begun, begun.sweep.run!.plan, { kept: null });
    expect(flat(await textOf(kept))).toContain('Runs are kept in memory.');
  });
});

describe.each([
  [80, 24],
  [120, 40],
  [60, 20],
] as const)('a sweep that is done, at %i x %i', (columns, rows) => {
  const ended = endedSweep(at(columns, rows));

  it('has a table with what is to be said of the finalist under the cursor', async () => {
    const text = await textOf(afterKeys(ended, 'down'));
    const second = currentCandidate(afterKeys(ended, 'down'))!.name;
    expect(text).toMatch(new RegExp(`^▸ +2 {2}${second} `, 'm'));
    expect(flat(text)).toContain(`${second} is weakest in `);
  });

  it('has a map with the cliff, and what is known of the candidate under the cursor', async () => {
    const map = afterKeys(ended, 'tab', 'down', 'down', 'down', 'down');
    const text = await textOf(map);
    expect(text).toMatch(/✗✗/);
    expect(text).toMatch(/[⣿⡷⠶⠒⠂]{8}/);
    expect(text).toMatch(/^ *[\d.]* ?▸/m);
    expect(text).toContain(`${currentCandidate(map)!.name}: proportional`);
    expect(flat(text)).toMatch(/Score over 2 cells by proportional and rate: best 0\.\d\d at p/);
  });

  it('says each of its views in words, with the place in the text', async () => {
    for (const keys of [[], ['tab'], ['tab', 'tab']]) {
      const rowsOf = await drawnRows(afterKeys(ended, ...keys, 't'));
      const [, last, count] = /^lines 1-(\d+) of (\d+)$/.exec(rowsOf.at(-2)!)!;
      const scrolled = await drawnRows(afterKeys(ended, ...keys, 't', 'down'));
      const top = Number(last) < Number(count) ? 2 : 1;
      expect(scrolled.slice(1, -3)).toEqual(rowsOf.slice(top, top - 4));
    }
  });

  it('has the front of two costs, and of two others', async () => {
    expect(flat(await textOf(afterKeys(ended, 'tab', 'tab')))).toMatch(
      /Comfort against reserve: of 12 finalists/,
    );
    const other = await textOf(afterKeys(ended, 'tab', 'tab', 'x'));
    expect(flat(other)).toMatch(/Comfort against agility: of 12 finalists/);
    expect(other).toContain('◆');
  });
});

describe('where there is little or nothing', () => {
  it('at 40 x 10 the map is still there, in ASCII', async () => {
    const text = await textOf(afterKeys(endedSweep(at(40, 10, { symbols: 'ascii' })), 'tab'));
    expect(text).toMatch(/x[@%+:.]{6}/);
    expect(text).toMatch(/^[\n\x20-\x7e]*$/);
  });

  it('says that nobody stays up', async () => {
    const text = flat(await textOf(endedSweep(at(80, 24), { isHopeless: true })));
    expect(text).toContain('80 could not hold the board up by the linear view and were not run');
    expect(text).toContain('No candidate can hold the board up by the linear view;');
  });

  it('says of one that was not run why', async () => {
    const ended = endedSweep(at(80, 24));
    const hopeless = ended.sweep.run!.outcome!.points.find(({ own }) => own === null)!;
    const state = { ...ended, sweep: { ...ended.sweep, cursor: hopeless.candidate.name } };
    expect(flat(await textOf(state))).toContain(
      'it cannot hold the board up under somebody, and was not run.',
    );
    expect(await textOf(afterKeys(state, 'tab'))).toContain('linear view it cannot hold');
  });
});
