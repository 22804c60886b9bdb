/**
 * Is what a view of the shortlist needs computed while it is looked at, and no longer, and once for each question? With real runs.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { previewNow } from '../../../src/tui/bench/shortlist-items.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { afterNews, followed, isBegun, proven, shutGate, someFolder } from './followed-shortlist.js';

describe('a preview', () => {
  it('through a sheet is computed once, known when it is looked at again, and anew for another', async () => {
    const { store, crew, press, until, faults, stop } = followed(someFolder('tea', 'zest'));
    const isThere = (state: BenchState) => Boolean(previewNow(state)?.answer);
    press('L c return');
    await until(isThere);
    expect(previewNow(store.get())!.answer).toMatchObject({
      kind: 'sheet',
      view: { name: 'tea', sheetName: 'slab' },
    });
    const asked = crew.asked.length;
    expect(asked).toBeGreaterThan(0);
    press('V');
    press('v');
    expect(isThere(store.get())).toBe(true);
    press('escape');
    press('L');
    expect(isThere(store.get())).toBe(true);
    await afterNews();
    expect(crew.asked).toHaveLength(asked);
    press('down');
    expect(isThere(store.get())).toBe(false);
    await until(isThere);
    expect(crew.asked.length).toBeGreaterThan(asked);
    expect(faults).toEqual([]);
    stop();
  });

  it('that is not looked at any more is ended, and tells nothing', async () => {
    const { gate, held } = shutGate();
    const { store, crew, press, faults, stop } = followed(someFolder('tea'), gate);
    press('L v v v');
    await isBegun(crew);
    press('v');
    const { length } = crew.asked;
    const after = store.get();
    for (const open of held) open();
    await afterNews();
    expect([crew.asked.length, store.get(), faults]).toEqual([length, after, []]);
    stop();
  });

  it('says which scenario is missing, and is computed once it is back', async () => {
    const folder = someFolder('tea');
    const [scenario] = proven.plan.scenarios;
    const path = join(folder, `scenarios/${scenario!.name}.yaml`);
    const whole = readFileSync(path, 'utf8');
    writeFileSync(path, 'summary: [');
    const { store, press, until, stop } = followed(folder);
    press('L c return');
    await until((state) => (previewNow(state)?.problems.length ?? 0) > 0);
    expect(JSON.stringify(previewNow(store.get())!.problems)).toContain(scenario!.name);
    writeFileSync(path, whole);
    press('v');
    press('V');
    await until((state) => Boolean(previewNow(state)?.answer));
    expect(previewNow(store.get())!.problems).toEqual([]);
    stop();
  });

  it('is told of where a run cannot be computed', async () => {
    const { store, press, until, faults, stop } = followed(someFolder('tea'), () =>
      Promise.reject(new Error('no crew')),
    );
    press('L v v v');
    await until((state) => (previewNow(state)?.problems.length ?? 0) > 0);
    expect(previewNow(store.get())!.problems[0]).toMatchObject({
      received: expect.stringContaining('no crew'),
    });
    expect(faults).toEqual([]);
    stop();
  });
});
