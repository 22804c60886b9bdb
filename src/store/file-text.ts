/**
 * What text does a file hold? Folders, devices, big files and binary ones are turned away before
 * anything tries to understand them.
 */
import { readFileSync, statSync, type Stats } from 'node:fs';
import type { Checked, Problem } from '../quantity/problem.js';
import { fileProblem, systemFault } from './system-fault.js';

/** Most bytes that a file may hold. */
export const MOST_BYTES = 1_000_000;

const EXPECTED = 'a YAML file';

function size(bytes: number): string {
  return `${(bytes / 1_000_000).toFixed(bytes < 10_000_000 ? 2 : 0)} MB`;
}

function refusal(shown: string, stats: Stats): Problem | null {
  if (stats.isDirectory()) return fileProblem(shown, EXPECTED, 'a folder');
  if (!stats.isFile()) return fileProblem(shown, EXPECTED, 'a device or a pipe');
  if (stats.size <= MOST_BYTES) return null;
  return fileProblem(shown, `${EXPECTED} of at most ${size(MOST_BYTES)}`, `a file of ${size(stats.size)}`);
}

function decoded(shown: string, bytes: Buffer): Checked<string, Problem> {
  const expected = `${EXPECTED}: text in UTF-8`;
  const zeroAt = bytes.indexOf(0);
  if (zeroAt >= 0) {
    const received = `binary data (a zero at byte ${zeroAt + 1})`;
    return { ok: false, faults: [fileProblem(shown, expected, received)] };
  }
  try {
    return { ok: true, value: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { ok: false, faults: [fileProblem(shown, expected, 'binary data or another encoding')] };
  }
}

/** The text of the file at `path`; complaints name it as `shown`. */
export function readFileText(path: string, shown: string): Checked<string, Problem> {
  try {
    const refused = refusal(shown, statSync(path));
    if (refused !== null) return { ok: false, faults: [refused] };
    return decoded(shown, readFileSync(path));
  } catch (error) {
    return { ok: false, faults: [systemFault(shown, EXPECTED, error)] };
  }
}
