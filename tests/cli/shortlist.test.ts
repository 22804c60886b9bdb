/**
 * Does the command keep, annotate, list, show and remove as it says, and lose nothing when it cannot?
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { keptOfText } from '../../src/store/kept-text.js';
import { sealOf } from '../../src/store/short-hash.js';
import { keptFixture, putKept } from '../tasks/kept-fixture.js';
import { allPaths, putFile, tempFolder } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { PROGRAM, runProgram } from './run-program.js';
import { sweepFolder } from './sweep-folder.js';

/** Room for what takes seconds on a machine that is busy. */
const LONG_MS = 120_000;

const FEW = ['--rider', 'kim', '--scenarios', 'level', '--charge', 'own', '--workers', '1'];

/** Whether this system lets us have a disk of our own to fill. */
const canMount = spawnSync('unshare', ['-rm', 'mount', '-t', 'tmpfs', 'tmpfs', '/mnt']).status === 0;

const textAt = (folder: string, name: string) => readFileSync(join(folder, `shortlist/${name}.yaml`), 'utf8');

describe('adding', () => {
  it(
    'proves, keeps, shows; again only when forced, and then the rides stay',
    () => {
      const folder = sweepFolder();
      const first = runProgram(folder, 'shortlist', 'add', 'slate', '--as', 'one', '--note', 'a: b', ...FEW);
      expect([first.code, first.err.includes('wrote shortlist/one.yaml')]).toEqual([0, true]);
      expect(first.out).toMatch(/^one: numbers \w{4}-\w{4}\nKept from slate on /);
      const kept = keptOfText(textAt(folder, 'one'), 'one');
      expect(kept).toMatchObject({ ok: true, value: { note: 'a: b', rides: [], origin: { from: 'slate' } } });
      if (kept.ok) expect(sealOf(kept.value)).toBe(kept.value.seal);

      const noted = runProgram(
        folder,
        'shortlist',
        'note',
        'one',
        'Calm',
        '--felt',
        'composed=4',
        '--on',
        '2026-06-01',
      );
      expect(noted.code).toBe(0);
      const before = textAt(folder, 'one');
      const again = runProgram(folder, 'shortlist', 'add', 'slate', '--as', 'one', ...FEW);
      expect([again.code, again.out, textAt(folder, 'one') === before]).toEqual([2, '', true]);
      const forced = runProgram(
        folder,
        'shortlist',
        'add',
        'slate',
        '--as',
        'one',
        '--force',
        '--json',
        ...FEW,
      );
      expect([forced.code, JSON.parse(forced.out)]).toMatchObject([
        0,
        {
          name: 'one',
          path: 'shortlist/one.yaml',
          hasReplaced: true,
          value: { note: 'a: b', rides: [{ on: '2026-06-01', note: 'Calm', felt: { composed: 4 } }] },
        },
      ]);
      expect(allPaths(join(folder, 'shortlist'))).toEqual(['one.yaml']);
    },
    LONG_MS,
  );

  it(
    'stopped by Ctrl-C keeps nothing and ends with 130',
    async () => {
      const folder = sweepFolder();
      const before = allPaths(folder);
      const given = ['shortlist', 'add', 'slate', '--as', 'one', '--seeds', '40', '--workers', '1'];
      const child = spawn(process.execPath, [PROGRAM, ...given], {
        cwd: folder,
        stdio: ['ignore', 'pipe', 'pipe'],
      });
      let err = '';
      child.stderr.on('data', (piece: Buffer) => {
        if (err === '') child.kill('SIGINT');
        err += piece.toString();
      });
      const code = await new Promise((resolve) => child.once('close', resolve));
      expect([code, err]).toEqual([130, 'running every cell\nstopped: nothing was kept\n']);
      expect(allPaths(folder)).toEqual(before);
    },
    LONG_MS,
  );

  it('tells every problem at once before anything is computed', () => {
    const folder = workingFolder();
    const given = [
      'shortlist',
      'add',
      'slte',
      '--as',
      'Not a name',
      '--board',
      'none',
      '--note',
      'x'.repeat(601),
    ];
    const { code, out, err } = runProgram(folder, ...given);
    expect([code, out]).toEqual([2, '']);
    for (const part of ['did you mean slate', 'board: expected', 'name: expected', 'note: expected']) {
      expect(err.toLowerCase()).toContain(part);
    }
    expect(existsSync(join(folder, 'shortlist'))).toBe(false);
  });
});

describe('a note', () => {
  it('is exchanged, and tells the one that was', () => {
    const folder = workingFolder();
    putKept(folder, 'one', keptFixture({ note: 'was' }));
    const before = textAt(folder, 'one');
    const { code, err } = runProgram(folder, 'shortlist', 'note', 'one', 'is: "new" #1');
    expect([code, err]).toEqual([0, 'wrote the note into shortlist/one.yaml\nthe note was: was\n']);
    expect(textAt(folder, 'one')).toBe(before.replace('note: was', `note: 'is: "new" #1'`));
  });

  it('with ratings is a ride of today, and says where that leads', () => {
    const folder = workingFolder();
    putKept(folder, 'one');
    const { code, out, err } = runProgram(
      folder,
      'shortlist',
      'note',
      'one',
      'Nervous',
      '--felt',
      'twitchy=4,composed=1',
    );
    expect([code, err]).toEqual([0, 'wrote a ride into shortlist/one.yaml\n']);
    expect(out.replaceAll('\n', ' ')).toContain(
      'underfoot explain slate --board pebble --rider kim --scenarios kerb',
    );
    expect(textAt(folder, 'one')).toMatch(
      /\n {2}- on: \d{4}-\d\d-\d\d\n {4}note: Nervous\n {4}felt: \{ twitchy: 4, composed: 1 \}\n/,
    );
  });

  it('on a file changed by hand is written and the damage told, with 1', () => {
    const folder = workingFolder();
    const path = putKept(folder, 'one', keptFixture({ note: 'was' }));
    writeFileSync(path, readFileSync(path, 'utf8').replace('score: 0.7312', 'score: 0.1'));
    const { code, err } = runProgram(folder, 'shortlist', 'note', 'one', 'is');
    expect([code, textAt(folder, 'one').includes('note: is')]).toEqual([1, true]);
    expect(err).toContain('changed by hand');
  });

  it.each([
    [['note', 'one'], /expected words, or --felt/],
    [['note', 'one', 'x', '--felt', 'twichy=4'], /Did you mean twitchy/],
    [['note', 'one', 'x', '--felt', 'twitchy=6'], /whole number from 1 to 5/],
    [['note', 'one', 'x', '--felt', 'twitchy=2', '--felt', 'twitchy=3'], /one rating of twitchy/],
    [['note', 'one', 'x', '--on', '2026-02-30'], /on: expected a day such as/],
    [['note', 'two', 'x'], /shortlist add PROFILE/],
    [['note', '../one', 'x'], /name: expected a name/],
    [['show', 'two'], /shortlist add PROFILE/],
    [['remove', 'two'], /shortlist add PROFILE/],
  ])('%j is refused and nothing changes', (given, said) => {
    const folder = workingFolder();
    putKept(folder, 'one');
    const before = textAt(folder, 'one');
    const { code, out, err } = runProgram(folder, 'shortlist', ...given);
    expect([code, out, textAt(folder, 'one') === before]).toEqual([2, '', true]);
    expect(err).toMatch(said);
  });

  it('that may not become a file leaves the one that is, and nothing beside it', () => {
    const folder = workingFolder();
    putKept(folder, 'one');
    const before = textAt(folder, 'one');
    const words = [process.execPath, PROGRAM, 'shortlist', 'note', 'one', 'x'.repeat(500)];
    const { status } = spawnSync('sh', ['-c', 'ulimit -f 1; exec "$@"', 'sh', ...words], { cwd: folder });
    expect([status === 0, textAt(folder, 'one') === before]).toEqual([false, true]);
    expect(allPaths(join(folder, 'shortlist'))).toEqual(['one.yaml']);
  });

  it.skipIf(!canMount)('on a full disk leaves the file as it was, and says so', () => {
    const folder = workingFolder();
    putKept(folder, 'one');
    // A disk of 64 kB over the folder, which nobody else sees and which is gone with the shell.
    const script = `cp -r . ../$0 && mount -t tmpfs -o size=64k tmpfs . && cp -r ../$0/* "$PWD" && cd "$PWD" || exit 99
      head -c 100000 /dev/zero > fill 2> /dev/null
      "$@"; code=$?
      cmp shortlist/one.yaml ../$0/shortlist/one.yaml && ls -A shortlist
      rm -r ../$0; exit $code`;
    const words = [process.execPath, PROGRAM, 'shortlist', 'note', 'one', 'x'.repeat(500)];
    const copy = `${basename(folder)}-copy`;
    const { status, stdout, stderr } = spawnSync('unshare', ['-rm', 'sh', '-c', script, copy, ...words], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect([status, stdout, stderr]).toEqual([
      2,
      'one.yaml\n',
      'shortlist/one.yaml: expected a file that can be written, received no space left on the disk\n',
    ]);
  });
});

describe('what is kept', () => {
  it('is listed with what is wrong beside it, with 2', () => {
    const folder = workingFolder();
    putKept(folder, 'one');
    putFile(folder, 'shortlist/two.yaml', 'note: x\n');
    putFile(folder, 'shortlist/Three.yaml', 'note: x\n');
    const { code, out, err } = runProgram(folder, 'shortlist', 'list', '--json');
    expect([code, JSON.parse(out)]).toMatchObject([
      2,
      { kept: [{ name: 'one', path: 'shortlist/one.yaml' }] },
    ]);
    expect(err).toContain('shortlist/two.yaml');
    expect(err).toContain('shortlist/Three.yaml');
    expect(runProgram(folder, 'shortlist', 'show', 'two')).toMatchObject({ code: 2, out: '' });
    rmSync(join(folder, 'shortlist/one.yaml'));
    expect(runProgram(folder, 'shortlist', 'list')).toMatchObject({ code: 2, out: '' });
  });

  it('is shown, and as JSON it is the file', () => {
    const folder = workingFolder();
    const kept = keptFixture({ rides: [{ on: '2026-06-01', note: 'Calm', felt: { loose: 2 } }] });
    putKept(folder, 'one', kept);
    const { code, out } = runProgram(folder, 'shortlist', 'show', 'one', '--json');
    expect([code, JSON.parse(out)]).toEqual([0, { name: 'one', path: 'shortlist/one.yaml', value: kept }]);
    expect(runProgram(folder, 'shortlist', 'show', 'one').out).toContain('2026-06-01: loose 2. Calm');
  });

  it('is removed by name; a damaged one only when forced', () => {
    const folder = workingFolder();
    putKept(folder, 'one');
    const path = putFile(folder, 'shortlist/two.yaml', 'note: x\n');
    expect(runProgram(folder, 'shortlist', 'remove', 'two').code).toBe(2);
    expect(existsSync(path)).toBe(true);
    expect(runProgram(folder, 'shortlist', 'remove', 'two', '--force')).toMatchObject({
      code: 0,
      err: 'removed shortlist/two.yaml\n',
    });
    expect(runProgram(folder, 'shortlist', 'remove', 'one', '--json')).toMatchObject({
      code: 0,
      out: '{\n  "removed": "shortlist/one.yaml"\n}\n',
    });
    expect(allPaths(join(folder, 'shortlist'))).toEqual([]);
  });

  it('is nothing in the starter set, which says how to have a folder', () => {
    const folder = tempFolder();
    const listed = runProgram(folder, 'shortlist', 'list');
    expect([listed.code, listed.err]).toEqual([0, expect.stringContaining('underfoot init')]);
    const added = runProgram(folder, 'shortlist', 'add', 'linen');
    expect([added.code, added.err]).toEqual([2, expect.stringContaining('underfoot init')]);
    expect(allPaths(folder)).toEqual([]);
  });
});
