/**
 * Does a sweep come to the same bytes whoever computes it and whatever ends it on the way, and is nothing lost and nothing made
 * twice?
 */
import { appendFileSync, readFileSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram } from './run-program.js';
import { OPEN_SWEEP, SMALL_SWEEP, stoppedAt, sweepFolder, wholeLines } from './sweep-folder.js';

const PATIENCE_MS = 120_000;

/** The run that a line is of. */
function runOf(line: string): string {
  const { how, trial, numbers } = JSON.parse(line) as Record<string, unknown>;
  return JSON.stringify([how, trial, numbers]);
}

/** A sweep that nobody disturbs: what it prints and what it keeps. */
function undisturbed(folder: string) {
  const path = join(folder, 'whole.ndjson');
  const { code, out } = runProgram(folder, ...SMALL_SWEEP, '--workers', '1', '--out', path);
  expect(code).toBe(0);
  return { out, kept: readFileSync(path, 'utf8') };
}

describe('a sweep', () => {
  it(
    'comes to the same bytes with 1, 2, 4 and 8 threads',
    () => {
      const folder = sweepFolder();
      const whole = undisturbed(folder);
      expect(JSON.parse(whole.out)).toMatchObject({ caution: expect.any(String) });
      for (const count of [2, 4, 8]) {
        const path = join(folder, `of-${count}.ndjson`);
        const { code, out } = runProgram(folder, ...SMALL_SWEEP, '--workers', String(count), '--out', path);
        expect([code, out === whole.out, readFileSync(path, 'utf8') === whole.kept]).toEqual([0, true, true]);
      }
    },
    PATIENCE_MS,
  );

  it(
    'begun anew after every kind of ending makes no run twice and comes to the same bytes',
    async () => {
      const folder = sweepFolder();
      const whole = undisturbed(folder);
      const all = whole.kept.split('\n').length - 1;
      const path = join(folder, 'stopped.ndjson');
      const stops = [
        ['SIGKILL', 0, 1],
        ['SIGKILL', 1, 2],
        ['SIGINT', 0.1, 4],
        ['SIGKILL', 0.25, 8],
        ['SIGTERM', 0.4, 2],
        ['SIGKILL', 0.55, 1],
        ['SIGHUP', 0.7, 4],
        ['SIGKILL', 0.95, 2],
      ] as const;
      let before: string[] = [];
      for (const [signal, at, workers] of stops) {
        const given = [...SMALL_SWEEP, '--workers', String(workers), '--out', path];
        const lineCount = at === 1 ? 1 : Math.round(at * all);
        const stopped = await stoppedAt({ folder, given, path }, signal, lineCount);
        if (stopped === null) throw new Error(`it ended before ${signal}`);
        const now = wholeLines(path);
        // What was there stays as it is, and nothing that had been seen is lost.
        expect(now.slice(0, before.length)).toEqual(before);
        expect(now.slice(0, stopped.seen.length)).toEqual(stopped.seen);
        const runs = now.slice(1).map(runOf);
        expect(new Set(runs).size).toBe(runs.length);
        const code = { SIGKILL: null, SIGINT: 130, SIGTERM: 143, SIGHUP: 129 }[signal];
        expect([stopped.code, stopped.signal]).toEqual([code, code === null ? 'SIGKILL' : null]);
        if (code !== null)
          expect(stopped.err).toMatch(/kept \d+ runs in .*stopped\.ndjson; the same command/);
        before = now;
      }
      const last = runProgram(folder, ...SMALL_SWEEP, '--out', path);
      expect([last.code, last.out === whole.out]).toEqual([0, true]);
      expect(last.err).toContain(`${before.length - 1} runs are known already`);
      expect(readFileSync(path, 'utf8') === whole.kept).toBe(true);
    },
    PATIENCE_MS,
  );

  it('that is complete is answered from its file, which stays as it is', () => {
    const folder = sweepFolder();
    const path = join(folder, 'whole.ndjson');
    const given = [...OPEN_SWEEP, '--json', '--out', path];
    const first = runProgram(folder, ...given);
    const kept = readFileSync(path, 'utf8');
    const again = runProgram(folder, ...given);
    expect([again.code, again.out === first.out, readFileSync(path, 'utf8') === kept]).toEqual([
      0,
      true,
      true,
    ]);
  });

  it('quietly makes a last line anew that was cut off anywhere, the first line too', () => {
    const folder = sweepFolder();
    const path = join(folder, 'part.ndjson');
    const run = () => {
      const { code, err } = runProgram(folder, ...OPEN_SWEEP, '--shard', '1/4', '--out', path);
      expect([code, err.includes('expected')]).toEqual([0, false]);
      return readFileSync(path, 'utf8');
    };
    const kept = run();
    const firstEnd = kept.indexOf('\n');
    const lastStart = kept.lastIndexOf('\n', kept.length - 2) + 1;
    for (const length of [0, 1, firstEnd, firstEnd + 1, lastStart + 1, kept.length - 1]) {
      truncateSync(path, length);
      expect([length, run() === kept]).toEqual([length, true]);
    }
    appendFileSync(path, '\u0000\u0000{"how":');
    expect(run() === kept).toBe(true);
  });
});
