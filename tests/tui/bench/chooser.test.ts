/**
 * What do keys do in a list to choose from?
 */
import { describe, expect, it } from 'vitest';
import { itemsInSight } from '../../../src/tui/bench/chooser-acts.js';
import type { BenchState, Chooser } from '../../../src/tui/bench/state.js';
import { afterKeys, afterPaste, afterTyping, rankedState, someState } from './some-state.js';

const open = (state: BenchState): Chooser => {
  if (state.overlay?.kind !== 'chooser') throw new Error('no list stands open');
  return state.overlay.chooser;
};

describe('a list', () => {
  it.each([
    ['b', ['brick', 'pebble'], ['pebble'], 1],
    ['r', ['kim', 'lee'], ['kim'], 0],
    ['o', ['kerb', 'level'], ['kerb', 'level'], 0],
    [
      'p',
      ['as each scenario says', '100 %', '80 %', '60 %', '40 %', '20 %', '10 %'],
      ['as each scenario says'],
      0,
    ],
  ])('opened by %s begins on what is chosen now', (key, items, chosen, cursor) => {
    expect(open(afterKeys(rankedState(), key))).toMatchObject({ items, chosen, cursor, typed: '' });
  });

  it('shows a charge that is chosen and unusual', () => {
    expect(open(afterKeys(someState({ setup: { charges: [37.5] } }), 'p'))).toMatchObject({
      items: expect.arrayContaining(['37.5 %']),
      cursor: 7,
    });
  });

  it.each([
    ['b up return', { board: 'brick' }],
    ['b down return', { board: 'pebble' }],
    ['b tab return', { board: 'pebble' }],
    ['b up space return', { board: 'brick' }],
    ['b i c k return', { board: 'brick' }],
    ['b x x return', { board: 'pebble' }],
    ['b x x backspace backspace return', { board: 'brick' }],
    ['b up escape', { board: 'pebble' }],
    ['r down return', { riders: ['lee'] }],
    ['r down space return', { riders: null }],
    ['r space return', { riders: ['kim'] }],
    ['r tab return', { riders: null }],
    ['r pagedown return', { riders: ['lee'] }],
    ['r pagedown pageup return', { riders: ['kim'] }],
    ['o return', { scenarios: ['kerb'] }],
    ['o space return', { scenarios: ['level'] }],
    ['o space space return', { scenarios: null }],
    ['o return o tab return', { scenarios: null }],
    ['o k e r b tab return', { scenarios: ['level'] }],
    ['o x x tab return', { scenarios: null }],
    ['p down return', { charges: [100] }],
    ['p down space down space return', { charges: [null, 100, 80] }],
    ['p 3 5 return', { charges: [35] }],
    ['p 3 5 % return', { charges: [35] }],
    ['p 3 , 5 return', { charges: [3, 5] }],
    ['p 3 . 5 return', { charges: [3.5] }],
    ['p 4 0 , 1 5 return', { charges: [40, 15] }],
    ['p 4 0 space 1 5 return', { charges: [40, 15] }],
    ['p 4 0 , space 1 5 , return', { charges: [40, 15] }],
    ['p 4 0 , 1 5 down return', { charges: [40, 15] }],
    ['p down space 4 0 , 1 5 return', { charges: [null, 100, 40, 15] }],
    ['p 4 0 , 1 0 1 return', { charges: [null] }],
    ['p 1 0 return', { charges: [10] }],
    ['p 8 return', { charges: [8] }],
    ['p 8 down return', { charges: [80] }],
    ['p 3 5 space return', { charges: [35] }],
    ['p 3 5 tab return', { charges: [null, 35] }],
    ['p 0 return', { charges: [100] }],
    ['p 1 0 1 return', { charges: [null] }],
  ])('%j chooses %j', (keys, setup) => {
    const before = rankedState();
    const after = afterKeys(before, keys);
    expect(after.overlay).toBeNull();
    expect(after.choices.setup).toEqual({ ...before.choices.setup, ...setup });
    expect(after.past.length > 0).toBe(after.choices.setup !== before.choices.setup);
  });

  it('takes one board alone, and says so', () => {
    for (const key of ['space', 'tab']) {
      expect(afterKeys(rankedState(), `b ${key}`).notice?.text).toContain('one board at a time');
    }
  });

  it('keeps its cursor on an item, where there is one', () => {
    const keys = 'o down down down up up up down x x down up space';
    let state = rankedState();
    for (const key of keys.split(' ')) {
      state = afterKeys(state, key);
      const chooser = open(state);
      expect(chooser.cursor).toBeGreaterThanOrEqual(0);
      expect(chooser.cursor).toBeLessThan(Math.max(1, itemsInSight(chooser).length));
    }
  });

  it('narrows by what is typed or pasted, in any case, and takes letters back whole', () => {
    const typed = afterTyping(afterKeys(rankedState(), 'o'), 'LEV');
    expect(itemsInSight(open(typed))).toEqual(['level']);
    expect(itemsInSight(open(afterPaste(afterKeys(rankedState(), 'o'), 'ker')))).toEqual(['kerb']);
    const flag = '\u{1F1E8}\u{1F1ED}';
    expect(open(afterKeys(afterPaste(afterKeys(rankedState(), 'o'), `a${flag}`), 'backspace')).typed).toBe(
      'a',
    );
    expect(open(afterPaste(afterKeys(rankedState(), 'o'), 'x'.repeat(1_000_000))).typed).toHaveLength(200);
  });
});
