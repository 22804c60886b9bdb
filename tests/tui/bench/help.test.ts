/**
 * Does the help show every key, find what is searched for, and give back what it covered?
 */
import { describe, expect, it } from 'vitest';
import { keyList, keyTable } from '../../../src/tui/bench/key-list.js';
import { keyText } from '../../../src/tui/bench/key-words.js';
import { KEYMAP } from '../../../src/tui/bench/keymap.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { screenRows } from '../../../src/tui/draw/screen-rows.js';
import { afterKeys, afterPaste, afterTyping, rankedState } from './some-state.js';

const help = (state: BenchState) => {
  if (state.overlay?.kind !== 'help') throw new Error('no help stands open');
  return state.overlay;
};

describe('the help', () => {
  it.each(['', 'return', 'space space c', 'e', 'b', 'x', '!'])('opened after %j gives that back', (keys) => {
    const before = afterKeys(rankedState(), keys);
    const { overlay, entry, screen } = before;
    const open = afterKeys(before, 'f1');
    help(open);
    expect(open.entry).toBeNull();
    expect(afterKeys(open, 'd o w n backspace f1 escape')).toMatchObject({ overlay, entry, screen });
  });

  it('says first whose files are used', () => {
    const rows = screenRows(afterKeys(rankedState(), '?'));
    expect(rows[2]).toBe('Files: /home/kim/boards');
    expect(rows[3]).toMatch(/^The same from a shell: /);
  });

  it('searches for what is typed or pasted', () => {
    const typed = afterTyping(afterKeys(rankedState(), '?'), 'zoom q?');
    expect(help(typed).search).toBe('zoom q?');
    expect(help(afterKeys(typed, 'backspace backspace')).search).toBe('zoom ');
    expect(help(afterPaste(afterKeys(rankedState(), '?'), 'x'.repeat(1000))).search).toHaveLength(200);
  });

  it('scrolls, not above its start, and from the start again for another search', () => {
    const down = afterKeys(rankedState(), '? down pagedown');
    expect(help(down).top).toBe(11);
    expect(help(afterKeys(down, 'pageup up up')).top).toBe(0);
    expect(help(afterKeys(down, 'x')).top).toBe(0);
  });

  it('of the problems scrolls too', () => {
    const state = rankedState();
    const problem = { file: 'a.yaml', line: 1, column: 1, key: 'x', expected: 'y', received: 'z' };
    const faulty = { ...state, shelf: { ...state.shelf, problems: [problem] } };
    expect(afterKeys(faulty, '! down down up').overlay).toEqual({ kind: 'problems', top: 1 });
    expect(afterKeys(faulty, '! escape').overlay).toBeNull();
    expect(afterKeys(state, '!').notice?.text).toBe('problems: no file has a problem');
  });
});

describe('the list of keys', () => {
  const places = Object.values(KEYMAP);
  const all = places.flatMap(({ bindings }) => bindings);

  it('holds every binding', () => {
    const listed = keyList(rankedState()).flatMap(({ keys }) => keys);
    expect(listed).toHaveLength(all.length);
    expect(listed.map(({ says }) => says).toSorted()).toEqual(all.map(({ says }) => says).toSorted());
  });

  it.each([
    ['', 'Rank'],
    ['return', 'Trace'],
    ['e', 'Numbers of a profile'],
    ['b', 'Lists'],
    ['x', 'Typing'],
  ])('begins after %j with the place in front: %s', (keys, title) => {
    expect(keyList(afterKeys(rankedState(), `${keys} f1`))[0]?.title).toBe(title);
  });

  it('says why a key of the place in front does nothing', () => {
    const offs = keyList(afterKeys(rankedState(), '?')).flatMap(({ keys }) => keys.map(({ off }) => off));
    expect(offs).toContain('nothing to undo');
    const gains = keyList(afterKeys(rankedState(), 'e j j j j j ?'))[0]!;
    expect(gains.keys.find(({ says }) => says.startsWith('leave the number out'))?.off).toBeNull();
  });

  it.each([
    ['compare the picked', 'c'],
    ['COMPARE THE PICKED', 'c'],
    ['right turn', undefined],
    ['pagedown', 'PgDn'],
    ['pgdn', 'PgDn'],
    ['right', '→ or l'],
    ['ctrl-c', 'Ctrl-C'],
  ])('searched for %j finds the key %s', (search, key) => {
    const found = keyList(rankedState(), search).flatMap(({ keys }) => keys.map((one) => one.key));
    if (key === undefined) expect(found).toEqual([]);
    else expect(found).toContain(key);
  });

  it('is the table of the README too, one row a binding, in words alone', () => {
    const rows = keyTable().split('\n');
    expect(rows).toHaveLength(all.length + 2);
    expect(keyTable()).toMatch(/^[\x20-\x7e\n]*$/);
    for (const { title, bindings } of places) {
      for (const { keys, says } of bindings) {
        const row = rows.find((one) => one.startsWith(`| ${title} |`) && one.includes(` ${says} |`));
        for (const key of keys) expect(row).toContain(`\`${keyText(key, null)}\``);
      }
    }
  });
});

describe('a key', () => {
  it.each([
    ['left', 'braille', '←'],
    ['left', 'ascii', 'Left'],
    ['shift+left', 'block', 'Shift-←'],
    ['ctrl+c', 'braille', 'Ctrl-C'],
    ['return', 'ascii', 'Enter'],
    ['f1', 'ascii', 'F1'],
    ['S', 'braille', 'S'],
    ['+', 'braille', '+'],
  ] as const)('%s in %s is written %s', (name, symbols, text) => {
    expect(keyText(name, symbols)).toBe(text);
  });
});
