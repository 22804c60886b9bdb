/**
 * Which characters does a plot draw with? One table for each symbol set: how many dots a cell holds,
 * how a pattern of dots becomes a character, and the characters of axes and marks. Every one of
 * them is one column wide; `ascii` stays within ASCII.
 */

/** Symbol sets, from the finest to the plainest. */
export const SYMBOL_SETS = ['braille', 'block', 'ascii'] as const;

/** A symbol set. */
export type SymbolSet = (typeof SYMBOL_SETS)[number];

/**
 * The characters of a symbol set. A pattern has one bit a dot: bit `column * dotsHigh + row`, rows
 * counted from the top. `solid` makes the characters of solid lines, `dotted` those of dotted
 * and dashed ones.
 */
export interface Glyphs {
  dotsWide: number;
  dotsHigh: number;
  solid: (dots: number) => string;
  dotted: (dots: number) => string;
  dottedSample: string;
  dashedSample: string;
  mark: string;
  cursor: string;
  zero: string;
  above: string;
  below: string;
  axis: string;
  labelledAxis: string;
  corner: string;
  line: string;
  tick: string;
  heavyLine: string;
  heavyTick: string;
  ellipsis: string;
  degree: string;
  forward: string;
  barStart: string;
  barEnd: string;
}

const BRAILLE_BITS = [0x01, 0x02, 0x04, 0x40, 0x08, 0x10, 0x20, 0x80] as const;

/** The braille character of a pattern of 2 x 4 dots; the empty pattern is a space. */
function braille(dots: number): string {
  const code = BRAILLE_BITS.reduce((sum, bit, index) => (dots & (1 << index) ? sum + bit : sum), 0);
  return code === 0 ? ' ' : String.fromCodePoint(0x2800 + code);
}

const HALF_BLOCKS = [' ', '▀', '▄', '█'] as const;

/** Three heights in a cell; a pattern that spans them all is an upright. */
const ASCII_HEIGHTS = [' ', "'", '-', '"', '.', '|', '_', '|'] as const;

const boxDrawing = {
  cursor: '│',
  zero: '┈',
  above: '▲',
  below: '▼',
  axis: '│',
  labelledAxis: '┤',
  corner: '└',
  line: '─',
  tick: '┬',
  heavyLine: '━',
  heavyTick: '┯',
  ellipsis: '…',
  degree: '°',
  forward: '→',
  barStart: '├',
  barEnd: '┤',
} as const;

/** The characters of every symbol set. */
export const GLYPHS: Readonly<Record<SymbolSet, Glyphs>> = {
  braille: {
    ...boxDrawing,
    dotsWide: 2,
    dotsHigh: 4,
    solid: braille,
    dotted: braille,
    dottedSample: '⠄⠄⠄',
    dashedSample: '⠤ ⠤',
    mark: '┊',
  },
  block: {
    ...boxDrawing,
    dotsWide: 1,
    dotsHigh: 2,
    solid: (dots) => HALF_BLOCKS[dots] ?? ' ',
    dotted: () => '·',
    dottedSample: '···',
    dashedSample: '· ·',
    mark: '¦',
    zero: '-',
  },
  ascii: {
    dotsWide: 1,
    dotsHigh: 3,
    solid: (dots) => ASCII_HEIGHTS[dots] ?? ' ',
    dotted: () => '=',
    dottedSample: '===',
    dashedSample: '= =',
    mark: ':',
    cursor: '!',
    zero: ' ',
    above: '^',
    below: 'v',
    axis: '|',
    labelledAxis: '+',
    corner: '+',
    line: '-',
    tick: '+',
    heavyLine: '=',
    heavyTick: '#',
    ellipsis: '..',
    degree: ' deg',
    forward: '->',
    barStart: '|',
    barEnd: '|',
  },
};
