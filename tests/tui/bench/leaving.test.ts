/**
 * How is the bench left, and what stands in the way?
 */
import { describe, expect, it } from 'vitest';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { resized } from '../../../src/tui/bench/hear.js';
import { afterKeys, afterPaste, afterTyping, rankedState, someShelf, someState } from './some-state.js';

const LEFT = [{ kind: 'leave', interrupted: false }];
const changed = () => afterKeys(rankedState(), 'e right escape');

describe('leaving', () => {
  it('is done at once where nothing is unsaved', () => {
    expect(afterKeys(someState(), 'q').errands).toEqual(LEFT);
    expect(afterKeys(changed(), 'u q').errands).toEqual(LEFT);
  });

  it('asks once where something is', () => {
    const asked = afterKeys(changed(), 'q');
    expect(asked).toMatchObject({ leaving: true, errands: [], notice: { isFault: true } });
    const name = asked.rank.cursor;
    expect(asked.notice?.text).toBe(`${name} has changes not saved: q again leaves without them, w saves`);
    expect(afterKeys(asked, 'q').errands).toEqual(LEFT);
  });

  it('says it in one line of 80 columns, and which key saves where one does', () => {
    const said = (state: BenchState) => afterKeys(state, 'q').notice!.text;
    expect(said(afterKeys(changed(), 'end'))).toMatch(/q again leaves without them$/);
    const two = said(afterKeys(changed(), 'j e right escape'));
    expect(two).toBe('2 profiles have changes not saved: q again leaves without them, w saves one');
    const { options, ...state } = changed();
    expect(said({ ...state, options: { ...options, ownFolder: false } })).toMatch(/without them$/);
    const profile = someShelf().profile.map((file) => ({ ...file, name: `${file.name}-${'x'.repeat(30)}` }));
    const long = afterKeys(someState({ shelf: someShelf({ profile }) }), 'e right escape');
    expect(said(long)).toMatch(/^one profile has changes/);
    for (const text of [two, said(long), said(changed())]) expect(text.length).toBeLessThan(79);
  });

  it('asks again after another key', () => {
    const state = afterKeys(changed(), 'q j q');
    expect(state).toMatchObject({ leaving: true, errands: [] });
    expect(afterKeys(changed(), 'q j').leaving).toBe(false);
  });

  it.each(['', 'e', 'b', '/', 'return', 'space space c', '?', 'x'])(
    'by Ctrl-C after %j is at once',
    (keys) => {
      const state = afterKeys(changed(), `${keys} ctrl+c`);
      expect(state.errands).toEqual([{ kind: 'leave', interrupted: true }]);
    },
  );

  it('for a while is Ctrl-Z', () => {
    expect(afterKeys(changed(), 'ctrl+z').errands).toEqual([{ kind: 'suspend' }]);
  });

  it('is a letter like others while one types', () => {
    expect(afterTyping(afterKeys(someState(), '/'), 'qq')).toMatchObject({
      errands: [],
      entry: { text: 'qq' },
    });
  });

  it('a screen leads back to the one before', () => {
    for (const key of ['escape', 'q']) {
      expect(afterKeys(rankedState(), `return ${key}`)).toMatchObject({
        screen: 'rank',
        errands: [],
        behind: [],
      });
    }
  });
});

describe('a terminal on which nothing is drawn', () => {
  const small = () => resized(changed(), { columns: 39, rows: 24 });

  it('hears no key but those that leave', () => {
    const before = small();
    for (const key of ['return', 'j', 'space', 'u', 's', 'x', '?', 'b', 'e', 'escape', 'toString'])
      expect(afterKeys(before, key)).toBe(before);
    const line = resized(afterKeys(changed(), '/'), { columns: 80, rows: 9 });
    expect(afterPaste(line, 'wool')).toBe(line);
    expect(afterKeys(line, 'w')).toBe(line);
  });

  it('is left by q, which asks too, and by Ctrl-C and Ctrl-Z', () => {
    expect(afterKeys(small(), 'q')).toMatchObject({ leaving: true, errands: [] });
    expect(afterKeys(small(), 'q q').errands).toEqual(LEFT);
    expect(afterKeys(small(), 'q j q').errands).toEqual([]);
    expect(afterKeys(small(), 'ctrl+c').errands).toEqual([{ kind: 'leave', interrupted: true }]);
    expect(afterKeys(small(), 'ctrl+z').errands).toEqual([{ kind: 'suspend' }]);
  });
});
