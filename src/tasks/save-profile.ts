/**
 * How does a changed profile become a file? A new one in the working folder, made from the one it was changed from,
 * never over another, and only when its text reads back as exactly this profile.
 */
import { accessSync, constants, lstatSync } from 'node:fs';
import { join } from 'node:path';
import { isName } from '../quantity/field.js';
import type { Checked, Problem } from '../quantity/problem.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { quoted } from '../quantity/received.js';
import { readFileText } from '../store/file-text.js';
import { folderOf, isFolder, PROGRAM_NAME, shownPath, type Places } from '../store/places.js';
import { changedProfileText, freshProfileText, isSameProfile, profileOfText } from '../store/profile-text.js';
import { fileProblem, systemFault } from '../store/system-fault.js';
import { writeNewFile } from '../store/write-new-file.js';

/** A profile to be saved under a new name; `from` is the name of the one it was changed from, null for none. */
export interface ProfileToSave {
  from: string | null;
  name: string;
  profile: ProfileFile;
}

/** Saves the profile as profiles/gains/NAME.yaml; answers the path written (absolute), or every problem. */
export async function saveProfile(places: Places, asked: ProfileToSave): Promise<Checked<string, Problem>> {
  const problems = savingObstacles(places, asked.name);
  if (problems.length > 0) return { ok: false, faults: problems };
  const path = pathOf(places, asked.name);
  const shown = shownPath(places, path);
  const text = textFor(places, asked);
  if (!text.ok) return text;
  const again = profileOfText(text.value, shown);
  if (!again.ok) return again;
  if (!isSameProfile(again.value, asked.profile)) {
    return {
      ok: false,
      faults: [fileProblem(shown, 'a text that reads back as this profile', 'another one')],
    };
  }
  const written = await writeNewFile(path, text.value, { force: false });
  return written.ok
    ? written
    : { ok: false, faults: written.faults.map((fault) => ({ ...fault, file: shown })) };
}

function pathOf(places: Places, name: string): string {
  return join(folderOf(places, 'profile'), `${name}.yaml`);
}

/** What speaks against a profile file of this name here; nothing is written. */
export function savingObstacles(places: Places, name: string): Problem[] {
  const problems: Problem[] = [];
  if (places.isStarterSet) {
    const expected = `a folder of your own: make one with '${PROGRAM_NAME} init' and start ${PROGRAM_NAME} there`;
    problems.push(fileProblem('', expected, 'the starter set, which stays as it is'));
  }
  if (!isName(name)) {
    const expected = 'a name of at most 40 lower-case letters, digits and hyphens';
    return [...problems, { ...fileProblem('', expected, quoted(name)), key: 'name' }];
  }
  const path = pathOf(places, name);
  const shown = shownPath(places, path);
  try {
    const folder = folderOf(places, 'profile');
    if (isFolder(folder)) accessSync(folder, constants.W_OK);
    const isFree = lstatSync(path, { throwIfNoEntry: false }) === undefined;
    if (!isFree)
      problems.push(fileProblem(shown, 'a name that no profile has yet', 'a file that is there already'));
  } catch (error) {
    problems.push(systemFault(shown, 'a file that can be written', error));
  }
  return problems;
}

/** The text: from the file of the profile it was changed from, where the working folder has it. */
function textFor(places: Places, { from, profile }: ProfileToSave): Checked<string, Problem> {
  if (from === null || !isName(from)) return { ok: true, value: freshProfileText(profile) };
  const path = pathOf(places, from);
  if (lstatSync(path, { throwIfNoEntry: false }) === undefined) {
    return { ok: true, value: freshProfileText(profile) };
  }
  const shown = shownPath(places, path);
  const text = readFileText(path, shown);
  return text.ok ? changedProfileText(text.value, profile, shown) : text;
}
