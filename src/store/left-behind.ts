/**
 * What lies beside a journal that a process may have left when it was killed while the lines were put in order? Only named, never
 * removed: a copy that somebody has made looks the same.
 */
import { closeSync, openSync, readdirSync, readSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { systemCode } from './system-fault.js';

/** Paths beside a journal with its name, a dot and a number, that begin as it does; one with nothing in it counts too. */
export function leftBehind(path: string, head: string): string[] {
  try {
    const real = statSync(path, { throwIfNoEntry: false }) === undefined ? path : realpathSync(path);
    const before = `${basename(real)}.`;
    return readdirSync(dirname(real))
      .filter((name) => name.startsWith(before) && /^\d+$/.test(name.slice(before.length)))
      .map((name) => join(dirname(real), name))
      .filter((file) => statSync(file).isFile() && beginsAs(file, Buffer.from(`${head}\n`)))
      .sort();
  } catch (error) {
    if (systemCode(error) === '') throw error;
    return [];
  }
}

function beginsAs(file: string, head: Buffer): boolean {
  const handle = openSync(file, 'r');
  try {
    const found = Buffer.alloc(head.length);
    const length = readSync(handle, found, 0, head.length, 0);
    return found.subarray(0, length).equals(head.subarray(0, length));
  } finally {
    closeSync(handle);
  }
}
