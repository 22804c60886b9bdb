/**
 * Does the store tell of changes, and know what a playing run leaves as it was?
 */
import { expect, it } from 'vitest';
import { createStore } from '../../../src/tui/bench/store.js';
import { played } from '../../../src/tui/bench/time-acts.js';
import { afterKeys, afterKeysSettled, rankedState, someState } from './some-state.js';

it('tells whoever listens of each change, and of no change nobody', () => {
  const store = createStore(someState());
  let heard = 0;
  const stop = store.subscribe(() => (heard += 1));
  store.change((state) => state);
  expect(heard).toBe(0);
  store.change((state) => afterKeys(state, 's'));
  expect(heard).toBe(1);
  expect(store.get().rank.order.by).toBe('profile');
  stop();
  store.change((state) => afterKeys(state, 's'));
  expect(heard).toBe(1);
});

it('stays calm while nothing but the moment changes', () => {
  const store = createStore(afterKeysSettled(rankedState(), 'return home'));
  const first = store.calm();
  store.change((state) => afterKeys(state, 'right'));
  expect(store.calm()).toBe(first);
  expect(store.get()).not.toBe(first);
  store.change((state) => afterKeys(state, 'space'));
  const playing = store.calm();
  expect(playing).toBe(store.get());
  for (let frame = 0; frame < 10; frame += 1) store.change((state) => played(state, 0.01));
  expect(store.calm()).toBe(playing);
  store.change((state) => afterKeys(state, 'z'));
  expect(store.calm()).toBe(store.get());
});
