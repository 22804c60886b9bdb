/**
 * What is typed on the Shortlist screen: notes with any text, ratings, names of files; and is a refused line open again?
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FELT_KEYS } from '../../../src/quantity/feel-words.js';
import { refusedErrand, shelved } from '../../../src/tui/bench/hear.js';
import { typedFelt } from '../../../src/tui/bench/felt-typed.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { holds } from '../../properties/properties.js';
import { KEPT, withKept, withPreview } from '../draw/drawn-shortlist.js';
import { afterKeys, afterPaste, afterTyping, rankedState } from './some-state.js';

const open = afterKeys(withKept(rankedState()), 'L');
const second = afterKeys(open, 'down');
const typed = (keys: string, text: string, state = second) =>
  afterKeys(afterTyping(afterKeys(state, keys), text), 'return');
const PROBLEM = {
  file: 'shortlist/evening-two.yaml',
  line: null,
  column: null,
  key: '',
  expected: 'a file that can be written',
  received: 'no rights',
};

describe('a note', () => {
  it('begins with the note that is there, and is written behind it', () => {
    expect(afterKeys(second, 'n').entry).toEqual({
      purpose: 'note',
      text: 'Nervous over kerbs',
      isOffered: false,
    });
    expect(typed('n', ', calm else').errands).toEqual([
      { kind: 'note', name: 'evening-two', note: 'Nervous over kerbs, calm else' },
    ]);
    expect(typed('n', '')).toMatchObject({ entry: null, errands: [] });
    expect(typed('n ctrl+u', '').errands).toEqual([{ kind: 'note', name: 'evening-two', note: '' }]);
  });

  it('as long as a file may have it is not cut when more is typed', () => {
    const note = 'word '.repeat(119);
    const long = [{ name: 'tea', value: { ...KEPT[0]!.value, note } }];
    const state = afterKeys(withKept(rankedState(), long), 'L');
    expect(typed('n', 'end', state).errands).toEqual([{ kind: 'note', name: 'tea', note: `${note}end` }]);
  });

  holds(
    'is taken as it is typed, whatever it is',
    fc.property(fc.string({ unit: 'grapheme', maxLength: 90 }), (text) => {
      const { errands, entry } = afterKeys(afterPaste(afterKeys(open, 'n'), text), 'return');
      const note = text.trim();
      expect(errands).toEqual(note === '' ? [] : [{ kind: 'note', name: 'evening-one', note }]);
      expect(entry).toBeNull();
    }),
  );
});

describe('ratings', () => {
  it.each([
    ['twitchy 4, loose 2', { twitchy: 4, loose: 2 }],
    ['twitchy=4; loose: 2', { twitchy: 4, loose: 2 }],
    [' Twitchy  =  4 ,', { twitchy: 4 }],
    ['rider-coupled wobble 3', { wobble: 3 }],
    ['wobble 3', { wobble: 3 }],
  ])('are read from %j', (text, felt) => {
    expect(typedFelt(text)).toEqual({ ok: true, value: felt });
    expect(typed('f', text).errands).toMatchObject([{ kind: 'felt', name: 'evening-two', felt }]);
  });

  it('are refused with everything that is wrong, and can be mended', () => {
    const refused = typed('f', 'twichy 4, loose 9, stiff, buzzy 2, buzzy 3');
    expect(refused.errands).toEqual([]);
    expect(refused.entry).toMatchObject({
      purpose: 'felt',
      text: 'twichy 4, loose 9, stiff, buzzy 2, buzzy 3',
    });
    for (const said of [
      "received 'twichy'; did you mean twitchy?",
      "loose: expected a rating from 1 to 5, received '9'",
      'stiff: expected a rating from 1 to 5, received none',
      'buzzy: expected one rating, received two',
    ])
      expect(refused.notice?.text).toContain(said);
    expect(afterKeys(afterTyping(afterKeys(refused, 'ctrl+u'), 'loose 5'), 'return').errands).toHaveLength(1);
    expect(typed('f', ' , ').notice?.text).toMatch(/^expected ratings from 1 not at all to 5 very/);
  });

  holds(
    'of any words come back as they were typed, or are refused',
    fc.property(
      fc.dictionary(fc.constantFrom(...FELT_KEYS), fc.integer({ min: 0, max: 6 }), { minKeys: 1 }),
      (felt) => {
        const text = Object.entries(felt)
          .map(([word, rating]) => `${word} ${rating}`)
          .join(', ');
        const read = typedFelt(text);
        const isWhole = Object.values(felt).every((rating) => rating >= 1 && rating <= 5);
        expect(read.ok).toBe(isWhole);
        if (read.ok) expect(read.value).toEqual({ ...felt });
      },
    ),
  );
});

describe('a file', () => {
  const formOf = (state: BenchState, path: string) => {
    const [errand] = typed('x ctrl+u', path, state).errands;
    return errand?.kind === 'carry' ? errand.form : undefined;
  };
  const sheet = withPreview(afterKeys(second, 'c return'));
  const plan = withPreview(afterKeys(second, 'v v v'));

  it.each([
    ['tea.txt', { kind: 'form', form: 'card', format: 'text' }],
    ['tea.svg', { kind: 'form', form: 'card', format: 'svg' }],
    ['a/tea.HTML', { kind: 'form', form: 'card', format: 'html' }],
    ['tea.json', { kind: 'form', form: 'json', format: null }],
    ['tea.csv', { kind: 'form', form: 'csv', format: null }],
    ['tea.h', { kind: 'form', form: 'c-header', format: null }],
  ])('%s holds what its ending says', (path, form) => {
    expect(formOf(second, path)).toEqual(form);
  });

  it('holds what the view shows where its ending could mean more', () => {
    const code = afterKeys(second, 'V');
    expect(formOf(code, 'a.svg')).toEqual({ kind: 'form', form: 'qr', format: 'svg' });
    expect(formOf(code, 'a.txt')).toEqual({ kind: 'form', form: 'qr', format: 'text' });
    expect(formOf(sheet, 'a.txt')).toEqual({ kind: 'sheet' });
    expect(formOf(sheet, 'a.svg')).toMatchObject({ form: 'card' });
    expect(formOf(plan, 'a.txt')).toEqual({ kind: 'plan' });
  });

  it.each([
    ['summary', second, 'evening-two-card.html'],
    ['card', afterKeys(second, 'v'), 'evening-two-card.txt'],
    ['sheet', sheet, 'evening-two-brick.txt'],
    ['plan', plan, 'evening-two-plan.txt'],
    ['qr', afterKeys(second, 'V'), 'evening-two-qr.svg'],
  ])('is offered a name for the %s that is taken as it stands', (_, state, name) => {
    expect(afterKeys(state, 'x').entry).toEqual({ purpose: 'carry', text: name, isOffered: true });
    expect(afterKeys(state, 'x return').errands).toMatchObject([{ kind: 'carry', path: name }]);
  });

  it.each(['', 'tea', 'tea.pdf', '.', 'a.b/c'])('named %j is refused with the endings there are', (path) => {
    const refused = typed('x ctrl+u', path);
    expect(refused.errands).toEqual([]);
    expect(refused.entry?.purpose).toBe('carry');
    expect(afterKeys(afterTyping(afterKeys(second, 'x'), '.txt'), 'return').errands).toEqual([]);
    expect(refused.notice?.text).toMatch(/ends in \.txt, \.svg, \.html, \.json, \.csv or \.h, received/);
  });

  it('is not written of what is not simulated yet, or of a refused sheet', () => {
    expect(afterKeys(second, 'v v v x return').notice?.text).toMatch(/^the plan is not simulated yet/);
    expect(afterKeys(second, 'c return x return').notice?.text).toMatch(/^the sheet is not simulated yet/);
    expect(afterKeys(second, 'v v x return').notice?.text).toMatch(/^no controller sheet is chosen/);
    const turned = withPreview(afterKeys(second, 'c return'), { refused: true });
    expect(afterKeys(turned, 'x return').notice?.text).toMatch(/^this sheet is refused/);
  });
});

describe('a line', () => {
  it('is about the profile that it was opened for, or refused where that is gone', () => {
    const asked = afterTyping(afterKeys(second, 'n'), '!');
    const gone = shelved(asked, { ...asked.files, kept: [KEPT[0]!] });
    const refused = afterKeys(gone, 'return');
    expect(refused.errands).toEqual([]);
    expect(refused.notice?.text).toBe('evening-two is no longer on the shortlist');
  });

  it.each([
    ['n', 'calm'],
    ['f', 'loose 2'],
    ['x', 'a.txt'],
  ])('of %s stands open again after an errand that could not be done', (key, text) => {
    const sent = typed(`${key} ctrl+u`, text);
    const [errand] = sent.errands;
    const idle = { ...sent, errands: [] };
    const refused = refusedErrand(idle, errand!, [PROBLEM]);
    expect(refused.entry).toMatchObject({ text, isOffered: false });
    expect(refused.notice).toMatchObject({ isFault: true });
    expect(refusedErrand(afterKeys(idle, 'up'), errand!, [PROBLEM]).entry).toBeNull();
    expect(refusedErrand(afterKeys(idle, 'escape'), errand!, [PROBLEM]).entry).toBeNull();
    expect(refusedErrand(afterKeys(idle, 'c'), errand!, [PROBLEM]).entry).toBeNull();
  });
});
