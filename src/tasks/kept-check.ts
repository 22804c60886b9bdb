/**
 * Is a kept file still what was proven? Its numbers are held against their hash, all that was proven with them against the seal.
 */
import type { KeptFile } from '../quantity/kept-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { listKind, load } from '../store/library.js';
import { PROGRAM_NAME, type Places } from '../store/places.js';
import { numbersHash, sealOf } from '../store/short-hash.js';
import { fileProblem } from '../store/system-fault.js';

/** A kept profile that is what was proven; `path` is as shown to people. */
export interface LoadedKept {
  name: string;
  path: string;
  value: KeptFile;
}

const BY_HAND = `changed by hand: put new numbers into a profile, and keep that with '${PROGRAM_NAME} shortlist add'`;

/** What of a kept file is no longer as it was proven; problems name the file as `shown`. */
export function keptFaults(kept: KeptFile, shown: string): Problem[] {
  const problem = (key: string, expected: string, received: string): Problem => ({
    ...fileProblem(shown, expected, received),
    key,
  });
  const found = numbersHash(kept.profile);
  // Numbers and their hash are sealed too, so that a broken seal says no more where these do not agree.
  if (found !== kept.numbers) {
    const expected = `the numbers as they were proven (hash ${kept.numbers})`;
    return [problem('profile', expected, `numbers with the hash ${found}: ${BY_HAND}`)];
  }
  const seal = sealOf(kept);
  if (seal === kept.seal) return [];
  const expected = `what was proven with these numbers (seal ${kept.seal})`;
  return [problem('seal', expected, `content with the seal ${seal}: ${BY_HAND}`)];
}

/** The kept profile of a name, or at a path, if it is what was proven; else every problem with it. */
export function loadKept(places: Places, name: string): Checked<LoadedKept, Problem> {
  const loaded = load(places, 'kept', name);
  if (!loaded.ok) return { ok: false, faults: loaded.faults.map((fault) => withTheWay(places, name, fault)) };
  const { path, value } = loaded.value;
  const faults = keptFaults(value, path);
  return faults.length > 0
    ? { ok: false, faults }
    : { ok: true, value: { name: loaded.value.name, path, value } };
}

/** A problem with a name that none is kept under says how one comes to be kept; the name of a profile is known as such. */
function withTheWay(places: Places, name: string, fault: Problem): Problem {
  if (fault.file !== '' || fault.key !== 'kept') return fault;
  const profile = load(places, 'profile', name);
  if (profile.ok) {
    const expected = `a kept profile: '${PROGRAM_NAME} shortlist add ${name}' proves this one and keeps it`;
    const received = `the profile ${profile.value.name}, which is not kept`;
    return { ...fileProblem('', expected, received), key: 'kept' };
  }
  const names = listKind(places, 'kept').entries.map((entry) => entry.name);
  const known = names.length === 0 ? 'none is kept yet' : names.join(', ');
  const expected = `the name of a kept profile (${known}) or the path of its file; '${PROGRAM_NAME} shortlist add PROFILE' keeps one`;
  return { ...fault, expected };
}
