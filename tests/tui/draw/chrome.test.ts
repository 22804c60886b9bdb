/** The first and the last line: what is ranked, how far it is, which keys there are, what is being typed. */
import { describe, expect, it } from 'vitest';
import { textWidth } from '../../../src/show/fit-text.js';
import { createPaint } from '../../../src/show/colour.js';
import { told } from '../../../src/tui/bench/hear.js';
import { footerRow, headerRow } from '../../../src/tui/draw/chrome.js';
import { afterKeys, drawnState, type Wanted } from './drawn-state.js';

const at = (columns: number, wanted: Partial<Wanted> = {}) =>
  drawnState({ size: { columns, rows: 24 }, ...wanted });
const checked = (agreeing: number, disagreeing = 0) => {
  const state = at(100);
  const check = (agrees: boolean) => ({ agrees }) as NonNullable<(typeof state.rows)[number]['check']>;
  const rows = state.rows.map((row, index) => {
    if (index < agreeing) return { ...row, check: check(true) };
    return index < agreeing + disagreeing ? { ...row, check: check(false) } : row;
  });
  return headerRow({ ...state, rows });
};

describe('the first line', () => {
  it.each([
    [at(100, { computed: 2 }), 'ranking: 8 of 20 runs'],
    [at(100), 'ranked; odex checked 0 of 5'],
    [afterKeys(at(100), 'return'), 'paused at 1×'],
    [afterKeys(at(100), 'return', 'space', '+'), 'playing at 2×'],
    [afterKeys(at(100), 'return', 'z'), 'paused at 1×, 3.00 s in sight'],
  ])('ends in how far things are (%#)', (state, text) => {
    expect(headerRow(state).endsWith(`  ${text}`)).toBe(true);
  });

  it('tells what the reference solver found', () => {
    expect(checked(3)).toMatch(/ranked; odex checked 3 of 5$/);
    expect(checked(5)).toMatch(/ranked, odex agrees$/);
    expect(checked(2, 1)).toMatch(/odex disagrees on 1$/);
  });

  it('names board, rider, pack and scenarios, and a run by all of them', () => {
    expect(headerRow(at(100))).toMatch(/^underfoot {2}pebble under kim, all 4 scenarios/);
    const charged = afterKeys(at(100), 'p', 'down', 'down', 'return');
    expect(headerRow(charged)).toContain('pebble under kim, pack at 80 %, all 4 scenarios');
    expect(headerRow(afterKeys(at(100), 'return'))).toMatch(
      /^Trace {2}plain-one in wet-leaves, pebble under kim, pack at 80 %/,
    );
  });

  it('names a single scenario or rider, counts all of more, and says how many seeds', () => {
    expect(headerRow(at(100, { scenarios: ['kerb'] }))).toMatch(/^underfoot {2}pebble under kim, kerb /);
    const riders = { ...at(100), choices: { setup: { ...at(100).choices.setup, riders: null }, edits: [] } };
    const two = [...riders.shelf.rider, { ...riders.shelf.rider[0]!, name: 'lee' }];
    const seeds = { ...riders, options: { ...riders.options, seeds: [1, 2, 3] } };
    expect(headerRow({ ...seeds, shelf: { ...riders.shelf, rider: two } })).toMatch(
      /^underfoot {2}pebble under all 2 riders, all 4 scenarios, 3 seeds /,
    );
  });

  it('counts problems in files', () => {
    const state = at(100);
    const problem = { file: 'a.yaml', line: 1, column: 1, key: '', expected: 'x', received: 'y' };
    const withProblems = (count: number) =>
      headerRow({
        ...state,
        shelf: { ...state.shelf, problems: Array.from({ length: count }, () => problem) },
      });
    expect(withProblems(1)).toContain('! 1 problem in files');
    expect(withProblems(2)).toContain('! 2 problems in files');
  });
});

describe('the last line', () => {
  it.each([40, 60, 80, 120])('names the way back and the way to all keys at %i columns', (columns) => {
    for (const keys of [['return'], ['space', 'space', 'c'], ['e']]) {
      const footer = footerRow(afterKeys(at(columns), ...keys));
      expect(footer).toMatch(/Esc \w+ {2}\? all keys$/);
      expect(textWidth(footer)).toBeLessThanOrEqual(columns);
    }
  });

  it('leaves out keys that can do nothing now', () => {
    expect(footerRow(at(120))).not.toContain('c compare');
    expect(footerRow(afterKeys(at(120), 'space', 'space'))).toContain('c compare');
  });

  it('shows what is being typed, always with its end, and the keys that end it where there is room', () => {
    expect(footerRow(afterKeys(at(80), '/', 'a', 'b'))).toMatch(/^show profiles with: ab_ {2,}Enter take/);
    const typed = { purpose: 'filter' as const, text: `${'wide 板'.repeat(30)}end`, isOffered: false };
    for (const columns of [40, 60, 80]) {
      const footer = footerRow({ ...at(columns), entry: typed });
      expect(footer.endsWith('end_')).toBe(true);
      expect(textWidth(footer)).toBeLessThanOrEqual(columns);
    }
  });

  it.each([
    [['x'], /^write table to: rank-pebble-kim\.csv_ {2,}Enter take {2}Esc close {2}Ctrl-U clear$/],
    [
      ['e', 'right', 'w'],
      /^name of the new profile: quick-one-2_ {2,}Enter take {2}Esc close {2}Ctrl-U clear$/,
    ],
  ])('names the keys that end a line at 80 columns (%#)', (keys, row) => {
    expect(footerRow(afterKeys(at(80), 'down', ...keys))).toMatch(row);
  });

  it('asks in full where there is room', () => {
    expect(footerRow(afterKeys(at(120), 'x'))).toMatch(
      /^write the table to \(\.csv, \.json, \.txt\): rank-pebble-kim\.csv_ {2,}Enter take .* clear/,
    );
  });

  it('lets a text that is offered stand out until it is changed', () => {
    const paint = createPaint('truecolor');
    const open = afterKeys(at(80, { options: { paint } }), 'x');
    const inverse = paint.inverse('rank-pebble-kim.csv');
    expect(footerRow(open)).toContain(`write table to: ${inverse}_`);
    expect(footerRow(afterKeys(open, 'backspace'))).toContain('write table to: rank-pebble-kim.cs_');
  });

  it('names the key of the next profile on Trace at 80 columns', () => {
    expect(footerRow(afterKeys(at(80), 'return'))).toContain('PgDn profile');
  });

  it('marks what went wrong with more than colour', () => {
    const fault = [{ file: 'a.yaml', line: 1, column: 2, key: 'k', expected: 'x', received: 'y' }];
    expect(footerRow(told(at(80), fault))).toMatch(/^! a\.yaml:1:2/);
    expect(footerRow(told(at(80), 'wrote rank.csv'))).toBe('wrote rank.csv');
  });
});
