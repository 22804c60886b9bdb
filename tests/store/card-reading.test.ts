/**
 * Is what a card says read back as the same numbers, and is every number that is not as it was printed found?
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PROFILE_FIELDS, readField } from '../../src/quantity/profile-fields.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import { cardText } from '../../src/show/card-text.js';
import { shortText } from '../../src/quantity/short-text.js';
import { isCardText, readCard } from '../../src/store/card-reading.js';
import { checkFiles } from '../../src/tasks/check-files.js';
import { drawnProfile } from '../show/drawn-profile.js';
import { FULL_PROFILE, keptExample, PROFILE } from '../show/kept-example.js';
import { putFile, tempFolder } from './temp-folder.js';

function numbersOf(profile: ProfileFile): Record<string, number> {
  const given = PROFILE_FIELDS.map((field) => [field.key, readField(profile, field)] as const);
  return Object.fromEntries(given.filter(([, value]) => value !== undefined)) as Record<string, number>;
}

/** The lines from the title to the hash. */
function headOf(card: string): string[] {
  const lines = card.split('\n');
  return lines.slice(0, lines.findIndex((line) => line.startsWith('hash')) + 1);
}

const EXAMPLE = keptExample();
const CARD = cardText('denim-2', EXAMPLE);
const HEAD = headOf(CARD);
const READ = { ok: true, value: { name: 'denim-2', numbers: numbersOf(PROFILE), hash: EXAMPLE.numbers } };

/** The card with one of its lines changed; what is told of it. */
function faultsWith(from: string | RegExp, to: string) {
  const changed = CARD.replace(from, to);
  expect(changed).not.toBe(CARD);
  const read = readCard(changed, 'card.txt');
  return read.ok ? [] : read.faults;
}

describe('a ride card that is read back', () => {
  it('holds the numbers of the profile to the last digit, and their hash', () => {
    expect(readCard(CARD, 'card.txt')).toEqual(READ);
    expect(READ.value.numbers).toMatchObject({ proportionalAPerDeg: 22, belowPercent: 25 });
  });

  it('does so for every profile that there can be, in both alphabets', () => {
    fc.assert(
      fc.property(drawnProfile, fc.boolean(), (profile, ascii) => {
        const kept = keptExample({ profile });
        expect(readCard(cardText('x', kept, { ascii }), 'card.txt')).toEqual({
          ok: true,
          value: { name: 'x', numbers: numbersOf(profile), hash: kept.numbers },
        });
      }),
      { numRuns: 60 },
    );
  });

  it('is the same however it was typed: case, spaces, ends of lines, letters for digits of the hash', () => {
    const typed = HEAD.map((line) => `\t ${line.replaceAll(/ +/g, '   ')}  `);
    const hash = EXAMPLE.numbers.replaceAll('0', 'O').replaceAll('1', 'l').replace('-', ' ');
    const cards = [
      typed.join('\r\n'),
      HEAD.join('\n').toUpperCase(),
      HEAD.join('\n').toLowerCase(),
      `\uFEFF\n\n${HEAD.join('\n\n')}`,
      HEAD.join('\n').replace(EXAMPLE.numbers, hash),
      HEAD.map((line) => line.replace(/^( +\S+ +\S+) .*$/, '$1')).join('\n'),
      HEAD.map((line) => line.replace(/^( +\S+) +(\d)/, '$1: $2')).join('\n'),
    ];
    for (const card of cards) expect(readCard(card, 'card.txt')).toEqual(READ);
  });

  it('is not read below its hash, whatever a person wrote there', () => {
    const note = 'Ride card other\nnumbers\nrateAPerDegPerS 9 A/(deg/s)\nhash of these numbers 0000-0000';
    expect(readCard(cardText('denim-2', keptExample({ note })), 'card.txt')).toEqual(READ);
    expect(readCard(`${CARD}numbers\nhash of these numbers 0000-0000\n`, 'card.txt')).toEqual(READ);
  });
});

describe('a ride card that is not as it was printed', () => {
  it('is found by any digit among its numbers and in its hash', () => {
    const full = cardText('full', keptExample({ profile: FULL_PROFILE }));
    const block = headOf(full).slice(2).join('\n');
    const from = full.indexOf(block);
    let tried = 0;
    for (const [at, sign] of [...block].entries()) {
      if (!/\d/.test(sign)) continue;
      for (const other of ['0', '1', '5', '9'].filter((digit) => digit !== sign)) {
        const changed = full.slice(0, from + at) + other + full.slice(from + at + 1);
        const read = readCard(changed, 'card.txt');
        // The last of seventeen digits can be another without the number being another.
        if (read.ok) expect(read.value.numbers).toEqual(numbersOf(FULL_PROFILE));
        else tried += 1;
      }
    }
    expect(tried).toBeGreaterThan(400);
  });

  it.each(['22', '1.4', '60', '25'])('is found by each digit of %s', (number) => {
    [...number].forEach((sign, index) => {
      if (sign === '.') return;
      const other = number.slice(0, index) + String((Number(sign) + 1) % 10) + number.slice(index + 1);
      const faults = faultsWith(new RegExp(`(\\s)${number.replace('.', '\\.')}(\\s)`), `$1${other}$2`);
      expect(faults).toHaveLength(1);
      expect(faults[0]).toMatchObject({ file: 'card.txt', line: 15, key: '' });
      expect(faults[0]!.expected).toBe(`numbers with the hash ${EXAMPLE.numbers}`);
    });
  });

  it('is found by a line that is missing, is there twice, or stands in another place', () => {
    expect(faultsWith(/ {2}driveCeilingA.*\n/, '')[0]).toMatchObject({ line: 14 });
    expect(faultsWith(/ {2}rateAPerDegPerS.*\n/, '')).toEqual([
      expect.objectContaining({ line: null, key: 'rateAPerDegPerS', received: 'nothing' }),
    ]);
    expect(faultsWith(/( {2}upToDeg.*\n)/, '$1$1')).toEqual([
      expect.objectContaining({ line: 14, key: 'upToDeg', received: 'another one after that of line 13' }),
    ]);
    expect(readCard(CARD.replace(/( {2}upToDeg.*\n)( {2}rateDegPerS.*\n)/, '$2$1'), '')).toEqual(READ);
  });

  it('tells every fault at once, with its place', () => {
    const changed = CARD.replace('rateAPerDegPerS  ', 'rateAPerDegS   ')
      .replace('22 A/deg', '2,2 A/deg')
      .replace(/ 4 s\n/, ' 4 ms\n')
      .replace(/ 60 A\n/, ' 6000 A\n');
    const read = readCard(changed, 'card.txt');
    const faults = read.ok ? [] : read.faults;
    expect(faults.map(({ line, column, key }) => [line, column, key])).toEqual([
      [3, 3, 'proportionalAPerDeg'],
      [4, 3, ''],
      [9, 3, 'blendTimeS'],
      [null, null, 'rateAPerDegPerS'],
      [8, 3, 'driveCeilingA'],
    ]);
    expect(faults[1]).toMatchObject({ received: "'rateAPerDegS'", suggestion: 'rateAPerDegPerS' });
    expect(faults[2]).toMatchObject({ expected: 'a number in s', received: "'4 ms'" });
    expect(faults[4]).toMatchObject({ expected: 'a number from 1 to 1000 A', received: '6000' });
  });

  it.each([
    [
      '',
      ['"Ride card" and the name of a profile', 'a line "numbers" before the numbers', 'the line "hash of'],
    ],
    [CARD.replace('denim-2', 'my card!'), ['"Ride card" and the name of a profile']],
    [CARD.replace(/^hash.*\n/m, ''), ['the line "hash of these numbers"']],
    [CARD.replace(/^numbers\n/m, ''), ['a line "numbers" before the numbers']],
    [CARD.replace(EXAMPLE.numbers, ''), ['the line "hash of these numbers"']],
    [CARD.replace(EXAMPLE.numbers, 'uuuu-0000'), ['the line "hash of these numbers"']],
  ])('is told what is missing (%#)', (text, expected) => {
    const read = readCard(text, 'card.txt');
    const told = read.ok ? [] : read.faults;
    expect(told).toHaveLength(expected.length);
    told.forEach((fault, index) => expect(fault.expected).toContain(expected[index]));
  });

  it('never throws, whatever is read', () => {
    const part = fc.constantFrom(...HEAD, 'numbers', '\n', 'hash of these numbers', '1e999 A', '°', '-');
    fc.assert(
      fc.property(fc.array(fc.oneof(part, fc.string({ unit: 'binary' })), { maxLength: 12 }), (parts) => {
        const text = parts.join('\n');
        expect(typeof isCardText(text)).toBe('boolean');
        expect(typeof readCard(text, 'card.txt').ok).toBe('boolean');
      }),
    );
  });
});

describe('the check of a file that is a ride card', () => {
  const checked = (name: string, text: string) => {
    const folder = tempFolder();
    putFile(folder, name, text);
    return checkFiles({ workingFolder: folder, currentFolder: folder, isStarterSet: false }, [name]);
  };

  it('knows it by its first line or by the line with its hash', () => {
    const file = { path: 'card.txt', kind: 'card', name: 'denim-2', problemCount: 0 };
    expect(checked('card.txt', CARD)).toEqual({ files: [file], problems: [] });
    const untitled = checked('card.txt', CARD.replace('Ride card', 'Rode card'));
    expect(untitled.files).toEqual([{ path: 'card.txt', kind: null, name: null, problemCount: 1 }]);
    expect(untitled.problems[0]).toMatchObject({ file: 'card.txt', line: 1 });
  });

  it('tells a number that is not as it was printed', () => {
    const { files, problems } = checked('card.txt', CARD.replace(' 22 A/deg', ' 23 A/deg'));
    expect(files).toEqual([{ path: 'card.txt', kind: null, name: null, problemCount: 1 }]);
    expect(problems[0]!.expected).toBe(`numbers with the hash ${EXAMPLE.numbers}`);
  });

  it('reads the text of its code as well', () => {
    const code = shortText(EXAMPLE.profile, EXAMPLE.numbers);
    const file = { path: 'code.txt', kind: 'card', name: 'code', problemCount: 0 };
    expect(checked('code.txt', `${code}\n`)).toEqual({ files: [file], problems: [] });
    const { problems } = checked('code.txt', code.replace(' P22 ', ' P23 '));
    expect(problems).toMatchObject([{ file: 'code.txt', key: 'hash' }]);
  });

  it('takes no other file for one', () => {
    expect(checked('a.yaml', CARD).problems[0]!.expected).not.toContain('hash');
    expect(checked('a.txt', 'hello').files[0]).toMatchObject({ kind: null });
    expect(checked('none.txt', '').files[0]).toMatchObject({ kind: null });
  });
});
