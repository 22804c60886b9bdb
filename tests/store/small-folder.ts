/**
 * A working folder made by `init`, with so few files that it is ranked soon.
 */
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { startFolder } from '../../src/tasks/start-folder.js';
import { tempFolder } from './temp-folder.js';

const KEPT = {
  'profiles/gains': ['felt.yaml', 'linen.yaml', 'tweed.yaml'],
  scenarios: ['kerb-drop.yaml', 'shove.yaml'],
};

/** Makes the folder, with three profiles and two scenarios; it is removed when the running test is finished. */
export function smallFolder(): string {
  const folder = tempFolder();
  startFolder(folder, '.', { force: false });
  for (const [below, kept] of Object.entries(KEPT)) {
    const others = readdirSync(join(folder, below)).filter((file) => !kept.includes(file));
    for (const file of others) rmSync(join(folder, below, file), { recursive: true });
  }
  return folder;
}
