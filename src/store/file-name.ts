/**
 * What name does a file give to what it holds? The file name without `.yaml`, which must be a name:
 * lower-case letters, digits and hyphens.
 */
import { basename } from 'node:path';
import { isName } from '../quantity/field.js';
import type { Problem } from '../quantity/problem.js';
import { quoted } from '../quantity/received.js';
import { fileProblem } from './system-fault.js';

const EXTENSION = '.yaml';

/** True for a file name that a person would take for YAML: .yaml, .yml, in any case; hidden files are none. */
export function looksLikeYaml(fileName: string): boolean {
  return /\.ya?ml$/i.test(fileName) && !fileName.startsWith('.');
}

/** The name of what the file at `path` holds. */
export function nameOfFile(path: string): string {
  return basename(path, EXTENSION);
}

/** The problem with a file name that gives no name, or null. */
export function fileNameProblem(path: string, shown: string): Problem | null {
  const fileName = basename(path);
  if (fileName.endsWith(EXTENSION) && isName(nameOfFile(path))) return null;
  const expected = 'a file name of at most 40 lower-case letters, digits and hyphens, then .yaml';
  return fileProblem(shown, expected, quoted(fileName));
}
