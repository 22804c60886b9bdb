/**
 * Which of these files are faulty, and what is wrong with each? Without files: all of the working
 * folder.
 */
import { resolve } from 'node:path';
import type { FileKind } from '../quantity/file-kind.js';
import type { Problem } from '../quantity/problem.js';
import { listKinds } from '../store/library.js';
import { loadFile, loadFileOfAnyKind } from '../store/load-file.js';
import { shownPath, type Places } from '../store/places.js';

/** A file that was checked; `kind` and `name` are null when it is faulty. */
export interface CheckedFile {
  path: string;
  kind: FileKind | null;
  name: string | null;
  problemCount: number;
}

/** What a check found: every file looked at, and every problem with files and folders. */
export interface CheckReport {
  files: CheckedFile[];
  problems: Problem[];
}

function checkOne(report: CheckReport, shown: string, loaded: ReturnType<typeof loadFileOfAnyKind>): void {
  if (loaded.ok) {
    const { kind, name } = loaded.value;
    report.files.push({ path: shown, kind, name, problemCount: 0 });
    return;
  }
  report.files.push({ path: shown, kind: null, name: null, problemCount: loaded.faults.length });
  report.problems.push(...loaded.faults);
}

/** Checks the files at these paths (from the current folder), or all of the working folder when there are none. */
export function checkFiles(places: Places, paths: readonly string[]): CheckReport {
  const report: CheckReport = { files: [], problems: [] };
  if (paths.length === 0) {
    const { entries, problems } = listKinds(places);
    report.problems.push(...problems);
    for (const { kind, path } of entries)
      checkOne(report, shownPath(places, path), loadFile(places, kind, path));
    return report;
  }
  for (const given of new Set(paths.map((path) => resolve(places.currentFolder, path)))) {
    checkOne(report, shownPath(places, given), loadFileOfAnyKind(places, given));
  }
  return report;
}
