/**
 * What did the system say when a file could not be read or written? Its codes in plain words.
 */
import type { Problem } from '../quantity/problem.js';

const WORDS_OF: Readonly<Record<string, string>> = {
  EACCES: 'no permission',
  EPERM: 'no permission',
  EROFS: 'a disk that can only be read',
  ENOSPC: 'no space left on the disk',
  EDQUOT: 'no space left in the disk quota',
  EFBIG: 'a file too big for the disk',
  EISDIR: 'a folder',
  ENOTDIR: 'a file where a folder is needed',
  ENOENT: 'nothing there',
  EEXIST: 'a file that is there already',
  ELOOP: 'a circle of links',
  ENAMETOOLONG: 'a name that is too long',
  EMFILE: 'too many open files',
  EIO: 'a fault of the disk',
};

/** The code of a system error such as 'ENOENT'; empty for any other error. */
export function systemCode(error: unknown): string {
  const code = error instanceof Error ? Reflect.get(error, 'code') : undefined;
  return typeof code === 'string' ? code : '';
}

/**
 * The problem behind a failed read or write of `file`. An error that did not come from the system
 * is our own bug and is thrown again.
 */
export function systemFault(file: string, expected: string, error: unknown): Problem {
  const code = systemCode(error);
  if (code === '') throw error;
  const received = WORDS_OF[code] ?? `the system's error ${code}`;
  return fileProblem(file, expected, received);
}

/** A problem with a file as a whole. */
export function fileProblem(file: string, expected: string, received: string): Problem {
  return { file, line: null, column: null, key: '', expected, received };
}
