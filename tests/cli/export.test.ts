/**
 * Does `export` print and write what was asked for, and spoil nothing where it cannot?
 */
import { chmodSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { readShortText } from '../../src/quantity/short-text.js';
import { numbersHash, sealOf } from '../../src/store/short-hash.js';
import { fullProfile, keptOf } from '../show/exported-kept.js';
import { decoded, shadesOfSvg, shadesOfTerminal } from '../show/pixels.js';
import { allPaths, putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { runProgram } from './run-program.js';

const kept = keptOf(fullProfile);

function folderWithKept(): string {
  const folder = workingFolder();
  putFile(folder, 'shortlist/hill-1.yaml', stringify({ ...kept, seal: sealOf(kept) }));
  return folder;
}

const run = (folder: string, ...given: string[]) => runProgram(folder, 'export', ...given);

describe('to the standard output', () => {
  it.each([
    ['card', /hill-1/],
    ['json', /^\{\n {2}"name": "hill-1"/],
    ['csv', /^key,value,unit,what\r\n/],
    ['c-header', /#ifndef PROFILE_HILL_1_H/],
  ])('prints the %s and nothing beside it', (form, expected) => {
    const { code, out, err } = run(folderWithKept(), 'hill-1', '--as', form);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(expected);
  });

  it('prints a code that a decoder reads, and its text', async () => {
    const folder = folderWithKept();
    const text = run(folder, 'hill-1', '--as', 'qr', '--format', 'text').out.trimEnd();
    expect(readShortText(text, numbersHash).ok).toBe(true);
    // Without the caption on its right.
    const drawn = run(folder, 'hill-1', '--as', 'qr', '--color', 'truecolor').out.trimEnd().split('\n');
    const code = drawn.map((line) => `${line.split('\u001b[0m')[0]}\u001b[0m`);
    expect(decoded(await shadesOfTerminal(code, 'light'))?.text).toBe(text);
    const svg = run(folder, 'hill-1', '--as', 'qr', '--format', 'svg').out;
    expect(decoded(shadesOfSvg(svg))?.text).toBe(text);
  });
});

describe('to a file', () => {
  it('writes it, says so, and prints nothing', () => {
    const folder = folderWithKept();
    const { code, out, err } = run(folder, 'hill-1', '--as', 'c-header', '--out', 'gains.h');
    expect([code, out, err]).toEqual([0, '', 'wrote gains.h\n']);
    expect(readFileSync(join(folder, 'gains.h'), 'utf8')).toBe(run(folder, 'hill-1', '--as', 'c-header').out);
  });

  it('replaces one that is there only by force', () => {
    const folder = folderWithKept();
    const path = putFile(folder, 'gains.h', 'mine\n');
    const refused = run(folder, 'hill-1', '--as', 'c-header', '--out', 'gains.h');
    expect([refused.code, refused.out]).toEqual([2, '']);
    expect(refused.err).toBe(
      'gains.h: expected a new file, or --force to replace one, received a file that is there already\n',
    );
    expect(readFileSync(path, 'utf8')).toBe('mine\n');
    expect(run(folder, 'hill-1', '--as', 'c-header', '--out', 'gains.h', '--force').code).toBe(0);
    expect(readFileSync(path, 'utf8')).toContain('PROFILE_HILL_1_H');
  });

  it.skipIf(process.getuid?.() === 0)('says that a folder may not be written to', () => {
    const folder = folderWithKept();
    putFile(folder, 'locked/note', '');
    chmodSync(join(folder, 'locked'), 0o555);
    const { code, err } = run(folder, 'hill-1', '--as', 'csv', '--out', 'locked/gains.csv');
    expect([code, err]).toEqual([
      2,
      'locked/gains.csv: expected a file that can be written, received no permission\n',
    ]);
  });
});

describe('what is wrong', () => {
  it('is told all at once, with exit code 2, and nothing is written', () => {
    const folder = folderWithKept();
    const before = allPaths(folder);
    const { code, out, err } = run(
      ...([folder, 'slate', '--as', 'csv', '--format', 'svg', '--out', 'nowhere/gains.csv'] as const),
    );
    expect([code, out]).toEqual([2, '']);
    expect(err.trimEnd().split('\n')).toEqual([
      expect.stringContaining("'underfoot shortlist add slate'"),
      expect.stringContaining('no format with --as csv'),
      expect.stringContaining('nowhere/gains.csv: expected a path in a folder that exists'),
    ]);
    expect(allPaths(folder)).toEqual(before);
  });

  it.each([
    [['hill-1'], /--as/],
    [['hill-1', '--as', 'pdf'], /card, json, csv, c-header, qr/],
    [['--as', 'json'], /name/],
    [['../x', '--as', 'json'], /expected a YAML file/],
    [['hill 1', '--as', 'json'], /hill 1/],
  ])('%j ends with 2 and says what is expected', (given, expected) => {
    const { code, out, err } = run(folderWithKept(), ...given);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(expected);
  });

  it('is a kept file that was changed by hand: no form leaves with its numbers', () => {
    const folder = folderWithKept();
    const path = join(folder, 'shortlist/hill-1.yaml');
    const text = readFileSync(path, 'utf8').replace('proportionalAPerDeg: 20.5', 'proportionalAPerDeg: 205');
    putFile(folder, 'shortlist/hill-1.yaml', text);
    const { code, err } = run(folder, 'hill-1', '--as', 'qr', '--out', 'code.svg');
    expect(code).toBe(2);
    expect(err).toContain('changed by hand');
    expect(existsSync(join(folder, 'code.svg'))).toBe(false);
    expect(readFileSync(path, 'utf8')).toBe(text);
  });
});
