/** Is the picture of a comparison whole, within its room, and does only the cursor move in it? */
import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import { partingOf } from '../../src/measure/parting.js';
import { createPaint } from '../../src/show/colour.js';
import { compareRows, prepareCompare, type CompareOptions } from '../../src/show/compare-picture.js';
import type { ComparedRun } from '../../src/show/compare-run.js';
import { textWidth } from '../../src/show/fit-text.js';
import { SYMBOL_SETS } from '../../src/show/glyphs.js';
import { createTape } from '../../src/simulate/tape.js';
import { fallen, pair } from './compared-runs.js';

const usual: CompareOptions = {
  width: 80,
  height: 40,
  symbols: 'braille',
  paint: createPaint('none'),
  speedUnit: 'km/h',
  span: null,
};

function picture(
  runs: readonly ComparedRun[],
  changes: Partial<CompareOptions> = {},
  cursorS: number | null = null,
) {
  const parting = partingOf(
    runs.map(({ view }) => view.tape),
    runs[0]?.view.facts.bandRad ?? 0,
  );
  return compareRows(prepareCompare(runs, parting, { ...usual, ...changes }), cursorS);
}

describe('the picture of a comparison', () => {
  it('begins with which is better, when they part, and which letter is which profile', () => {
    const rows = picture(pair());
    expect(rows[0]).toMatch(/^A linen is better over all, at less cost/);
    expect(rows.slice(1, 3).join(' ')).toMatch(
      /^A and B move apart by more than 0\.5° at 1\.0\d s, 0\.0\d s after the kerb: /,
    );
    expect(rows.slice(3, 5)).toEqual([
      'A linen  ✓ upright to the end at 6.00 s',
      'B satin  ✓ upright to the end at 6.00 s',
    ]);
  });

  it('sets the letters on the lines, names events and parting, and keeps units on every axis', () => {
    const text = picture(pair(), { height: 50 }).join('\n');
    for (const label of [
      'nose down 8° ┤',
      'upright ┤',
      '60 A ┤',
      '20 km/h ┤',
      'kerb',
      'A B part',
      'measured',
    ]) {
      expect(text).toContain(label);
    }
    const lines = picture(pair())
      .filter((row) => /[│┤]/.test(row))
      .join('');
    expect(lines).toMatch(/[\u2801-\u28ff]A/);
    expect(lines).toMatch(/[\u2801-\u28ff]B/);
  });

  it('shows speeds in mph on request, and the title', () => {
    const text = picture(pair(), { height: 60, speedUnit: 'mph', title: 'In kerb, pebble under kim' }).join(
      '\n',
    );
    expect(text).toMatch(/^In kerb, pebble under kim\n/);
    expect(text).toContain('mph');
    expect(text).not.toContain('km/h');
  });

  it('puts the table beside the lines where both have room, below them else', () => {
    const sideways = (rows: readonly string[]) => rows.some((row) => /[│┤].*rebound/.test(row));
    const narrow = picture(pair(), { width: 100, height: 50 });
    expect(sideways(narrow)).toBe(false);
    expect(narrow.at(-1)).toMatch(/less is better\.$/);
    const wide = picture(pair(), { width: 130 });
    expect(sideways(wide)).toBe(true);
  });

  it('marks falls with the letter, and says at the cursor that a run has ended', () => {
    const runs = [...pair(), fallen()];
    expect(picture(runs).join('\n')).toContain('C nose strike');
    const at = picture(runs, {}, 4);
    expect(at.find((row) => row.startsWith('C gauze'))).toContain('has ended: nose strike at 3.00 s');
  });
});

describe('the cursor', () => {
  it('gives the values of each profile at its moment', () => {
    const runs = pair();
    const row = 1.2 * 800;
    const swing = runs[0].view.tape.columns.pitchRad[row] ?? 0;
    const rows = picture(runs, { width: 100 }, 1.2);
    const degrees = Math.abs((swing * 180) / Math.PI).toFixed(1);
    expect(rows.find((line) => line.startsWith('A linen  '))).toMatch(
      new RegExp(`^A linen {2}1\\.20 s {2}nose down ${degrees}° +upright +\\d+\\.\\d A +15\\.\\d km/h$`),
    );
  });

  it('leaves sentences, table and scales where they are', () => {
    const prepared = prepareCompare(pair(), null, usual);
    const still = compareRows(prepared, null);
    const moving = compareRows(prepared, 2.5);
    expect(moving).toHaveLength(still.length);
    const changed = still.filter((row, index) => row !== moving[index]);
    expect(changed.length).toBeGreaterThan(3);
    expect(changed.filter((row) => !/[│┤└]|✓/.test(row))).toEqual([]);
    expect(compareRows(prepared, null)).toEqual(still);
  });

  it('may stand off the tapes', () => {
    expect(picture(pair(), {}, -3).join('')).not.toMatch(/NaN|undefined|no value/);
    expect(picture(pair(), {}, 99).join('\n')).toContain('has ended: upright to the end');
  });
});

describe('its room', () => {
  it.each(SYMBOL_SETS)('is kept to in %s, with two to four profiles', (symbols) => {
    const four = [...pair(), fallen('a-profile-with-a-long-name'), fallen()];
    for (const count of [2, 3, 4]) {
      for (const [width, height] of [
        [80, 21],
        [100, 27],
        [120, 37],
        [200, 57],
        [60, 17],
        [40, 7],
        [20, 3],
        [10, 1],
      ]) {
        const paint = createPaint('truecolor');
        for (const cursorS of [null, 1.5]) {
          const rows = picture(
            four.slice(0, count),
            { width: width!, height: height!, symbols, paint },
            cursorS,
          );
          expect(rows.length).toBeLessThanOrEqual(height!);
          for (const row of rows) expect(textWidth(row)).toBeLessThanOrEqual(width!);
          const text = stripVTControlCharacters(rows.join('\n'));
          expect(text).not.toMatch(/NaN|Infinity|undefined/);
          if (symbols === 'ascii') expect(text).toMatch(/^[\n -~]*$/);
        }
      }
    }
  });

  it('has pitch and table even at 80 x 24 and 60 x 20', () => {
    for (const [width, height] of [
      [80, 21],
      [60, 17],
    ] as const) {
      const text = picture(pair(), { width, height }).join('\n');
      expect(text).toContain('nose down 8° ┤');
      expect(text).toMatch(/^settling time .*◆/m);
    }
  });

  it('does without lines where nothing was recorded', () => {
    const [linen, satin] = pair();
    const empty = (run: ComparedRun) => ({
      ...run,
      view: { ...run.view, tape: createTape(3, 1 / 800), firstRow: 0, endRow: 0, marks: [] },
    });
    const text = picture([empty(linen), empty(satin)]).join('\n');
    expect(text).toContain('rebound');
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('takes nothing from names that moves the cursor or colours the screen', () => {
    const [linen, satin] = pair();
    const text = picture([{ ...linen, name: 'li\u001b[2Jnen\u0007' }, satin]).join('\n');
    expect(text).not.toMatch(/[^\P{Cc}\n]/u);
    expect(text).toContain('A linen');
  });
});
