/**
 * How is the bench left, and what stands in the way?
 */
import { describe, expect, it } from 'vitest';
import { afterKeys, afterTyping, rankedState, someState } from './some-state.js';

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
    expect(asked.notice?.text).toContain('changed and not saved');
    expect(afterKeys(asked, 'q').errands).toEqual(LEFT);
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
