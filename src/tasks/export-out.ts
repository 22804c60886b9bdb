/**
 * May a text go into this file? Asked before anything is computed, so that nobody waits for what cannot be written; and what the
 * program itself reads, such as a kept profile with its rides, is never written over by something else.
 */
import { accessSync, constants, lstatSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { FILE_KINDS } from '../quantity/file-kind.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { folderOf, isFolder, shownPath, type Places } from '../store/places.js';
import { fileProblem, systemFault } from '../store/system-fault.js';
import { writeNewFile } from '../store/write-new-file.js';

/** A file to write: its path as it was given, and whether one that is there is replaced. */
export interface OutFile {
  out: string;
  force: boolean;
}

/** Columns of a text in a file, which is to be printed. */
export const FILE_WIDTH = 80;

const WRITABLE = 'a file that can be written';

/** What speaks against writing this file as things stand; null for `out` is the standard output, against which nothing does. */
export function outProblems(
  places: Places,
  { out, force }: { out: string | null; force: boolean },
): Problem[] {
  if (out === null) return [];
  if (out === '') return [{ ...fileProblem('', 'a path of a file', 'nothing'), key: 'out' }];
  const path = resolve(places.currentFolder, out);
  const shown = shownPath(places, path);
  const problem = (expected: string, received: string) => [fileProblem(shown, expected, received)];
  const folder = dirname(path);
  try {
    if (!isFolder(folder)) {
      return problem('a path in a folder that exists', `no folder ${shownPath(places, folder)}`);
    }
    const target = statSync(path, { throwIfNoEntry: false });
    if (target?.isDirectory()) return problem(WRITABLE, 'a folder');
    if (target !== undefined && !target.isFile()) return problem(WRITABLE, 'a device or a pipe');
    if (isOfWorkingFolder(places, path)) {
      const expected = 'a file elsewhere: what lies in this folder is read as a file of its kind';
      return problem(expected, shownPath(places, realOf(path)));
    }
    const isThere = lstatSync(path, { throwIfNoEntry: false }) !== undefined;
    if (isThere && !force)
      return problem('a new file, or --force to replace one', 'a file that is there already');
    accessSync(target === undefined ? folder : path, constants.W_OK);
    return [];
  } catch (error) {
    return [systemFault(shown, WRITABLE, error)];
  }
}

/** A YAML file in a folder of the working folder that the program reads, also by way of a link. */
function isOfWorkingFolder(places: Places, path: string): boolean {
  const real = realOf(path);
  const isYaml = /^\.ya?ml$/i.test(extname(real));
  return isYaml && FILE_KINDS.some((kind) => realOf(folderOf(places, kind)) === dirname(real));
}

/** A path without links, as far as there is something. */
function realOf(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    const folder = dirname(path);
    return folder === path ? path : join(realOf(folder), basename(path));
  }
}

/** Writes a text into a file, whole or not at all; answers its path as shown, or every problem. */
export async function writeOut(
  places: Places,
  { out, force }: OutFile,
  text: string,
): Promise<Checked<string, Problem>> {
  // Anything may have come in the meantime.
  const problems = outProblems(places, { out, force });
  if (problems.length > 0) return { ok: false, faults: problems };
  const path = resolve(places.currentFolder, out);
  const shown = shownPath(places, path);
  const written = await writeNewFile(path, text, { force });
  if (written.ok) return { ok: true, value: shown };
  return { ok: false, faults: written.faults.map((fault) => ({ ...fault, file: shown })) };
}
