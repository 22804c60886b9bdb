/**
 * Are the profiles that wait proven one after the other and kept, and is what is taken out ended? With real runs.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadKept } from '../../../src/tasks/kept-check.js';
import { putFile } from '../../store/temp-folder.js';
import { afterNews, followed, isBegun, isTold, shutGate, someFolder } from './followed-shortlist.js';

describe('profiles that wait', () => {
  it('are proven one after the other and kept, with news meanwhile and in the end', async () => {
    const folder = someFolder();
    const { store, places, press, until, stop, faults } = followed(folder);
    const stages = new Set<string>();
    store.subscribe(() => {
      const [first] = store.get().shortlist.queue;
      if (first?.progress) stages.add(first.progress.stage);
    });
    press('a return');
    press('down a return');
    const [one, two] = store.get().shortlist.queue.map(({ name }) => name);
    await until(isTold(/is proven and kept in shortlist/));
    expect(store.get().notice?.text).toBe(`${one} is proven and kept in shortlist/${one}.yaml`);
    expect(store.get().shelf.kept.map(({ name }) => name)).toEqual([one]);
    expect(store.get().shortlist.queue.map(({ name }) => name)).toEqual([two]);
    await until((state) => state.shelf.kept.length === 2);
    for (const name of [one!, two!]) {
      const kept = loadKept(places, name);
      expect(kept.ok && kept.value.value.origin.from).toBe(name);
      expect(kept.ok && kept.value.value.cells.count).toBe(store.get().work!.trials.length);
    }
    expect([...stages]).toContain('trying slips');
    expect([store.get().shortlist.queue, faults]).toEqual([[], []]);
    stop();
  }, 60_000);

  it('are let go when they are taken out: nothing more is run, nothing written', async () => {
    const folder = someFolder();
    const { gate, held } = shutGate();
    const { store, crew, press, faults, stop } = followed(folder, gate);
    press('a return L');
    await isBegun(crew);
    press('d d');
    expect(store.get().shortlist.queue).toEqual([]);
    const asked = crew.asked.length;
    for (const open of held) open();
    await afterNews();
    expect(crew.asked).toHaveLength(asked);
    expect(existsSync(join(folder, 'shortlist'))).toBe(false);
    expect([store.get().notice?.text, faults]).toEqual([
      expect.stringMatching(/is not proven any more$/),
      [],
    ]);
    stop();
  });

  it('are let go at the end of the bench', async () => {
    const { gate, held } = shutGate();
    const { store, crew, press, faults, stop } = followed(someFolder(), gate);
    press('a return');
    await isBegun(crew);
    const asked = crew.asked.length;
    stop();
    const after = store.get();
    for (const open of held) open();
    await afterNews();
    expect([crew.asked.length, store.get(), faults]).toEqual([asked, after, []]);
  });

  it('give way to the next where the name is taken on disk by then, and what lies there stays', async () => {
    const folder = someFolder();
    const { store, press, type, until, stop } = followed(folder);
    putFile(folder, 'shortlist/tea.yaml', 'mine');
    press('a ctrl+u');
    type('tea');
    press('return');
    await until(isTold(/shortlist\/tea\.yaml.*a file that is there already/));
    expect(store.get().shortlist.queue).toEqual([]);
    expect(readFileSync(join(folder, 'shortlist/tea.yaml'), 'utf8')).toBe('mine');
    stop();
  });

  it('are told of and left where a cell cannot be computed; errors of ours are handed on', async () => {
    const { store, press, until, faults, stop } = followed(someFolder(), () =>
      Promise.reject(new Error('no crew')),
    );
    press('a return');
    await until(isTold(/no crew/));
    expect(store.get()).toMatchObject({
      shortlist: { queue: [] },
      notice: { isFault: true, text: expect.stringMatching(/a tries again/) },
    });
    expect(faults).toEqual([]);
    store.change((state) => {
      const { plan } = state.work!;
      const queue = [{ name: 'tea', plan: { ...plan, profiles: [] }, progress: null }];
      return { ...state, shortlist: { ...state.shortlist, queue } };
    });
    while (faults.length === 0) await new Promise((resolve) => setTimeout(resolve));
    expect(faults).toHaveLength(1);
    stop();
  });
});
