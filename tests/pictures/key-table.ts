/**
 * Writes the table of keys into the README, from the map that the bench obeys.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { programFolder } from '../../src/store/places.js';
import { keyTable } from '../../src/tui/bench/key-list.js';

const path = join(programFolder(), 'README.md');
const readme = readFileSync(path, 'utf8');
const [before, rest] = readme.split('<!-- keys -->');
const after = rest?.split('<!-- /keys -->')[1];
if (before === undefined || after === undefined) throw new Error('README.md has no place for the keys');
writeFileSync(path, `${before}<!-- keys -->\n\n${keyTable()}\n\n<!-- /keys -->${after}`);
