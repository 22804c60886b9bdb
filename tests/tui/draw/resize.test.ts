/** A terminal that gets smaller and larger again, down to where nothing fits. */
import { describe, expect, it } from 'vitest';
import { resized } from '../../../src/tui/bench/hear.js';
import { footerRow, headerRow } from '../../../src/tui/draw/chrome.js';
import { openDrawn } from './drawn-frame.js';
import { afterKeys, drawnState } from './drawn-state.js';

const LADDER = [
  [120, 40],
  [80, 24],
  [60, 20],
  [40, 10],
  [60, 20],
  [80, 24],
  [120, 40],
] as const;

describe('a terminal that changes its size', () => {
  it.each([
    ['Rank', []],
    ['Trace', ['return']],
    ['Compare', ['space', 'space', 'c']],
    ['the help', ['?']],
    ['the numbers of a profile', ['e']],
  ])('shows %s whole at every size, and the first frame again at the first size', async (_name, keys) => {
    const [[columns, rows]] = LADDER;
    const first = afterKeys(drawnState({ size: { columns, rows } }), ...keys);
    const bench = openDrawn(first);
    const frames = [];
    for (const [wide, high] of LADDER) {
      const state = resized(first, { columns: wide, rows: high });
      const { rows: shown } = await bench.show(state);
      const [header, footer] = [headerRow(state).trimEnd(), footerRow(state).trimEnd()];
      expect(shown.flatMap((row, index) => (row === header ? [index] : []))).toEqual([0]);
      expect(shown.flatMap((row, index) => (row === footer ? [index] : []))).toEqual([high - 1]);
      frames.push(shown);
    }
    bench.close();
    expect(frames.toReversed()).toEqual(frames);
  });

  it.each([
    [39, 24],
    [80, 9],
    [12, 3],
    [1, 1],
  ])('says at %i x %i that it is too small, and only that', async (columns, rows) => {
    for (const keys of [[], ['return'], ['?']]) {
      const first = afterKeys(drawnState({ size: { columns: 80, rows: 24 } }), ...keys);
      const bench = openDrawn(first);
      const { rows: shown } = await bench.show(resized(first, { columns, rows }));
      bench.close();
      const text = `underfoot needs 40 columns and 10 rows; here are ${columns} and ${rows}. q leaves.`;
      if (columns > 11) expect(text.startsWith(shown.join(' ').trim())).toBe(true);
      expect(shown.join('')).toMatch(/^u/);
    }
  });
});
