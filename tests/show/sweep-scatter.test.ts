/**
 * Does the scatter put each finalist where its costs are, with the front of the two, in every symbol set and at every size?
 */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { SYMBOL_SETS } from '../../src/show/glyphs.js';
import {
  finalistSign,
  scatterPlace,
  scatterRows,
  scatterSentence,
  type ScatterPoint,
  type ScatterSpec,
} from '../../src/show/sweep-scatter.js';

const paint = createPaint('none');

const point = (name: string, [comfort, reserve]: [number, number], isOnFront = false): ScatterPoint => {
  return { name, groups: { comfort, reserve, agility: 0.5 }, isOnFront, sign: name };
};

/** 1 and 2 trade one for the other; 3 is worse than both in both. */
const SPEC: ScatterSpec = {
  x: 'comfort',
  y: 'reserve',
  points: [point('1', [0.2, 0.6], true), point('2', [0.5, 0.3], true), point('3', [0.8, 0.9])],
};

const OPTIONS = { width: 46, height: 18, symbols: 'ascii', paint } as const;

/** Column and row of a sign, rows from the top of the plane. */
function placeOf(rows: readonly string[], sign: string): { column: number; row: number } {
  const plane = rows.slice(1, -2).map((line) => line.slice(line.search(/[|+>]/) + 1));
  const row = plane.findIndex((line) => line.includes(sign));
  return { column: plane[row]!.indexOf(sign), row };
}

describe('the scatter', () => {
  const rows = scatterRows(SPEC, null, OPTIONS);

  it('has less to the left and below', () => {
    const [one, two, three] = ['1', '2', '3'].map((sign) => placeOf(rows, sign));
    expect(one!.column).toBeLessThan(two!.column);
    expect(two!.column).toBeLessThan(three!.column);
    expect(two!.row).toBeGreaterThan(one!.row);
    expect(one!.row).toBeGreaterThan(three!.row);
  });

  it('marks those on the front of all three, and joins those on the front of the two', () => {
    expect(rows.join('\n')).toMatch(/1\*=+/);
    expect(rows.join('\n')).toContain('2*');
    expect(rows.join('\n')).not.toContain('3*');
  });

  it('marks the cursor on both axes', () => {
    const marked = scatterRows(SPEC, '3', OPTIONS);
    const { column, row } = placeOf(marked, '3');
    expect(marked[row + 1]).toContain('>');
    expect(marked.at(-2)!.indexOf('^') - marked.at(-2)!.indexOf('+') - 1).toBe(column);
  });

  it('names its axes, with labels that differ however near the costs are', () => {
    expect(rows[0]).toBe('reserve, less is better');
    expect(rows.at(-1)).toMatch(/^ +0\.16 +comfort, less is better +0\.84$/);
    const near = { ...SPEC, points: [point('1', [0.1234, 0.3]), point('2', [0.1235, 0.30001])] };
    const labels = scatterRows(near, null, OPTIONS).flatMap(
      (line) => /^ *(0\.\d+) [+]/.exec(line)?.[1] ?? [],
    );
    expect(new Set(labels).size).toBe(3);
  });

  it('shows one finalist alone, and nothing where there is none', () => {
    const alone = { ...SPEC, points: [SPEC.points[0]!] };
    expect(scatterRows(alone, '1', OPTIONS).join('\n')).toContain('1*');
    expect(scatterPlace(alone, alone.points[0]!)).toEqual({ x: 0.5, y: 0.5 });
    expect(scatterRows({ ...SPEC, points: [] }, null, OPTIONS)).toEqual([]);
  });

  it('has a sign of one column for as many finalists as there may be', () => {
    const signs = Array.from({ length: 16 }, (_, index) => finalistSign(index));
    expect(new Set(signs).size).toBe(16);
    expect(signs.join('')).toBe('123456789abcdefg');
  });
});

describe('at every size', () => {
  it.each(SYMBOL_SETS)('in %s no row is too wide and there are no more rows than asked for', (symbols) => {
    for (const [width, height] of [
      [130, 57],
      [80, 22],
      [40, 8],
      [16, 5],
      [4, 2],
    ] as const) {
      const rows = scatterRows(SPEC, '2', { width, height, symbols, paint });
      expect(rows.filter((row) => textWidth(row) > width)).toEqual([]);
      expect(rows.length === 0 || rows.length === height).toBe(true);
      if (symbols === 'ascii') expect(rows.join('')).toMatch(/^[\x20-\x7e]*$/);
    }
  });
});

it('says in words who is best in what, and how many nobody matches', () => {
  expect(scatterSentence(SPEC)).toBe(
    'Comfort against reserve: of 3 finalists 2 are matched by nobody in both; least cost of comfort 0.20 with 1, least cost of reserve 0.30 with 2.',
  );
  expect(scatterSentence({ ...SPEC, points: [] })).toBe('Comfort against reserve: there is no finalist.');
});
