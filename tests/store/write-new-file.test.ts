/**
 * Is a file written whole, and never over another one unless that was asked for?
 */
import { mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { systemFault } from '../../src/store/system-fault.js';
import { writeNewFile } from '../../src/store/write-new-file.js';
import { allPaths, putFile, tempFolder } from './temp-folder.js';

const asked = { force: true };
const notAsked = { force: false };

describe('a new file', () => {
  it('is written whole, with nothing beside it', async () => {
    const folder = tempFolder();
    const path = join(folder, 'run.csv');
    const text = 'é\n'.repeat(100_000);
    expect(await writeNewFile(path, text, notAsked)).toEqual({ ok: true, value: path });
    expect(readFileSync(path, 'utf8')).toBe(text);
    expect(allPaths(folder)).toEqual(['run.csv']);
  });

  it('is not written over another one', async () => {
    const path = putFile(tempFolder(), 'run.csv', 'mine');
    expect(await writeNewFile(path, 'new', notAsked)).toMatchObject({
      ok: false,
      faults: [
        {
          file: path,
          expected: 'a new file, or --force to replace one',
          received: 'a file that is there already',
        },
      ],
    });
    expect(readFileSync(path, 'utf8')).toBe('mine');
  });

  it('is written over another one when forced', async () => {
    const path = putFile(tempFolder(), 'run.csv', 'mine');
    expect(await writeNewFile(path, 'new', asked)).toEqual({ ok: true, value: path });
    expect(readFileSync(path, 'utf8')).toBe('new');
  });

  it('is not written through a dangling link', async () => {
    const path = join(tempFolder(), 'link.csv');
    symlinkSync(`${path}.target`, path);
    expect(await writeNewFile(path, 'new', notAsked)).toMatchObject({ ok: false });
  });
});

describe('a place that cannot be written', () => {
  it('a folder, even when forced', async () => {
    const path = join(tempFolder(), 'folder');
    mkdirSync(path);
    expect(await writeNewFile(path, 'new', asked)).toMatchObject({
      ok: false,
      faults: [{ received: 'a folder' }],
    });
  });

  it('a device, even when forced', async () => {
    expect(await writeNewFile('/dev/null', 'new', asked)).toMatchObject({
      ok: false,
      faults: [{ received: 'a device or a pipe' }],
    });
  });

  it('a folder that is not there', async () => {
    const path = join(tempFolder(), 'none', 'run.csv');
    expect(await writeNewFile(path, 'new', asked)).toMatchObject({
      ok: false,
      faults: [{ file: path, received: expect.stringContaining('no folder') }],
    });
  });

  it('a name that is too long for the system', async () => {
    const path = join(tempFolder(), 'x'.repeat(300));
    expect(await writeNewFile(path, 'new', asked)).toMatchObject({
      ok: false,
      faults: [{ received: 'a name that is too long' }],
    });
  });
});

describe("the system's errors", () => {
  const systemError = (code: string) => Object.assign(new Error('from the system'), { code });

  it.each([
    ['EACCES', 'no permission'],
    ['EROFS', 'a disk that can only be read'],
    ['ENOSPC', 'no space left on the disk'],
    ['EISDIR', 'a folder'],
    ['ENOENT', 'nothing there'],
    ['EWHATEVER', "the system's error EWHATEVER"],
  ])('%s is put into words', (code, received) => {
    expect(systemFault('a.csv', 'a file', systemError(code))).toMatchObject({
      file: 'a.csv',
      expected: 'a file',
      received,
    });
  });

  it('an error of our own is thrown again', () => {
    expect(() => systemFault('a.csv', 'a file', new TypeError('a bug'))).toThrow('a bug');
  });
});
