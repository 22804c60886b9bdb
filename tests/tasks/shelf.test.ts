/**
 * Are files picked up as they change, and does a faulty one leave its last good version in use?
 */
import { mkdirSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { stringify } from 'yaml';
import { findPlaces } from '../../src/store/places.js';
import { createShelfReader, watchShelf, type Shelf } from '../../src/tasks/shelf.js';
import { validProfile } from '../quantity/valid-values.js';
import { putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';

const SLATE = 'profiles/gains/slate.yaml';

function opened() {
  const folder = workingFolder();
  const places = findPlaces(folder);
  return { folder, places, reader: createShelfReader(places) };
}

const withGain = (proportionalAPerDeg: unknown) =>
  stringify({ ...validProfile(), gains: { ...validProfile().gains, proportionalAPerDeg } });
const gainOf = (shelf: Shelf, name = 'slate') =>
  shelf.profile.find((profile) => profile.name === name)?.value.gains.proportionalAPerDeg;
const names = (shelf: Shelf) => shelf.profile.map(({ name }) => name);

describe('the shelf', () => {
  it('holds the files of every kind by name', () => {
    const { reader, folder } = opened();
    putFile(folder, 'profiles/gains/linen.yaml', withGain(30));
    const shelf = reader.read();
    expect(names(shelf)).toEqual(['linen', 'slate']);
    expect(shelf.board.map(({ name }) => name)).toEqual(['pebble']);
    expect(shelf.rider.map(({ name }) => name)).toEqual(['kim']);
    expect(shelf.scenario.map(({ name }) => name)).toEqual(['kerb']);
    expect(shelf.problems).toEqual([]);
  });

  it('is the very same one where nothing has changed', () => {
    const { reader, folder } = opened();
    const first = reader.read();
    expect(reader.read()).toBe(first);
    putFile(folder, 'profiles/gains/notes.txt', 'not a profile');
    putFile(folder, 'profiles/gains/.slate.yaml.swp', 'of an editor');
    expect(reader.read()).toBe(first);
  });

  it('reads what has changed, and keeps the rest as it was', () => {
    const { reader, folder } = opened();
    putFile(folder, 'profiles/gains/linen.yaml', withGain(30));
    const first = reader.read();
    putFile(folder, SLATE, withGain(44));
    const second = reader.read();
    expect(gainOf(second)).toBe(44);
    expect(second.profile[0]).toBe(first.profile[0]);
    expect(second.board[0]).toBe(first.board[0]);
    expect(gainOf(first)).toBe(20);
  });

  it('does not read again what has the stamp of before', () => {
    const { reader, folder } = opened();
    const path = putFile(folder, SLATE, withGain(20));
    const at = new Date(1_700_000_000_000);
    utimesSync(path, at, at);
    const first = reader.read();
    writeFileSync(path, withGain(21)); // as long as before
    utimesSync(path, at, at);
    expect(reader.read()).toBe(first);
    utimesSync(path, at, new Date(at.getTime() + 1));
    expect(gainOf(reader.read())).toBe(21);
  });

  it('sees a file that was put in the place of another, as editors do', () => {
    const { reader, folder } = opened();
    reader.read();
    renameSync(putFile(folder, 'profiles/gains/slate.yaml~', withGain(22)), join(folder, SLATE));
    expect(gainOf(reader.read())).toBe(22);
  });

  it('picks up new files and lets go of those that are gone', () => {
    const { reader, folder } = opened();
    reader.read();
    putFile(folder, 'profiles/gains/linen.yaml', withGain(30));
    rmSync(join(folder, SLATE));
    expect(names(reader.read())).toEqual(['linen']);
  });
});

describe('a file with problems', () => {
  it('tells them, and its last good version stays in use', () => {
    const { reader, folder } = opened();
    const first = reader.read();
    putFile(folder, SLATE, withGain('soft'));
    const faulty = reader.read();
    expect(faulty.problems).toMatchObject([{ file: SLATE, key: 'gains.proportionalAPerDeg' }]);
    expect(faulty.profile[0]).toBe(first.profile[0]);
    expect(reader.read()).toBe(faulty);
    putFile(folder, SLATE, 'gains: [');
    const worse = reader.read();
    expect(worse.problems).not.toEqual(faulty.problems);
    expect(worse.profile[0]).toBe(first.profile[0]);
    putFile(folder, SLATE, withGain(25));
    const mended = reader.read();
    expect(mended.problems).toEqual([]);
    expect(gainOf(mended)).toBe(25);
  });

  it('from the start has no version to be used', () => {
    const { reader, folder } = opened();
    putFile(folder, SLATE, 'gains: [');
    const shelf = reader.read();
    expect(names(shelf)).toEqual([]);
    expect(shelf.problems).toMatchObject([{ file: SLATE }]);
  });

  it('is forgotten with its good version once it is gone', () => {
    const { reader, folder } = opened();
    reader.read();
    rmSync(join(folder, SLATE));
    reader.read();
    putFile(folder, SLATE, 'gains: [');
    expect(names(reader.read())).toEqual([]);
  });

  it('may be a whole folder that is not there, or a name that is none', () => {
    const { reader, folder } = opened();
    rmSync(join(folder, 'scenarios'), { recursive: true });
    putFile(folder, 'profiles/gains/Not A Name.yaml', withGain(3));
    const shelf = reader.read();
    expect(shelf.scenario).toEqual([]);
    expect(names(shelf)).toEqual(['slate']);
    expect(shelf.problems.map(({ file }) => file)).toEqual(['profiles/gains/Not A Name.yaml', 'scenarios']);
  });
});

describe('watching', () => {
  /** Watches a folder; answers when a reading of it satisfies `isMeant`. */
  function heard({ places, reader }: ReturnType<typeof opened>, isMeant: (shelf: Shelf) => boolean) {
    return new Promise<Shelf>((resolve) => {
      const stop = watchShelf(places, () => {
        const shelf = reader.read();
        if (isMeant(shelf)) resolve(shelf);
      });
      onTestFinished(stop);
    });
  }

  it('hears of files that are written, made and removed', async () => {
    const bench = opened();
    const change = heard(
      bench,
      (shelf) => gainOf(shelf) === 33 && shelf.profile.length === 2 && shelf.rider.length === 0,
    );
    putFile(bench.folder, SLATE, withGain(33));
    putFile(bench.folder, 'profiles/gains/linen.yaml', withGain(30));
    rmSync(join(bench.folder, 'profiles/riders/kim.yaml'));
    expect(names(await change)).toEqual(['linen', 'slate']);
  });

  it('hears of a folder that was not there, and of one that was made anew', async () => {
    const bench = opened();
    rmSync(join(bench.folder, 'scenarios'), { recursive: true });
    const made = heard(bench, (shelf) => shelf.scenario.length === 0 && shelf.problems.length === 0);
    mkdirSync(join(bench.folder, 'scenarios'));
    await made;
    const anew = heard(bench, (shelf) => gainOf(shelf, 'linen') === 30);
    rmSync(join(bench.folder, 'profiles/gains'), { recursive: true });
    bench.reader.read();
    putFile(bench.folder, 'profiles/gains/linen.yaml', withGain(30));
    expect(names(await anew)).toEqual(['linen']);
  });
});
