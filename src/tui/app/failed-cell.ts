/**
 * What is told on a screen of a cell that could not be computed? That it is so, and how it is tried again; the bench goes on.
 */
import type { Problem } from '../../quantity/problem.js';
import { WorkFailed } from '../../tasks/share-out.js';

/** The problem behind a cell that failed, under the name of the work that it was for; null for every other error. */
export function failedCell(error: unknown, work: { key: string; again: string }): Problem[] | null {
  if (!(error instanceof WorkFailed)) return null;
  const expected = `runs that can be computed; ${work.again}`;
  return [{ file: '', line: null, column: null, key: work.key, expected, received: error.message }];
}
