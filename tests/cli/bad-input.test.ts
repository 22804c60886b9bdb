/**
 * Whatever stands in a file, does `check` end with 2, say what is wrong in plain lines, and print
 * nothing as a result?
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { expect, it } from 'vitest';
import { altered, validBoard, validProfile, validScenario } from '../quantity/valid-values.js';
import { allPaths, putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { runProgram } from './run-program.js';

const profile = (path: (string | number)[], put: unknown) => stringify(altered(validProfile(), path, put));
const scenario = (path: (string | number)[], put: unknown) => stringify(altered(validScenario(), path, put));
const good = stringify(validProfile());

const SLATE = 'profiles/gains/slate.yaml';
const BOMB = `a0: &a0 [x]\n${[1, 2, 3, 4, 5, 6, 7, 8, 9]
  .map((i) => `a${i}: &a${i} [${Array.from({ length: 10 }, () => `*a${i - 1}`).join(',')}]\n`)
  .join('')}`;

const CASES: [string, string, string | Uint8Array, RegExp][] = [
  [
    'an unknown key',
    SLATE,
    profile(['gains', 'rateAPerDegPerSec'], 1),
    /unknown key 'rateAPerDegPerSec'; did you mean rateAPerDegPerS\?/,
  ],
  ['a wrong type', SLATE, profile(['gains'], 'lots'), /gains: expected a section .* received text 'lots'/],
  [
    'out of range',
    SLATE,
    profile(['gains', 'rateAPerDegPerS'], 101),
    /from 0 to 100 A\/\(deg\/s\), received 101/,
  ],
  ['NaN', SLATE, profile(['gains', 'rateAPerDegPerS'], NaN), /A\/\(deg\/s\), received NaN/],
  ['infinity', SLATE, profile(['gains', 'rateAPerDegPerS'], Infinity), /received infinity/],
  ['minus infinity', SLATE, profile(['gains', 'rateAPerDegPerS'], -Infinity), /received minus infinity/],
  [
    'a key given twice',
    SLATE,
    `${good}summary: again\n`,
    /:5:1: expected every key once .* the key 'summary' again/,
  ],
  [
    '__proto__',
    SLATE,
    `${good}__proto__: { polluted: true }\n`,
    /:5:1 __proto__: .* the unknown key '__proto__'/,
  ],
  ['an alias bomb', SLATE, BOMB, /more than 50 aliases/],
  [
    '10 MB',
    SLATE,
    `${good}${'# filler\n'.repeat(1_120_000)}`,
    /of at most 1\.00 MB, received a file of 10 MB/,
  ],
  [
    'binary',
    SLATE,
    Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2]),
    /text in UTF-8, received binary data/,
  ],
  ['empty', SLATE, '', /received an empty file/],
  [
    'an escape in a summary',
    SLATE,
    profile(['summary'], 'calm\u001b[2J'),
    /summary: expected text of 1 to 600 characters without/,
  ],
  [
    'an escape in a key',
    SLATE,
    profile(['co\u001b]0;title\u0007lour'], 1),
    /:5:1 colour: .* the unknown key 'colour'/,
  ],
  [
    'an escape in a file name',
    'profiles/gains/a\u001b[31mb.yaml',
    good,
    /^profiles\/gains\/ab\.yaml: expected a file name of at most 40/m,
  ],
  ['a file name that is no name', 'profiles/gains/My Profile.yaml', good, /received 'My Profile\.yaml'/],
  [
    'K_t and Kv that disagree',
    'profiles/boards/pebble.yaml',
    stringify(altered(validBoard(), ['motor', 'speedConstantRpmPerV'], 30)),
    /0\.3183 Nm\/A, per ampere of the equivalent direct-current motor.*received 0\.62 Nm\/A/,
  ],
  [
    'a road with a hole',
    'scenarios/kerb.yaml',
    scenario(['road', 0], null),
    /road\[0\]: .*a road with a hole/,
  ],
  [
    'a script that runs backwards',
    'scenarios/kerb.yaml',
    scenario(['speeds', 0, 'atS'], 5),
    /speeds\[1\]\.atS: .*a script that runs backwards/,
  ],
  ['nesting without end', SLATE, '['.repeat(900_000), /far deeper nesting/],
];

it.each(CASES)('%s', (_what, name, content, said) => {
  const folder = workingFolder();
  putFile(folder, name, content);
  const before = allPaths(folder);
  const { code, out, err } = runProgram(folder, 'check');
  expect([code, out]).toEqual([2, '']);
  expect(err).toMatch(said);
  expect(err).not.toMatch(/[^\P{Cc}\n]/u);
  expect(err).not.toMatch(/\bat .*\.js:\d+/);
  expect(allPaths(folder)).toEqual(before);
});

it('a folder in place of a file', () => {
  const folder = workingFolder();
  mkdirSync(join(folder, 'profiles/gains/hollow.yaml'));
  expect(runProgram(folder, 'check').err).toContain(
    'profiles/gains/hollow.yaml: expected a YAML file, received a folder',
  );
  expect(runProgram(folder, 'check', 'profiles')).toMatchObject({
    code: 2,
    err: expect.stringContaining('profiles: expected a YAML file, received a folder'),
  });
});

it('a missing file', () => {
  expect(runProgram(workingFolder(), 'check', 'gone.yaml', 'lost.yaml')).toEqual({
    code: 2,
    out: '',
    err:
      'gone.yaml: expected a YAML file, received nothing there\n' +
      'lost.yaml: expected a YAML file, received nothing there\n2 files checked, 2 problems\n',
  });
});
