/**
 * What do keys do while a line is typed, and what becomes of it?
 */
import { describe, expect, it } from 'vitest';
import { shownRows } from '../../../src/tui/bench/rows.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { afterKeys, afterPaste, afterTyping, rankedState, someShelf } from './some-state.js';

const edited = () => afterKeys(afterTyping(afterKeys(rankedState(), '/'), 'wool'), 'return e right escape');
const typing = (state: BenchState, text: string) => afterTyping(afterKeys(state, 'ctrl+u'), text);

describe('a line', () => {
  it('takes every letter, those with a meaning elsewhere too', () => {
    const text = 'q?jku w!/xe-+=,.';
    expect(afterTyping(afterKeys(rankedState(), '/'), text).entry?.text).toBe(text);
  });

  it.each([
    ['a b backspace', 'a'],
    ['a b delete', 'a'],
    ['a b ctrl+u', ''],
    ['backspace', ''],
    ['a up down left right home end tab pagedown b', 'ab'],
  ])('after %j holds %j', (keys, text) => {
    expect(afterKeys(rankedState(), `/ ${keys}`).entry?.text).toBe(text);
  });

  it('takes a paste, takes whole characters back, and ends at two hundred', () => {
    const open = afterKeys(rankedState(), '/');
    const family = '\u{1F469}\u200D\u{1F469}\u200D\u{1F467}';
    expect(afterKeys(afterPaste(open, `a${family}`), 'backspace').entry?.text).toBe('a');
    const long = afterPaste(open, '\u{1F469}'.repeat(100_000)).entry!.text;
    expect([...long]).toHaveLength(200);
    expect(long).not.toMatch(/\p{Cs}/u);
  });
});

describe('the filter', () => {
  it('works while it is typed', () => {
    const state = afterTyping(afterKeys(rankedState(), '/'), 'wo');
    expect(shownRows(state).map(({ name }) => name)).toEqual(['wool']);
    expect(shownRows(afterKeys(state, 'backspace backspace'))).toHaveLength(3);
  });

  it.each([
    ['/ w o return', 'wo', null],
    ['/ w o escape', '', null],
    ['/ w o return escape', '', null],
    ['/ w o return /', 'wo', { purpose: 'filter', text: 'wo', isOffered: false }],
    ['/ w o return / escape', '', null],
    ['/ w o return / backspace return', 'w', null],
  ])('after %j is %j', (keys, filter, entry) => {
    const state = afterKeys(rankedState(), keys);
    expect(state.rank.filter).toBe(filter);
    expect(state.entry).toEqual(entry);
  });
});

describe('an export', () => {
  it('offers a name from the setup and is left to the session', () => {
    const open = afterKeys(rankedState(), 'x');
    expect(open.entry).toEqual({ purpose: 'export', text: 'rank-pebble-kim.csv', isOffered: true });
    const done = afterKeys(open, 'return');
    expect(done.entry).toBeNull();
    expect(done.errands).toEqual([{ kind: 'export', path: 'rank-pebble-kim.csv' }]);
    expect(afterKeys(typing(open, ' out.json '), 'return').errands).toEqual([
      { kind: 'export', path: 'out.json' },
    ]);
  });

  it('wants a name, and can be given up', () => {
    const open = afterKeys(rankedState(), 'x');
    const empty = afterKeys(open, 'ctrl+u space return');
    expect(empty).toMatchObject({
      errands: [],
      notice: { text: 'expected the name of a file', isFault: true },
    });
    expect(empty.entry).not.toBeNull();
    expect(afterKeys(open, 'escape')).toMatchObject({ entry: null, errands: [] });
  });

  it('waits for a row', () => {
    const { rows: _rows, ...state } = rankedState();
    expect(afterKeys({ ...state, rows: [] }, 'x').notice?.text).toBe('export: no row is computed yet');
  });
});

describe('a text that is offered', () => {
  const open = () => afterKeys(edited(), 'w');

  it('gives way to the first letter, or to a paste', () => {
    expect(afterTyping(open(), 'silk').entry).toEqual({ purpose: 'save', text: 'silk', isOffered: false });
    expect(afterPaste(open(), 'silk').entry?.text).toBe('silk');
    expect(afterKeys(rankedState({ setup: { riders: null } }), 'x a .').entry?.text).toBe('a.');
  });

  it('is edited from its end, or taken back', () => {
    expect(afterTyping(afterKeys(open(), 'backspace'), '7').entry?.text).toBe('wool-7');
    expect(afterKeys(open(), 'ctrl+u').entry?.text).toBe('');
  });

  it('is none where a person typed it', () => {
    expect(afterTyping(afterKeys(rankedState(), '/ w return /'), 'o').entry?.text).toBe('wo');
    expect(afterTyping(afterKeys(rankedState(), 'e'), '25').entry?.text).toBe('25');
  });
});

describe('saving', () => {
  it('offers the first name that is free and is left to the session', () => {
    const open = afterKeys(edited(), 'w');
    expect(open.entry).toEqual({ purpose: 'save', text: 'wool-2', isOffered: true });
    expect(afterKeys(open, 'return')).toMatchObject({
      entry: null,
      errands: [{ kind: 'save', from: 'wool', name: 'wool-2' }],
    });
  });

  it('counts on from names that are taken', () => {
    const profile = ['wool', 'wool-2', 'wool-3'].map((name) => ({ ...someShelf().profile[2]!, name }));
    const state = afterKeys(rankedState({ shelf: someShelf({ profile }) }), 'e right w');
    expect(state.entry?.text).toBe('wool-4');
    const other = afterKeys(rankedState({ shelf: someShelf({ profile }) }), 'j e right w');
    expect(other.entry?.text).toBe('wool-4');
  });

  it.each(['Wool', 'a b', '', '-x', 'x'.repeat(41), '../x'])('refuses the name %j', (name) => {
    const state = afterKeys(typing(afterKeys(edited(), 'w'), name), 'return');
    expect(state.errands).toEqual([]);
    expect(state.entry).not.toBeNull();
    expect(state.notice).toMatchObject({ isFault: true });
  });

  it('works from the editor too', () => {
    const state = afterKeys(edited(), 'e w return');
    expect(state.errands).toEqual([{ kind: 'save', from: 'wool', name: 'wool-2' }]);
  });

  it('is off for a profile as in its file, and in the starter set', () => {
    expect(afterKeys(rankedState(), 'w').notice?.text).toBe('save as: this profile is as in its file');
    const { options, ...state } = edited();
    const starter = afterKeys({ ...state, options: { ...options, ownFolder: false } }, 'w');
    expect(starter.entry).toBeNull();
    expect(starter.notice?.text).toContain('underfoot init');
  });
});
