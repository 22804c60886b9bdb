import { describe, expect, it } from 'vitest';
import {
  backgroundOf,
  BACKGROUNDS,
  colourMode,
  createPaint,
  OKABE_ITO,
  STYLE_COLOURS,
  STYLE_NAMES,
  verdictMark,
} from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';

const bytesOf = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

/** Red, green and blue of entries 16 to 231 of 256 colours: a cube of six levels, as xterm has it. */
function cubeEntry(index256: number): number[] {
  const levels = [0, 95, 135, 175, 215, 255];
  const index = index256 - 16;
  return [Math.floor(index / 36), Math.floor(index / 6) % 6, index % 6].map((step) => levels[step]!);
}

/** Contrast ratio of two sRGB colours (WCAG 2.1, "relative luminance" and "contrast ratio"; 0.04045 as in IEC 61966-2-1). */
function contrast(one: readonly number[], other: readonly number[]): number {
  const luminance = (bytes: readonly number[]) => {
    const [red, green, blue] = bytes.map((byte) => {
      const share = byte / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  };
  const [low, high] = [luminance(one), luminance(other)].toSorted((a, b) => a - b);
  return (high! + 0.05) / (low! + 0.05);
}

/** Hue of an sRGB colour on the hexagon of hues, degrees. */
function hueDeg(bytes: readonly number[]): number {
  const [red = 0, green = 0, blue = 0] = bytes;
  const most = Math.max(red, green, blue);
  const span = most - Math.min(red, green, blue);
  if (most === red) return 60 * ((((green - blue) / span) % 6) + (green < blue ? 6 : 0));
  return 60 * (most === green ? 2 + (blue - red) / span : 4 + (red - green) / span);
}

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

  it('exchanges the colours of text and background', () => {
    expect(createPaint('256').inverse('x')).toBe('\u001b[7mx\u001b[27m');
  });

  it('gives four lines four colours, at every depth and on both backgrounds', () => {
    for (const background of BACKGROUNDS) {
      for (const mode of ['16', '256', 'truecolor'] as const) {
        const paint = createPaint(mode, background);
        const lines = [paint.lineA('x'), paint.lineB('x'), paint.lineC('x'), paint.lineD('x')];
        expect(new Set(lines).size).toBe(4);
        expect(new Set([paint.ok('x'), paint.warn('x'), paint.bad('x')]).size).toBe(3);
      }
    }
    const { lineA, lineB, lineC, lineD } = STYLE_COLOURS.dark;
    expect([lineA, lineB, lineC, lineD].map(({ hex }) => hex)).toEqual([
      OKABE_ITO.skyBlue,
      OKABE_ITO.orange,
      OKABE_ITO.bluishGreen,
      OKABE_ITO.reddishPurple,
    ]);
  });

  it('takes the nearest entry of the 256-colour cube', () => {
    for (const { hex, index256 } of Object.values(STYLE_COLOURS.dark)) {
      const wanted = bytesOf(hex);
      const distances = Array.from({ length: 216 }, (_, index) =>
        cubeEntry(index + 16).reduce((sum, level, at) => sum + (level - (wanted[at] ?? 0)) ** 2, 0),
      );
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

describe('the background', () => {
  const cases: [string | undefined, string][] = [
    [undefined, 'dark'],
    ['', 'dark'],
    ['15;0', 'dark'],
    ['0;15', 'light'],
    ['0;7', 'light'],
    ['12;8', 'dark'],
    ['0;default;15', 'light'],
    ['15;default;0', 'dark'],
    ['0;11', 'light'],
    ['15;default', 'dark'],
    ['7;16', 'dark'],
    ['light', 'dark'],
  ];
  it.each(cases)('COLORFGBG %j means %s', (value, background) => {
    expect(backgroundOf({ COLORFGBG: value })).toBe(background);
    expect(backgroundOf({ COLORFGBG: value }, 'auto')).toBe(background);
  });

  it('is what the flag says, whatever the environment claims', () => {
    expect(backgroundOf({ COLORFGBG: '15;0' }, 'light')).toBe('light');
    expect(backgroundOf({ COLORFGBG: '0;15' }, 'dark')).toBe('dark');
  });
});

describe('contrast', () => {
  it('is computed as published', () => {
    // W3C, Web Content Accessibility Guidelines 2.1: black on white is 21:1 by the definition of contrast ratio;
    // #767676 is known as the lightest grey with 4.5:1 on white (4.54; common knowledge, from memory).
    expect(contrast([0, 0, 0], [255, 255, 255])).toBeCloseTo(21, 10);
    expect(contrast(bytesOf('#767676'), [255, 255, 255])).toBeCloseTo(4.54, 2);
    expect(contrast(bytesOf('#777777'), [255, 255, 255])).toBeLessThan(4.5);
  });

  const surfaces = { dark: [0, 0, 0], light: [255, 255, 255] } as const;
  const coloured = BACKGROUNDS.flatMap((background) =>
    Object.entries(STYLE_COLOURS[background]).map(([style, colour]) => ({ background, style, ...colour })),
  );
  it.each(coloured)('$style is legible on a $background background', ({ background, hex, index256 }) => {
    // Success criterion 1.4.3, level AA.
    expect(contrast(bytesOf(hex), surfaces[background])).toBeGreaterThanOrEqual(4.5);
    expect(contrast(cubeEntry(index256), surfaces[background])).toBeGreaterThanOrEqual(4.5);
  });

  it('keeps the hues of the published set on a light background', () => {
    for (const [style, { hex, index256 }] of Object.entries(STYLE_COLOURS.light)) {
      const published = hueDeg(bytesOf(STYLE_COLOURS.dark[style as keyof typeof STYLE_COLOURS.dark].hex));
      expect(Math.abs(hueDeg(bytesOf(hex)) - published)).toBeLessThan(1);
      expect(Math.abs(hueDeg(cubeEntry(index256)) - published)).toBeLessThan(15);
    }
  });
});
