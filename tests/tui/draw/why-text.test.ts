/**
 * Does Why in words show the whole answer at any size: every line that the command prints, none too wide, none lost?
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { createPaint } from '../../../src/show/colour.js';
import { textWidth } from '../../../src/show/fit-text.js';
import { edgeLines } from '../../../src/show/why-edge.js';
import { whyLines } from '../../../src/show/why-lines.js';
import { explained } from '../../../src/tui/bench/hear.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { viewOf } from '../../../src/tui/bench/why-shown.js';
import { screenRows } from '../../../src/tui/draw/screen-rows.js';
import { edgeFor } from '../real-edge.js';
import { drawnRows } from './drawn-frame.js';
import { afterKeys, drawnState, type Wanted } from './drawn-state.js';
import { answeredWhy } from './drawn-why.js';

const at = (columns: number, rows: number, options: Wanted['options'] = {}) =>
  answeredWhy(drawnState({ size: { columns, rows }, options }));

let edge: Awaited<ReturnType<typeof edgeFor>>;

beforeAll(async () => {
  edge = await edgeFor(at(80, 24));
});

const withEdge = (state: BenchState) => explained(state, state.why!.plan, { edge });

/** The rows of text that a screen shows, and the mark below them. */
function shownText(state: BenchState) {
  const rows = screenRows(state);
  return { rows: rows.slice(1, -2), mark: rows.at(-2)! };
}

/** All lines that come into sight on the way from the first page to the last. */
function readThrough(state: BenchState): string[] {
  const lines: string[] = [];
  for (let page = afterKeys(state, 't', 'home'); ; page = afterKeys(page, 'pagedown')) {
    const { rows, mark } = shownText(page);
    const [first, final, count] = /^lines (\d+)-(\d+) of (\d+)$/.exec(mark)!.slice(1).map(Number);
    expect(first).toBeLessThanOrEqual(lines.length + 1);
    lines.splice(first! - 1, Infinity, ...rows.slice(0, final! - first! + 1));
    if (final === count) return lines;
  }
}

describe.each([
  [80, 24],
  [120, 40],
  [60, 20],
  [40, 10],
] as const)('Why in words at %i x %i', (columns, rows) => {
  it.each(['braille', 'ascii'] as const)(
    'shows every line of the answer and of the edge, in %s',
    (symbols) => {
      const state = withEdge(at(columns, rows, { symbols }));
      const show = { width: columns, symbols, paint: createPaint('none') };
      const read = readThrough(state);
      expect(read).toEqual([...whyLines(viewOf(state)!, show), '', ...edgeLines(edge, show)]);
      expect(read.filter((line) => textWidth(line) > columns)).toEqual([]);
      expect(read.length).toBeGreaterThan(rows);
      if (symbols === 'ascii') expect(read.join('')).toMatch(/^[\x20-\x7e]*$/);
    },
  );

  it('fills the screen with text, and says where that is', () => {
    const state = afterKeys(withEdge(at(columns, rows)), 't', 'home');
    const { rows: text, mark } = shownText(state);
    expect(text).toHaveLength(rows - 3);
    expect(text[0]).toMatch(/^Why plain-one rides as it does/);
    expect(mark).toMatch(new RegExp(`^lines 1-${rows - 3} of \\d+$`));
    const end = shownText(afterKeys(state, 'end')).mark;
    expect(end).toMatch(/^lines \d+-(\d+) of \1$/);
  });

  it('stands on the terminal as it was drawn', async () => {
    const state = afterKeys(withEdge(at(columns, rows)), 't', 'end');
    expect(await drawnRows(state)).toEqual(screenRows(state).map((row) => row.trimEnd()));
  });
});

it('is quiet about the place in the text, and bold where the command is', () => {
  const paint = createPaint('truecolor');
  const state = afterKeys(withEdge(at(80, 24, { paint })), 't', 'home');
  const plain = afterKeys(withEdge(at(80, 24)), 't', 'home');
  const { rows, mark } = shownText(state);
  expect(mark).toBe(paint.dim(shownText(plain).mark));
  expect(rows[0]).toBe(paint.bold('Why plain-one rides as it does: board pebble, rider kim'));
});

it('tells in the end how far the edge is looked for, until it is found', () => {
  const looking = at(80, 24);
  const told = explained(looking, looking.why!.plan, { edgeRuns: 41 });
  expect(screenRows(told)[0]).toMatch(/finding the edge: 41 runs$/);
  expect(readThrough(told).at(-1)).toBe('How far from the edge: that is being looked for, 41 runs so far.');
  const found = explained(told, told.why!.plan, { edge });
  expect(screenRows(found)[0]).toMatch(/explained$/);
  expect(readThrough(found).join('\n')).not.toContain('looked for,');
});

describe('the lists', () => {
  it.each([
    [100, 30],
    [120, 40],
  ])('say at %i x %i that there is more to read', (columns, rows) => {
    const state = at(columns, rows);
    const told = explained(state, state.why!.plan, { edgeRuns: 12 });
    const rest = 't says all of it in words, and how far it is to the edge';
    expect(screenRows(told)).toContain(`${rest}, once it is found; 12 runs so far.`);
    expect(screenRows(withEdge(told))).toContain(`${rest}.`);
  });

  it('say nothing of it where rows are few, but for the key', () => {
    const rows = screenRows(at(80, 24));
    expect(rows.join('\n')).not.toContain('says all of it');
    expect(rows.at(-1)).toContain('t in words');
    expect(screenRows(at(120, 29)).join('\n')).not.toContain('says all of it');
  });
});
