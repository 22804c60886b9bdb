/**
 * Does the header compile as C99 and as C++ without a warning, and does firmware get the numbers of the file, to the last bit
 * of a float? A C compiler answers (`cc` and `c++`, or what CC and CXX say); where there is none these tests are skipped and say
 * so, in CI they fail.
 */
import { spawnSync } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { PROFILE_FIELDS, readField } from '../../src/quantity/profile-fields.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import { constantName, exportCHeader, floatLiteral } from '../../src/show/export-c-header.js';
import { putFile, tempFolder } from '../store/temp-folder.js';
import { bareProfile, fineProfile, fullProfile, keptOf, starterProfiles } from './exported-kept.js';

const STRICT = ['-Wall', '-Wextra', '-Werror', '-pedantic'];

const LANGUAGES = [
  { language: 'C99', command: process.env['CC'] ?? 'cc', ending: 'c', flags: ['-std=c99', '-Wconversion'] },
  { language: 'C++11', command: process.env['CXX'] ?? 'c++', ending: 'cpp', flags: ['-std=c++11'] },
] as const;

const WAY_OUT = 'install gcc and g++, or name yours in CC and CXX';

type Language = (typeof LANGUAGES)[number];

/** Whether the compiler can be started at all. */
const isThere = ({ command }: Language) => spawnSync(command, ['--version']).error === undefined;

/** Compiles and links; answers the program's path. */
function compiled(folder: string, source: string, { language, command, ending, flags }: Language): string {
  const path = putFile(folder, `print.${ending}`, source);
  const program = join(folder, `print-${ending}`);
  const { status, stderr, error } = spawnSync(command, [...flags, ...STRICT, path, '-o', program], {
    encoding: 'utf8',
  });
  if (error !== undefined) throw new Error(`no ${language} compiler; ${WAY_OUT}`, { cause: error });
  if (status !== 0) throw new Error(stderr);
  chmodSync(program, 0o755);
  return program;
}

const given = (profile: ProfileFile) =>
  PROFILE_FIELDS.filter((field) => readField(profile, field) !== undefined).map(constantName);

/** A program that prints every constant that is there and every macro, one a line. */
function printing(name: string, profile: ProfileFile, macros: readonly string[]): string {
  return [
    '#include <stdio.h>',
    `#include "${name}.h"`,
    `#include "${name}.h"`,
    'int main(void) {',
    ...given(profile).map((constant) => `  printf("${constant}=%.9g\\n", (double)${constant});`),
    ...macros.map((macro) => `  printf("${macro}=%d\\n", ${macro});`),
    '  printf("%s %s\\n", PROFILE_NAME, PROFILE_NUMBERS);',
    '  return 0;',
    '}',
    '',
  ].join('\n');
}

const MACROS = [
  'HAS_SLEW_LIMIT_A_PER_S',
  'HAS_DRIVE_CEILING_A',
  'HAS_BRAKE_CEILING_A',
  'HAS_GYRO_LOW_PASS_HZ',
  'HAS_LOAD_FEED_FORWARD',
  'HAS_HEADROOM_LIFT',
];

/** What the program of a profile prints, by name, and its last line. */
function printed(name: string, profile: ProfileFile, language: Language) {
  const folder = tempFolder();
  const kept = keptOf(profile);
  putFile(folder, `${name}.h`, exportCHeader(name, kept));
  const program = compiled(folder, printing(name, profile, MACROS), language);
  const lines = spawnSync(program, { encoding: 'utf8' }).stdout.trimEnd().split('\n');
  const values = new Map(lines.slice(0, -1).map((line) => line.split('=') as [string, string]));
  return { values, last: lines.at(-1), hash: kept.numbers };
}

const profiles = [
  { name: 'bare', profile: bareProfile },
  { name: 'full', profile: fullProfile },
  { name: '3-fine-numbers', profile: fineProfile },
  ...starterProfiles().filter(({ name }) => ['canvas', 'tweed'].includes(name)),
];

describe.each(LANGUAGES)('as $language', (language) => {
  const isMissing = !process.env['CI'] && !isThere(language);
  beforeAll(() => {
    if (isMissing) process.stdout.write(`skipped: no ${language.language} compiler; ${WAY_OUT}\n`);
  });
  beforeEach(({ skip }) => skip(isMissing, `no ${language.language} compiler`));

  it.each(profiles)('$name has the numbers of its file as floats', ({ name, profile }) => {
    const { values, last, hash } = printed(name, profile, language);
    for (const field of PROFILE_FIELDS) {
      const value = readField(profile, field);
      const read = values.get(constantName(field));
      if (value === undefined) expect(read).toBeUndefined();
      // Nine digits name a float (C99, DECIMAL_DIG); back in a double they are rounded to it again.
      else expect([field.key, Math.fround(Number(read))]).toEqual([field.key, Math.fround(value)]);
    }
    const { slewLimitAPerS, driveCeilingA, brakeCeilingA, gyroLowPassHz } = profile.shaping;
    const { loadFeedForward, headroomLift } = profile.shaping;
    const has = [
      slewLimitAPerS,
      driveCeilingA,
      brakeCeilingA,
      gyroLowPassHz,
      loadFeedForward,
      headroomLift,
    ].map((part) => (part === undefined ? '0' : '1'));
    expect(MACROS.map((macro) => values.get(macro))).toEqual(has);
    expect(last).toBe(`${name} ${hash}`);
  });

  it('stops the compiler where a constant is used that the profile leaves out', () => {
    const folder = tempFolder();
    putFile(folder, 'bare.h', exportCHeader('bare', keptOf(bareProfile)));
    const source = '#include "bare.h"\nint main(void) { return drive_ceiling_a > 0.0f; }\n';
    expect(() => compiled(folder, source, language)).toThrow(/drive_ceiling_a/);
  });
});

describe('the text', () => {
  it('says unit and sentence, what is left out, and what float cannot hold', () => {
    const lines = exportCHeader('hill-1', keptOf(fullProfile)).split('\n');
    const at = (text: string) => lines.slice(lines.indexOf(text) - 1, lines.indexOf(text) + 1);
    expect(at('static const float proportional_a_per_deg = 20.5f;')).toEqual([
      '/* Motor current per degree of pitch away from the set-point [A/deg] */',
      'static const float proportional_a_per_deg = 20.5f;',
    ]);
    expect(at('static const float engage_ramp_s = 0.8f;')[0]).toBe(
      '/* Time over which the gains fade in when the board takes over [s]; the file has 0.8, float holds 0.800000012 */',
    );
    expect(at('static const float headroom_lift_up_to_deg = 12.0f;')[0]).toContain('[deg]');
    expect(lines).toContain('#ifndef PROFILE_HILL_1_H');
    const bare = exportCHeader('bare', keptOf(bareProfile));
    expect(bare).toContain(
      "/* Lower drive ceiling than the board's; left out: the board's [A]. Left out here. */\n#define HAS_DRIVE_CEILING_A 0\n",
    );
    expect(bare).toContain('/* The headroom lift: left out here. */\n#define HAS_HEADROOM_LIFT 0\n');
    expect(bare).not.toMatch(/\bsafe/i);
  });

  it('stays within ASCII but for the words of a summary', () => {
    expect(exportCHeader('full', keptOf(fullProfile))).toMatch(/^[\n\u0020-\u007e]*$/);
  });

  it.each([
    [20, '20.0f'],
    [-0.5, '-0.5f'],
    [0, '0.0f'],
    [-0, '0.0f'],
    [1.2, '1.2f'],
    [1e-7, '1e-7f'],
    [1e-60, '0.0f'],
    [1_000_000, '1000000.0f'],
    [0.1234567890123456, '0.123456791f'],
    [999_999.9999999999, '1000000.0f'],
  ])('writes %d as %s', (value, literal) => {
    expect(floatLiteral(value)).toBe(literal);
  });
});
