/**
 * What does a sweep say of a cell that no thread survives? Which it is, and 1 as the end; the other runs are kept, and when the
 * trouble is over the same command comes to what it always comes to.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { dyingProgram } from './dying-program.js';
import { runProgram } from './run-program.js';
import { OPEN_SWEEP, sweepFolder, wholeLines } from './sweep-folder.js';

const DEADLY = { scenario: 'drop', rider: 'bo', chargePercent: 20 };

it('a cell that ends its thread twice is named, and nothing else is lost', () => {
  const folder = sweepFolder();
  const given = [...OPEN_SWEEP, '--json', '--workers', '2'];
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [dyingProgram(DEADLY), ...given, '--out', 'kept.ndjson'],
    { cwd: folder, encoding: 'utf8' },
  );
  expect([status, stdout]).toEqual([1, '']);
  const lines = stderr.trimEnd().split('\n');
  expect(lines.at(-2)).toMatch(/^kept \d+ runs in kept\.ndjson; the same command goes on from there$/);
  expect(lines.at(-1)).toMatch(
    /^a run failed, and failed again: drop, bo, 20 %, seed 1: its thread ended; with proportionalAPerDeg \S+ A\S*, rateAPerDegPerS \S+ A\S*$/,
  );
  const before = wholeLines(join(folder, 'kept.ndjson'));
  expect(before.length).toBeGreaterThan(1);

  const whole = runProgram(folder, ...given, '--out', 'whole.ndjson');
  const again = runProgram(folder, ...given, '--out', 'kept.ndjson');
  expect([again.code, again.out === whole.out]).toEqual([0, true]);
  expect(again.err).toContain(`${before.length - 1} runs are known already from kept.ndjson`);
  const text = (name: string) => readFileSync(join(folder, name), 'utf8');
  expect(text('kept.ndjson') === text('whole.ndjson')).toBe(true);
});
