/**
 * What do keys do in the form of a sweep: ends moved and typed within the bounds of a profile, numbers added and taken out, and which
 * sweep comes of it?
 */
import { describe, expect, it } from 'vitest';
import { usualRanges } from '../../../src/sweep/range.js';
import { plainBase } from '../../../src/tasks/sweep-select.js';
import { shelved } from '../../../src/tui/bench/hear.js';
import { shellCommand } from '../../../src/tui/bench/shell-command.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { formView, sweepPlanOf } from '../../../src/tui/bench/sweep-form.js';
import { afterKeys, afterTyping, rankedState, someShelf } from './some-state.js';

/** The form as it begins, and with ranges that are typed, so that they stay what they are. */
const usual = afterKeys(rankedState(), 'g');
const opened = afterKeys(
  usual,
  '4 return right 6 0 return left down 0 . 1 return right 4 . 8 return left up',
);
const rangesOf = (state: BenchState) =>
  formView(state)!.ranges.map(({ path, min, max }) => [path.at(-1), min, max]);
const noticeOf = (state: BenchState) => state.notice?.text;

describe('the form', () => {
  it('begins with the usual ranges of the rig and with the profile under the cursor', () => {
    const below = afterKeys(rankedState(), 'down g');
    expect(below).toMatchObject({ screen: 'sweep', behind: ['rank'], sweep: { view: 'ranges', run: null } });
    const { board, riders } = below.work!.plan;
    expect(formView(below)!.ranges).toEqual(
      usualRanges(
        board.value,
        riders.map(({ value }) => value),
      ),
    );
    expect(formView(below)!.base.name).toBe(below.rank.cursor);
  });

  it('leads back to Rank', () => {
    expect(afterKeys(usual, 'escape')).toMatchObject({ screen: 'rank', behind: [] });
    expect(afterKeys(usual, 'q')).toMatchObject({ screen: 'rank' });
  });

  it.each([
    ['5 return', [5, 60]],
    ['5 . 5 return', [5.5, 60]],
    ['5 , 5 return', [5.5, 60]],
    ['right 4 0 return', [4, 40]],
    ['right left 3 return', [3, 60]],
    ['t 7 return', [7, 60]],
    ['9 escape', [4, 60]],
    ['right + +', [4, 64]],
    ['_', [3.9, 60]],
  ])('after %s has the range %j', (keys, ends) => {
    expect(rangesOf(afterKeys(opened, keys))[0]).toEqual(['proportionalAPerDeg', ...ends]);
  });

  it.each([
    ['- 1 return', 'proportionalAPerDeg: expected a number from 0 to 500 A/deg, received -1'],
    ['right 5 0 1 return', 'proportionalAPerDeg: expected a number from 0 to 500 A/deg, received 501'],
    ['6 0 return', 'proportionalAPerDeg: expected a least number below 60 A/deg, received 60'],
    ['right 4 return', 'proportionalAPerDeg: expected a greatest number above 4 A/deg, received 4'],
    ['t x return', 'proportionalAPerDeg: expected a number from 0 to 500 A/deg, received "x"'],
    ['t return', 'proportionalAPerDeg: expected a number from 0 to 500 A/deg, received ""'],
    ['down down 0 return', 'candidates: expected a whole number from 1 to 20000, received 0'],
    ['down down 1 . 5 return', 'candidates: expected a whole number from 1 to 20000, received 1.5'],
  ])('after %s says what is expected, and keeps what was typed', (keys, text) => {
    const state = afterKeys(opened, keys);
    expect(noticeOf(state)).toBe(text);
    expect(state.notice?.isFault).toBe(true);
    expect(state.entry).not.toBeNull();
    expect(rangesOf(state)).toEqual(rangesOf(opened));
  });

  it('takes a count of candidates', () => {
    expect(sweepPlanOf(afterKeys(opened, 'down down 4 0 return'))!.count).toBe(40);
    expect(sweepPlanOf(afterKeys(opened, 'down down 1 return _ _'))!.count).toBe(1);
    expect(sweepPlanOf(afterKeys(opened, 'down down 1 return +'))!.count).toBeGreaterThan(1);
  });

  it('adds numbers of the profile and takes them out', () => {
    const added = afterTyping(afterKeys(opened, 'a'), 'integral');
    const both = afterKeys(added, 'space return');
    expect(rangesOf(both).map(([key]) => key)).toEqual([
      'proportionalAPerDeg',
      'rateAPerDegPerS',
      'integralAPerDegS',
    ]);
    expect(rangesOf(both)[2]).toEqual(['integralAPerDegS', 0, 1000]);
    expect(rangesOf(both).slice(0, 2)).toEqual(rangesOf(opened));
    expect(rangesOf(afterKeys(both, 'down d')).map(([key]) => key)).toEqual([
      'proportionalAPerDeg',
      'integralAPerDegS',
    ]);
    expect(rangesOf(afterKeys(both, 'o'))).toEqual(rangesOf(usual));
    expect(rangesOf(afterKeys(opened, 'a escape'))).toEqual(rangesOf(opened));
  });

  it('begins an added number about what the profile has', () => {
    const state = afterKeys(afterTyping(afterKeys(opened, 'a'), 'blendTimeS'), 'space return');
    expect(rangesOf(state)[2]).toEqual(['blendTimeS', 0.333, 3]);
  });

  it('keeps one number at least', () => {
    const one = afterKeys(opened, 'd');
    expect(rangesOf(one)).toHaveLength(1);
    expect(noticeOf(afterKeys(one, 'd'))).toBe('take out: a sweep needs one number at least');
    expect(noticeOf(afterKeys(opened, 'down down d'))).toMatch(/^take out: there is no number/);
  });

  it('takes all else from another profile, and leaves ranges out that it has no place for', () => {
    const from = (name: string) => afterKeys(afterTyping(afterKeys(opened, 'f'), name), 'return');
    const felt = afterKeys(afterTyping(afterKeys(from('felt'), 'a'), 'filterTimeS'), 'space return');
    expect(rangesOf(felt).map(([key]) => key)).toContain('filterTimeS');
    const wool = afterKeys(afterTyping(afterKeys(felt, 'f'), 'wool'), 'return');
    expect(formView(wool)!.base.name).toBe('wool');
    expect(rangesOf(wool).map(([key]) => key)).not.toContain('filterTimeS');
    expect(noticeOf(afterKeys(opened, 'f space'))).toMatch(/^mark: one profile at a time/);
  });

  it('falls back on the first profile where its own is gone', () => {
    const { name } = formView(opened)!.base;
    const left = shelved(
      opened,
      someShelf({ profile: someShelf().profile.filter((one) => one.name !== name) }),
    );
    expect(formView(left)!.base.name).not.toBe(name);
    const none = shelved(opened, someShelf({ profile: [] }));
    expect(formView(none)).toBeNull();
    expect(noticeOf(afterKeys(none, 'return'))).toMatch(/^begin: a board, riders/);
  });
});

describe('what is done with the ranges', () => {
  const grid = afterKeys(opened, 'down down down right');
  const planOf = (state: BenchState) => sweepPlanOf(state)!;

  it('is a spread that races, unless something else is chosen', () => {
    expect(planOf(opened)).toMatchObject({ count: 300, grid: null, isExhaustive: false, isRefined: true });
    expect(planOf(grid)).toMatchObject({ grid: 12, isExhaustive: false, isRefined: false });
    expect(planOf(afterKeys(grid, 'left'))).toEqual(planOf(opened));
    expect(planOf(afterKeys(grid, '_'))).toEqual(planOf(opened));
    const every = afterKeys(opened, 'down down down down +');
    expect(planOf(every)).toMatchObject({ grid: null, isExhaustive: true, isRefined: true });
    expect(planOf(afterKeys(grid, 'down right'))).toMatchObject({ grid: 12, isExhaustive: true });
    expect(planOf(afterKeys(grid, 'down right o'))).toMatchObject({ grid: null, isExhaustive: false });
  });

  it('takes points of a grid within what candidates there may be, and keeps the count of a spread', () => {
    const points = (keys: string) => afterKeys(grid, `up ${keys}`);
    expect(planOf(points('1 4 1 return'))).toMatchObject({ grid: 141, count: 300 });
    expect(noticeOf(points('1 4 2 return'))).toBe(
      'points: expected a whole number from 2 to 141, received 142',
    );
    expect(noticeOf(points('1 return'))).toBe('points: expected a whole number from 2 to 141, received 1');
    expect(noticeOf(points('2 . 5 return'))).toBe(
      'points: expected a whole number from 2 to 141, received 2.5',
    );
    expect(planOf(points('2 return _')).grid).toBe(2);
    expect(planOf(points('1 4 1 return +')).grid).toBe(141);
    expect(planOf(points('+')).grid).toBe(13);
  });

  it('is refused with its reason where another number makes the grid too large', () => {
    const large = afterKeys(grid, 'up 1 4 1 return a down down space return');
    expect(rangesOf(large)).toHaveLength(3);
    expect(sweepPlanOf(large)).toBeNull();
    const said = afterKeys(large, 'return');
    expect(noticeOf(said)).toBe(
      'begin: 141 points over 3 numbers are 2803221 candidates, more than 20000: 27 points at most',
    );
    expect(said.sweep.run).toBeNull();
    expect(planOf(afterKeys(large, 'up up up down down down 2 7 return')).grid).toBe(27);
  });

  it('has no number to type in a row of two', () => {
    expect(noticeOf(afterKeys(grid, 't'))).toBe('type it: left and right choose here');
    expect(afterKeys(grid, '4').entry).toBeNull();
  });

  it('has a command that does the same', () => {
    expect(shellCommand(afterKeys(grid, 'up 9 return down down right'))).toMatch(/ --grid 9 --exhaustive$/);
    expect(shellCommand(grid)).toMatch(/ --grid 12$/);
  });
});

describe('the plain profile in place of one of a file', () => {
  const plain = afterKeys(afterTyping(afterKeys(opened, 'f'), 'plain'), 'return');

  it('is the one that the command begins with', () => {
    const plan = sweepPlanOf(plain)!;
    expect(plan.base).toEqual(plainBase(plain.work!.plan));
    expect(shellCommand(plain)).not.toContain('--from');
    expect(formView(afterKeys(plain, 'f'))!.base.name).toBe('plain');
  });

  it('stays chosen while Rank is in front', () => {
    expect(formView(afterKeys(plain, 'escape g'))!.isPlain).toBe(true);
    expect(formView(afterKeys(afterTyping(afterKeys(plain, 'f'), 'wool'), 'return'))!.base.name).toBe('wool');
  });
});

describe('the sweep that comes of it', () => {
  it('is run in what Rank ranks on, with the numbers that the bench has', () => {
    const edited = afterKeys(rankedState(), 'e right escape g');
    const plan = sweepPlanOf(edited)!;
    const { board, riders, scenarios, charges } = edited.work!.plan;
    expect(plan.cells).toMatchObject({ board, riders, scenarios, charges, profiles: [], solver: 'fixed' });
    expect(plan.base.value).toEqual(
      edited.work!.plan.profiles.find(({ name }) => name === plan.base.name)!.value,
    );
    expect(plan).toMatchObject({ count: 300, grid: null, isExhaustive: false, isRefined: true });
  });

  it('is begun by Enter, in place of the one before', () => {
    const first = afterKeys(opened, 'return');
    expect(first.sweep).toMatchObject({
      view: 'live',
      run: { isRunning: true, outcome: null, progress: null },
    });
    const second = afterKeys(first, 'tab return');
    expect(second.sweep.run!.plan).not.toBe(first.sweep.run!.plan);
    expect(second.sweep.run!.plan).toEqual(first.sweep.run!.plan);
  });

  it('has a command that begins it too', () => {
    const name = formView(opened)!.base.name;
    expect(shellCommand(afterKeys(opened, 'down down 4 0 return'))).toBe(
      `underfoot sweep --board pebble --rider kim --scenarios kerb,level --charge own --from ${name} ` +
        '--range proportionalAPerDeg=4..60 --range rateAPerDegPerS=0.1..4.8 --candidates 40',
    );
  });
});
