import { describe, expect, it } from 'vitest';
import { colourMode, createPaint, OKABE_ITO, STYLE_COLOURS, STYLE_NAMES } from '../../src/show/colour.js';
import { verdictMark } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';

describe('the colour mode', () => {
  const cases: [string, Parameters<typeof colourMode>[0], string][] = [
    ['a pipe has none', { env: { TERM: 'xterm-256color' }, isTTY: false }, 'none'],
    ['a dumb terminal has none', { env: { TERM: 'dumb', COLORTERM: 'truecolor' }, isTTY: true }, 'none'],
    ['a plain terminal has 16', { env: { TERM: 'xterm' }, isTTY: true }, '16'],
    ['an unnamed terminal has 16', { env: {}, isTTY: true }, '16'],
    ['256 by name', { env: { TERM: 'screen-256color' }, isTTY: true }, '256'],
    ['truecolor by COLORTERM', { env: { TERM: 'xterm', COLORTERM: '24bit' }, isTTY: true }, 'truecolor'],
    ['truecolor by name', { env: { TERM: 'xterm-direct' }, isTTY: true }, 'truecolor'],
    ['NO_COLOR', { env: { TERM: 'xterm', NO_COLOR: '1' }, isTTY: true }, 'none'],
    ['an empty NO_COLOR is none', { env: { TERM: 'xterm', NO_COLOR: '' }, isTTY: true }, '16'],
    ['FORCE_COLOR in a pipe', { env: { FORCE_COLOR: '2' }, isTTY: false }, '256'],
    [
      'FORCE_COLOR=true takes the claim',
      { env: { FORCE_COLOR: 'true', TERM: 'a-256color' }, isTTY: false },
      '256',
    ],
    ['FORCE_COLOR=0', { env: { FORCE_COLOR: '0', TERM: 'xterm' }, isTTY: true }, 'none'],
    ['FORCE_COLOR over dumb', { env: { FORCE_COLOR: '1', TERM: 'dumb' }, isTTY: true }, '16'],
    ['NO_COLOR over FORCE_COLOR', { env: { FORCE_COLOR: '3', NO_COLOR: '1' }, isTTY: true }, 'none'],
    ['the flag over NO_COLOR', { env: { NO_COLOR: '1', TERM: 'xterm' }, isTTY: false, flag: 'always' }, '16'],
    ['never over FORCE_COLOR', { env: { FORCE_COLOR: '3' }, isTTY: true, flag: 'never' }, 'none'],
    ['a stated depth', { env: { TERM: 'dumb' }, isTTY: false, flag: '256' }, '256'],
    ['auto is the default', { env: { TERM: 'xterm' }, isTTY: true, flag: 'auto' }, '16'],
  ];
  it.each(cases)('%s', (_, from, mode) => {
    expect(colourMode(from)).toBe(mode);
  });
});

describe('paint', () => {
  it('leaves text as it was without colour', () => {
    const paint = createPaint('none');
    for (const style of STYLE_NAMES) expect(paint[style]('nose up')).toBe('nose up');
  });

  it('writes each depth', () => {
    expect(createPaint('16').bad('x')).toBe('\u001b[31mx\u001b[39m');
    expect(createPaint('256').bad('x')).toBe('\u001b[38;5;166mx\u001b[39m');
    expect(createPaint('truecolor').bad('x')).toBe('\u001b[38;2;213;94;0mx\u001b[39m');
    expect(createPaint('16').bold('x')).toBe('\u001b[1mx\u001b[22m');
    expect(createPaint('truecolor').dim('')).toBe('');
  });

  it('has the colours of the published set', () => {
    // M. Okabe, K. Ito, Color Universal Design (2002); also B. Wong, Nature Methods 8, 441 (2011): 8-bit red,
    // green, blue. The figures are typed from memory.
    const published = {
      black: [0, 0, 0],
      orange: [230, 159, 0],
      skyBlue: [86, 180, 233],
      bluishGreen: [0, 158, 115],
      yellow: [240, 228, 66],
      blue: [0, 114, 178],
      vermillion: [213, 94, 0],
      reddishPurple: [204, 121, 167],
    };
    const read = Object.entries(OKABE_ITO).map(([name, hex]) => [
      name,
      [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)),
    ]);
    expect(Object.fromEntries(read)).toEqual(published);
  });

  it('takes the nearest entry of the 256-colour cube', () => {
    const levels = [0, 95, 135, 175, 215, 255];
    for (const { hex, index256 } of Object.values(STYLE_COLOURS)) {
      const wanted = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
      const distances = Array.from({ length: 216 }, (_, index) => {
        const entry = [Math.floor(index / 36), Math.floor(index / 6) % 6, index % 6];
        return entry.reduce((sum, step, at) => sum + ((levels[step] ?? 0) - (wanted[at] ?? 0)) ** 2, 0);
      });
      expect(distances.indexOf(Math.min(...distances)) + 16).toBe(index256);
    }
  });

  it('gives every verdict a shape of its own, one column wide', () => {
    for (const ascii of [false, true]) {
      const marks = (['ok', 'warn', 'bad'] as const).map((verdict) => verdictMark(verdict, ascii));
      expect(new Set(marks).size).toBe(3);
      expect(marks.map(textWidth)).toEqual([1, 1, 1]);
    }
    expect(verdictMark('ok', true)).toBe('+');
  });
});
