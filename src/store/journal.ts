/**
 * How are results kept as they come, so that a fall of the program loses none? In a file of lines: the first says what it is of,
 * each other holds one result. A line is there whole or is cut off again; what a person has put there is never written over.
 */
import { closeSync, ftruncateSync, mkdirSync, openSync, readFileSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import type { Checked, Problem } from '../quantity/problem.js';
import { fileProblem, systemCode, systemFault } from './system-fault.js';

const EXPECTED = 'a file that can be written';

/** The lines of a journal: the first, and the others as far as they are whole. */
export interface JournalText {
  head: string;
  lines: string[];
}

/** What is in a journal; null where there is none. A last line without an end was cut off while it was written, and is left out. */
export function readJournal(path: string, shown: string): Checked<JournalText | null, Problem> {
  try {
    const whole = readFileSync(path, 'utf8').split('\n').slice(0, -1);
    const [head, ...lines] = whole;
    return { ok: true, value: head === undefined ? null : { head, lines } };
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return { ok: true, value: null };
    return { ok: false, faults: [systemFault(shown, 'a file of results that can be read', error)] };
  }
}

/** A journal that is written to. */
export interface Journal {
  /** Adds a line, or answers what the system has against it; the file is then as it was before. */
  append: (line: string) => Problem | null;
  close: () => void;
}

/** Opens a journal at its end, after cutting off a line that was not finished; begins it with `head` where there is none. */
export function openJournal(path: string, shown: string, head: string): Checked<Journal, Problem> {
  try {
    mkdirSync(dirname(path), { recursive: true });
    const file = openSync(path, 'a+');
    const length = wholeLength(file);
    ftruncateSync(file, length);
    const journal = writerTo(file, length, shown);
    const problem = length === 0 ? journal.append(head) : null;
    return problem === null ? { ok: true, value: journal } : { ok: false, faults: [problem] };
  } catch (error) {
    return { ok: false, faults: [systemFault(shown, EXPECTED, error)] };
  }
}

/** Bytes up to the end of the last whole line. */
function wholeLength(file: number): number {
  return readFileSync(file).lastIndexOf('\n') + 1;
}

function writerTo(file: number, from: number, shown: string): Journal {
  let length = from;
  let isOpen = true;
  return {
    append: (line) => {
      const bytes = Buffer.from(`${line}\n`);
      try {
        let written = 0;
        while (written < bytes.length) written += writeSync(file, bytes, written);
        length += bytes.length;
        return null;
      } catch (error) {
        ftruncateSync(file, length);
        return systemFault(shown, EXPECTED, error);
      }
    },
    close: () => {
      if (isOpen) closeSync(file);
      isOpen = false;
    },
  };
}

/** Puts all lines of a journal in another order, whole or not at all. */
export async function rewriteJournal(
  path: string,
  shown: string,
  { head, lines }: JournalText,
): Promise<Problem | null> {
  try {
    await writeFileAtomic(path, `${[head, ...lines].join('\n')}\n`);
    return null;
  } catch (error) {
    return systemFault(shown, EXPECTED, error);
  }
}

/** That a journal is of something else, or not of this program at all. */
export function notThisJournal(shown: string, received: string): Problem {
  return fileProblem(shown, 'the results of this very sweep, or a name that is free', received);
}
