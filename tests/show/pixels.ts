/**
 * Pictures as a camera sees them, made from what is printed and not from what it was made of: grey squares, and jsQR, which
 * reads them and shares no code with the program that drew them.
 */
import xterm from '@xterm/headless';
import jsqr from 'jsqr';
import type { Background } from '../../src/show/colour.js';
import { readXml } from './well-formed.js';

/** Rows of shades from the top, 0 black to 255 white. */
export type Shades = number[][];

const SQUARE_PIXELS = 4;

/** What an independent decoder reads in a picture; null for nothing. It reads no code that is light on dark. */
export function decoded(shades: Shades): { text: string; version: number } | null {
  const [width, height] = [shades[0]!.length * SQUARE_PIXELS, shades.length * SQUARE_PIXELS];
  const pixels = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const shade = shades[Math.floor(y / SQUARE_PIXELS)]![Math.floor(x / SQUARE_PIXELS)]!;
      pixels.fill(shade, 4 * (y * width + x), 4 * (y * width + x) + 3);
    }
  }
  // The package is CommonJS: its function is the default of the default.
  const found = jsqr.default(pixels, width, height, { inversionAttempts: 'dontInvert' });
  return found === null ? null : { text: found.data, version: found.version };
}

/** The squares of an SVG of one ground and one path of rectangles, one a unit of its view box. */
export function shadesOfSvg(svg: string): Shades {
  const elements = readXml(svg);
  const side = Number(elements[0]!.attributes['viewBox']!.split(' ')[2]);
  const ground = elements.find(({ name }) => name === 'rect')!.attributes;
  if (ground['fill'] !== '#ffffff' || Number(ground['width']) !== side) throw new Error('no white ground');
  const { d = '', fill } = elements.find(({ name }) => name === 'path')!.attributes;
  if (fill !== '#000000') throw new Error('the path is not black');
  const shades = Array.from({ length: side }, () => new Array<number>(side).fill(255));
  const left = d.replace(
    /M(\d+) (\d+)h(\d+)v1h-(\d+)z/g,
    (_, x: string, y: string, w: string, back: string) => {
      if (w !== back) throw new Error('a rectangle that is none');
      for (let at = 0; at < Number(w); at += 1) shades[Number(y)]![Number(x) + at] = 0;
      return '';
    },
  );
  if (left !== '') throw new Error(`not understood: ${left}`);
  return shades;
}

/** Shades of the 16 colours that matter here, as a terminal usually has them. */
const PALETTE: Readonly<Record<number, number>> = { 0: 0, 7: 190, 16: 0, 231: 255 };

type Cell = NonNullable<
  ReturnType<NonNullable<ReturnType<xterm.Terminal['buffer']['active']['getLine']>>['getCell']>
>;

function shadeOf(colour: number, is: { rgb: boolean; palette: boolean }, otherwise: number): number {
  if (is.rgb) return (colour >> 8) & 0xff;
  if (!is.palette) return otherwise;
  const shade = PALETTE[colour];
  if (shade === undefined) throw new Error(`colour ${colour} is not of the code`);
  return shade;
}

function inkAndPaper(cell: Cell, background: Background): { ink: number; paper: number } {
  const own = background === 'dark' ? { ink: 200, paper: 20 } : { ink: 40, paper: 250 };
  const ink = { rgb: cell.isFgRGB(), palette: cell.isFgPalette() };
  const paper = { rgb: cell.isBgRGB(), palette: cell.isBgPalette() };
  return {
    ink: shadeOf(cell.getFgColor(), ink, own.ink),
    paper: shadeOf(cell.getBgColor(), paper, own.paper),
  };
}

/** Upper and lower half of a cell, and how much of it the ink covers. */
const COVERED: Readonly<Record<string, readonly [number, number]>> = {
  '': [0, 0],
  ' ': [0, 0],
  '▀': [1, 0],
  '▄': [0, 1],
  '█': [1, 1],
  '#': [0.7, 0.7],
};

/** What a terminal of this background shows for the lines: two shades a cell, one above the other. */
export async function shadesOfTerminal(lines: readonly string[], background: Background): Promise<Shades> {
  const size = { cols: 200, rows: lines.length + 4 };
  const terminal = new xterm.Terminal({ ...size, allowProposedApi: true });
  await new Promise<void>((done) =>
    terminal.write(['', ...lines].map((line) => ` ${line}`).join('\r\n'), done),
  );
  const shades: Shades = [];
  for (let row = 0; row < size.rows; row += 1) {
    const line = terminal.buffer.active.getLine(row)!;
    const halves = Array.from({ length: size.cols }, (_, column) => {
      const cell = line.getCell(column)!;
      const covered = COVERED[cell.getChars()];
      if (covered === undefined) throw new Error(`no part of a code: ${cell.getChars()}`);
      const { ink, paper } = inkAndPaper(cell, background);
      return covered.map((part) => part * ink + (1 - part) * paper);
    });
    shades.push(
      halves.map(([upper]) => upper!),
      halves.map(([, lower]) => lower!),
    );
  }
  terminal.dispose();
  return shades;
}
