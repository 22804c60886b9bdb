/**
 * What becomes of the state when something happens outside: rows, runs, files, another size?
 */
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../src/quantity/problem.js';
import { looked, ranked, resized, shelved, told } from '../../../src/tui/bench/hear.js';
import { changesOf, gainsView } from '../../../src/tui/bench/gains-acts.js';
import { currentRow, shownRows, wishesOf } from '../../../src/tui/bench/rows.js';
import { afterKeys, rankedState, resultsFor, runOf, someShelf, someState, withRows } from './some-state.js';

const shelf = someShelf();
const without = <T extends { name: string }>(files: readonly T[], name: string) =>
  files.filter((file) => file.name !== name);
const PROBLEM: Problem = {
  file: 'a.yaml',
  line: 2,
  column: 3,
  key: 'a',
  expected: 'a number',
  received: 'text',
};

describe('rows that were computed', () => {
  it('are taken in, of the plan that is wanted alone', () => {
    const state = someState();
    const rows = resultsFor(state).map((result) => ({ name: result.name, result, check: null }));
    const news = { plan: state.work!.plan, rows, doneCells: 3, allCells: 6 };
    const next = ranked(state, news, new Map());
    expect(next.rows).toEqual(rows);
    expect(next.progress).toEqual({ doneCells: 3, allCells: 6 });
    const other = afterKeys(state, 'b up return');
    expect(ranked(other, news, new Map())).toBe(other);
  });

  it('keep their last numbers while new ones are computed', () => {
    const state = afterKeys(rankedState(), 'e right');
    const rows = state.rows.map((row) => (row.name === state.rank.cursor ? { ...row, result: null } : row));
    const next = ranked(state, { plan: state.work!.plan, rows, doneCells: 0, allCells: 2 }, new Map());
    expect(next.rows).toEqual(state.rows);
  });

  it('tell what an edited profile is in its file', () => {
    const state = afterKeys(rankedState(), 'e right');
    const name = state.rank.cursor!;
    const asFile = resultsFor(state).find((result) => result.name === name)!;
    const news = { plan: state.work!.plan, rows: [...state.rows], doneCells: 0, allCells: 0 };
    const rows = shownRows(ranked(state, news, new Map([[name, asFile]])));
    expect(rows.find((row) => row.name === name)).toMatchObject({ isEdited: true, unedited: { rank: 1 } });
    expect(rows.filter((row) => row.name !== name).every(({ unedited }) => unedited === null)).toBe(true);
  });
});

describe('runs', () => {
  it('are taken in; the same ones again change nothing', () => {
    const state = afterKeys(rankedState(), 'return');
    const looks = [runOf(state.view.profiles[0]!, 'level')];
    const next = looked(state, looks);
    expect(next.looks).toBe(looks);
    expect(looked(next, [...looks])).toBe(next);
  });

  it('let a comparison begin once all are there', () => {
    const state = afterKeys(rankedState(), 'l space end space c');
    const [one, two] = state.view.profiles.map((name) => runOf(name, 'kerb'));
    const half = looked(state, [one!, null]);
    expect(half.playhead.timeS).toBeNull();
    expect(looked(half, [one!, two!]).playhead.timeS).not.toBeNull();
  });
});

describe('files', () => {
  it('that are the same change nothing', () => {
    const state = rankedState({ shelf });
    expect(shelved(state, shelf)).toBe(state);
  });

  it('that are new bring a row', () => {
    const added = { ...shelf.profile[2]!, name: 'yarn' };
    const next = shelved(rankedState({ shelf }), { ...shelf, profile: [...shelf.profile, added] });
    expect(shownRows(next).map(({ name, rank }) => [name, rank === null])).toContainEqual(['yarn', true]);
    expect(shownRows(next).filter(({ result }) => result !== null)).toHaveLength(3);
  });

  it('that change what is ranked on leave no row of before', () => {
    const [kerb, level] = shelf.scenario;
    const scenario = [{ name: 'kerb', value: { ...kerb!.value, durationS: 3 } }, level!];
    const next = shelved(afterKeys(rankedState({ shelf }), 'j l l'), { ...shelf, scenario });
    expect(next.rows).toEqual([]);
    expect(next.rank.column).toBe(1);
    expect(currentRow(next)?.name).toBe(next.rank.cursor);
  });

  it('that are gone take row, cursor, pick and editor with them', () => {
    const state = afterKeys(rankedState({ shelf }), 'space space home e return 2');
    const name = state.rank.cursor!;
    const next = shelved(state, { ...shelf, profile: without(shelf.profile, name) });
    expect(next).toMatchObject({ overlay: null, entry: null, rank: { cursor: null } });
    expect(next.rank.picked).toEqual(
      without(
        state.rank.picked.map((picked) => ({ name: picked })),
        name,
      ).map((p) => p.name),
    );
    expect(next.rank.picked).toHaveLength(1);
    expect(shownRows(next).map((row) => row.name)).not.toContain(name);
    expect(shownRows(next).map(({ rank }) => rank)).toEqual([1, 2]);
  });

  it('that are gone take the editor beneath the help with them', () => {
    const state = afterKeys(rankedState({ shelf }), 'e ?');
    const next = shelved(state, { ...shelf, profile: without(shelf.profile, state.rank.cursor!) });
    expect(next.overlay?.kind).toBe('help');
    expect(afterKeys(next, 'escape').overlay).toBeNull();
  });

  it('changed under the editor are what it compares with', () => {
    const state = afterKeys(rankedState({ shelf }), '/ w o o l return e right');
    const wool = shelf.profile[2]!;
    const gains = { ...wool.value.gains, proportionalAPerDeg: 21, rateAPerDegPerS: 3 };
    const next = shelved(state, {
      ...shelf,
      profile: [...without(shelf.profile, 'wool'), { name: 'wool', value: { ...wool.value, gains } }],
    });
    expect(gainsView(next)?.now.gains).toEqual(gains);
    expect(changesOf(next, 'wool')).toBe('');
    expect(changesOf(afterKeys(next, 'right'), 'wool')).toBe('proportionalAPerDeg 21 to 22 A/deg');
  });

  it('are in the list that stands open, its cursor on the same item', () => {
    const state = afterKeys(rankedState({ shelf }), 'r down');
    const ann = { ...shelf.rider[0]!, name: 'ann' };
    const next = shelved(state, { ...shelf, rider: [ann, ...shelf.rider] });
    expect(next.overlay).toMatchObject({ chooser: { items: ['ann', 'kim', 'lee'], cursor: 2 } });
    const gone = shelved(next, { ...shelf, rider: [ann] });
    expect(gone.overlay).toMatchObject({ chooser: { items: ['ann'], cursor: 0 } });
  });

  it('without which nothing can be ranked leave no plan, and one again when they come back', () => {
    const state = afterKeys(rankedState({ shelf }), 'j space');
    const gone = shelved(state, { ...shelf, board: without(shelf.board, 'pebble') });
    expect(gone).toMatchObject({ work: null, rows: [], screen: 'rank' });
    expect(shownRows(gone)).toEqual([]);
    expect(wishesOf(gone)).toEqual([]);
    const back = withRows(shelved(gone, shelf));
    expect(back.rank).toEqual(state.rank);
    expect(back.rows).toEqual(state.rows);
    expect(afterKeys(gone, 'b return').work).not.toBeNull();
  });
});

describe('the rest', () => {
  it('is taken as it is: another size, something to be told', () => {
    expect(resized(someState(), { columns: 40, rows: 10 }).size).toEqual({ columns: 40, rows: 10 });
    expect(told(someState(), 'wrote a.csv').notice).toEqual({ text: 'wrote a.csv', isFault: false });
    expect(told(someState(), [PROBLEM, PROBLEM]).notice).toMatchObject({ isFault: true });
  });
});
