/**
 * How does a QR code stand in a terminal? Dark on light with its quiet zone, whatever colours the terminal has: with colours
 * both are set; without them what is printed is the light on a dark background, and the dark on a light one. Two modules
 * share a cell as half blocks; in ASCII a module takes two columns.
 */
import { beside } from './beside.js';
import type { Background, ColourMode } from './colour.js';
import { textWidth, wrapped } from './fit-text.js';
import { withQuietZone, type QrMatrix } from './qr-matrix.js';

/** How the code is drawn; `background` counts only without colours. */
export interface QrLook {
  mode: ColourMode;
  background: Background;
  ascii: boolean;
}

const ESCAPE = '\u001b[';
const END = `${ESCAPE}0m`;

/**
 * Codes of black and of white. The first 16 of 256 colours are the palette's, which anyone may have changed; black and white of
 * the cube behind them are fixed. Of the 16 it is plain white, which every terminal has as a background, the bright one not.
 */
const SHADES: Readonly<Record<Exclude<ColourMode, 'none'>, { on: string; dark: string; light: string }>> = {
  '16': { on: `${ESCAPE}30;47m`, dark: `${ESCAPE}40m`, light: `${ESCAPE}47m` },
  '256': { on: `${ESCAPE}38;5;16;48;5;231m`, dark: `${ESCAPE}48;5;16m`, light: `${ESCAPE}48;5;231m` },
  truecolor: {
    on: `${ESCAPE}38;2;0;0;0;48;2;255;255;255m`,
    dark: `${ESCAPE}48;2;0;0;0m`,
    light: `${ESCAPE}48;2;255;255;255m`,
  },
};

/** By upper + 2 * lower module, true where ink is printed. */
const HALF_BLOCKS = [' ', '▀', '▄', '█'] as const;

function blockRow(upper: readonly boolean[], lower: readonly boolean[]): string {
  return upper.map((ink, column) => HALF_BLOCKS[(ink ? 1 : 0) + (lower[column] ? 2 : 0)]).join('');
}

/** Two rows of modules a line, without colours; a row that is missing below stays without ink. */
function blockLines(ink: QrMatrix): string[] {
  return ink.flatMap((row, index) => (index % 2 === 0 ? [blockRow(row, ink[index + 1] ?? [])] : []));
}

/** One row of modules a line, as background colours behind spaces. */
function colouredSpaces(row: readonly boolean[], { dark, light }: { dark: string; light: string }): string {
  const cells = row.map((isDark, column) => {
    const isSame = column > 0 && row[column - 1] === isDark;
    return `${isSame ? '' : isDark ? dark : light}  `;
  });
  return `${cells.join('')}${END}`;
}

/** The code line by line, all of the same width; without `ascii` half as many lines as modules. */
export function qrLines(matrix: QrMatrix, { mode, background, ascii }: QrLook): string[] {
  const zone = withQuietZone(matrix);
  if (mode === 'none') {
    const isInk = (isDark: boolean) => isDark === (background === 'light');
    const ink = zone.map((row) => row.map(isInk));
    return ascii ? ink.map((row) => row.map((it) => (it ? '##' : '  ')).join('')) : blockLines(ink);
  }
  const shades = SHADES[mode];
  if (ascii) return zone.map((row) => colouredSpaces(row, shades));
  return blockLines(zone).map((line) => `${shades.on}${line}${END}`);
}

const CAPTION_GAP = 2;
const LEAST_CAPTION = 16;

/** The columns that the lines of a code take; colours take none. */
export function qrWidth(lines: readonly string[]): number {
  return textWidth(lines[0] ?? '');
}

/** The code with a caption on its right, as far as there are columns for it. */
export function withCaption(lines: readonly string[], caption: readonly string[], width: number): string[] {
  const leftWidth = qrWidth(lines);
  const room = width - leftWidth - CAPTION_GAP;
  if (room < LEAST_CAPTION) return [...lines];
  const said = caption.flatMap((text) => ['', ...wrapped(text, room)]);
  return said.length > lines.length ? [...lines] : beside(lines, said, { leftWidth, gap: CAPTION_GAP });
}
