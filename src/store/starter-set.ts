/**
 * How does a person get a folder of his own? Copies of the starter boards, riders, profiles,
 * scenarios and schemas. All conflicts are told at once; either every file arrives or none.
 */
import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { FILE_KINDS } from '../quantity/file-kind.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { isFolder, KIND_FOLDER_OF, SCHEMA_FOLDER, shownPath } from './places.js';
import { fileProblem, systemFault } from './system-fault.js';

/** What to copy where; folders are absolute. `force` replaces files that are there already. */
export interface StarterCopy {
  fromFolder: string;
  toFolder: string;
  currentFolder: string;
  force: boolean;
}

const EXPECTED = 'a folder that can be written';
/** What is kept is a rider's own: the starter set has none of it. */
const STARTER_KINDS = FILE_KINDS.filter((kind) => kind !== 'kept');
const FOLDERS = [...STARTER_KINDS.map((kind) => KIND_FOLDER_OF[kind]), SCHEMA_FOLDER];

/** Paths of the starter set below its folder. */
export function starterFiles(fromFolder: string): string[] {
  return FOLDERS.flatMap((folder) =>
    readdirSync(join(fromFolder, folder))
      .filter((fileName) => /^[^.].*\.(yaml|json)$/.test(fileName))
      .toSorted()
      .map((fileName) => `${folder}/${fileName}`),
  );
}

function standsAt(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false }) !== undefined;
}

function obstacles(copy: StarterCopy, files: readonly string[]): Problem[] {
  const { fromFolder, toFolder, force } = copy;
  const shown = (path: string) => shownPath(copy, path);
  const folders = [toFolder, ...['profiles', ...FOLDERS].map((folder) => join(toFolder, folder))];
  const blocked = folders.find((path) => standsAt(path) && !isFolder(path));
  if (blocked !== undefined) return [fileProblem(shown(blocked), EXPECTED, 'a file')];
  if (isFolder(toFolder) && realpathSync(toFolder) === realpathSync(fromFolder)) {
    return [fileProblem(shown(toFolder), 'a folder of your own', "the program's own folder")];
  }
  return files.flatMap((file) => {
    const path = join(toFolder, file);
    if (isFolder(path)) return [fileProblem(shown(path), 'a file or nothing', 'a folder')];
    if (force || !standsAt(path)) return [];
    return [
      fileProblem(shown(path), 'nothing there, or --force to replace it', 'a file that is there already'),
    ];
  });
}

/** Makes the folder with those above it; answers how to take them away again. */
function makeFolder(path: string): () => void {
  const first = mkdirSync(path, { recursive: true });
  return () => {
    if (first === undefined) return;
    for (let made = path; made.startsWith(first); made = dirname(made)) rmdirSync(made);
  };
}

/** Moves a file to its place and what was there aside; answers how to take that back. */
function moveIn(from: string, to: string, aside: string): () => void {
  const replaces = standsAt(to);
  if (replaces) {
    mkdirSync(dirname(aside), { recursive: true });
    renameSync(to, aside);
  }
  try {
    renameSync(from, to);
  } catch (error) {
    if (replaces) renameSync(aside, to);
    throw error;
  }
  return () => (replaces ? renameSync(aside, to) : rmSync(to));
}

function copyAll({ fromFolder, toFolder }: StarterCopy, files: readonly string[]): void {
  const undo: (() => void)[] = [];
  try {
    undo.push(makeFolder(toFolder));
    const staging = mkdtempSync(join(toFolder, '.underfoot-'));
    undo.push(() => rmSync(staging, { recursive: true }));
    for (const file of files) {
      const staged = join(staging, 'new', file);
      mkdirSync(dirname(staged), { recursive: true });
      writeFileSync(staged, readFileSync(join(fromFolder, file)));
    }
    for (const file of files) {
      const to = join(toFolder, file);
      undo.push(makeFolder(dirname(to)));
      undo.push(moveIn(join(staging, 'new', file), to, join(staging, 'old', file)));
    }
    rmSync(staging, { recursive: true });
  } catch (error) {
    for (const step of undo.toReversed()) step();
    throw error;
  }
}

/** Copies the starter set; answers the paths written, below `toFolder`, or every problem. */
export function copyStarterSet(copy: StarterCopy): Checked<string[], Problem> {
  const { fromFolder, toFolder } = copy;
  try {
    const files = starterFiles(fromFolder);
    const problems = obstacles(copy, files);
    if (problems.length > 0) return { ok: false, faults: problems };
    copyAll(copy, files);
    return { ok: true, value: files };
  } catch (error) {
    return { ok: false, faults: [systemFault(shownPath(copy, toFolder), EXPECTED, error)] };
  }
}
