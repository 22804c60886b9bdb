/**
 * Do the commands that deal in files do what their help says, with results on the standard output
 * and everything else on the standard error?
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FILE_KINDS } from '../../src/quantity/file-kind.js';
import { programFolder, programVersion } from '../../src/store/places.js';
import { allPaths, putFile, tempFolder } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { runProgram } from './run-program.js';

describe('the program', () => {
  it('tells the version of its package.json', () => {
    expect(runProgram(tempFolder(), '--version')).toEqual({ code: 0, out: `${programVersion()}\n`, err: '' });
  });

  it.each([[], ['check'], ['list'], ['init'], ['schema']])(
    'has help that begins with an example: %s',
    (...words) => {
      const { code, out, err } = runProgram(tempFolder(), ...words, '--help');
      expect([code, err]).toEqual([0, '']);
      expect(out).toMatch(/^Example: underfoot /);
      expect(out).toContain('Usage: underfoot');
    },
  );

  const mistakes: [string[], string][] = [
    [['chekc'], 'Did you mean check?'],
    [['check', '--jsn'], 'Did you mean --json?'],
    [['list', 'profils'], 'Did you mean profile?'],
    [['schema'], "missing required argument 'kind'"],
    [['schema', 'motor'], 'board, rider, profile, scenario'],
    [['init', 'a', 'b'], 'too many arguments'],
  ];
  it.each(mistakes)('ends with 2 after the usage error %j', (given, said) => {
    const { code, out, err } = runProgram(tempFolder(), ...given);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(said);
  });

  it('shows no control characters of a wrong argument', () => {
    const { code, err } = runProgram(tempFolder(), 'ch\u001b[31meck\u0007');
    expect(code).toBe(2);
    expect(err).toContain("unknown command 'check'");
    expect(err).not.toMatch(/[^\P{Cc}\n]/u);
  });
});

describe('check', () => {
  it('passes a working folder without faults', () => {
    expect(runProgram(workingFolder(), 'check')).toEqual({
      code: 0,
      out: '4 files checked, no problems\n',
      err: '',
    });
  });

  it('tells every problem of every file, and ends with 2', () => {
    const folder = workingFolder();
    putFile(
      folder,
      'profiles/gains/slate.yaml',
      'summary: x\ngains:\n  proportionalAPerDeg: high\n  rateAPerDegPerS: -1\n',
    );
    putFile(folder, 'scenarios/kerb.yaml', 'a: [\n');
    const { code, out, err } = runProgram(folder, 'check');
    expect([code, out]).toEqual([2, '']);
    const lines = err.trimEnd().split('\n');
    expect(lines.slice(0, 2)).toEqual([
      "profiles/gains/slate.yaml:3:3 gains.proportionalAPerDeg: expected a number from 0 to 500 A/deg, received text 'high'",
      'profiles/gains/slate.yaml:4:3 gains.rateAPerDegPerS: expected a number from 0 to 100 A/(deg/s), received -1',
    ]);
    expect(lines[2]).toMatch(/^scenarios\/kerb\.yaml:\d+:\d+: expected well-formed YAML/);
    expect(lines.at(-1)).toMatch(/^4 files checked, \d+ problems$/);
  });

  it('checks only the files that are named, once each', () => {
    const folder = workingFolder();
    putFile(folder, 'profiles/gains/bad.yaml', 'summary: x\n');
    expect(runProgram(folder, 'check', 'profiles/gains/slate.yaml', './profiles/gains/slate.yaml')).toEqual({
      code: 0,
      out: '1 file checked, no problems\n',
      err: '',
    });
    expect(runProgram(folder, 'check', 'profiles/gains/bad.yaml')).toMatchObject({ code: 2 });
  });

  it('gives JSON with the same problems', () => {
    const folder = workingFolder();
    putFile(folder, 'profiles/gains/slate.yaml', 'summary: x\ngains: {}\n"\\e[31mred": 1\n');
    const { code, out, err } = runProgram(folder, 'check', '--json');
    expect([code, err]).toEqual([2, '']);
    const { files, problems } = JSON.parse(out) as { files: object[]; problems: object[] };
    expect(files).toContainEqual({
      path: 'scenarios/kerb.yaml',
      kind: 'scenario',
      name: 'kerb',
      problemCount: 0,
    });
    expect(problems).toContainEqual({
      file: 'profiles/gains/slate.yaml',
      line: 2,
      column: 1,
      key: 'gains.rateAPerDegPerS',
      expected: 'a number from 0 to 100 A/(deg/s)',
      received: 'nothing',
    });
    expect(problems).toContainEqual(
      expect.objectContaining({ key: 'red', received: "the unknown key 'red'" }),
    );
  });
});

describe('list', () => {
  it('names what is there by kind', () => {
    const { code, out, err } = runProgram(workingFolder(), 'list');
    expect([code, err]).toEqual([0, '']);
    expect(out).toBe(
      'Boards\n  pebble  A board for tests\n\nRiders\n  kim  A rider for tests\n\n' +
        'Profiles\n  slate  A profile for tests\n\nScenarios\n  kerb  A scenario for tests\n\n' +
        'Controller sheets\n  none\n\nShortlist\n  none\n',
    );
  });

  it.each(['profile', 'profiles'])('names one kind: %s', (word) => {
    expect(runProgram(workingFolder(), 'list', word).out).toBe('Profiles\n  slate  A profile for tests\n');
  });

  it('gives JSON', () => {
    const { code, out } = runProgram(workingFolder(), 'list', 'riders', '--json');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({
      files: [{ kind: 'rider', name: 'kim', path: 'profiles/riders/kim.yaml', summary: 'A rider for tests' }],
    });
  });

  it('names the good ones and tells the faulty ones', () => {
    const folder = workingFolder();
    putFile(folder, 'profiles/gains/bad.yaml', 'summary: x\n');
    const { code, out, err } = runProgram(folder, 'list', 'profiles');
    expect([code, out]).toEqual([2, 'Profiles\n  slate  A profile for tests\n']);
    expect(err).toMatch(/^profiles\/gains\/bad\.yaml:1:1 gains: expected a section/);
  });
});

describe('init', () => {
  it('makes a folder that passes its own check, and refuses to do it twice', () => {
    const folder = tempFolder();
    const first = runProgram(folder, 'init', 'mine');
    expect([first.code, first.err]).toEqual([0, '']);
    expect(first.out).toMatch(/^\d+ files written to mine\n$/);
    const mine = join(folder, 'mine');
    expect(runProgram(mine, 'check')).toMatchObject({ code: 0, err: '' });
    const before = allPaths(mine);
    const second = runProgram(mine, 'init');
    expect([second.code, second.out]).toEqual([2, '']);
    expect(second.err.trimEnd().split('\n').length).toBeGreaterThan(4);
    expect(second.err).toContain('profiles/schema/board.schema.json: expected nothing there, or --force');
    expect(allPaths(mine)).toEqual(before);
    expect(runProgram(mine, 'init', '--force')).toMatchObject({ code: 0, err: '' });
  }, 20_000);

  it('tells a place that cannot be', () => {
    const folder = tempFolder();
    putFile(folder, 'mine', 'a file');
    expect(runProgram(folder, 'init', 'mine')).toEqual({
      code: 2,
      out: '',
      err: 'mine: expected a folder that can be written, received a file\n',
    });
  });
});

describe('schema', () => {
  it.each(FILE_KINDS)('prints the published schema of a %s', (kind) => {
    const published = readFileSync(join(programFolder(), `profiles/schema/${kind}.schema.json`), 'utf8');
    expect(runProgram(tempFolder(), 'schema', kind)).toEqual({ code: 0, out: published, err: '' });
  });
});
