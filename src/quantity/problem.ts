/**
 * What is wrong with an input, as data: where, what was expected with its unit, what came.
 * A complaint knows the place inside a value; a problem knows the place in a file.
 */

/** A fault inside a value that was read; `path` leads to it. */
export interface Complaint {
  path: readonly PropertyKey[];
  expected: string;
  received: string;
  suggestion?: string;
}

/** A fault in a file or in an argument; line and column count from 1 and are null where there is none. */
export interface Problem {
  file: string;
  line: number | null;
  column: number | null;
  key: string;
  expected: string;
  received: string;
  suggestion?: string;
}

/** Either a checked value or everything that is wrong with it. */
export type Checked<T, Fault> = { ok: true; value: T } | { ok: false; faults: Fault[] };
