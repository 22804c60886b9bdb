/**
 * What does a sweep say of a place where it cannot keep its runs? The file, what was expected, what came, and 2 as the end; what
 * stands there is left as it is.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allPaths } from '../store/temp-folder.js';
import { PROGRAM, runProgram } from './run-program.js';
import { OPEN_SWEEP, sweepFolder, wholeLines } from './sweep-folder.js';

const OWN = 'expected the results of this very sweep, or a name that is free, received';

const PART = [...OPEN_SWEEP, '--shard', '2/3'] as const;

/** Runs a part of the sweep into a file of some content; answers what was said of it, and holds that the file stayed. */
function saidOf(content: string, given: readonly string[] = PART): string {
  const folder = sweepFolder();
  writeFileSync(join(folder, 'mine.txt'), content);
  const before = allPaths(folder);
  const { code, out, err } = runProgram(folder, ...given, '--out', 'mine.txt');
  expect([code, out]).toEqual([2, '']);
  expect(readFileSync(join(folder, 'mine.txt'), 'utf8')).toBe(content);
  expect(allPaths(folder)).toEqual(before);
  return err;
}

/** What that part keeps. */
function keptOfPart(): string {
  const folder = sweepFolder();
  expect(runProgram(folder, ...PART, '--out', 'kept.ndjson').code).toBe(0);
  return readFileSync(join(folder, 'kept.ndjson'), 'utf8');
}

describe('a file that is there already is left as it is', () => {
  it.each(['my notes\nof last year\n', 'my notes', '{\n', '{"a":1}\n', '\n', '[]\n', 'null\n'])(
    'that no sweep has written: %j',
    (content) => {
      expect(saidOf(content)).toBe(`mine.txt: ${OWN} a file that no sweep has written\n`);
    },
  );

  it('of another sweep', () => {
    expect(saidOf(keptOfPart(), ['sweep', '--grid', '2', '--exhaustive'])).toBe(
      `mine.txt: ${OWN} results of another sweep\n`,
    );
  });

  it('of another part', () => {
    const part = keptOfPart();
    for (const given of [OPEN_SWEEP, [...OPEN_SWEEP, '--shard', '1/3']]) {
      expect(saidOf(part, given)).toBe(`mine.txt: ${OWN} results of part 2 of 3\n`);
    }
  });

  it('of another version', () => {
    const old = keptOfPart().replace(/"version":"[^"]*"/, '"version":"0.0.1"');
    expect(saidOf(old)).toBe(`mine.txt: ${OWN} results of version 0.0.1 of this program\n`);
  });

  it('with something changed in its first line', () => {
    const changed = keptOfPart().replace('"massKg":96', '"massKg":97');
    expect(saidOf(changed)).toBe(`mine.txt: ${OWN} a first line that somebody has changed\n`);
  });

  it('with damaged lines in the middle, each told by its number', () => {
    const lines = keptOfPart().split('\n');
    lines[2] = lines[2]!.slice(0, 30);
    lines[5] = '';
    lines[8] = lines[8]!.replace(/"trial":\d+/, '"trial":400');
    lines.splice(9, 0, lines[10]!.replace(/"measuredS":[\d.]+/, '"measuredS":0.5'));
    const said = saidOf(lines.join('\n')).split('\n');
    expect(said[0]).toMatch(/^mine\.txt:3: expected a result as this program writes it, received \{"how/);
    expect(said[1]).toBe('mine.txt:6: expected a result as this program writes it, received nothing');
    expect(said[2]).toMatch(/^mine\.txt:9: expected a result of a cell of this sweep, received \{"how/);
    expect(said[3]).toMatch(
      /^mine\.txt:12: expected the same result as elsewhere for the same run, received/,
    );
    expect(said.slice(4)).toEqual(['']);
  });

  it('with nothing but damaged lines, not all of them told', () => {
    const [head, ...lines] = keptOfPart().trimEnd().split('\n');
    const said = saidOf([head, ...lines.map(() => 'x'), ''].join('\n'))
      .trimEnd()
      .split('\n');
    expect(said).toHaveLength(6);
    expect(said[5]).toBe(`mine.txt: expected results, received ${lines.length - 5} more lines that are none`);
  });
});

describe('a place that takes no file', () => {
  const said = (out: string, prepare?: (folder: string) => void) => {
    const folder = sweepFolder();
    prepare?.(folder);
    const before = allPaths(folder);
    const { code, err } = runProgram(folder, ...OPEN_SWEEP, '--out', out);
    expect([code, allPaths(folder)]).toEqual([2, before]);
    return err;
  };

  it('a folder', () => {
    expect(said('here', (folder) => mkdirSync(join(folder, 'here')))).toMatch(
      /^here: .* received a folder\n/,
    );
  });

  it('a device', () => {
    expect(said('/dev/null')).toMatch(/^\/dev\/null: expected .*, received a device or a pipe\n/);
  });

  it('a folder that is a file', () => {
    expect(said('scenarios/level.yaml/x')).toMatch(/received a file where a folder is needed\n/);
  });

  it('a folder that nobody writes into', () => {
    expect(said('/sys/x.ndjson')).toMatch(
      /^\/sys\/x\.ndjson: expected .*, received (no permission|a disk that can only be read)\n$/,
    );
  });
});

/** Runs the sweep with no file longer than so many blocks of 512 bytes. */
function withLimit(folder: string, blocks: number) {
  const words = [
    process.execPath,
    PROGRAM,
    ...OPEN_SWEEP,
    '--json',
    '--workers',
    '2',
    '--out',
    'full.ndjson',
  ];
  const { status, stdout, stderr } = spawnSync(
    'sh',
    ['-c', `ulimit -f ${blocks}; exec "$@"`, 'sh', ...words],
    {
      cwd: folder,
      encoding: 'utf8',
    },
  );
  return { code: status, out: stdout, err: stderr };
}

describe('a disk that is full', () => {
  it('ends it with what is kept in whole lines; with room again the same command comes to the same bytes', () => {
    const folder = sweepFolder();
    const whole = runProgram(folder, ...OPEN_SWEEP, '--json', '--out', 'whole.ndjson');
    const kept = readFileSync(join(folder, 'whole.ndjson'), 'utf8');
    const full = withLimit(folder, 100);
    expect([full.code, full.out]).toEqual([2, '']);
    expect(full.err).toMatch(/kept \d+ runs in full\.ndjson/);
    expect(full.err).toMatch(
      /full\.ndjson: expected a file that can be written, received a file too big for the disk\n$/,
    );
    const text = readFileSync(join(folder, 'full.ndjson'), 'utf8');
    expect(text.endsWith('}\n')).toBe(true);
    expect(wholeLines(join(folder, 'full.ndjson')).map((line) => typeof JSON.parse(line))).not.toContain(
      'string',
    );
    const again = runProgram(folder, ...OPEN_SWEEP, '--json', '--out', 'full.ndjson');
    expect([again.code, again.out === whole.out]).toEqual([0, true]);
    expect(readFileSync(join(folder, 'full.ndjson'), 'utf8') === kept).toBe(true);
  });

  it('from the beginning leaves no file at all', () => {
    const folder = sweepFolder();
    const before = allPaths(folder);
    const full = withLimit(folder, 1);
    expect([full.code, full.err]).toEqual([
      2,
      'full.ndjson: expected a file that can be written, received a file too big for the disk\n',
    ]);
    expect(allPaths(folder)).toEqual(before);
  });
});
