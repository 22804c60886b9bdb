/**
 * Does the starter set arrive whole or not at all, and is nothing of a person's own ever lost?
 */
import { chmodSync, mkdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { copyStarterSet, starterFiles } from '../../src/store/starter-set.js';
import { allPaths, putFile, tempFolder } from './temp-folder.js';
import { workingFolder } from './working-folder.js';

const FILES = [
  'profiles/boards/pebble.yaml',
  'profiles/riders/kim.yaml',
  'profiles/gains/slate.yaml',
  'scenarios/kerb.yaml',
  'profiles/sheets/dial.yaml',
  'profiles/schema/board.schema.json',
];

function source(): string {
  const folder = workingFolder();
  putFile(folder, 'profiles/schema/board.schema.json', '{}');
  putFile(folder, 'profiles/sheets/dial.yaml', 'a sheet');
  putFile(folder, 'shortlist/mine.yaml', 'kept: no part of it');
  putFile(folder, 'profiles/gains/.hidden.yaml', '');
  putFile(folder, 'profiles/gains/notes.txt', '');
  return folder;
}

function copy(fromFolder: string, toFolder: string, force = false) {
  return copyStarterSet({ fromFolder, toFolder, currentFolder: toFolder, force });
}

it('consists of boards, riders, profiles, scenarios, sheets and schemas', () => {
  expect(starterFiles(source())).toEqual(FILES);
});

describe('a copy', () => {
  it('arrives in a folder that is not there yet, byte for byte, and leaves nothing else', () => {
    const from = source();
    const to = join(tempFolder(), 'a', 'b');
    expect(copy(from, to)).toEqual({ ok: true, value: FILES });
    for (const file of FILES) expect(readFileSync(join(to, file))).toEqual(readFileSync(join(from, file)));
    const files = allPaths(to).filter((path) => /\.\w+$/.test(path));
    expect(files).toEqual(FILES.toSorted());
  });

  it('arrives beside other files', () => {
    const to = tempFolder();
    putFile(to, 'profiles/gains/mine.yaml', 'mine');
    expect(copy(source(), to)).toMatchObject({ ok: true });
    expect(readFileSync(join(to, 'profiles/gains/mine.yaml'), 'utf8')).toBe('mine');
  });

  it('is refused when files are there already: every one is told, nothing is written', () => {
    const to = tempFolder();
    putFile(to, 'profiles/gains/slate.yaml', 'mine');
    putFile(to, 'scenarios/kerb.yaml', 'mine');
    const before = allPaths(to);
    const result = copy(source(), to);
    expect(result).toMatchObject({
      ok: false,
      faults: [{ file: 'profiles/gains/slate.yaml' }, { file: 'scenarios/kerb.yaml' }],
    });
    expect(allPaths(to)).toEqual(before);
    expect(readFileSync(join(to, 'scenarios/kerb.yaml'), 'utf8')).toBe('mine');
  });

  it('replaces files when forced', () => {
    const from = source();
    const to = tempFolder();
    putFile(to, 'profiles/gains/slate.yaml', 'mine');
    expect(copy(from, to, true)).toMatchObject({ ok: true });
    expect(readFileSync(join(to, 'profiles/gains/slate.yaml'))).toEqual(
      readFileSync(join(from, 'profiles/gains/slate.yaml')),
    );
    expect(allPaths(to).filter((path) => path.startsWith('.'))).toEqual([]);
  });

  it('a dangling link counts as a file that is there', () => {
    const to = tempFolder();
    mkdirSync(join(to, 'scenarios'));
    symlinkSync(join(to, 'nowhere'), join(to, 'scenarios/kerb.yaml'));
    expect(copy(source(), to)).toMatchObject({ ok: false, faults: [{ file: 'scenarios/kerb.yaml' }] });
  });
});

describe('a place that cannot be', () => {
  it.each([false, true])('a file where a folder is needed (forced: %s)', (force) => {
    const to = tempFolder();
    putFile(to, 'profiles', 'a file');
    expect(copy(source(), to, force)).toMatchObject({
      ok: false,
      faults: [{ file: 'profiles', received: 'a file' }],
    });
    expect(allPaths(to)).toEqual(['profiles']);
  });

  it('below a file', () => {
    const to = join(putFile(tempFolder(), 'file', ''), 'below');
    expect(copy(source(), to)).toMatchObject({
      ok: false,
      faults: [{ expected: 'a folder that can be written' }],
    });
  });

  it('a folder where a file belongs, forced', () => {
    const to = tempFolder();
    mkdirSync(join(to, 'scenarios/kerb.yaml'), { recursive: true });
    expect(copy(source(), to, true)).toMatchObject({
      ok: false,
      faults: [{ file: 'scenarios/kerb.yaml', received: 'a folder' }],
    });
  });

  it("the program's own folder, forced", () => {
    const from = source();
    expect(copy(from, from, true)).toMatchObject({
      ok: false,
      faults: [{ received: "the program's own folder" }],
    });
  });
});

it('a copy that fails half way leaves everything as it was', () => {
  const from = source();
  const to = tempFolder();
  putFile(to, 'profiles/boards/pebble.yaml', 'mine');
  const before = allPaths(to);
  rmSync(join(from, 'scenarios/kerb.yaml'));
  symlinkSync(join(from, 'nowhere'), join(from, 'scenarios/kerb.yaml'));
  expect(copy(from, to, true)).toMatchObject({ ok: false });
  expect(allPaths(to)).toEqual(before);
  expect(readFileSync(join(to, 'profiles/boards/pebble.yaml'), 'utf8')).toBe('mine');
});

it.skipIf(process.getuid?.() === 0)('a move that fails half way is taken back', () => {
  const to = tempFolder();
  putFile(to, 'profiles/boards/pebble.yaml', 'mine');
  mkdirSync(join(to, 'scenarios'));
  chmodSync(join(to, 'scenarios'), 0o555);
  const before = allPaths(to);
  expect(copy(source(), to, true)).toMatchObject({ ok: false, faults: [{ received: 'no permission' }] });
  chmodSync(join(to, 'scenarios'), 0o755);
  expect(allPaths(to)).toEqual(before);
  expect(readFileSync(join(to, 'profiles/boards/pebble.yaml'), 'utf8')).toBe('mine');
});
