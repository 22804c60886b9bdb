/**
 * How long does a sweep take? As its user runs it: seconds to the first line, to the ranking over all cells, and to the end with
 * the finalists seen from all sides.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { programFolder } from '../../src/store/places.js';
import { print } from './figures.js';

const CANDIDATES = 500;
const CELLS = 60;

/** Sweeps the starter set; `more` is added to the command. */
async function timed(more: readonly string[]): Promise<{ firstS: number; rankedS: number; endS: number }> {
  const folder = mkdtempSync(join(tmpdir(), 'underfoot-bench-'));
  const startMs = performance.now();
  const sinceS = () => (performance.now() - startMs) / 1000;
  const words = ['--candidates', String(CANDIDATES), '--charge', '80', '--out', join(folder, 'sweep.ndjson')];
  const child = spawn(process.execPath, [join(programFolder(), 'dist/main.js'), 'sweep', ...words, ...more], {
    cwd: programFolder(),
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let firstS = Infinity;
  let rankedS = Infinity;
  child.stderr!.on('data', (piece: Buffer) => {
    firstS = Math.min(firstS, sinceS());
    if (piece.toString().includes(`best over ${CELLS} cells`)) rankedS = Math.min(rankedS, sinceS());
  });
  await new Promise((resolve) => child.on('close', resolve));
  rmSync(folder, { recursive: true });
  return { firstS, rankedS, endS: sinceS() };
}

/** Prints the figures of a sweep, without going downhill and with it. */
export async function benchSweep(): Promise<void> {
  const what = `sweep, ${CANDIDATES} candidates x ${CELLS} cells`;
  const race = await timed(['--no-downhill']);
  print(`${what}: first line`, race.firstS, 's');
  print(`${what}: ranked by the race`, race.rankedS, 's');
  const whole = await timed([]);
  print(`${what}: ranked with the descent`, whole.rankedS, 's');
  print(`${what}: finalists seen from all sides`, whole.endS, 's');
}
