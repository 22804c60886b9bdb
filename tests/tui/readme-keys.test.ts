/**
 * Does the README name the keys that the bench obeys?
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { programFolder } from '../../src/store/places.js';
import { keyTable } from '../../src/tui/bench/key-list.js';

/** Rows without the padding that a formatter puts into a table. */
const rowsOf = (text: string) =>
  text
    .split('\n')
    .map((line) => line.replace(/ +/g, ' ').replace(/-+/g, '-').trim())
    .filter((line) => line.startsWith('|'));

it('has the table of keys that `npm run pictures` makes', () => {
  const readme = readFileSync(join(programFolder(), 'README.md'), 'utf8');
  const written = /<!-- keys -->([^]*)<!-- \/keys -->/.exec(readme)?.[1] ?? '';
  expect(rowsOf(written)).toEqual(rowsOf(keyTable()));
  expect(rowsOf(written).length).toBeGreaterThan(60);
});
