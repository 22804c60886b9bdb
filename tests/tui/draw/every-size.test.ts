/** Whatever is shown at whatever size: one header, one footer, nothing too wide, and only characters that were promised. */
import { describe, expect, it } from 'vitest';
import { textWidth } from '../../../src/show/fit-text.js';
import { createPaint } from '../../../src/show/colour.js';
import { SYMBOL_SETS } from '../../../src/show/glyphs.js';
import { footerRow, headerRow } from '../../../src/tui/draw/chrome.js';
import { openDrawn } from './drawn-frame.js';
import { scenesAt } from './drawn-scenes.js';

const SIZES = [
  [80, 24],
  [100, 30],
  [120, 40],
  [200, 60],
  [60, 20],
  [40, 10],
] as const;

describe.each(SIZES)('at %i x %i', (columns, rows) => {
  const sets = columns === 100 ? SYMBOL_SETS : (['braille', 'ascii'] as const);

  it.each(sets)('in %s, every screen stands whole on the terminal', async (symbols) => {
    const scenes = scenesAt({ columns, rows }, { symbols });
    const bench = openDrawn(scenes[0]!.state);
    for (const { name, state } of scenes) {
      const { rows: shown, written } = await bench.show(state);
      const [header, footer] = [headerRow(state).trimEnd(), footerRow(state).trimEnd()];
      expect([name, shown[0], shown.at(-1)]).toEqual([name, header, footer]);
      expect([name, shown.indexOf(header), shown.lastIndexOf(header)]).toEqual([name, 0, 0]);
      expect([name, shown.indexOf(footer)]).toEqual([name, rows - 1]);
      expect([name, shown.slice(1, -1).join('').trim() === '']).toEqual([name, false]);
      expect([name, written.filter((row) => textWidth(row) > columns)]).toEqual([name, []]);
      expect([name, written.length <= 2 * rows]).toEqual([name, true]);
      if (symbols === 'ascii' && !name.includes('wide characters')) {
        expect([name, shown.filter((row) => /[^\x20-\x7e]/.test(row))]).toEqual([name, []]);
      }
    }
    bench.close();
  });
});

describe('colour', () => {
  it('is no escape at all where there is to be none', async () => {
    const scenes = scenesAt({ columns: 80, rows: 24 }, { paint: createPaint('none') });
    const bench = openDrawn(scenes[0]!.state);
    for (const { name, state } of scenes) {
      const { written } = await bench.show(state);
      expect([name, written.filter((row) => row.includes('\u001b'))]).toEqual([name, []]);
    }
    bench.close();
  });

  it.each([
    ['16', 'dark'],
    ['256', 'light'],
    ['truecolor', 'dark'],
    ['truecolor', 'light'],
  ] as const)('in %s on %s says nothing that is not there without it', async (mode, background) => {
    const size = { columns: 80, rows: 24 };
    const plain = scenesAt(size, { paint: createPaint('none') });
    const painted = scenesAt(size, { paint: createPaint(mode, background) });
    const bench = openDrawn(plain[0]!.state);
    for (const [index, { name, state }] of painted.entries()) {
      const { rows, written } = await bench.show(state);
      expect([name, written.some((row) => row.includes('\u001b'))]).toEqual([name, true]);
      expect([name, rows]).toEqual([name, (await bench.show(plain[index]!.state)).rows]);
    }
    bench.close();
  });
});
