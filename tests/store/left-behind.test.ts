/**
 * Is what a killed run leaves beside a journal found, and nothing else?
 */
import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { leftBehind } from '../../src/store/left-behind.js';
import { putFile, tempFolder } from './temp-folder.js';

it('files with its name, a dot and a number that begin as it does, whole or cut off', () => {
  const folder = tempFolder();
  const path = putFile(folder, 'kept', 'head\n1\n');
  const ours = [
    ['kept.12', 'head\n2\n'],
    ['kept.3', 'hea'],
    ['kept.4', ''],
  ].map(([name, text]) => putFile(folder, name!, text!));
  putFile(folder, 'kept.5', 'heads\n');
  putFile(folder, 'kept.6', 'my notes');
  putFile(folder, 'kept.old', 'head\n');
  putFile(folder, 'kept.7.gz', 'head\n');
  putFile(folder, 'keptx.8', 'head\n');
  mkdirSync(join(folder, 'kept.9'));
  expect(leftBehind(path, 'head')).toEqual(ours);
  const elsewhere = tempFolder();
  symlinkSync(path, join(elsewhere, 'link'));
  expect(leftBehind(join(elsewhere, 'link'), 'head')).toEqual(ours);
});

it('nothing where there is no folder', () => {
  expect(leftBehind(join(tempFolder(), 'none', 'kept'), 'head')).toEqual([]);
});
