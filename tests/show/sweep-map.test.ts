/**
 * Does the map show where it is good and where the cliff is, in every symbol set and at every size?
 */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { SYMBOL_SETS } from '../../src/show/glyphs.js';
import {
  mapLegend,
  mapRows,
  mapSentence,
  prepareMap,
  type MapCandidate,
  type MapSpec,
} from '../../src/show/sweep-map.js';

const paint = createPaint('none');

const RANGES = [
  { path: ['gains', 'proportionalAPerDeg'], unit: 'A/deg', min: 1, max: 100 },
  { path: ['gains', 'rateAPerDegPerS'], unit: 'A/(deg/s)', min: 0.1, max: 10 },
];

/** Candidates at the points of a grid in the logarithm: those left of the middle fall. */
function gridOf(count: number): MapCandidate[] {
  return Array.from({ length: count * count }, (_, index): MapCandidate => {
    const [x, y] = [(index % count) / (count - 1), Math.floor(index / count) / (count - 1)];
    const falls = x < 0.5;
    const values = [100 ** x, 0.1 * 100 ** y];
    return { name: `c${index}`, values, falls, value: falls ? 12 : y, sign: null };
  });
}

const SCORE = { name: 'Score', text: (value: number) => value.toFixed(2), ofFallen: false };

function specOf(changes: Partial<MapSpec> = {}): MapSpec {
  return { ranges: RANGES, x: 0, y: 1, candidates: gridOf(11), metric: SCORE, ...changes };
}

const draw = (
  spec: MapSpec,
  cursor: string | null = null,
  symbols: (typeof SYMBOL_SETS)[number] = 'ascii',
) => {
  const options = { width: 50, height: 23, symbols, paint };
  return mapRows(prepareMap(spec, options), cursor, options);
};

/** The places of the map alone, row by row from the top. */
const placesOf = (rows: readonly string[]) =>
  rows.slice(1, -2).map((row) => row.slice(row.search(/[|+>]/) + 1));

describe('the map', () => {
  it('has one cliff from the top to the bottom, where they begin to fall, and nothing beyond it', () => {
    const places = placesOf(draw(specOf()));
    expect(places).toHaveLength(20);
    const [first] = places;
    const cliff = first!.indexOf('x');
    expect(cliff).toBeGreaterThan(first!.length * 0.4);
    expect(cliff).toBeLessThan(first!.length * 0.55);
    for (const row of places) {
      expect(row.slice(0, cliff).trim()).toBe('');
      expect(row.slice(cliff)).toMatch(/^x[@%+:.]+$/);
    }
  });

  it('is fullest where the value is least, at the bottom', () => {
    const places = placesOf(draw(specOf()));
    const signs = places.map((row) => row.at(-1)!);
    const order = signs.map((sign) => '@%+:.'.indexOf(sign));
    expect(order).toEqual(order.toSorted((a, b) => b - a));
    expect([signs[0], signs.at(-1)]).toEqual(['.', '@']);
  });

  it('shades those that fall too where the metric means something for them', () => {
    const candidates = gridOf(11).map((one) => ({ ...one, value: one.falls ? 0.5 : 0 }));
    const metric = { name: 'Share of falls', text: String, ofFallen: true };
    const row = placesOf(draw(specOf({ candidates, metric })))[10]!;
    expect(row).toMatch(/^%+x@+$/);
  });

  it('has no cliff where nobody falls, and nothing at all where all do', () => {
    const all = (falls: boolean) => gridOf(5).map((one) => ({ ...one, falls }));
    expect(placesOf(draw(specOf({ candidates: all(false) }))).join('')).not.toContain('x');
    expect(
      placesOf(draw(specOf({ candidates: all(true) })))
        .join('')
        .trim(),
    ).toBe('');
    expect(mapSentence(specOf({ candidates: all(true) }))).toContain(
      'nobody stays up; 25 of 25 candidates fall.',
    );
  });

  it('marks the cursor on both axes and in the plane, and finalists by their signs', () => {
    const candidates = gridOf(11).map((one) => (one.name === 'c10' ? { ...one, sign: '1' } : one));
    const rows = draw(specOf({ candidates }), 'c120');
    expect(rows[1]).toMatch(/^ *10 >.*O$/);
    expect(rows.at(-2)).toMatch(/\^$/);
    expect(rows.at(-3)).toMatch(/1$/);
    const onFinalist = draw(specOf({ candidates }), 'c10');
    expect(onFinalist.at(-3)).toMatch(/^ *0\.1 >.*1$/);
  });

  it('gives a place to the better one of two that are equally near', () => {
    const at = (value: number, falls: boolean) => ({
      name: `${value}`,
      values: [10, 1],
      falls,
      value,
      sign: null,
    });
    const places = placesOf(draw(specOf({ candidates: [at(3, true), at(2, false), at(1, false)] })));
    expect(places.join('')).not.toContain('x');
    expect(mapLegend(specOf({ candidates: [at(3, true), at(2, false)] }), 'ascii')).toMatch(
      /^@ to 2\.00, x the cliff/,
    );
  });

  it('labels the axes with the ends and the middle of the ranges', () => {
    const rows = draw(specOf());
    expect(rows[0]).toBe('rate A/(deg/s)');
    expect(rows[1]).toMatch(/^ *10 \+/);
    expect(rows.at(-3)).toMatch(/^ *0\.1 \+/);
    expect(rows.slice(2, -3).filter((row) => /^ *1 \+/.test(row))).toHaveLength(1);
    expect(rows.at(-1)).toMatch(/^ +1 +proportional A\/deg +100$/);
  });
});

describe('at every size', () => {
  it.each(SYMBOL_SETS)('in %s no row is too wide and there are no more rows than asked for', (symbols) => {
    for (const [width, height] of [
      [130, 57],
      [80, 22],
      [40, 8],
      [20, 6],
      [12, 5],
      [5, 3],
      [1, 1],
    ] as const) {
      const options = { width, height, symbols, paint };
      const rows = mapRows(prepareMap(specOf(), options), 'c60', options);
      expect(rows.filter((row) => textWidth(row) > width)).toEqual([]);
      expect(rows.length === 0 || rows.length === height).toBe(true);
      if (symbols === 'ascii') expect(rows.join('')).toMatch(/^[\x20-\x7e]*$/);
    }
  });

  it('shows nothing where there is no candidate', () => {
    expect(draw(specOf({ candidates: [] }))).toEqual([]);
  });
});

describe('in words', () => {
  it('says where it is best and how many fall', () => {
    expect(mapSentence(specOf())).toBe(
      'Score by proportional and rate: best 0.00 at proportional 10 A/deg, rate 0.1 A/(deg/s); 55 of 121 candidates fall.',
    );
  });

  it('says to which value each shade goes, the last one to the worst', () => {
    expect(mapLegend(specOf(), 'ascii')).toMatch(
      /^@ to 0\.20, .*\. to 1\.00, x the cliff: beyond it they fall; /,
    );
  });
});
