/**
 * From names on a command line to a plan: finds the files, checks them, and tells every problem at once.
 */
import type { FileKind, FileOf } from '../quantity/file-kind.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { listKind, load } from '../store/library.js';
import type { Places } from '../store/places.js';
import type { Named, RankPlan } from './plan.js';

/** What a person asked for. */
export interface Selection extends Pick<RankPlan, 'charges' | 'seeds' | 'solver' | 'weights'> {
  /** A name or a path; undefined stands for the first by name. */
  board: string | undefined;
  /** Names or paths; undefined stands for the usual rider, null for every one in the working folder. */
  riders: readonly string[] | undefined | null;
  /** Names or paths; null stands for every one in the working folder. */
  profiles: readonly string[] | null;
  scenarios: readonly string[] | null;
}

/** Stands for every rider of the working folder. */
export const ALL = 'all';

/** The rider that is meant when none is named, where the working folder has him. */
export const DEFAULT_RIDER = 'regular';

/** The plan for a selection, or everything that is wrong with the files and names it needs. */
export function planFor(places: Places, selection: Selection): Checked<RankPlan, Problem> {
  const faults: Problem[] = [];
  const find = <K extends FileKind>(kind: K, names: readonly string[] | null): Named<FileOf[K]>[] => {
    const found = loadNamed(places, kind, names ?? everyName(places, kind, faults));
    faults.push(...found.faults);
    return found.files;
  };
  const usual = (kind: FileKind, preferred?: string): string[] => {
    const names = everyName(places, kind, faults);
    return names
      .filter((name) => name === preferred)
      .concat(names)
      .slice(0, 1);
  };
  const boards = find('board', selection.board === undefined ? usual('board') : [selection.board]);
  const riders = find(
    'rider',
    selection.riders === undefined ? usual('rider', DEFAULT_RIDER) : selection.riders,
  );
  const profiles = find('profile', selection.profiles);
  const scenarios = find('scenario', selection.scenarios);
  const [board] = boards;
  if (faults.length > 0 || board === undefined) return { ok: false, faults };
  const { charges, seeds, solver, weights } = selection;
  return { ok: true, value: { board, riders, profiles, scenarios, charges, seeds, solver, weights } };
}

/** Every name of a kind in the working folder; that there is none, or that the folder is faulty, is a fault. */
function everyName(places: Places, kind: FileKind, faults: Problem[]): string[] {
  const { entries, problems } = listKind(places, kind);
  faults.push(...problems);
  if (entries.length === 0 && problems.length === 0) {
    faults.push(problemWith(kind, `at least one ${kind} file`, 'none'));
  }
  return entries.map(({ name }) => name);
}

interface Found<K extends FileKind> {
  files: Named<FileOf[K]>[];
  faults: Problem[];
}

function loadNamed<K extends FileKind>(places: Places, kind: K, names: readonly string[]): Found<K> {
  const found: Found<K> = { files: [], faults: [] };
  for (const asked of new Set(names)) {
    const loaded = load(places, kind, asked);
    if (!loaded.ok) {
      found.faults.push(...loaded.faults);
      continue;
    }
    const { name, value } = loaded.value;
    // Two files of one name, from different folders, could not be told apart in a table.
    if (found.files.some((file) => file.name === name)) {
      found.faults.push(problemWith(kind, `every ${kind} under a name of its own`, `'${name}' twice`));
    }
    found.files.push({ name, value });
  }
  return found;
}

function problemWith(kind: FileKind, expected: string, received: string): Problem {
  return { file: '', line: null, column: null, key: kind, expected, received };
}
