/**
 * How does a person get a folder of his own with the starter set in it?
 */
import { resolve } from 'node:path';
import type { Checked, Problem } from '../quantity/problem.js';
import { programFolder } from '../store/places.js';
import { copyStarterSet } from '../store/starter-set.js';

/**
 * Copies the starter set that comes with the program to `folder` (from the current one). Answers
 * the paths written, below that folder, or every problem; nothing is written when there is one.
 */
export function startFolder(
  currentFolder: string,
  folder: string,
  { force }: { force: boolean },
): Checked<string[], Problem> {
  const toFolder = resolve(currentFolder, folder);
  return copyStarterSet({ fromFolder: programFolder(), toFolder, currentFolder, force });
}
