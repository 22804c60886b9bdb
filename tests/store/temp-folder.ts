/**
 * A folder that exists for one test and is gone after it.
 */
import { mkdirSync, mkdtempSync, readdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** Makes the folder; it is removed when the running test is finished. Answers its absolute path. */
export function tempFolder(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'underfoot-test-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Writes a file below the folder, making folders on the way; answers its path. */
export function putFile(folder: string, name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, content);
  return path;
}

/** Every path below the folder, sorted, for comparing before and after. */
export function allPaths(folder: string): string[] {
  return readdirSync(folder, { recursive: true }).map(String).toSorted();
}
