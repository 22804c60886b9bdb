/**
 * Does the first finding name what was planted? Every cause on two boards under several riders, in other strengths and seeds;
 * each board in a process of its own, as compiled code: a test runner's way of loading makes the loop four times slower.
 */
import { spawn } from 'node:child_process';
import { expect, it } from 'vitest';
import { bundled, ROOT } from '../bundled.js';

const PROGRAM = `
import { missesOf, ON_ROADS, ON_ROADS_WITH_BENT_KNEES, plantAll, unspoiled, USUAL } from './tests/explain/planted.ts';
const board = process.env.BOARD;
const riders = ['light', 'regular', 'heavy', 'seasoned'];
const cases = [
  ...plantAll(board, USUAL, { riders, times: 2 }),
  ...plantAll(board, ON_ROADS, { riders: ['first-timer'], times: 4 }),
  ...plantAll(board, ON_ROADS_WITH_BENT_KNEES, { riders, times: 1 }),
];
const blamed = unspoiled(board, USUAL, { riders, times: 4 }).map(({ findings }) => findings.length > 0);
console.log(JSON.stringify({ count: cases.length, misses: missesOf(cases), blamed }));
`;

interface Answer {
  count: number;
  misses: string[];
  /** Of composed rigs that nobody has spoiled, whether anything was blamed. */
  blamed: boolean[];
}

function plantedOn(board: string): Promise<Answer> {
  const child = spawn(process.execPath, ['--input-type=module'], {
    cwd: ROOT,
    env: { ...process.env, BOARD: board },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  child.stdin.end(bundled(PROGRAM));
  let printed = '';
  child.stdout.on('data', (chunk: Buffer) => (printed += chunk.toString()));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', () => resolve(JSON.parse(printed) as Answer));
  });
}

it(
  'names the planted cause first in at least 95 of 100 cases, of at least 200, and blames nobody where nothing was planted',
  { timeout: 600_000 },
  async () => {
    const answers = await Promise.all([plantedOn('otter'), plantedOn('yak')]);
    const count = answers.reduce((sum, answer) => sum + answer.count, 0);
    const misses = answers.flatMap((answer) => answer.misses);
    expect(count).toBeGreaterThanOrEqual(200);
    expect(misses.length / count, misses.join('\n')).toBeLessThanOrEqual(0.05);
    const blamed = answers.flatMap((answer) => answer.blamed);
    expect(blamed.length).toBeGreaterThanOrEqual(30);
    expect(blamed.filter(Boolean)).toEqual([]);
  },
);
