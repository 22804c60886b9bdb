/**
 * A program for a process of its own, as one compiled text: measured there, nobody else's garbage or loading counts.
 */
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';

/** The folder that a bundled program is to run in. */
export const ROOT = fileURLToPath(new URL('..', import.meta.url));

/** The text of a program with all that it imports of ours; its imports count from the project's folder. */
export function bundled(program: string): string {
  const [bundle] = buildSync({
    stdin: { contents: program, resolveDir: ROOT, loader: 'tsx' },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    packages: 'external',
    jsx: 'automatic',
  }).outputFiles;
  return bundle!.text;
}
