/** Does the shelf tell of a kept profile that was changed by hand, and keep its last whole version? */
import { readFileSync, writeFileSync } from 'node:fs';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { createShelfReader } from '../../src/tasks/shelf.js';
import { tempFolder } from '../store/temp-folder.js';
import { keptFixture, putKept } from './kept-fixture.js';

function someShelf() {
  const folder = tempFolder();
  mkdirSync(join(folder, 'profiles'));
  const path = putKept(folder, 'tea', keptFixture());
  const reader = createShelfReader({ workingFolder: folder, currentFolder: folder, isStarterSet: false });
  const read = () => {
    const { kept, problems } = reader.read();
    return { kept, problems: problems.filter(({ file }) => file.endsWith('.yaml')) };
  };
  return { path, read };
}

const change = (path: string, from: RegExp, to: string) => {
  const text = readFileSync(path, 'utf8').replace(from, to);
  writeFileSync(path, text);
};

it('takes a whole one, and one whose note was changed', () => {
  const { path, read } = someShelf();
  expect(read()).toMatchObject({ kept: [{ name: 'tea' }], problems: [] });
  change(path, /note: .*/, 'note: mine, and longer than before');
  expect(read()).toMatchObject({ kept: [{ value: { note: 'mine, and longer than before' } }], problems: [] });
});

it.each([
  ['a number of the profile', /proportionalAPerDeg: [\d.]+/, 'proportionalAPerDeg: 11.25', 'profile'],
  ['a figure', /score: [\d.]+/, 'score: 0.12345', 'seal'],
])('tells of %s changed by hand, and keeps what was proven', (_, from, to, key) => {
  const { path, read } = someShelf();
  const [before] = read().kept;
  change(path, from, to);
  const { kept, problems } = read();
  expect(kept).toEqual([before]);
  expect(problems).toMatchObject([{ file: 'shortlist/tea.yaml', key }]);
});

it('has none where it was changed before it was first read', () => {
  const { path, read } = someShelf();
  change(path, /score: [\d.]+/, 'score: 0.12345');
  expect(read()).toMatchObject({ kept: [], problems: [{ key: 'seal' }] });
});
