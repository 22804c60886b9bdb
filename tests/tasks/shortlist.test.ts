/**
 * Are kept profiles written whole or not at all, never over one that is not whole, and annotated without a touch of anything else?
 */
import {
  chmodSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  readlinkSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { KeptFile } from '../../src/quantity/kept-file.js';
import { keptOfText } from '../../src/store/kept-text.js';
import { findPlaces } from '../../src/store/places.js';
import { keepPlanFor } from '../../src/tasks/keep.js';
import { weightsWith } from '../../src/measure/scales.js';
import { dayOf, noteKept } from '../../src/tasks/shortlist-note.js';
import {
  addingObstacles,
  addToShortlist,
  removeKept,
  shortlist,
  writeKept,
  type ToKeep,
} from '../../src/tasks/shortlist.js';
import { allPaths, putFile, tempFolder } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { keptFixture, putKept } from './kept-fixture.js';

const RIDE = { on: '2026-06-01', note: 'Nervous', felt: { twitchy: 4 } };
const isRoot = process.getuid?.() === 0;

const asked = (changes: Partial<ToKeep> = {}): ToKeep => ({
  name: 'one',
  note: null,
  force: false,
  ...changes,
});

function write(folder: string, changes: Partial<ToKeep> = {}, kept: KeptFile = keptFixture()) {
  return writeKept(findPlaces(folder), asked(changes), kept);
}

const textAt = (folder: string, name = 'one') => readFileSync(join(folder, `shortlist/${name}.yaml`), 'utf8');

function keptAt(folder: string, name = 'one'): KeptFile {
  const kept = keptOfText(textAt(folder, name), name);
  if (!kept.ok) throw new Error(JSON.stringify(kept.faults));
  return kept.value;
}

/** Changes a proven number in a file, as a hand would. */
function changeByHand(path: string): string {
  const text = readFileSync(path, 'utf8').replace('score: 0.7312', 'score: 0.1');
  writeFileSync(path, text);
  return text;
}

describe('keeping', () => {
  it('makes the folder and writes a whole file that reads back', async () => {
    const folder = workingFolder();
    expect(await write(folder, { note: 'a: b' })).toMatchObject({
      ok: true,
      value: { name: 'one', path: 'shortlist/one.yaml', replaced: null },
    });
    expect(keptAt(folder)).toEqual(keptFixture({ note: 'a: b' }));
    expect(allPaths(join(folder, 'shortlist'))).toEqual(['one.yaml']);
    expect(shortlist(findPlaces(folder))).toMatchObject({ kept: [{ name: 'one' }], problems: [] });
  });

  it('never writes over a file unless forced', async () => {
    const folder = workingFolder();
    putKept(folder, 'one');
    const before = textAt(folder);
    expect(await write(folder)).toMatchObject({
      ok: false,
      faults: [{ file: 'shortlist/one.yaml', expected: expect.stringContaining('--force') }],
    });
    expect(textAt(folder)).toBe(before);
  });

  it('when forced keeps the rides, and the note where there is no new one', async () => {
    const folder = workingFolder();
    putKept(folder, 'one', keptFixture({ note: 'mine', rides: [RIDE] }));
    const proven = keptFixture({ weakest: [] });
    expect(await write(folder, { force: true }, proven)).toMatchObject({
      ok: true,
      value: { replaced: { note: 'mine' } },
    });
    expect(keptAt(folder)).toEqual({ ...proven, note: 'mine', rides: [RIDE] });
    await write(folder, { force: true, note: 'new' }, proven);
    expect(keptAt(folder)).toEqual({ ...proven, note: 'new', rides: [RIDE] });
  });

  it.each([
    ['changed by hand', (path: string) => changeByHand(path)],
    ['half a file', (path: string) => writeFileSync(path, readFileSync(path, 'utf8').slice(0, 900))],
    ['no YAML', (path: string) => writeFileSync(path, 'note: [\n')],
    ['empty', (path: string) => writeFileSync(path, '')],
    ['binary', (path: string) => writeFileSync(path, Buffer.from([0, 1, 2]))],
  ])('never writes over a file that is %s, nor takes it away unforced', async (_, damage) => {
    const folder = workingFolder();
    const path = putKept(folder, 'one');
    damage(path);
    const before = readFileSync(path);
    for (const force of [false, true]) {
      const written = await write(folder, { force });
      expect(written).toMatchObject({ ok: false });
      if (!written.ok) expect(written.faults.every(({ file }) => file === 'shortlist/one.yaml')).toBe(true);
    }
    const listed = shortlist(findPlaces(folder));
    expect([listed.kept, new Set(listed.problems.map(({ file }) => file))]).toEqual([
      [],
      new Set(['shortlist/one.yaml']),
    ]);
    const kept = removeKept(findPlaces(folder), { name: 'one', force: false });
    expect(kept).toMatchObject({ ok: false });
    if (!kept.ok) expect(kept.faults.at(-1)?.expected).toContain('--force');
    expect(readFileSync(path).equals(before)).toBe(true);
    expect(removeKept(findPlaces(folder), { name: 'one', force: true })).toEqual({
      ok: true,
      value: 'shortlist/one.yaml',
    });
    expect(allPaths(join(folder, 'shortlist'))).toEqual([]);
  });

  it.each(['', '..', '../x', 'One', 'a b', '-x', 'x'.repeat(41), 'x.yaml', 'con/1'])(
    'refuses the name %j',
    async (name) => {
      const folder = workingFolder();
      const before = allPaths(folder);
      const places = findPlaces(folder);
      for (const answer of [
        await write(folder, { name }),
        await noteKept(places, { name, note: 'x', ride: null }),
        removeKept(places, { name, force: true }),
      ]) {
        expect(answer).toMatchObject({ ok: false, faults: [{ key: 'name' }] });
      }
      expect(allPaths(folder)).toEqual(before);
    },
  );

  it('writes nothing in the starter set, and says how to have a folder', async () => {
    const places = findPlaces(tempFolder());
    const fault = { expected: expect.stringContaining('underfoot init') };
    expect(addingObstacles(places, asked({ name: 'No' }))).toMatchObject([fault, { key: 'name' }]);
    expect(await writeKept(places, asked(), keptFixture())).toMatchObject({ ok: false, faults: [fault] });
    expect(await noteKept(places, { name: 'one', note: 'x', ride: null })).toMatchObject({
      ok: false,
      faults: [fault],
    });
    expect(removeKept(places, { name: 'one', force: true })).toMatchObject({ ok: false, faults: [fault] });
    expect(lstatSync(join(places.workingFolder, 'shortlist'), { throwIfNoEntry: false })).toBeUndefined();
  });

  it.each([
    ['a file', (folder: string) => putFile(folder, 'shortlist', 'mine')],
    ['a link to nowhere', (folder: string) => symlinkSync('nowhere', join(folder, 'shortlist'))],
  ])('says so where the folder is %s', async (_, put) => {
    const folder = workingFolder();
    put(folder);
    expect(await write(folder)).toMatchObject({ ok: false, faults: [{ file: 'shortlist' }] });
    const places = findPlaces(folder);
    expect(await noteKept(places, { name: 'one', note: 'x', ride: null })).toMatchObject({ ok: false });
    expect(removeKept(places, { name: 'one', force: true })).toMatchObject({ ok: false });
    expect(lstatSync(join(folder, 'shortlist')).isDirectory()).toBe(false);
  });

  it('writes through no link to nowhere, and neither over a folder', async () => {
    const folder = workingFolder();
    mkdirSync(join(folder, 'shortlist/two.yaml'), { recursive: true });
    symlinkSync('../gone.yaml', join(folder, 'shortlist/one.yaml'));
    for (const name of ['one', 'two']) {
      for (const force of [false, true])
        expect(await write(folder, { name, force })).toMatchObject({ ok: false });
    }
    expect(allPaths(folder)).not.toContain('gone.yaml');
    expect(removeKept(findPlaces(folder), { name: 'two', force: true })).toMatchObject({ ok: false });
    expect(readlinkSync(join(folder, 'shortlist/one.yaml'))).toBe('../gone.yaml');
  });

  it.skipIf(isRoot)('tells of a folder that cannot be written, before anything is computed', () => {
    const folder = workingFolder();
    putKept(folder, 'one');
    chmodSync(join(folder, 'shortlist'), 0o555);
    expect(addingObstacles(findPlaces(folder), asked({ name: 'two' }))).toMatchObject([
      { received: 'no permission' },
    ]);
    expect(removeKept(findPlaces(folder), { name: 'one', force: false })).toMatchObject({ ok: false });
    chmodSync(join(folder, 'shortlist'), 0o755);
  });

  it('tells of words that no file can hold', () => {
    const places = findPlaces(workingFolder());
    for (const note of ['x'.repeat(601), 'a\u0007', 'a\ud800', '\u200b']) {
      expect(addingObstacles(places, asked({ note }))).toMatchObject([{ key: 'note' }]);
    }
    expect(addingObstacles(places, asked({ note: 'two\nlines: #1' }))).toEqual([]);
  });
});

describe('a note', () => {
  it('of a file changed by hand is written, nothing else is touched, and the damage is told', async () => {
    const folder = workingFolder();
    const path = putKept(folder, 'one', keptFixture({ note: 'was' }));
    const text = changeByHand(path);
    const noted = await noteKept(findPlaces(folder), { name: 'one', note: 'is', ride: null });
    expect(noted).toMatchObject({ ok: true, value: { noteBefore: 'was', damage: [{ key: 'seal' }] } });
    expect(textAt(folder)).toBe(text.replace('note: was', 'note: is'));
  });

  it('and a ride stay whole with the seal', async () => {
    const folder = workingFolder();
    putKept(folder, 'one');
    const places = findPlaces(folder);
    expect(await noteKept(places, { name: 'one', note: 'x', ride: RIDE })).toMatchObject({
      ok: true,
      value: { damage: [] },
    });
    expect(await noteKept(places, { name: 'one', note: null, ride: RIDE })).toMatchObject({ ok: true });
    expect(shortlist(places)).toMatchObject({
      kept: [{ value: { note: 'x', rides: [RIDE, RIDE] } }],
      problems: [],
    });
  });

  it('goes through a link to the file, and keeps its mode and the mark of an editor', async () => {
    const folder = workingFolder();
    const path = putKept(folder, 'one', keptFixture({ note: 'was' }));
    const text = readFileSync(path, 'utf8');
    const elsewhere = join(folder, 'elsewhere.yaml');
    renameSync(path, elsewhere);
    writeFileSync(elsewhere, `\uFEFF${text}`);
    chmodSync(elsewhere, 0o640);
    symlinkSync('../elsewhere.yaml', path);
    expect(await noteKept(findPlaces(folder), { name: 'one', note: 'is', ride: null })).toMatchObject({
      ok: true,
    });
    expect(readFileSync(elsewhere, 'utf8')).toBe(`\uFEFF${text.replace('note: was', 'note: is')}`);
    expect([lstatSync(path).isSymbolicLink(), lstatSync(elsewhere).mode & 0o777]).toEqual([true, 0o640]);
  });

  it.each([
    ['a day that has not come', { note: null, ride: { ...RIDE, on: '2999-01-01' } }, 'on'],
    ['a day that is none', { note: null, ride: { ...RIDE, on: '2026-02-30' } }, 'on'],
    ['a ride without a word', { note: null, ride: { ...RIDE, note: '', felt: {} } }, 'note'],
    ['words too long', { note: 'x'.repeat(601), ride: null }, 'note'],
  ])('is refused for %s', async (_, words, key) => {
    const folder = workingFolder();
    putKept(folder, 'one');
    const before = textAt(folder);
    expect(await noteKept(findPlaces(folder), { name: 'one', ...words })).toMatchObject({
      ok: false,
      faults: [{ key }],
    });
    expect(textAt(folder)).toBe(before);
  });

  it('of what is not kept, or not readable, is refused with the way to keep it', async () => {
    const folder = workingFolder();
    const places = findPlaces(folder);
    expect(await noteKept(places, { name: 'one', note: 'x', ride: null })).toMatchObject({
      ok: false,
      faults: [{ expected: expect.stringContaining('shortlist add') }],
    });
    expect(removeKept(places, { name: 'one', force: true })).toMatchObject({ ok: false });
    const path = putFile(folder, 'shortlist/one.yaml', 'note: [\n');
    expect(await noteKept(places, { name: 'one', note: 'x', ride: null })).toMatchObject({ ok: false });
    expect(readFileSync(path, 'utf8')).toBe('note: [\n');
  });

  it('is dated by the day of the place', () => {
    expect(dayOf(new Date(2026, 4, 3, 23, 59))).toBe('2026-05-03');
  });
});

describe('removing', () => {
  it('takes the file and nothing else', () => {
    const folder = workingFolder();
    putKept(folder, 'one');
    putKept(folder, 'two');
    expect(removeKept(findPlaces(folder), { name: 'one', force: false })).toEqual({
      ok: true,
      value: 'shortlist/one.yaml',
    });
    expect(allPaths(join(folder, 'shortlist'))).toEqual(['two.yaml']);
  });
});

describe('adding', () => {
  const planIn = (folder: string) => {
    const cells = { board: undefined, riders: null, scenarios: null, charges: [null], seeds: [1] };
    const plan = keepPlanFor(findPlaces(folder), { profile: 'slate', ...cells, weights: weightsWith() });
    if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
    return plan.value;
  };

  it('proves first, and writes nothing where it is stopped', async () => {
    const folder = workingFolder();
    const before = allPaths(folder);
    const stop = new AbortController();
    const options = { threads: 1, signal: stop.signal, onProgress: () => stop.abort(new Error('enough')) };
    await expect(
      addToShortlist(findPlaces(folder), { ...asked(), plan: planIn(folder) }, options),
    ).rejects.toThrow('enough');
    expect(allPaths(folder)).toEqual(before);
  });

  it('computes nothing where it could not be kept', async () => {
    const folder = workingFolder();
    putKept(folder, 'one');
    const news: unknown[] = [];
    const options = { threads: 1, onProgress: (one: unknown) => void news.push(one) };
    const added = await addToShortlist(findPlaces(folder), { ...asked(), plan: planIn(folder) }, options);
    expect([added.ok, news]).toEqual([false, []]);
    rmSync(join(folder, 'shortlist'), { recursive: true });
  });
});
