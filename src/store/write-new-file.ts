/**
 * How is a result written without spoiling anything? Whole or not at all, and over an existing file
 * only when that was asked for.
 */
import { lstatSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import type { Checked, Problem } from '../quantity/problem.js';
import { isFolder } from './places.js';
import { fileProblem, systemFault } from './system-fault.js';

const EXPECTED = 'a file that can be written';

/** True replaces a file that is there; null does not, and where it is asked for no way to force it is there. */
export type Force = boolean | null;

/** The problem with writing to this path as things stand, or null. */
function obstacle(path: string, force: Force): Problem | null {
  if (!isFolder(dirname(path))) {
    return fileProblem(path, 'a path in a folder that exists', `no folder ${dirname(path)}`);
  }
  if (lstatSync(path, { throwIfNoEntry: false }) === undefined) return null;
  const target = statSync(path, { throwIfNoEntry: false });
  if (target?.isDirectory()) return fileProblem(path, EXPECTED, 'a folder');
  if (target !== undefined && !target.isFile()) return fileProblem(path, EXPECTED, 'a device or a pipe');
  if (force) return null;
  const expected = force === null ? 'a new file' : 'a new file, or --force to replace one';
  return fileProblem(path, expected, 'a file that is there already');
}

/**
 * Writes the text to `path`, whole or not at all; refuses an existing file unless `force`, and
 * folders and devices always. Answers the path written, or the problem.
 */
export async function writeNewFile(
  path: string,
  text: string,
  { force }: { force: Force },
): Promise<Checked<string, Problem>> {
  try {
    const problem = obstacle(path, force);
    if (problem !== null) return { ok: false, faults: [problem] };
    await writeFileAtomic(path, text);
    return { ok: true, value: path };
  } catch (error) {
    return { ok: false, faults: [systemFault(path, EXPECTED, error)] };
  }
}
