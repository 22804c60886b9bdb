/**
 * Which profiles, kept ones and controller sheets have a file that is faulty now, so that its last good version stays in use?
 */
import type { FileKind } from '../../quantity/file-kind.js';
import type { Problem } from '../../quantity/problem.js';
import { KIND_FOLDER_OF } from '../../store/places.js';
import type { Shelf } from '../../tasks/shelf.js';

/** Kinds of which faulty files are marked where they are listed. */
type MarkedKind = Extract<FileKind, 'profile' | 'kept' | 'sheet'>;

const MARKED_KINDS: readonly MarkedKind[] = ['profile', 'kept', 'sheet'];

const byFile = new WeakMap<readonly Problem[], ReadonlyMap<string, Problem>>();

/** The file at a path as it is shown to people, such as `kept evening`; null where it is of no marked kind. */
function fileAt(file: string): string | null {
  const path = file.replaceAll('\\', '/');
  const name = path.slice(path.lastIndexOf('/') + 1).replace(/\.yaml$/, '');
  const kind = MARKED_KINDS.find((one) => `/${path}`.endsWith(`/${KIND_FOLDER_OF[one]}/${name}.yaml`));
  return kind === undefined ? null : `${kind} ${name}`;
}

function firstProblems(problems: readonly Problem[]): Map<string, Problem> {
  const first = new Map<string, Problem>();
  for (const problem of problems) {
    const file = fileAt(problem.file);
    if (file !== null && !first.has(file)) first.set(file, problem);
  }
  return first;
}

/** The first problem of a file; null where it has none. */
export function problemOfFile(
  { problems }: Pick<Shelf, 'problems'>,
  kind: MarkedKind,
  name: string,
): Problem | null {
  const known = byFile.get(problems) ?? firstProblems(problems);
  byFile.set(problems, known);
  return known.get(`${kind} ${name}`) ?? null;
}

/** The first problem of the file of a profile; null where it has none. */
export function problemOfProfile(shelf: Pick<Shelf, 'problems'>, name: string): Problem | null {
  return problemOfFile(shelf, 'profile', name);
}
