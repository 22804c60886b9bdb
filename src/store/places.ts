/**
 * Where do files live? The working folder is the current one if it has a `profiles` folder, else
 * the starter set that comes with the program.
 */
import { readFileSync, statSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FILE_KINDS, type FileKind } from '../quantity/file-kind.js';
import { systemCode } from './system-fault.js';

/** The name of the program, of its package and of its command. */
export const PROGRAM_NAME = 'underfoot';

/** The folder of each kind of file, below a working folder. */
export const KIND_FOLDER_OF: { readonly [K in FileKind]: string } = {
  board: 'profiles/boards',
  rider: 'profiles/riders',
  profile: 'profiles/gains',
  scenario: 'scenarios',
  sheet: 'profiles/sheets',
  kept: 'shortlist',
};

/** Folder of the published schemas, below a working folder. */
export const SCHEMA_FOLDER = 'profiles/schema';

/** The folder worked in, and the folder in which the program was started; both absolute. */
export interface Places {
  workingFolder: string;
  currentFolder: string;
  isStarterSet: boolean;
}

/** The name and version in a package.json, or null when there is none to be read. */
function packageAt(folder: string): { name: string; version: string } | null {
  try {
    const content: unknown = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    if (typeof content !== 'object' || content === null) return null;
    const { name, version } = content as Record<string, unknown>;
    return typeof name === 'string' && typeof version === 'string' ? { name, version } : null;
  } catch (error) {
    if (systemCode(error) !== '' || error instanceof SyntaxError) return null;
    throw error;
  }
}

function findProgram(): { folder: string; version: string } {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    const found = packageAt(folder);
    if (found?.name === PROGRAM_NAME) return { folder, version: found.version };
    const above = dirname(folder);
    if (above === folder) throw new Error('The program does not stand below its own package.json');
    folder = above;
  }
}

/** The folder of the program, which holds the starter set; it is the same for sources and for the built program. */
export function programFolder(): string {
  return findProgram().folder;
}

/** The version of the program, from its package.json. */
export function programVersion(): string {
  return findProgram().version;
}

/** True when a folder stands at the path; false also when the system does not let us see. */
export function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch (error) {
    if (systemCode(error) === '') throw error;
    return false;
  }
}

/** The places to work in when the program is started in `currentFolder` (absolute). */
export function findPlaces(currentFolder: string): Places {
  const isOwn = isFolder(join(currentFolder, 'profiles'));
  return { workingFolder: isOwn ? currentFolder : programFolder(), currentFolder, isStarterSet: !isOwn };
}

/** The folder of one kind of file (absolute). */
export function folderOf(places: Pick<Places, 'workingFolder'>, kind: FileKind): string {
  return join(places.workingFolder, KIND_FOLDER_OF[kind]);
}

/** The kind of the files in a folder by its own name, such as `gains`; null for any other folder. */
export function kindOfFolder(folder: string): FileKind | null {
  return FILE_KINDS.find((kind) => basename(KIND_FOLDER_OF[kind]) === basename(folder)) ?? null;
}

/** A path as people see it: relative to the current folder when it lies inside, else absolute. */
export function shownPath(places: Pick<Places, 'currentFolder'>, path: string): string {
  const short = relative(places.currentFolder, path);
  const isOutside = short === '' || short === '..' || short.startsWith(`..${sep}`) || isAbsolute(short);
  return isOutside ? path : short.split(sep).join('/');
}
