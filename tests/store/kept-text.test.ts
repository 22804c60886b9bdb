/**
 * Does the file of a kept profile say exactly what was kept, and does a rider's word change nothing but that word?
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FELT_KEYS } from '../../src/quantity/feel-words.js';
import type { KeptFile } from '../../src/quantity/kept-file.js';
import { sealOf } from '../../src/store/short-hash.js';
import {
  freshKeptText,
  keptOfText,
  withRidersWords,
  type Ride,
  type RidersWords,
} from '../../src/store/kept-text.js';
import { keptFixture } from '../tasks/kept-fixture.js';

function fresh(kept: KeptFile): string {
  const text = freshKeptText(kept, 'a.yaml');
  if (!text.ok) throw new Error(JSON.stringify(text.faults));
  return text.value;
}

function read(text: string): KeptFile {
  const kept = keptOfText(text, 'a.yaml');
  if (!kept.ok) throw new Error(JSON.stringify(kept.faults));
  return kept.value;
}

function changed(text: string, words: Partial<RidersWords>): string {
  const result = withRidersWords(text, { note: null, ride: null, ...words }, 'a.yaml');
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

/** What is left when the text in front that both share, and that behind, is taken away. */
function difference(before: string, after: string): { gone: string; come: string } {
  let front = 0;
  while (front < before.length && before[front] === after[front]) front++;
  let behind = 0;
  const most = Math.min(before.length, after.length) - front;
  while (behind < most && before.at(-1 - behind) === after.at(-1 - behind)) behind++;
  return {
    gone: before.slice(front, before.length - behind),
    come: after.slice(front, after.length - behind),
  };
}

const RIDE: Ride = { on: '2026-06-01', note: 'Nervous over the kerb: "too much"', felt: { twitchy: 4 } };

/** Texts as the schema allows them: no control and format characters but line ends, whole characters only. */
const notes = fc
  .oneof(
    fc.string({ unit: 'grapheme', maxLength: 200 }),
    fc
      .array(
        fc.constantFrom(
          '#',
          ': ',
          "'",
          '"',
          '\n',
          ' ',
          '- ',
          '|',
          '>',
          '{',
          '}',
          '[',
          ', ',
          '&a',
          '*a',
          '!',
          '%',
          '@',
          '---',
          '...',
          '\\',
          'é',
          '𝛼',
          'word',
          'true',
          '1e3',
          '~',
        ),
        { maxLength: 60 },
      )
      .map((parts) => parts.join('')),
    fc.integer({ min: 1, max: 600 }).map((length) => 'a long word '.repeat(60).slice(0, length)),
  )
  .filter((text) => text.length <= 600 && /^(?:[^\p{Cc}\p{Cf}\p{Cs}]|\n)*$/u.test(text));

const rides: fc.Arbitrary<Ride> = fc.record({
  on: fc.constantFrom('2026-01-31', '2027-12-01'),
  note: notes,
  felt: fc
    .dictionary(fc.constantFrom(...FELT_KEYS), fc.integer({ min: 1, max: 5 }))
    .map((felt) => ({ ...felt })),
});

/** Many files are written and read, on a machine that may be busy. */
const MANY_RUNS_MS = 60_000;

describe('a new file', () => {
  it('begins with its schema, the note and the rides, and says what is whose', () => {
    const lines = fresh(keptFixture({ note: 'Calm' })).split('\n');
    expect(lines[0]).toBe('# yaml-language-server: $schema=../profiles/schema/kept.schema.json');
    const keys = lines.filter((line) => /^\w/.test(line)).map((line) => line.replace(/:.*/, ''));
    expect(keys.slice(0, 5)).toEqual(['note', 'rides', 'numbers', 'seal', 'origin']);
    const own = lines.findIndex((line) => line.startsWith('# Yours'));
    const sealed = lines.findIndex((line) => line.startsWith('# Sealed'));
    expect([own < lines.indexOf('note: Calm'), lines.indexOf('rides: []') < sealed]).toEqual([true, true]);
  });

  it(
    'reads back as what was kept, whatever the note and the rides',
    () => {
      fc.assert(
        fc.property(notes, fc.array(rides, { maxLength: 3 }), (note, ridden) => {
          const kept = keptFixture({ note, rides: ridden });
          expect(read(fresh(kept))).toEqual(kept);
        }),
        { numRuns: 60 },
      );
    },
    MANY_RUNS_MS,
  );

  it('is refused where it would be too long to be read again', () => {
    const many = Array.from({ length: 1800 }, () => ({ ...RIDE, note: 'x'.repeat(600) }));
    expect(freshKeptText(keptFixture({ rides: many }), 'a.yaml')).toMatchObject({
      ok: false,
      faults: [{ file: 'a.yaml', expected: 'a text of at most 1000000 bytes' }],
    });
  });
});

describe('a note', () => {
  it(
    'changes nothing but itself, whatever it says',
    () => {
      const text = fresh(keptFixture({ note: 'NOTE-THAT-WAS' }));
      const [front, behind] = text.split('NOTE-THAT-WAS');
      fc.assert(
        fc.property(notes, (note) => {
          const after = changed(text, { note });
          expect(after.startsWith(front!) && after.endsWith(behind!)).toBe(true);
          expect(read(after)).toEqual({ ...read(text), note });
        }),
        { numRuns: 60 },
      );
    },
    MANY_RUNS_MS,
  );

  it(
    'can be exchanged again and again, from any to any',
    () => {
      fc.assert(
        fc.property(notes, notes, rides, (first, second, ride) => {
          const text = fresh(keptFixture({ note: first, rides: [ride] }));
          const after = changed(text, { note: second });
          expect(read(after)).toEqual({ ...read(text), note: second });
          const sealed = text.slice(text.indexOf('\nrides:'));
          expect(after.endsWith(sealed)).toBe(true);
        }),
        { numRuns: 60 },
      );
    },
    MANY_RUNS_MS,
  );

  it.each([
    ['beside a comment', 'note: was # mine\n', 'note: is # mine\n'],
    ['beside the comment of a block', 'note: | # mine\n  was\n\n', 'note: "is" # mine\n\n'],
    ['in quotes with much space', "note:    'was'   # mine\n", 'note:    is   # mine\n'],
    ['in a folded block', 'note: >-\n  was\n  that\n', 'note: is\n'],
  ])('%s leaves the comment', (_, line, expected) => {
    const text = fresh(keptFixture()).replace('note: ""\n', line);
    expect(difference(text, changed(text, { note: 'is' }))).toEqual(difference(line, expected));
  });

  it('that is missing comes below everything', () => {
    const text = fresh(keptFixture()).replace('note: ""\n', '');
    expect(changed(text, { note: 'Calm' })).toBe(`${text}\nnote: Calm\n`);
  });

  it('of several lines beside a comment is put in quotes', () => {
    const text = fresh(keptFixture()).replace('note: ""\n', 'note: was # mine\n');
    expect(changed(text, { note: 'one\ntwo' })).toBe(text.replace('was # mine', '"one\\ntwo" # mine'));
  });

  it('that an alias stands for is not touched', () => {
    const text = fresh(keptFixture())
      .replace('note: ""\n', 'note: *words\n')
      .replace('from: slate', 'from: &words slate');
    const result = withRidersWords(
      text.replace(/^note.*\n/m, '') + 'note: *words\n',
      { note: 'x', ride: null },
      'a.yaml',
    );
    expect(result).toMatchObject({
      ok: false,
      faults: [{ file: 'a.yaml', expected: expect.stringContaining('without touching') }],
    });
  });

  it('keeps the line ends of another system', () => {
    const text = fresh(keptFixture({ note: 'was' })).replaceAll('\n', '\r\n');
    const after = changed(text, { note: 'one\ntwo', ride: RIDE });
    expect(after.replaceAll('\r\n', '')).not.toContain('\n');
    expect(read(after)).toEqual({ ...read(text), note: 'one\ntwo', rides: [RIDE] });
  });
});

describe('a ride', () => {
  it(
    'is put below the others, whatever was felt, and nothing else changes',
    () => {
      fc.assert(
        fc.property(fc.array(rides, { maxLength: 2 }), rides, (before, ride) => {
          const text = fresh(keptFixture({ rides: before }));
          const after = changed(text, { ride });
          expect(read(after)).toEqual({ ...read(text), rides: [...before, ride] });
          const own = text.indexOf('\nrides:');
          const sealed = text.indexOf('\n\n# Sealed');
          expect(after.slice(0, own) + after.slice(after.indexOf('\n\n# Sealed'))).toBe(
            text.slice(0, own) + text.slice(sealed),
          );
          if (before.length > 0) expect(after.startsWith(text.slice(0, sealed))).toBe(true);
        }),
        { numRuns: 40 },
      );
    },
    MANY_RUNS_MS,
  );

  it('comes with a note at once', () => {
    const text = fresh(keptFixture());
    const after = changed(text, { note: 'Calm', ride: RIDE });
    expect(read(after)).toEqual({ ...read(text), note: 'Calm', rides: [RIDE] });
    expect(after).toContain(
      'rides:\n  - on: 2026-06-01\n    note: \'Nervous over the kerb: "too much"\'\n    felt: { twitchy: 4 }\n',
    );
  });

  const ONE = '    - on: 2026-05-01   # first\n      felt: {loose: 2}\n      # the evening it rained\n';
  it.each([
    ['an empty list with a comment', 'rides: [] # mine\n', 'rides:  # mine\n  - on: 2026-06-01\n'],
    ['a list further in', `rides:\n${ONE}`, `rides:\n${ONE}    - on: 2026-06-01\n`],
    [
      'a list that is not further in',
      'rides:\n- on: 2026-05-01\n# of all\n',
      'rides:\n- on: 2026-05-01\n- on: 2026-06-01\n# of all\n',
    ],
    [
      'a list in brackets',
      'rides: [{ on: 2026-05-01 }] # mine\n',
      'rides: [{ on: 2026-05-01 }, { on: 2026-06-01, note: "", felt: {} } ] # mine\n',
    ],
  ])('goes into %s', (_, list, expected) => {
    const text = fresh(keptFixture()).replace('rides: []\n', list);
    const ride = { on: '2026-06-01', note: '', felt: {} };
    expect(changed(text, { ride })).toBe(text.replace(list, expected));
  });

  it('starts the list where there is none', () => {
    const text = fresh(keptFixture()).replace('rides: []\n', '');
    expect(changed(text, { ride: { ...RIDE, note: '' } })).toBe(
      `${text}\nrides:\n  - on: 2026-06-01\n    felt: { twitchy: 4 }\n`,
    );
  });
});

describe('a text that holds no kept profile', () => {
  it.each(['', 'note: x\n', 'note: [\n', '- 1\n'])('%j is told and answers nothing', (text) => {
    const result = withRidersWords(text, { note: 'x', ride: null }, 'a.yaml');
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.faults.every(({ file }) => file === 'a.yaml')).toBe(true);
  });
});

it('note and rides are not sealed', () => {
  const kept = keptFixture();
  expect(sealOf({ ...kept, note: 'x', rides: [RIDE] })).toBe(kept.seal);
});
