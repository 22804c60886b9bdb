import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beside } from '../../src/show/beside.js';
import { COLOUR_MODES, createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { GLYPHS, SYMBOL_SETS } from '../../src/show/glyphs.js';

describe('rows side by side', () => {
  it('start at one column, whatever stands on the left', () => {
    expect(beside(['ab', '', 'abc'], ['x', 'y', '', 'z'], { leftWidth: 3, gap: 2 })).toEqual([
      'ab   x',
      '     y',
      'abc',
      '     z',
    ]);
  });

  it.each(COLOUR_MODES)('count columns and not escapes with colours of depth %s', (mode) => {
    const paint = createPaint(mode);
    const left = [paint.dim('│') + paint.accent('⣀⣀'), paint.bold('nose 3°'), 'ｗide é'];
    for (const row of beside(left, ['x', 'x', 'x'], { leftWidth: 8, gap: 1 })) {
      expect(textWidth(row)).toBe(10);
      expect(row.endsWith(' x')).toBe(true);
    }
  });

  it.each(SYMBOL_SETS)('know the width of every sign of %s', (symbols) => {
    const glyphs = GLYPHS[symbols];
    const signs = Object.values(glyphs).filter((sign) => typeof sign === 'string');
    const dots = Array.from({ length: 1 << (glyphs.dotsWide * glyphs.dotsHigh) }, (_, bits) => bits);
    for (const sign of [...signs, ...dots.map(glyphs.solid), ...dots.map(glyphs.dotted)]) {
      const [row = ''] = beside([sign], ['x'], { leftWidth: 10, gap: 0 });
      expect(textWidth(row)).toBe(11);
    }
  });

  it('agree with the terminal on any text that fits', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 12 }), (text) => {
        const left = text.replaceAll(/[\p{Cc}\p{Cf}]/gu, '');
        const [row = ''] = beside([left], ['x'], { leftWidth: 40, gap: 1 });
        expect(row).toBe(`${left}${' '.repeat(41 - textWidth(left))}x`);
      }),
    );
  });
});
