/**
 * Does reading a YAML file give its value and the places in it, and does nothing that a file may
 * hold do more than cause a problem?
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readYaml, type YamlReading } from '../../src/store/read-yaml.js';
import { putFile, tempFolder } from './temp-folder.js';

function read(content: string | Uint8Array): YamlReading {
  return readYaml(putFile(tempFolder(), 'some.yaml', content), 'some.yaml');
}

function value(content: string): unknown {
  const reading = read(content);
  expect(reading.problems).toEqual([]);
  return reading.content?.value;
}

/** Line, column, expected and received of each problem. */
function problems(content: string | Uint8Array): unknown[][] {
  const reading = read(content);
  for (const { file, key } of reading.problems) expect([file, key]).toEqual(['some.yaml', '']);
  return reading.problems.map(({ line, column, expected, received }) => [line, column, expected, received]);
}

describe('a value', () => {
  it('is that of YAML 1.2', () => {
    const text = 'a: 1.5\nb: [x, yes, no, ~]\nc: { d: true }\ne: .nan\nf: -.inf\ng: 012\n';
    const expected = { a: 1.5, b: ['x', 'yes', 'no', null], c: { d: true }, e: NaN, f: -Infinity, g: 12 };
    expect(value(text)).toEqual(expected);
  });

  it('is read behind comments, a byte order mark and Windows line ends', () => {
    expect(value('\ufeff# $schema=../x.json\r\na: 1 # one\r\nb: 2\r\n')).toEqual({ a: 1, b: 2 });
  });

  it('keeps keys that are numbers or nothing as text', () => {
    expect(value('1: x\ntrue: y\n')).toEqual({ 1: 'x', true: 'y' });
  });

  it('may repeat itself with a few aliases', () => {
    expect(value('a: &brick { m: 1 }\nb: [*brick, *brick]\n')).toEqual({
      a: { m: 1 },
      b: [{ m: 1 }, { m: 1 }],
    });
  });

  it('does not merge, and reads no older YAML', () => {
    expect(value('%YAML 1.1\n---\na: yes\n<<: { b: 1 }\n')).toEqual({ a: 'yes', '<<': { b: 1 } });
  });

  it('holds __proto__ as an entry like any other and changes no prototype', () => {
    const found = value('__proto__: { polluted: 1 }\na: { __proto__: 2 }\n');
    expect(Object.keys(found as object)).toEqual(['__proto__', 'a']);
    expect(Object.getPrototypeOf(found)).toBe(Object.prototype);
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
  });
});

describe('the place of', () => {
  const text =
    '# first line\ngains:\n  rate: high\nroad:\n  - lengthM: 3\n  - { name: kerb, lengthM: x }\n  -\n';
  const cases: [string, (string | number)[], number, number][] = [
    ['an entry is that of its key', ['gains', 'rate'], 3, 3],
    ['a section is that of its key', ['gains'], 2, 1],
    ['a list entry is where it begins', ['road', 0], 5, 5],
    ['an entry inside a list', ['road', 1, 'lengthM'], 6, 19],
    ['an empty list entry is behind its dash', ['road', 2], 7, 4],
    ['a missing key is that of the section around it', ['gains', 'proportional'], 2, 1],
    ['a missing key inside a missing section', ['measure', 'from'], 2, 1],
    ['a missing position', ['road', 9, 'lengthM'], 4, 1],
    ['the whole', [], 2, 1],
  ];
  it.each(cases)('%s', (_what, path, line, column) => {
    expect(read(text).content?.placeOf(path)).toEqual({ line, column });
  });

  it('an entry behind an alias is that of the marked value', () => {
    expect(read('a: &m\n  b: 1\nc: *m\n').content?.placeOf(['c', 'b'])).toEqual({ line: 2, column: 3 });
  });
});

describe('a file that is none', () => {
  const told = (path: string) =>
    readYaml(path, 'x.yaml').problems.map(({ expected, received }) => [expected, received]);

  it('missing', () => {
    expect(told(join(tempFolder(), 'none.yaml'))).toEqual([['a YAML file', 'nothing there']]);
  });

  it('a folder', () => {
    const folder = join(tempFolder(), 'folder.yaml');
    mkdirSync(folder);
    expect(told(folder)).toEqual([['a YAML file', 'a folder']]);
  });

  it('below a file', () => {
    expect(told(join(putFile(tempFolder(), 'a.yaml', 'a: 1'), 'b.yaml'))).toEqual([
      ['a YAML file', 'a file where a folder is needed'],
    ]);
  });

  it('a device', () => {
    expect(told('/dev/null')).toEqual([['a YAML file', 'a device or a pipe']]);
  });
});

describe('a file that is turned away before it is understood', () => {
  it('10 MB', () => {
    expect(problems('# filler\n'.repeat(1_200_000))).toEqual([
      [null, null, 'a YAML file of at most 1.00 MB', 'a file of 11 MB'],
    ]);
  });

  it('one byte more than allowed', () => {
    expect(problems('#'.repeat(1_000_001))).toHaveLength(1);
    expect(value(`a: 1\n${'#'.repeat(999_995)}`)).toEqual({ a: 1 });
  });

  it('binary', () => {
    const zeros = Uint8Array.from([0x61, 0x3a, 0x00, 0x31]);
    expect(problems(zeros)).toEqual([
      [null, null, 'a YAML file: text in UTF-8', 'binary data (a zero at byte 3)'],
    ]);
    expect(problems(Uint8Array.from([0x61, 0x3a, 0x20, 0xff, 0xfe]))).toEqual([
      [null, null, 'a YAML file: text in UTF-8', 'binary data or another encoding'],
    ]);
  });

  it.each([
    ['nothing', ''],
    ['spaces', ' \n\n'],
    ['comments', '# a comment\n'],
  ])('empty: %s', (_what, text) => {
    expect(problems(text)).toEqual([[null, null, 'a YAML file with sections', 'an empty file']]);
  });
});

describe('YAML that cannot be understood', () => {
  it('every fault of the syntax is told with its place', () => {
    const found = problems('a: [1, 2\nb: "open\n');
    expect(found.length).toBeGreaterThan(0);
    for (const [line, column, expected] of found) {
      expect([typeof line, typeof column, expected]).toEqual(['number', 'number', 'well-formed YAML']);
    }
  });

  it('a tab as indentation', () => {
    expect(problems('a:\n\tb: 1\n')).toMatchObject([
      [2, 1, 'well-formed YAML', expect.stringContaining('Tabs')],
    ]);
  });

  it('a flood of faults is cut', () => {
    expect(problems('}'.repeat(5000))).toHaveLength(20);
  });

  it('more than one document', () => {
    expect(problems('a: 1\n---\nb: 2\n')).toEqual([[2, 1, 'one YAML document', 'a second one']]);
  });

  it.each(['[', '- ', '? ', '{ a: '])('nesting without end: %s', (opening) => {
    const found = problems(opening.repeat(Math.floor(999_999 / opening.length)));
    expect(found).toMatchObject([
      [1, expect.any(Number), 'sections nested a few deep', 'far deeper nesting'],
    ]);
  });

  it('a key that is no word', () => {
    expect(problems('? [a, b]\n: 1\n')).toEqual([[1, 3, 'a key in words', 'a list or a section as key']]);
  });
});

describe('YAML that is more than plain values', () => {
  it.each(['!mine 1', '!!binary aGk=', '!!set { a }', '!!js/function x', '!!str 5'])('a tag: %s', (text) => {
    expect(problems(`a: ${text}\n`)).toMatchObject([
      [1, expect.any(Number), 'a value without a tag', expect.any(String)],
    ]);
  });

  it('an alias to nothing', () => {
    expect(problems('a: *gone\n')).toEqual([
      [1, 4, 'an alias to a value marked before it', '*gone, which marks nothing'],
    ]);
  });

  it('an alias to what it stands in', () => {
    expect(problems('a: &a [*a]\n')).toMatchObject([
      [1, 8, expect.any(String), 'an alias to the value that it stands in'],
    ]);
  });

  it('a bomb of many aliases', () => {
    const line = (i: number) =>
      `a${i}: &a${i} [${Array.from({ length: 9 }, () => `*a${i - 1}`).join(', ')}]\n`;
    const bomb = `a0: &a0 [x, x]\n${[1, 2, 3, 4, 5, 6, 7, 8, 9].map(line).join('')}`;
    expect(problems(bomb)).toMatchObject([
      [expect.any(Number), expect.any(Number), expect.any(String), 'more than 50 aliases'],
    ]);
  });

  it('a bomb of few aliases that unfold', () => {
    const line = (i: number) => `a${i}: &a${i} [*a${i - 1}, *a${i - 1}, *a${i - 1}]\n`;
    const wide = `a0: &a0 [${Array.from({ length: 200 }, () => 'x').join(', ')}]\n`;
    const bomb = wide + [1, 2, 3, 4].map(line).join('');
    const reading = read(bomb);
    expect(reading.content).toBeNull();
    expect(reading.problems).toMatchObject([{ received: 'aliases that unfold into more than 5000 values' }]);
  });
});

describe('a key given twice', () => {
  it('is told, and the rest of the file is still there to be checked', () => {
    const reading = read('a: 1\nb: { c: 1, c: 2 }\na: 3\n');
    expect(reading.problems.map(({ line, column, received }) => [line, column, received])).toEqual([
      [2, 12, "the key 'c' again"],
      [3, 1, "the key 'a' again"],
    ]);
    expect(reading.content?.value).toEqual({ a: 1, b: { c: 1 } });
  });

  it('also as __proto__', () => {
    expect(problems('__proto__: 1\n__proto__: 2\n')).toHaveLength(1);
  });
});

it('no text makes reading throw', () => {
  const piece = fc.constantFrom(
    'a',
    ': ',
    '- ',
    '\n',
    '  ',
    '[',
    ']',
    '{',
    '}',
    '"',
    "'",
    '&x ',
    '*x',
    '!t ',
    '|',
    '#',
    '%',
    '\t',
    '? ',
    '---\n',
    '\u001b',
  );
  const folder = tempFolder();
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
      const reading = readYaml(putFile(folder, 'any.yaml', pieces.join('')), 'any.yaml');
      expect(reading.content !== null || reading.problems.length > 0).toBe(true);
    }),
    { seed: 3, numRuns: 400 },
  );
});
