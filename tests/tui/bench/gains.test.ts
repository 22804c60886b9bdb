/**
 * What do keys do while the numbers of a profile are edited?
 */
import { describe, expect, it } from 'vitest';
import { readField } from '../../../src/quantity/profile-fields.js';
import { changesOf, gainsView } from '../../../src/tui/bench/gains-acts.js';
import { currentRow, shownRows } from '../../../src/tui/bench/rows.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { afterKeys, afterKeysSettled, afterPaste, afterTyping, rankedState } from './some-state.js';

/** The editor on a profile, found by the filter so that it stays the first row. */
const editing = (name: string) => afterKeys(afterTyping(afterKeys(rankedState(), '/'), name), 'return e');
const fieldNow = (state: BenchState) => gainsView(state)!.field.key;
const now = (state: BenchState) => {
  const view = gainsView(state)!;
  return readField(view.now, view.field);
};

describe('the editor', () => {
  it('begins on the first gain of the profile under the cursor', () => {
    const state = editing('wool');
    expect(state.overlay).toEqual({ kind: 'gains', profile: 'wool', field: 0 });
    expect(fieldNow(state)).toBe('proportionalAPerDeg');
    expect(state.rank.cursor).toBe('wool');
  });

  it.each([
    ['down', 'rateAPerDegPerS'],
    ['j j', 'integralAPerDegS'],
    ['up', 'proportionalAPerDeg'],
    ['j k', 'proportionalAPerDeg'],
  ])('moves by %j to %s', (keys, key) => {
    expect(fieldNow(afterKeys(editing('wool'), keys))).toBe(key);
  });

  it('offers the numbers of the sections that the file has, and stops at the last', () => {
    const down = 'j '.repeat(40);
    expect(fieldNow(afterKeys(editing('wool'), down))).toBe('engageRampS');
    expect(fieldNow(afterKeys(editing('felt'), down))).toBe('noseUpDegPerA');
  });

  it.each([
    ['right', 21],
    ['l', 21],
    ['left', 19.5],
    ['h', 19.5],
    ['left right', 20],
    ['right left', 20],
    ['shift+right', 20.2],
    ['}', 20.2],
    ['{', 19.9],
    ['shift+left }', 20],
    ['right right f', 20],
    ['right u', 20],
    ['right u U', 21],
    ['return 2 2 return', 22],
    ['2 2 . 5 return', 22.5],
    ['2 2 , 5 return', 22.5],
    ['2 2 escape', 20],
    ['0 return', 0],
    ['5 0 0 return', 500],
  ])('%j makes 20 of the gain to %s', (keys, value) => {
    const state = afterKeys(editing('wool'), keys);
    expect(now(state)).toBe(value);
    expect(state.entry).toBeNull();
    expect(state.choices.edits).toHaveLength(value === 20 ? 0 : 1);
  });

  it.each(['5 0 1', '-', '- 1', '1 . . 2', '. '])('refuses %j, says why and lets it be mended', (keys) => {
    const state = afterKeys(editing('wool'), `${keys} return`);
    expect(state.notice).toMatchObject({ isFault: true });
    expect(state.notice?.text).toContain('expected a number from 0 to 500 A/deg');
    expect(now(state)).toBe(20);
    expect(now(afterKeys(state, 'ctrl+u 2 1 return'))).toBe(21);
  });

  it('takes a pasted number into the line that stands open, not elsewhere', () => {
    expect(now(afterKeys(afterPaste(afterKeys(editing('wool'), 'return'), ' 23 '), 'return'))).toBe(23);
    expect(afterPaste(editing('wool'), '23').entry).toBeNull();
  });

  it('says where a number ends', () => {
    const top = afterKeys(editing('wool'), '5 0 0 return right');
    expect(top.notice?.text).toBe('proportionalAPerDeg: 500 A/deg is the most');
    const bottom = afterKeys(editing('wool'), '0 return left');
    expect(bottom.notice?.text).toBe('proportionalAPerDeg: 0 A/deg is the least');
    expect(bottom.past).toHaveLength(1);
  });

  it('leaves out what may be left out', () => {
    const slew = afterKeys(editing('wool'), 'j '.repeat(5));
    expect(fieldNow(slew)).toBe('slewLimitAPerS');
    expect(afterKeys(slew, 'right').notice?.text).toContain('type a number to begin');
    const typed = afterKeys(slew, '6 0 0 return');
    expect(changesOf(typed, 'wool')).toBe('slewLimitAPerS left out to 600 A/s');
    const out = afterKeys(typed, 'o');
    expect(now(out)).toBeUndefined();
    expect(out.choices.edits).toEqual([]);
    expect(afterKeys(editing('wool'), 'o').notice?.text).toBe('leave out: this number cannot be left out');
  });

  it('makes no step of undo where nothing changes', () => {
    for (const keys of ['f', 'return 2 0 return', 'j j j j j o', 'right left f']) {
      const state = afterKeys(editing('wool'), keys);
      expect(state.past).toHaveLength(keys.startsWith('right') ? 2 : 0);
    }
  });

  it('lets the row move and keeps the cursor on it', () => {
    const state = afterKeys(rankedState(), 'e');
    const { profile } = state.overlay as { profile: string };
    const moved = afterKeysSettled(state, 'right escape R');
    expect(shownRows(moved).at(-1)?.name).toBe(profile);
    expect(currentRow(moved)?.name).toBe(profile);
    expect(currentRow(moved)).toMatchObject({ isEdited: true });
  });

  it.each(['escape', 'q', 'e'])('closes by %s and keeps the changes', (key) => {
    const state = afterKeys(editing('wool'), `right ${key}`);
    expect(state.overlay).toBeNull();
    expect(changesOf(state, 'wool')).toBe('proportionalAPerDeg 20 to 21 A/deg');
  });

  it('has no profile to edit where there is no row', () => {
    const state = afterKeys(afterTyping(afterKeys(rankedState(), '/'), 'zzz'), 'return e');
    expect(state.overlay).toBeNull();
    expect(state.notice?.text).toBe('edit: there is no profile in sight');
  });
});
