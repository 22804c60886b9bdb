/**
 * How are results kept as they come, so that a fall of the program loses none? In a file of lines: the first says what it is of,
 * each other holds one result. A line is there whole or is cut off again; what a person has put there is never written over.
 */
import {
  accessSync,
  closeSync,
  constants,
  fstatSync,
  ftruncateSync,
  mkdirSync,
  openSync,
  readSync,
  realpathSync,
  statSync,
  unlinkSync,
  writeSync,
  type Stats,
} from 'node:fs';
import { dirname } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import type { Checked, Problem } from '../quantity/problem.js';
import { fileProblem, systemCode, systemFault } from './system-fault.js';

const EXPECTED = 'a file that can be written';
const EXPECTED_FOLDER = 'a folder in which files can be made';
const LINE_END = 0x0a;

/** Bytes read or written at a time: a text of a whole file could be longer than texts can be. */
const PIECE_BYTES = 2 ** 20;

/** Lines joined at a time. */
const LINES_OF_PIECE = 1000;

/** The lines of a journal: the first, and the others as far as they are whole. */
export interface JournalText {
  head: string;
  /** Whether the first line has its end; one that has none was cut off while it was written. */
  isHeadWhole: boolean;
  lines: string[];
}

/**
 * What is in a journal; null where there is none, or nothing in it. A last line without an end was cut off while it was written,
 * and is left out.
 */
export function readJournal(path: string, shown: string): Checked<JournalText | null, Problem> {
  const expected = 'a file of results that can be read';
  try {
    const stat = statSync(path);
    if (!stat.isFile()) return { ok: false, faults: [notAFile(shown, expected, stat)] };
    const { whole, rest } = linesOf(path);
    const [head, ...lines] = whole;
    if (head !== undefined) return { ok: true, value: { head, isHeadWhole: true, lines } };
    return { ok: true, value: rest === '' ? null : { head: rest, isHeadWhole: false, lines: [] } };
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return { ok: true, value: null };
    return { ok: false, faults: [systemFault(shown, expected, error)] };
  }
}

/** The whole lines of a file, and what stands after the last of them. */
function linesOf(path: string): { whole: string[]; rest: string } {
  const file = openSync(path, 'r');
  try {
    const whole: string[] = [];
    const piece = Buffer.alloc(PIECE_BYTES);
    let begun: Buffer[] = [];
    for (let read = readSync(file, piece); read > 0; read = readSync(file, piece)) {
      let from = 0;
      for (let end = piece.indexOf(LINE_END); end >= 0 && end < read; end = piece.indexOf(LINE_END, from)) {
        whole.push(Buffer.concat([...begun, piece.subarray(from, end)]).toString());
        begun = [];
        from = end + 1;
      }
      begun.push(Buffer.from(piece.subarray(from, read)));
    }
    return { whole, rest: Buffer.concat(begun).toString() };
  } finally {
    closeSync(file);
  }
}

/** A journal that is written to. */
export interface Journal {
  /** Adds a line, or answers what the system has against it; the file is then as it was before. */
  append: (line: string) => Problem | null;
  close: () => void;
}

/**
 * Opens a journal at its end, after cutting off a line that was not finished; begins it with `head` where there is none. The
 * first line that stands there already has to be looked at before.
 */
export function openJournal(path: string, shown: string, head: string): Checked<Journal, Problem> {
  try {
    mkdirSync(dirname(path), { recursive: true });
    const before = statSync(path, { throwIfNoEntry: false });
    const fault = before?.isFile() === false ? notAFile(shown, EXPECTED, before) : folderFault(path, shown);
    if (fault !== null) return { ok: false, faults: [fault] };
    const file = openSync(path, 'a+');
    const size = fstatSync(file).size;
    const length = wholeLength(file, size);
    if (length < size) ftruncateSync(file, length);
    const journal = writerTo(file, shown);
    const problem = length === 0 ? journal.append(head) : null;
    if (problem === null) return { ok: true, value: journal };
    journal.close();
    if (before === undefined) unlinkSync(path);
    return { ok: false, faults: [problem] };
  } catch (error) {
    return { ok: false, faults: [systemFault(shown, EXPECTED, error)] };
  }
}

function notAFile(shown: string, expected: string, stat: Stats): Problem {
  return fileProblem(shown, expected, stat.isDirectory() ? 'a folder' : 'a device or a pipe');
}

/** What speaks against putting a file beside the journal, as is done when its lines are put in order. */
function folderFault(path: string, shown: string): Problem | null {
  const isThere = statSync(path, { throwIfNoEntry: false }) !== undefined;
  try {
    accessSync(dirname(isThere ? realpathSync(path) : path), constants.W_OK);
    return null;
  } catch (error) {
    return systemFault(shown, EXPECTED_FOLDER, error);
  }
}

/** Bytes up to the end of the last whole line. */
function wholeLength(file: number, size: number): number {
  const piece = Buffer.alloc(PIECE_BYTES);
  for (let end = size; end > 0; end = Math.max(0, end - PIECE_BYTES)) {
    const from = Math.max(0, end - PIECE_BYTES);
    const read = readSync(file, piece, 0, end - from, from);
    const last = piece.subarray(0, read).lastIndexOf(LINE_END);
    if (last >= 0) return from + last + 1;
  }
  return 0;
}

function writerTo(file: number, shown: string): Journal {
  let isOpen = true;
  return {
    append: (line) => {
      const bytes = Buffer.from(`${line}\n`);
      let written = 0;
      try {
        while (written < bytes.length) written += writeSync(file, bytes, written);
        return null;
      } catch (error) {
        if (written > 0) ftruncateSync(file, fstatSync(file).size - written);
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
  { head, lines }: Pick<JournalText, 'head' | 'lines'>,
): Promise<Problem | null> {
  try {
    const pieces = [Buffer.from(`${head}\n`)];
    for (let from = 0; from < lines.length; from += LINES_OF_PIECE) {
      pieces.push(Buffer.from(`${lines.slice(from, from + LINES_OF_PIECE).join('\n')}\n`));
    }
    await writeFileAtomic(path, Buffer.concat(pieces));
    return null;
  } catch (error) {
    return systemFault(shown, EXPECTED, error);
  }
}
