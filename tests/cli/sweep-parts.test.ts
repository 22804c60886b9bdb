/**
 * Is a sweep that was shared out the same as one that was not? Parts run by several processes and put together give the same bytes;
 * what is missing is made and said, what does not belong together is told.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PROGRAM, runProgram } from './run-program.js';
import { OPEN_SWEEP, sweepFolder, wholeLines } from './sweep-folder.js';

const read = (folder: string, name: string) => readFileSync(join(folder, name), 'utf8');

/** The sweep in one process: what it prints, and what it keeps. */
function whole(folder: string) {
  const { code, out } = runProgram(folder, ...OPEN_SWEEP, '--json', '--out', 'whole.ndjson');
  expect(code).toBe(0);
  return { out, kept: read(folder, 'whole.ndjson') };
}

function runPart(folder: string, part: number, parts: number): string {
  const name = `part-${part}of${parts}.ndjson`;
  const { code, out } = runProgram(folder, ...OPEN_SWEEP, '--shard', `${part}/${parts}`, '--out', name);
  expect([code, out]).toEqual([0, expect.stringMatching(`^part ${part} of ${parts}: \\d+ candidates`)]);
  return name;
}

describe('parts of a sweep', () => {
  it('put together give the same bytes, a part that is missing or not finished made here', () => {
    const folder = sweepFolder();
    const asOne = whole(folder);
    const names = [1, 2, 3].map((part) => runPart(folder, part, 3));
    const merge = (files: readonly string[]) => {
      rmSync(join(folder, 'all.ndjson'), { force: true });
      return runProgram(folder, 'sweep', 'merge', ...files, '--json', '--out', 'all.ndjson');
    };
    const all = merge(names.toReversed());
    expect([all.code, all.out === asOne.out, read(folder, 'all.ndjson') === asOne.kept]).toEqual([
      0,
      true,
      true,
    ]);
    expect(all.err).not.toContain('missing');

    const text = read(folder, names[1]!);
    const cut = text.slice(0, text.lastIndexOf('\n', text.length - 2) + 20);
    const missing = wholeLines(join(folder, names[0]!)).length - 1;
    rmSync(join(folder, names[0]!));
    const some = runProgram(folder, 'sweep', 'merge', names[0]!, names[2]!);
    expect([some.code, some.err]).toEqual([
      2,
      `${names[0]}: expected results of a sweep, or of a part of one, received nothing there\n`,
    ]);
    writeFileSync(join(folder, names[1]!), cut);
    const rest = merge([names[2]!, names[1]!]);
    expect([rest.code, rest.out === asOne.out, read(folder, 'all.ndjson') === asOne.kept]).toEqual([
      0,
      true,
      true,
    ]);
    expect(rest.err).toContain(`part 1 of 3: ${missing} runs are missing and are made here\n`);
    expect(rest.err).toContain('part 2 of 3: 1 runs are missing and are made here\n');
    expect(read(folder, names[1]!)).toBe(cut);
  });

  it('that do not belong together are told, all at once', () => {
    const folder = sweepFolder();
    const [one, other] = [runPart(folder, 1, 2), runPart(folder, 1, 3)];
    const given = ['sweep', '--grid', '2', '--exhaustive', '--shard', '2/2', '--out', 'foreign.ndjson'];
    const foreign = runProgram(folder, ...given);
    expect(foreign.code).toBe(0);
    const files = [one, one, other, 'foreign.ndjson', 'none.ndjson', 'profiles/riders/bo.yaml'];
    const { code, out, err } = runProgram(folder, 'sweep', 'merge', ...files, '--out', one);
    expect([code, out]).toEqual([2, '']);
    expect(err.trimEnd().split('\n').sort()).toEqual(
      [
        `${one}: expected each part once, received part 1 of 2 again, as in ${one}`,
        `${other}: expected a part of 2, as ${one}, received part 1 of 3`,
        `foreign.ndjson: expected a part of the same sweep as ${one}, received results of another sweep`,
        'none.ndjson: expected results of a sweep, or of a part of one, received nothing there',
        'profiles/riders/bo.yaml: expected results of a sweep, or of a part of one, received a file that no sweep has written',
      ].sort(),
    );
  });

  it('are never put together into one of themselves', () => {
    const folder = sweepFolder();
    const one = runPart(folder, 1, 2);
    const before = read(folder, one);
    const { code, err } = runProgram(folder, 'sweep', 'merge', one, '--out', one);
    expect([code, read(folder, one) === before]).toEqual([2, true]);
    expect(err).toMatch(/received results of part 1 of 2\n$/);
  });

  it('need files, and no options that they know better', () => {
    const folder = sweepFolder();
    const none = runProgram(folder, 'sweep', 'merge');
    expect([none.code, none.err]).toEqual([2, expect.stringContaining("missing required argument 'files'")]);
    const foreign = runProgram(folder, 'sweep', 'merge', 'x', '--grid', '3');
    expect([foreign.code, foreign.err]).toEqual([
      2,
      expect.stringContaining('expected no --grid with merge'),
    ]);
    const raced = runProgram(folder, 'sweep', '--shard', '1/2');
    expect([raced.code, raced.err]).toEqual([2, expect.stringContaining('--shard')]);
  });
});

const hasParallel = spawnSync('parallel', ['--version'], { stdio: 'ignore' }).status === 0;

it.skipIf(!hasParallel)('GNU parallel runs the parts in several processes at once', () => {
  const folder = sweepFolder();
  const asOne = whole(folder);
  const words = [process.execPath, PROGRAM, ...OPEN_SWEEP, '--workers', '1', '--shard', '{}/4'];
  const { status } = spawnSync(
    'parallel',
    ['--will-cite', '-j2', ...words, '--out', 'parts/{}.ndjson', ':::', '1', '2', '3', '4'],
    { cwd: folder, stdio: 'ignore' },
  );
  expect(status).toBe(0);
  const files = [1, 2, 3, 4].map((part) => `parts/${part}.ndjson`);
  const all = runProgram(folder, 'sweep', 'merge', ...files, '--json', '--out', 'all.ndjson');
  expect([all.code, all.out === asOne.out, read(folder, 'all.ndjson') === asOne.kept]).toEqual([
    0,
    true,
    true,
  ]);
});
