/**
 * What becomes of the file of a kept profile: noted, exported, removed, and nothing of a damaged one?
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { previewNow } from '../../../src/tui/bench/shortlist-items.js';
import { followed, isTold, someFolder } from './followed-shortlist.js';

describe('the file of a kept profile', () => {
  it('gets note and ratings, and nothing else of it is touched', async () => {
    const folder = someFolder('tea');
    const { store, press, type, until, stop } = followed(folder);
    const before = readFileSync(join(folder, 'shortlist/tea.yaml'), 'utf8');
    press('L n');
    type('Calm: "yes" # ja');
    press('return');
    await until(isTold(/^wrote the note into shortlist\/tea\.yaml$/));
    expect(store.get().shelf.kept[0]!.value.note).toBe('Calm: "yes" # ja');
    press('f');
    type('twitchy 4, loose 2');
    press('return');
    await until(isTold(/^wrote a ride of today into/));
    expect(store.get().shelf.kept[0]!.value.rides).toMatchObject([
      { note: '', felt: { twitchy: 4, loose: 2 } },
    ]);
    const after = readFileSync(join(folder, 'shortlist/tea.yaml'), 'utf8');
    const gone = before.split('\n').filter((line) => !after.split('\n').includes(line));
    expect(gone.every((line) => /^(note|rides):/.test(line))).toBe(true);
    stop();
  });

  it('is exported, never over a file, and the line stands open again', async () => {
    const folder = someFolder('tea');
    const { store, press, type, until, stop } = followed(folder);
    press('L v x return');
    await until(isTold(/^wrote tea-card\.txt: the ride card$/));
    expect(readFileSync(join(folder, 'tea-card.txt'), 'utf8')).toMatch(/^Ride card tea\n/);
    writeFileSync(join(folder, 'tea-card.txt'), 'mine');
    press('x return');
    await until(isTold(/tea-card\.txt/));
    expect(store.get().notice?.isFault).toBe(true);
    expect(store.get().entry).toMatchObject({ purpose: 'carry', text: 'tea-card.txt' });
    expect(readFileSync(join(folder, 'tea-card.txt'), 'utf8')).toBe('mine');
    press('ctrl+u');
    type('none/tea.json');
    press('return');
    await until(isTold(/none/));
    expect(store.get().entry?.text).toBe('none/tea.json');
    stop();
  });

  it('gives the list to type, once it is simulated', async () => {
    const folder = someFolder('tea');
    const { press, until, stop } = followed(folder);
    press('L c return');
    await until((state) => Boolean(previewNow(state)?.answer));
    press('x return');
    await until(isTold(/^wrote tea-slab\.txt: what to type, in the order of the sheet$/));
    expect(readFileSync(join(folder, 'tea-slab.txt'), 'utf8')).toMatch(
      /To type, in the order of slab:[^]*Hold /,
    );
    stop();
  });

  it('that was changed by hand gives nothing more', async () => {
    const folder = someFolder('tea');
    const { store, press, until, stop } = followed(folder);
    press('L v');
    const path = join(folder, 'shortlist/tea.yaml');
    writeFileSync(
      path,
      readFileSync(path, 'utf8').replace(/proportionalAPerDeg: \d+/, 'proportionalAPerDeg: 21'),
    );
    press('x return');
    await until((state) => state.notice?.isFault === true);
    expect(existsSync(join(folder, 'tea-card.txt'))).toBe(false);
    const faulty = store.get().shelf.problems.map(({ file }) => file);
    expect(faulty.filter((file) => file.endsWith('.yaml'))).toEqual(['shortlist/tea.yaml']);
    expect(store.get().shelf.kept.map(({ name }) => name)).toEqual(['tea']);
    press('escape x');
    expect(store.get().notice?.text).toBe('export: the file of tea is damaged');
    stop();
  });

  it('is removed after the second wish', async () => {
    const folder = someFolder('tea');
    const { store, press, until, stop } = followed(folder);
    press('L d d');
    await until(isTold(/^removed shortlist\/tea\.yaml$/));
    expect([existsSync(join(folder, 'shortlist/tea.yaml')), store.get().shelf.kept]).toEqual([false, []]);
    stop();
  });

  it('gives its place under the cursor to the one behind it', async () => {
    const { store, press, until, stop } = followed(someFolder('soup', 'tea', 'water'));
    press('L down d d');
    await until(isTold(/^removed shortlist\/tea\.yaml$/));
    expect(store.get().shortlist.cursor).toBe('water');
    press('d d');
    await until(isTold(/^removed shortlist\/water\.yaml$/));
    expect(store.get().shortlist.cursor).toBe('soup');
    stop();
  });
});
