/**
 * All files of the working folder as they stand now, read again as an editor beside us changes them. A file with problems
 * tells them, and its last good version stays in use.
 */
import { statSync, watch, type FSWatcher } from 'node:fs';
import { FILE_KINDS, type FileKind, type FileOf } from '../quantity/file-kind.js';
import type { Problem } from '../quantity/problem.js';
import { listKind, type LibraryEntry } from '../store/library.js';
import { loadFile } from '../store/load-file.js';
import { folderOf, type Places } from '../store/places.js';
import { keptFaults } from './kept-check.js';
import type { Named } from './plan.js';

/** The good files of each kind, ordered by name, and what is wrong with the others. */
export type Shelf = { readonly [K in FileKind]: readonly Named<FileOf[K]>[] } & {
  readonly problems: readonly Problem[];
};

/** Reads the shelf again and again; what has not changed on disk is not read twice. */
export interface ShelfReader {
  /** The shelf as it stands now: the very same one as before where nothing has changed. */
  read: () => Shelf;
}

interface Kept {
  stamp: string;
  problems: Problem[];
  /** The last good version. */
  good: Named<unknown> | null;
}

/** A reader of the files in a working folder. */
export function createShelfReader(places: Places): ShelfReader {
  let kept = new Map<string, Kept>();
  let last: Shelf | undefined;
  return {
    read: () => {
      const before = kept;
      kept = new Map();
      const problems: Problem[] = [];
      const readKind = <K extends FileKind>(kind: K): Named<FileOf[K]>[] => {
        const listing = listKind(places, kind);
        problems.push(...listing.problems);
        return listing.entries.flatMap((entry) => {
          const file = readEntry(places, entry, before.get(entry.path));
          kept.set(entry.path, file);
          problems.push(...file.problems);
          return file.good === null ? [] : [file.good as Named<FileOf[K]>];
        });
      };
      const files = {
        board: readKind('board'),
        rider: readKind('rider'),
        profile: readKind('profile'),
        scenario: readKind('scenario'),
        sheet: readKind('sheet'),
        kept: readKind('kept'),
      };
      const shelf = { ...files, problems };
      return (last = last !== undefined && isSameShelf(last, shelf) ? last : shelf);
    },
  };
}

function isSameShelf(a: Shelf, b: Shelf): boolean {
  const hasSame = (kind: FileKind) =>
    a[kind].length === b[kind].length && a[kind].every((file, index) => file === b[kind][index]);
  return FILE_KINDS.every(hasSame) && JSON.stringify(a.problems) === JSON.stringify(b.problems);
}

function readEntry(places: Places, { kind, name, path }: LibraryEntry, before: Kept | undefined): Kept {
  const stamp = stampOf(path);
  if (before?.stamp === stamp) return before;
  const loaded = loadFile(places, kind, path);
  if (!loaded.ok) return { stamp, problems: loaded.faults, good: before?.good ?? null };
  const { value, path: shown } = loaded.value;
  // Of a kept profile only what is still as it was proven is good.
  const problems = kind === 'kept' ? keptFaults(value as FileOf['kept'], shown) : [];
  const good = problems.length === 0 ? { name, value } : (before?.good ?? null);
  return { stamp, problems, good };
}

/** Changes whenever a file is written; a file that cannot be seen has a stamp of its own. */
function stampOf(path: string): string {
  const stats = statSync(path, { throwIfNoEntry: false });
  return stats === undefined ? 'gone' : `${stats.mtimeMs}/${stats.size}/${stats.ino}`;
}

/** Editors write in several steps; so long after the last of them the files are read, ms. */
const QUIET_MS = 120;

/** Folders that come or go, and disks that tell of nothing, are looked at so often, ms. */
const LOOK_MS = 2000;

/** Calls back after files of the working folder have changed, and where they might have; answers how to stop. */
export function watchShelf(places: Places, onChange: () => void): () => void {
  let timer: NodeJS.Timeout | undefined;
  const changed = () => {
    clearTimeout(timer);
    timer = setTimeout(onChange, QUIET_MS);
  };
  const watchers = FILE_KINDS.flatMap((kind) => watcherOf(folderOf(places, kind), changed));
  const looking = setInterval(onChange, LOOK_MS).unref();
  return () => {
    clearTimeout(timer);
    clearInterval(looking);
    for (const watcher of watchers) watcher.close();
  };
}

/** The watcher of a folder; none where the folder is missing or the system has no more watchers to give. */
function watcherOf(folder: string, changed: () => void): FSWatcher[] {
  try {
    return [watch(folder, { persistent: false }, changed).on('error', changed)];
  } catch {
    return [];
  }
}
