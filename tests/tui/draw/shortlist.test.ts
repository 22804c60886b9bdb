/**
 * What does the Shortlist screen show: the list with what was proven and felt, and of the one under the cursor summary, card, what to
 * type, plan and code?
 */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../../src/show/colour.js';
import { textWidth } from '../../../src/show/fit-text.js';
import { previewed } from '../../../src/tui/bench/hear-shortlist.js';
import { previewWish } from '../../../src/tui/bench/shortlist-items.js';
import { resized, told } from '../../../src/tui/bench/hear.js';
import { screenRows } from '../../../src/tui/draw/screen-rows.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { drawnRows } from './drawn-frame.js';
import { afterKeys, drawnState, type Wanted } from './drawn-state.js';
import { KEPT, withKept, withPreview, withQueue } from './drawn-shortlist.js';

const at = (columns: number, rows: number, options: Wanted['options'] = {}) =>
  afterKeys(withKept(drawnState({ size: { columns, rows }, options })), 'L');
const textOf = async (state: BenchState) => (await drawnRows(state)).join('\n');
const flat = (text: string) => text.replaceAll(/\s+/g, ' ');

describe('at 80 x 24', () => {
  it('the list stands on top, with what was promised and felt, and the card below it', async () => {
    const rows = await drawnRows(afterKeys(at(80, 24), 'down', 'v'));
    expect(rows.slice(0, 8)).toEqual([
      'Shortlist  3 kept, evening-two',
      '   name         falls  score  promised        felt             rides  kept on',
      '   evening-one   2/21  41.50  stiff and com…  -                    0  2026-05-31',
      '▸  evening-two   2/21  41.50  stiff and com…  twitchy 4, loo…      1  2026-05-31',
      '   spare         0/21  41.50  nothing         -                    0  2026-05-31',
      expect.stringMatching(/^summary \[card\] sheet plan QR +1-17 of \d+$/),
      'Ride card evening-two',
      'numbers',
    ]);
    expect(rows.at(-1)).toMatch(
      /^Tab view {2}n note {2}f felt {2}c sheet {2}x export.*Esc back {2}\? all keys$/,
    );
  });

  it('the row under the cursor stays in sight with a code below it', async () => {
    const text = await textOf(afterKeys(at(80, 24), 'down', 'down', 'V'));
    expect(text).toMatch(/^▸ {2}spare /m);
    expect(text).toContain('[QR]');
    expect(text).toMatch(/█▀▀▀▀▀█|█ ▄▄▄▄▄ █/);
  });

  it('asks under which name a profile is kept, and tells what is wrong with it above that line', async () => {
    const state = withKept(drawnState({ size: { columns: 80, rows: 24 } }));
    expect((await drawnRows(afterKeys(state, 'a'))).at(-1)).toMatch(
      /^keep it on the shortlist as: plain-one_ +Enter/,
    );
    const refused = afterKeys(state, 'return', 'a', 'X', 'return');
    const rows = await drawnRows(refused);
    expect(rows.slice(-3).join(' ')).toMatch(/! expected a name of at most 40 lower-case letters.*: X_/);
  });
});

describe('from Trace', () => {
  it('what is wrong with a name stands in front of the pictures, above the line that is typed', async () => {
    const state = withKept(drawnState({ size: { columns: 80, rows: 24 } }));
    const rows = await drawnRows(afterKeys(state, 'return', 'a', 'X', 'return'));
    expect(rows[0]).toMatch(/^Trace/);
    expect(rows.slice(-3).join(' ')).toMatch(/! expected a name of at most 40 .*received "X" .*: X_/);
    expect(rows.slice(2, -3).join('')).toMatch(/[⠁-⣿]/);
  });
});

describe('where there is little room', () => {
  it('the view in front says which of them it is', async () => {
    const plan = withPreview(afterKeys(at(40, 10), 'c', 'down', 'return', 'v'));
    expect(await textOf(plan)).toMatch(/^4\/5 \[plan\] +1-5 of \d+$/m);
    expect(await textOf(afterKeys(at(40, 10), 'v'))).toMatch(/^summary \[card\] sheet plan QR +1-5 of \d+$/m);
  });

  it('above the line of ratings and of a file stands what may be typed', async () => {
    expect(await textOf(afterKeys(at(40, 10), 'f'))).toMatch(/^such as twitchy 4, loose 2; words:/m);
    expect(await textOf(afterKeys(at(80, 24), 'x'))).toMatch(/^\.txt, \.svg, \.html the card; \.json/m);
    expect(await textOf(afterKeys(at(80, 24), 'V', 'x'))).toMatch(
      /^\.svg the code, \.txt its text; \.html the/m,
    );
  });
});

describe('at 100 x 30', () => {
  it('the list stands beside the view, with note and ratings below it', async () => {
    const rows = await drawnRows(afterKeys(at(100, 30), 'down'));
    expect(rows[1]).toMatch(/^ {3}name {9}falls {2}score {8}\[summary\] card sheet plan QR +1-27 of \d+$/);
    expect(rows[3]).toMatch(/^▸ {2}evening-two {3}2\/21 {2}41\.50 /);
    const left = flat(rows.map((row) => row.slice(0, 34).trimEnd()).join(' '));
    expect(left).toContain('Note: Nervous over kerbs Felt: twitchy 4, loose 2.');
  });

  it('what waits stands below what is kept, and at the top how far it is', async () => {
    const state = afterKeys(withQueue(at(100, 30), 'tea', 'soup'), 'end', 'down', 'down', 'down');
    const rows = await drawnRows(state);
    expect(rows[0]).toMatch(/^Shortlist {2}3 kept, tea +proving tea: slips 40 %, 1 waits$/);
    expect(rows.join('\n')).toMatch(/^▸ {2}tea: trying slips, 40 %/m);
    expect(rows.join('\n')).toMatch(/^ {3}soup: waits to be proven/m);
    const away = await drawnRows(afterKeys(state, 'escape'));
    expect(away[0]).toContain('proving tea: slips 40 %, 1 waits');
  });

  it('what is to be typed, the plan, and how far they are', async () => {
    const asked = afterKeys(at(100, 30), 'c', 'down', 'return');
    expect(await textOf(asked)).toMatch(/^Shortlist .* simulating$/m);
    const on = previewed(asked, previewWish(asked)!, { done: 12, all: 60 });
    expect(await textOf(on)).toMatch(/^Shortlist .* simulating: 12 of 60 runs$/m);
    const sheet = await textOf(withPreview(asked));
    expect(sheet).toContain('[sheet slab]');
    expect(sheet).toMatch(/Typed like this it still deserves its rank/);
    expect(flat(await textOf(withPreview(afterKeys(asked, 'v'))))).toContain(
      'First ride with evening-one: board',
    );
    expect(await textOf(afterKeys(at(100, 30), 'c'))).toMatch(
      /^Controller sheet that the numbers go through\n▸ brick/m,
    );
  });

  it('a damaged file is marked in the list and told above the view', async () => {
    const problem = {
      file: 'shortlist/evening-one.yaml',
      line: null,
      column: null,
      key: 'seal',
      expected: 'what was proven',
      received: 'another content',
    };
    const text = await textOf(withKept(at(100, 30), KEPT, [problem]));
    expect(text).toMatch(/^Shortlist .*! 1 problem in files$/m);
    expect(text).toMatch(/^▸ {2}evening-one !/m);
    expect(text).toContain('! shortlist/evening-one.yaml');
  });

  it('cautions stand on card and plan', async () => {
    for (const keys of [['v'], ['v', 'v', 'v']]) {
      const state = withPreview(afterKeys(resized(at(100, 30), { columns: 100, rows: 90 }), ...keys));
      const text = flat(
        screenRows(state)
          .map((row) => row.slice(36))
          .join(' '),
      );
      expect(text).toMatch(/it proves nothing about the machine/);
      expect(text).toMatch(/Local law decides where/);
    }
  });
});

describe('a code', () => {
  const SIZES = [
    [200, 60],
    [120, 40],
    [100, 30],
    [80, 24],
    [60, 20],
    [40, 10],
  ] as const;

  it.each(SIZES)('at %i x %i stands whole, or is said to take more room', (columns, rows) => {
    for (const symbols of ['braille', 'ascii'] as const) {
      for (const mode of ['none', '256'] as const) {
        const shown = screenRows(afterKeys(at(columns, rows, { symbols, paint: createPaint(mode) }), 'V'));
        expect(shown).toHaveLength(rows);
        expect(shown.filter((row) => textWidth(row) > columns)).toEqual([]);
        const text = flat(shown.join(' '));
        const isSaid = /The code takes \d+ columns and \d+ rows; here are/.test(text);
        expect(isSaid).toBe(symbols === 'ascii' ? rows < 60 : rows < 24);
        if (mode === 'none' && symbols === 'ascii') expect(text).toMatch(/^[\x20-\x7e]*$/);
      }
    }
  });

  it('is dark on light whatever the background is', () => {
    const row = (background: 'dark' | 'light') =>
      screenRows(afterKeys(at(120, 40, { paint: createPaint('none', background) }), 'V'))[2]!.slice(48);
    // The quiet zone is printed where the terminal is dark, and left free where it is light.
    expect(row('dark')).toMatch(/^█{30}/);
    expect(row('light').trim()).toBe('');
    const painted = screenRows(afterKeys(at(120, 40, { paint: createPaint('256') }), 'V'));
    expect(painted.join('\n')).toContain('\u001b[38;5;16;48;5;231m');
  });
});

describe('at any size', () => {
  it.each([
    [120, 40],
    [60, 20],
    [40, 10],
    [20, 8],
  ])('%i x %i has as many rows as there are, none too wide', (columns, rows) => {
    for (const keys of ['', 'v', 'c down return', 'v v v', 'V', 'n', 'd']) {
      for (const symbols of ['braille', 'ascii'] as const) {
        const state = afterKeys(
          withQueue(at(columns, rows, { symbols }), 'tea'),
          ...keys.split(' ').filter(Boolean),
        );
        const shown = screenRows(withPreview(told(state, 'wrote a file with a long name')));
        expect(shown).toHaveLength(rows);
        expect(shown.filter((row) => textWidth(row) > columns)).toEqual([]);
        if (symbols === 'ascii') expect(shown.join('')).toMatch(/^[\x20-\x7e]*$/);
      }
    }
  });
});
