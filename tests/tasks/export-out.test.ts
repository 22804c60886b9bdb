/**
 * Is a file that cannot or must not be written known before anything is computed, and does what the program itself reads stay as it is?
 */
import { mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findPlaces } from '../../src/store/places.js';
import { outProblems, writeOut } from '../../src/tasks/export-out.js';
import { putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';

function folderWithKept(): string {
  const folder = workingFolder();
  putFile(folder, 'shortlist/one.yaml', 'its rides\n');
  return folder;
}

const problemsOf = (folder: string, out: string, force = false) =>
  outProblems(findPlaces(folder), { out, force }).map(
    ({ file, expected, received }) => `${file}: ${expected}; ${received}`,
  );

describe('a file to write', () => {
  it('may be new, and may be there where it is forced', () => {
    const folder = folderWithKept();
    putFile(folder, 'card.txt', 'x');
    expect(problemsOf(folder, 'new.txt')).toEqual([]);
    expect(problemsOf(folder, 'card.txt', true)).toEqual([]);
    expect(problemsOf(folder, 'card.txt')).toEqual([
      'card.txt: a new file, or --force to replace one; a file that is there already',
    ]);
    expect(outProblems(findPlaces(folder), { out: null, force: false })).toEqual([]);
  });

  it('is no folder, no device, and lies in a folder', () => {
    const folder = folderWithKept();
    mkdirSync(join(folder, 'cards'));
    expect(problemsOf(folder, 'cards', true)).toEqual(['cards: a file that can be written; a folder']);
    expect(problemsOf(folder, '/dev/null', true)).toEqual([
      '/dev/null: a file that can be written; a device or a pipe',
    ]);
    expect(problemsOf(folder, 'nowhere/x.txt')).toEqual([
      'nowhere/x.txt: a path in a folder that exists; no folder nowhere',
    ]);
    expect(problemsOf(folder, '')).toEqual([': a path of a file; nothing']);
  });

  it('is never one of those that the program reads, whatever is forced, not even through a link', async () => {
    const folder = folderWithKept();
    symlinkSync('shortlist/one.yaml', join(folder, 'link.txt'));
    symlinkSync('shortlist', join(folder, 'also'));
    for (const out of [
      'shortlist/one.yaml',
      'link.txt',
      'also/one.yaml',
      'also/two.YML',
      'profiles/gains/new.yaml',
    ]) {
      expect(problemsOf(folder, out, true)).toEqual([expect.stringContaining(': a file elsewhere')]);
      expect((await writeOut(findPlaces(folder), { out, force: true }, 'a card')).ok).toBe(false);
    }
    expect(readFileSync(join(folder, 'shortlist/one.yaml'), 'utf8')).toBe('its rides\n');
    // A card beside them is no file of theirs.
    expect(problemsOf(folder, 'shortlist/one.txt')).toEqual([]);
  });
});
