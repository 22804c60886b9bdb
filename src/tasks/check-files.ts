/**
 * Which of these files are faulty, and what is wrong with each? Without files: all of the working
 * folder.
 */
import { resolve } from 'node:path';
import type { FileKind, FileOf } from '../quantity/file-kind.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { listKinds } from '../store/library.js';
import { loadFile, loadFileOfAnyKind, type LibraryFile } from '../store/load-file.js';
import { shownPath, type Places } from '../store/places.js';
import { CARD_KIND, checkCard } from './check-card.js';
import { keptFaults } from './kept-check.js';

/** A file that was checked; `kind` and `name` are null when it is faulty. */
export interface CheckedFile {
  path: string;
  kind: FileKind | typeof CARD_KIND | null;
  name: string | null;
  problemCount: number;
}

/** What a check found: every file looked at, and every problem with files and folders. */
export interface CheckReport {
  files: CheckedFile[];
  problems: Problem[];
}

function checkOne(report: CheckReport, shown: string, loaded: ReturnType<typeof loadFileOfAnyKind>): void {
  const faults = loaded.ok ? faultsBeyondFields(loaded.value, shown) : loaded.faults;
  tell(report, shown, loaded.ok && faults.length === 0 ? loaded : { ok: false, faults });
}

function tell(
  report: CheckReport,
  shown: string,
  checked: Checked<{ kind: NonNullable<CheckedFile['kind']>; name: string }, Problem>,
): void {
  if (checked.ok) {
    const { kind, name } = checked.value;
    report.files.push({ path: shown, kind, name, problemCount: 0 });
    return;
  }
  const { faults } = checked;
  report.files.push({ path: shown, kind: null, name: null, problemCount: faults.length });
  report.problems.push(...faults);
}

/** What is wrong with a file whose every field is as it should be: a kept one may no longer be what was proven. */
function faultsBeyondFields({ kind, value }: LibraryFile, shown: string): Problem[] {
  return kind === 'kept' ? keptFaults(value as FileOf['kept'], shown) : [];
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
    const shown = shownPath(places, given);
    const card = checkCard(places, given);
    if (card === null) checkOne(report, shown, loadFileOfAnyKind(places, given));
    else tell(report, shown, card);
  }
  return report;
}
