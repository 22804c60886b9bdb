/**
 * Which boards, riders, profiles and scenarios are there, and which is meant by a name? A file is
 * found by its name in the folder of its kind, or by a path of its own.
 */
import { readdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { FILE_KINDS, NEEDED_KINDS, type FileKind } from '../quantity/file-kind.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { quoted } from '../quantity/received.js';
import { suggestion } from '../quantity/suggestion.js';
import { fileNameProblem, looksLikeYaml, nameOfFile } from './file-name.js';
import { loadFile, type LibraryFile } from './load-file.js';
import { folderOf, kindOfFolder, shownPath, type Places } from './places.js';
import { numbersHash } from './short-hash.js';
import { fileProblem, systemCode, systemFault } from './system-fault.js';

/** A file of the library by its name; `path` is absolute. */
export interface LibraryEntry {
  kind: FileKind;
  name: string;
  path: string;
}

/** Files by name, and problems with folders and with file names that are no names. */
export interface Listing {
  entries: LibraryEntry[];
  problems: Problem[];
}

/** The files of one kind in the working folder, ordered by name. Files other than YAML are left alone. */
export function listKind(places: Places, kind: FileKind): Listing {
  const folder = folderOf(places, kind);
  const isNeeded = (NEEDED_KINDS as readonly FileKind[]).includes(kind);
  const listing: Listing = { entries: [], problems: [] };
  try {
    for (const fileName of readdirSync(folder).filter(looksLikeYaml).toSorted()) {
      const path = join(folder, fileName);
      const problem = fileNameProblem(path, shownPath(places, path));
      if (problem !== null) listing.problems.push(problem);
      else listing.entries.push({ kind, name: nameOfFile(path), path });
    }
  } catch (error) {
    if (!isNeeded && systemCode(error) === 'ENOENT') return listing;
    listing.problems.push(systemFault(shownPath(places, folder), `a folder of ${kind} files`, error));
  }
  return listing;
}

/** The files of some kinds, or of all, kind by kind. */
export function listKinds(places: Places, kinds: readonly FileKind[] = FILE_KINDS): Listing {
  const listings = kinds.map((kind) => listKind(places, kind));
  return {
    entries: listings.flatMap(({ entries }) => entries),
    problems: listings.flatMap(({ problems }) => problems),
  };
}

function isPath(nameOrPath: string): boolean {
  return /[/\\]/.test(nameOrPath) || looksLikeYaml(nameOrPath);
}

function unknownName(kind: FileKind, name: string, listing: Listing): Problem[] {
  const names = listing.entries.map((entry) => entry.name);
  const known = names.length === 0 ? 'there is none' : names.join(', ');
  const problem: Problem = {
    file: '',
    line: null,
    column: null,
    key: kind,
    expected: `the name of a ${kind} (${known}) or the path of a .yaml file`,
    received: quoted(name),
  };
  const near = suggestion(name, names);
  const named = near === undefined ? problem : { ...problem, suggestion: near };
  return names.length === 0 ? [...listing.problems, named] : [named];
}

/** The profile in a kept file, under the name that it is kept by; its numbers must be those that were proven. */
function loadKeptProfile(places: Places, path: string): Checked<LibraryFile<'profile'>, Problem> {
  const kept = loadFile(places, 'kept', path);
  if (!kept.ok) return kept;
  const { name, path: shown, value } = kept.value;
  const found = numbersHash(value.profile);
  if (found === value.numbers)
    return { ok: true, value: { kind: 'profile', name, path: shown, value: value.profile } };
  const expected = `the numbers as they were proven (hash ${value.numbers})`;
  const problem = fileProblem(shown, expected, `numbers with the hash ${found}: changed by hand`);
  return { ok: false, faults: [{ ...problem, key: 'profile' }] };
}

/**
 * Loads one file: by path when the text has a slash or ends in .yaml (from the current folder),
 * else by name from the working folder. Where a profile is wanted the file of a kept one will do.
 */
export function load<K extends FileKind>(
  places: Places,
  kind: K,
  nameOrPath: string,
): Checked<LibraryFile<K>, Problem> {
  if (isPath(nameOrPath)) {
    const path = resolve(places.currentFolder, nameOrPath);
    const isKept = kind === 'profile' && kindOfFolder(dirname(path)) === 'kept';
    return isKept
      ? (loadKeptProfile(places, path) as Checked<LibraryFile<K>, Problem>)
      : loadFile(places, kind, path);
  }
  const listing = listKind(places, kind);
  const entry = listing.entries.find(({ name }) => name === nameOrPath);
  if (entry === undefined) return { ok: false, faults: unknownName(kind, nameOrPath, listing) };
  return loadFile(places, kind, entry.path);
}
