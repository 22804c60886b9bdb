/**
 * Runs the built program as a person does (`npm test` builds it first).
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The built entry of the program. */
export const PROGRAM = fileURLToPath(new URL('../../dist/main.js', import.meta.url));

/** What the program printed, and the code with which it ended. */
export interface Ending {
  code: number | null;
  out: string;
  err: string;
}

/** Runs the program with these arguments in the folder. */
export function runProgram(folder: string, ...given: string[]): Ending {
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [PROGRAM, ...given], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 256 * 1024 * 1024,
    env: { ...process.env, NO_COLOR: '1' },
  });
  if (error !== undefined) throw error;
  return { code: status, out: stdout, err: stderr };
}
