/**
 * Which profiles are kept to be carried onto the board? They are added, read, annotated and removed here: plain files in the working
 * folder, written whole or not at all, and never over one that is not whole itself.
 */
import { accessSync, constants, lstatSync, mkdirSync, rmdirSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { isName, TEXT_LIMIT } from '../quantity/field.js';
import type { KeptFile } from '../quantity/kept-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { quoted } from '../quantity/received.js';
import { freshKeptText } from '../store/kept-text.js';
import { listKind } from '../store/library.js';
import { folderOf, isFolder, PROGRAM_NAME, shownPath, type Places } from '../store/places.js';
import { fileProblem, systemFault } from '../store/system-fault.js';
import { writeNewFile } from '../store/write-new-file.js';
import { keep, type KeepOptions } from './keep.js';
import { loadKept, type LoadedKept } from './kept-check.js';
import type { RankPlan } from './plan.js';

const WRITABLE = 'a file that can be written';

/** Under which name a profile is to be kept, and with which words; `note` null is none, or the one that is there. */
export interface ToKeep {
  name: string;
  note: string | null;
  /** Whether a whole file of that name is replaced; its rides stay, and its note where there is no new one. */
  force: boolean;
}

/** All that is kept and whole, by name, and every problem with the rest. */
export interface Shortlist {
  kept: LoadedKept[];
  problems: Problem[];
}

/** The path of a kept profile (absolute). */
export function keptPath(places: Places, name: string): string {
  return join(folderOf(places, 'kept'), `${name}.yaml`);
}

/** The profiles that are kept. */
export function shortlist(places: Places): Shortlist {
  const { entries, problems } = listKind(places, 'kept');
  const loaded = entries.map(({ path }) => loadKept(places, path));
  return {
    kept: loaded.flatMap((one) => (one.ok ? [one.value] : [])),
    problems: [...problems, ...loaded.flatMap((one) => (one.ok ? [] : one.faults))],
  };
}

/** What speaks against any change of the shortlist here: the starter set, and what is no name; null is none that is known yet. */
export function placeProblems(places: Places, name: string | null): Problem[] {
  const problems: Problem[] = [];
  if (places.isStarterSet) {
    const expected = `a folder of your own: make one with '${PROGRAM_NAME} init' and start ${PROGRAM_NAME} there`;
    problems.push(fileProblem('', expected, 'the starter set, which has no shortlist'));
  }
  if (name !== null && !isName(name)) {
    const expected = 'a name of at most 40 lower-case letters, digits and hyphens';
    problems.push({ ...fileProblem('', expected, quoted(name)), key: 'name' });
  }
  return problems;
}

/** What speaks against keeping a profile under this name, told before anything is computed; nothing is written. */
export function addingObstacles(places: Places, { name, note, force }: ToKeep): Problem[] {
  const problems = [...placeProblems(places, name), ...noteProblems(note)];
  if (!isName(name)) return problems;
  const path = keptPath(places, name);
  const shown = shownPath(places, path);
  const folder = folderOf(places, 'kept');
  const shownFolder = shownPath(places, folder);
  try {
    const stats = lstatSync(folder, { throwIfNoEntry: false });
    if (stats === undefined) {
      accessSync(places.workingFolder, constants.W_OK);
      return problems;
    }
    if (!isFolder(folder)) {
      return [
        ...problems,
        fileProblem(shownFolder, 'a folder for the shortlist', 'a file, or a link to none'),
      ];
    }
    accessSync(folder, constants.W_OK);
    if (lstatSync(path, { throwIfNoEntry: false }) === undefined) return problems;
    return [...problems, ...replacingObstacles(places, path, force)];
  } catch (error) {
    return [...problems, systemFault(shown, WRITABLE, error)];
  }
}

/** What speaks against writing over a file that is there. */
function replacingObstacles(places: Places, path: string, force: boolean): Problem[] {
  const shown = shownPath(places, path);
  if (!force) {
    return [
      fileProblem(
        shown,
        'a name that nothing is kept under, or --force to prove it anew',
        'a file that is there already',
      ),
    ];
  }
  const loaded = loadKept(places, path);
  if (loaded.ok) {
    accessSync(path, constants.W_OK);
    return [];
  }
  const expected = `a whole file to replace: a damaged one stays until it is moved away, or '${PROGRAM_NAME} shortlist remove --force'`;
  return [...loaded.faults, fileProblem(shown, expected, 'one that is not whole')];
}

/** What is wrong with the words of a rider. */
export function noteProblems(note: string | null): Problem[] {
  if (note === null || (note.length <= TEXT_LIMIT && /^(?:[^\p{Cc}\p{Cf}\p{Cs}]|\n)*$/u.test(note)))
    return [];
  const expected = `text of at most ${TEXT_LIMIT} characters without control characters`;
  const received = note.length > TEXT_LIMIT ? `${note.length} characters` : 'control characters or half ones';
  return [{ ...fileProblem('', expected, received), key: 'note' }];
}

/** What was kept, and where. */
export interface Added extends LoadedKept {
  /** What the file that was replaced held; null where there was none. */
  replaced: KeptFile | null;
}

/**
 * Proves the one profile of a plan and keeps it; answers what was written, or every problem. Throws the reason of a signal that
 * comes before the end, or what `keep` throws; nothing is written then.
 */
export async function addToShortlist(
  places: Places,
  { plan, ...toKeep }: ToKeep & { plan: RankPlan },
  options: KeepOptions,
): Promise<Checked<Added, Problem>> {
  const before = addingObstacles(places, toKeep);
  if (before.length > 0) return { ok: false, faults: before };
  const proven = await keep(plan, options);
  options.signal?.throwIfAborted();
  return writeKept(places, toKeep, proven);
}

/** Keeps what was proven under a name; answers what was written, or every problem. */
export async function writeKept(
  places: Places,
  toKeep: ToKeep,
  proven: KeptFile,
): Promise<Checked<Added, Problem>> {
  // Anything may have come in the meantime.
  const obstacles = addingObstacles(places, toKeep);
  if (obstacles.length > 0) return { ok: false, faults: obstacles };
  const { name, note, force } = toKeep;
  const path = keptPath(places, name);
  const shown = shownPath(places, path);
  const there = lstatSync(path, { throwIfNoEntry: false }) === undefined ? null : loadKept(places, path);
  if (there !== null && !there.ok) return there;
  const old = there?.value.value ?? null;
  const value = { ...proven, note: note ?? old?.note ?? '', rides: old?.rides ?? [] };
  const text = freshKeptText(value, shown);
  if (!text.ok) return text;
  const written = await inFolder(places, () => writeNewFile(path, text.value, { force }));
  if (!written.ok) return { ok: false, faults: written.faults.map((fault) => ({ ...fault, file: shown })) };
  return { ok: true, value: { name, path: shown, value, replaced: old } };
}

/** Writes into the folder of the shortlist, which is made for it, and taken away again if nothing comes of it. */
async function inFolder<T>(
  places: Places,
  write: () => Promise<Checked<T, Problem>>,
): Promise<Checked<T, Problem>> {
  const folder = folderOf(places, 'kept');
  try {
    // Whoever else keeps something at the same moment may make it first.
    const isNew = mkdirSync(folder, { recursive: true }) !== undefined;
    const written = await write();
    if (isNew && !written.ok) removeEmpty(folder);
    return written;
  } catch (error) {
    return {
      ok: false,
      faults: [systemFault(shownPath(places, folder), 'a folder for the shortlist', error)],
    };
  }
}

/** Takes a folder away unless somebody has put something into it. */
function removeEmpty(folder: string): void {
  try {
    rmdirSync(folder);
  } catch {
    // It stays for what is in it.
  }
}

/** That nothing lies under a name, with the way to keep something; empty where a file is there, whatever it holds. */
export function missingProblems(places: Places, name: string): Problem[] {
  const path = keptPath(places, name);
  try {
    if (lstatSync(path, { throwIfNoEntry: false }) !== undefined) return [];
    const missing = loadKept(places, name);
    return missing.ok ? [] : missing.faults;
  } catch (error) {
    return [systemFault(shownPath(places, path), 'a file in the folder of the shortlist', error)];
  }
}

/** Removes what is kept under a name, a damaged file only with `force`; answers its path as shown, or every problem. */
export function removeKept(
  places: Places,
  { name, force }: { name: string; force: boolean },
): Checked<string, Problem> {
  const problems = placeProblems(places, name);
  if (problems.length > 0) return { ok: false, faults: problems };
  const path = keptPath(places, name);
  const shown = shownPath(places, path);
  const missing = missingProblems(places, name);
  if (missing.length > 0) return { ok: false, faults: missing };
  try {
    const loaded = loadKept(places, path);
    if (!loaded.ok && !force) {
      const expected = 'a whole file to remove, or --force for one that is not';
      return { ok: false, faults: [...loaded.faults, fileProblem(shown, expected, 'one that is not whole')] };
    }
    unlinkSync(path);
    return { ok: true, value: shown };
  } catch (error) {
    return { ok: false, faults: [systemFault(shown, 'a file that can be removed', error)] };
  }
}
