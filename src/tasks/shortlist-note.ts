/**
 * What does a rider say of a kept profile? His note is exchanged or a ride is added in the file as it lies there; whatever else it
 * holds stays, letter by letter.
 */
import { accessSync, constants, readFileSync } from 'node:fs';
import type { KeptFile } from '../quantity/kept-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { quoted } from '../quantity/received.js';
import { readFileText } from '../store/file-text.js';
import { keptOfText, withRidersWords, type Ride, type RidersWords } from '../store/kept-text.js';
import { shownPath, type Places } from '../store/places.js';
import { fileProblem, systemFault } from '../store/system-fault.js';
import { writeNewFile } from '../store/write-new-file.js';
import { keptFaults } from './kept-check.js';
import { keptPath, missingProblems, noteProblems, placeProblems } from './shortlist.js';

/** What was written: the file as it is now, the note that was, and what of it is no longer as it was proven. */
export interface Noted {
  name: string;
  path: string;
  value: KeptFile;
  noteBefore: string;
  damage: Problem[];
}

/** The day of a moment where the program runs, as a file has it: `2026-05-31`. */
export function dayOf(moment: Date): string {
  const two = (number: number) => String(number).padStart(2, '0');
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}

/** A day: a ride may be written down where it is tomorrow already. */
const DAY_MS = 24 * 3600 * 1000;

function rideProblems(ride: Ride | null): Problem[] {
  if (ride === null) return [];
  const problem = (key: string, expected: string, received: string) => ({
    ...fileProblem('', expected, received),
    key,
  });
  const moment = new Date(`${ride.on}T00:00:00Z`);
  const isDay =
    /^\d{4}-\d{2}-\d{2}$/.test(ride.on) &&
    !Number.isNaN(moment.getTime()) &&
    moment.toISOString().startsWith(ride.on);
  const hasCome = ride.on <= dayOf(new Date(Date.now() + DAY_MS));
  const ofDay = !isDay
    ? [problem('on', 'a day such as 2026-05-31', quoted(ride.on))]
    : hasCome
      ? []
      : [problem('on', 'a day that has come', quoted(ride.on))];
  const isEmpty = ride.note === '' && Object.keys(ride.felt).length === 0;
  const ofWords = isEmpty ? [problem('note', 'words or ratings of what was felt', 'neither')] : [];
  return [...ofDay, ...ofWords, ...noteProblems(ride.note)];
}

/**
 * Writes a note or a ride into the file of a kept profile; also where its proven part was changed by hand, which is then told. Answers
 * what was written, or every problem; a file that does not read as a kept profile stays as it is.
 */
export async function noteKept(
  places: Places,
  { name, ...words }: RidersWords & { name: string },
): Promise<Checked<Noted, Problem>> {
  const problems = [...placeProblems(places, name), ...noteProblems(words.note), ...rideProblems(words.ride)];
  if (problems.length > 0) return { ok: false, faults: problems };
  const path = keptPath(places, name);
  const shown = shownPath(places, path);
  const missing = missingProblems(places, name);
  if (missing.length > 0) return { ok: false, faults: missing };
  const text = readFileText(path, shown);
  if (!text.ok) return text;
  const before = keptOfText(text.value, shown);
  if (!before.ok) return before;
  const changed = withRidersWords(text.value, words, shown);
  if (!changed.ok) return changed;
  const value = keptOfText(changed.value, shown);
  if (!value.ok) return value;
  const written = await overwritten(path, changed.value, shown);
  if (!written.ok) return written;
  const damage = keptFaults(value.value, shown);
  return {
    ok: true,
    value: { name, path: shown, value: value.value, noteBefore: before.value.note, damage },
  };
}

/** Writes a text over a file that is there, with the mark at its start that some editors put there. */
async function overwritten(path: string, text: string, shown: string): Promise<Checked<string, Problem>> {
  try {
    accessSync(path, constants.W_OK);
    const mark = readFileSync(path).subarray(0, BYTE_ORDER_MARK.length).equals(BYTE_ORDER_MARK);
    const written = await writeNewFile(path, mark ? `\uFEFF${text}` : text, { force: true });
    if (written.ok) return written;
    return { ok: false, faults: written.faults.map((fault) => ({ ...fault, file: shown })) };
  } catch (error) {
    return { ok: false, faults: [systemFault(shown, 'a file that can be written', error)] };
  }
}

const BYTE_ORDER_MARK = Buffer.from([0xef, 0xbb, 0xbf]);
