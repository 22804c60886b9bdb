/**
 * What is there to work with? Every board, rider, profile and scenario of the working folder with
 * its summary; faulty files are told as problems.
 */
import type { FileKind } from '../quantity/file-kind.js';
import type { Problem } from '../quantity/problem.js';
import { listKinds } from '../store/library.js';
import { loadFile } from '../store/load-file.js';
import { shownPath, type Places } from '../store/places.js';

/** One entry of the list; `path` is as shown to people. */
export interface ListedFile {
  kind: FileKind;
  name: string;
  path: string;
  summary: string;
}

/** The files without faults, and all problems with the others. */
export interface LibraryList {
  files: ListedFile[];
  problems: Problem[];
}

/** Lists the files of these kinds, kind by kind, by name. */
export function listLibrary(places: Places, kinds: readonly FileKind[]): LibraryList {
  const { entries, problems } = listKinds(places, kinds);
  const list: LibraryList = { files: [], problems: [...problems] };
  for (const { kind, name, path } of entries) {
    const loaded = loadFile(places, kind, path);
    if (loaded.ok) {
      const { value } = loaded.value;
      const summary = 'summary' in value ? value.summary : value.note || value.profile.summary;
      list.files.push({ kind, name, path: shownPath(places, path), summary });
    } else list.problems.push(...loaded.faults);
  }
  return list;
}
