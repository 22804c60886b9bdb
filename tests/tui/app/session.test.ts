/**
 * Does the bench go on where a cell of its ranking cannot be computed, and say so?
 */
import { expect, it } from 'vitest';
import { followStore } from '../../../src/tui/app/session.js';
import { createStore } from '../../../src/tui/bench/store.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { tempFolder } from '../../store/temp-folder.js';
import { crewHere } from '../../tasks/crew-here.js';
import { afterKeys, rankedState } from '../bench/some-state.js';

it('tells which, and ranks again after another choice', async () => {
  let isBroken = true;
  const gate = () => (isBroken ? Promise.reject(new Error('no crew')) : Promise.resolve());
  const folder = tempFolder();
  const places = { workingFolder: folder, currentFolder: folder, isStarterSet: false };
  const store = createStore(rankedState());
  const faults: unknown[] = [];
  const stop = followStore({
    store,
    crew: crewHere(1, gate),
    places,
    reader: { read: () => store.get().shelf },
    leave: () => {},
    suspend: () => {},
    onFault: (error) => faults.push(error),
  });
  const until = (isSo: (state: BenchState) => boolean) =>
    new Promise<void>((resolve) => {
      const look = () => {
        if (isSo(store.get())) resolve();
      };
      store.subscribe(look);
      look();
    });
  await until(({ notice }) => /^rank:.*no crew/.test(notice?.text ?? ''));
  expect(store.get().notice).toMatchObject({
    isFault: true,
    text: expect.stringMatching(/^rank: .*kim, \d+ %/),
  });
  isBroken = false;
  store.change((state) => afterKeys(state, 'p 3 5 return'));
  await until(({ rows, progress }) => progress.allCells > 0 && rows.every(({ check }) => check !== null));
  expect(faults).toEqual([]);
  stop();
});
