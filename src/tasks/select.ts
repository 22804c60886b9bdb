/**
 * From names on a command line to a plan: finds the files, checks them, and tells every problem at once.
 */
import type { FileKind, FileOf } from '../quantity/file-kind.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { listKind, load } from '../store/library.js';
import type { Places } from '../store/places.js';
import type { Named, RankPlan } from './plan.js';

/** What a person asked for; what is left out falls back to the defaults told in the help. */
export interface Selection extends Pick<RankPlan, 'charges' | 'seeds' | 'solver' | 'weights'> {
  board: string | undefined;
  /** Names or paths; the word `all` stands for every one in the working folder. */
  riders: readonly string[];
  profiles: readonly string[];
  scenarios: readonly string[];
}

/** Stands for every file of its kind. */
export const ALL = 'all';

/** The rider that is meant when none is named, where the working folder has him. */
export const DEFAULT_RIDER = 'regular';

/** The plan for a selection, or everything that is wrong with the files and names it needs. */
export function planFor(places: Places, selection: Selection): Checked<RankPlan, Problem> {
  const faults: Problem[] = [];
  const find = <K extends FileKind>(kind: K, names: readonly string[]): Named<FileOf[K]>[] => {
    const found = loadNamed(places, kind, names);
    faults.push(...found.faults);
    return found.files;
  };
  const boards = find('board', [selection.board ?? firstName(places, 'board')]);
  const riders = find('rider', selection.riders.length > 0 ? selection.riders : [defaultRider(places)]);
  const profiles = find('profile', selection.profiles.length > 0 ? selection.profiles : [ALL]);
  const scenarios = find('scenario', selection.scenarios.length > 0 ? selection.scenarios : [ALL]);
  const [board] = boards;
  if (faults.length > 0 || board === undefined) return { ok: false, faults };
  const { charges, seeds, solver, weights } = selection;
  return { ok: true, value: { board, riders, profiles, scenarios, charges, seeds, solver, weights } };
}

interface Found<K extends FileKind> {
  files: Named<FileOf[K]>[];
  faults: Problem[];
}

function loadNamed<K extends FileKind>(places: Places, kind: K, names: readonly string[]): Found<K> {
  const found: Found<K> = { files: [], faults: [] };
  const wanted = new Set<string>();
  for (const name of names) {
    if (name !== ALL) {
      wanted.add(name);
      continue;
    }
    const listing = listKind(places, kind);
    found.faults.push(...listing.problems);
    for (const entry of listing.entries) wanted.add(entry.name);
    if (listing.entries.length === 0 && listing.problems.length === 0) found.faults.push(noneThere(kind));
  }
  for (const name of wanted) {
    const loaded = load(places, kind, name);
    if (loaded.ok) found.files.push({ name: loaded.value.name, value: loaded.value.value });
    else found.faults.push(...loaded.faults);
  }
  found.faults.push(...doubled(kind, found.files));
  return found;
}

/** Two files of one name, from different folders, could not be told apart in a table. */
function doubled<K extends FileKind>(kind: K, files: readonly Named<FileOf[K]>[]): Problem[] {
  const names = files.map(({ name }) => name);
  return names
    .filter((name, index) => names.indexOf(name) !== index)
    .map((name) => ({
      ...noneThere(kind),
      expected: `every ${kind} under a name of its own`,
      received: `'${name}' twice`,
    }));
}

function noneThere(kind: FileKind): Problem {
  return {
    file: '',
    line: null,
    column: null,
    key: kind,
    expected: `at least one ${kind} file`,
    received: 'none',
  };
}

function firstName(places: Places, kind: FileKind): string {
  return listKind(places, kind).entries[0]?.name ?? ALL;
}

function defaultRider(places: Places): string {
  const names = listKind(places, 'rider').entries.map(({ name }) => name);
  return names.find((name) => name === DEFAULT_RIDER) ?? names[0] ?? ALL;
}
