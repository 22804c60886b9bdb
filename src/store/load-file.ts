/**
 * What does one file hold, checked and with its defaults filled in? Faults of YAML and of the
 * schema come together, in the order in which they stand in the file.
 */
import { dirname } from 'node:path';
import { checkValue } from '../quantity/check.js';
import { FILE_KINDS, TOP_KEYS_OF, type FileKind, type FileOf } from '../quantity/file-kind.js';
import { keyPath } from '../quantity/key-path.js';
import type { Checked, Complaint, Problem } from '../quantity/problem.js';
import { fileNameProblem, nameOfFile } from './file-name.js';
import { kindOfFolder, shownPath, type Places } from './places.js';
import { readYaml, type YamlContent, type YamlReading } from './read-yaml.js';
import { fileProblem } from './system-fault.js';

/** Most problems told of one file; of the others only the number. */
export const MOST_PROBLEMS_A_FILE = 100;

/** A checked file; `path` is as shown to people. */
export interface LibraryFile<K extends FileKind = FileKind> {
  kind: K;
  name: string;
  path: string;
  value: FileOf[K];
}

function placed(complaint: Complaint, content: YamlContent, shown: string): Problem {
  const { path, ...said } = complaint;
  return { file: shown, ...content.placeOf(path), key: keyPath(path), ...said };
}

function byPlace(a: Problem, b: Problem): number {
  return (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0);
}

function limited(problems: Problem[], allCount: number, shown: string): Problem[] {
  const told = problems.slice(0, MOST_PROBLEMS_A_FILE).sort(byPlace);
  const untoldCount = allCount - told.length;
  return untoldCount === 0 ? told : [...told, fileProblem(shown, 'none', `${untoldCount} more problems`)];
}

function checkReading<K extends FileKind>(
  kind: K,
  { content, problems }: YamlReading,
  file: { path: string; shown: string },
): Checked<LibraryFile<K>, Problem> {
  const { path, shown } = file;
  const misnamed = fileNameProblem(path, shown);
  const before = misnamed === null ? problems : [misnamed, ...problems];
  if (content === null) return { ok: false, faults: limited(before, before.length, shown) };
  const result = checkValue(kind, content.value);
  if (result.ok && before.length === 0) {
    return { ok: true, value: { kind, name: nameOfFile(path), path: shown, value: result.value } };
  }
  const complaints = result.ok ? [] : result.faults;
  const told = complaints
    .slice(0, MOST_PROBLEMS_A_FILE)
    .map((complaint) => placed(complaint, content, shown));
  return { ok: false, faults: limited([...before, ...told], before.length + complaints.length, shown) };
}

/** The kind that a value is probably meant to be, by the keys at its top; null when unclear. */
function kindByKeys(value: unknown): FileKind | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
  const shared = (kind: FileKind) =>
    TOP_KEYS_OF[kind].filter((key) => key !== 'summary' && Object.hasOwn(value, key)).length;
  const counts = FILE_KINDS.map((kind) => ({ kind, count: shared(kind) })).sort((a, b) => b.count - a.count);
  const [best, next] = counts;
  return best !== undefined && best.count > (next?.count ?? 0) ? best.kind : null;
}

/** Loads the file at the absolute `path` as the kind it should be. */
export function loadFile<K extends FileKind>(
  places: Places,
  kind: K,
  path: string,
): Checked<LibraryFile<K>, Problem> {
  const shown = shownPath(places, path);
  return checkReading(kind, readYaml(path, shown), { path, shown });
}

/** Loads a file whose kind is not said: its folder tells it, or else its keys. */
export function loadFileOfAnyKind(places: Places, path: string): Checked<LibraryFile, Problem> {
  const shown = shownPath(places, path);
  const reading = readYaml(path, shown);
  const kind = kindOfFolder(dirname(path)) ?? kindByKeys(reading.content?.value);
  if (kind !== null) return checkReading(kind, reading, { path, shown });
  if (reading.content === null) return { ok: false, faults: reading.problems };
  const expected =
    'the keys of a board, a rider, a profile, a scenario, a controller sheet or a kept profile';
  return {
    ok: false,
    faults: [...reading.problems, fileProblem(shown, expected, 'none that tells the kind')],
  };
}
