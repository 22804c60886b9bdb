/**
 * Which profiles have a file that is faulty now, so that its last good version is ranked?
 */
import type { Problem } from '../../quantity/problem.js';
import { KIND_FOLDER_OF } from '../../store/places.js';
import type { Shelf } from '../../tasks/shelf.js';

const byFile = new WeakMap<readonly Problem[], ReadonlyMap<string, Problem>>();

/** The name of the profile whose file stands at a path as it is shown to people; null where it is none. */
function profileAt(file: string): string | null {
  const path = file.replaceAll('\\', '/');
  const name = path.slice(path.lastIndexOf('/') + 1).replace(/\.yaml$/, '');
  return `/${path}`.endsWith(`/${KIND_FOLDER_OF.profile}/${name}.yaml`) ? name : null;
}

function firstProblems(problems: readonly Problem[]): Map<string, Problem> {
  const first = new Map<string, Problem>();
  for (const problem of problems) {
    const name = profileAt(problem.file);
    if (name !== null && !first.has(name)) first.set(name, problem);
  }
  return first;
}

/** The first problem of the file of a profile; null where it has none. */
export function problemOfProfile({ problems }: Pick<Shelf, 'problems'>, name: string): Problem | null {
  const known = byFile.get(problems) ?? firstProblems(problems);
  byFile.set(problems, known);
  return known.get(name) ?? null;
}
