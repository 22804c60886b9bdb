/**
 * How do rows of terminal text become a picture? Each run of text stands at its own column, so that
 * a reader's font cannot shift it; braille dots and half blocks are drawn as shapes, because many
 * fonts lack or misdraw them.
 */
import { textWidth } from './fit-text.js';
import { lookRuns } from './sgr.js';
import type { TextLook } from './sgr.js';
import { svgNumber, svgText } from './svg-text.js';

const CELL = { width: 8.4, height: 18 } as const;
const MARGIN = 18;
const BASELINE = 13.5;
const GROUND = '#15181d';
const INK = '#d5d9df';

/** The picture under construction: grounds of runs with exchanged colours, text elements, and path data by the look that fills them. */
interface Picture {
  grounds: string[];
  texts: string[];
  dots: Map<string, string[]>;
  blocks: Map<string, string[]>;
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The attributes of a look; `paint` is the attribute that takes the colour. */
function lookAttributes(look: TextLook, paint: 'fill' | 'stroke'): string {
  const colour = look.colour === null && paint === 'fill' ? '' : ` ${paint}="${look.colour ?? INK}"`;
  const dim = look.dim ? ' opacity=".62"' : '';
  return `${colour}${dim}`;
}

/** How the marks of a run look: those of an inverse one have the colour of the ground. */
function markLook(look: TextLook): TextLook {
  return look.inverse ? { ...look, colour: GROUND, dim: false } : look;
}

/** The filled cells behind an inverse run. */
function groundElement(width: number, at: { x: number; y: number }, look: TextLook): string {
  const place = `x="${svgNumber(at.x)}" y="${svgNumber(at.y)}"`;
  const size = `width="${svgNumber(width * CELL.width)}" height="${CELL.height}"`;
  return `<rect ${place} ${size}${lookAttributes(look, 'fill')}/>`;
}

function add(shapes: Map<string, string[]>, key: string, data: string): void {
  const list = shapes.get(key);
  if (list === undefined) shapes.set(key, [data]);
  else list.push(data);
}

/** The dots of a braille character, as path data for round caps. */
function brailleDots(character: string, x: number, y: number): string {
  const bits = (character.codePointAt(0) ?? 0) - 0x2800;
  const places = [0, 1, 2, 6, 3, 4, 5, 7].map((bit, index) => ({ bit, column: index >> 2, row: index & 3 }));
  return places
    .filter(({ bit }) => bits & (1 << bit))
    .map(({ column, row }) => {
      const left = svgNumber(x + CELL.width * (0.25 + 0.5 * column));
      return `M${left},${svgNumber(y + CELL.height * (0.125 + 0.25 * row))}h.01`;
    })
    .join('');
}

/** Path data of a half or whole block; null for any other character. */
function blockShape(character: string, x: number, y: number): string | null {
  const shape = { '▀': [0, 0.5], '▄': [0.5, 0.5], '█': [0, 1] }[character];
  if (shape === undefined) return null;
  const [from = 0, size = 0] = shape;
  const corner = `M${svgNumber(x)},${svgNumber(y + from * CELL.height)}`;
  return `${corner}h${CELL.width}v${svgNumber(size * CELL.height)}h-${CELL.width}z`;
}

/** A word at its column. */
function wordElement(word: string, at: { x: number; y: number }, look: TextLook): string {
  const length = svgNumber(textWidth(word) * CELL.width);
  const place = `x="${svgNumber(at.x)}" y="${svgNumber(at.y + BASELINE)}" textLength="${length}"`;
  const weight = look.bold ? ' font-weight="700"' : '';
  return `<text ${place}${weight}${lookAttributes(look, 'fill')}>${svgText(word)}</text>`;
}

/** Draws one run from a column on; text is gathered into words, shapes go to their paths. */
function drawRun(
  picture: Picture,
  run: { text: string; look: TextLook },
  at: { column: number; y: number },
): void {
  const look = markLook(run.look);
  let word = '';
  let wordColumn = at.column;
  let column = at.column;
  const xAt = (cell: number) => MARGIN + cell * CELL.width;
  if (run.look.inverse) {
    picture.grounds.push(groundElement(textWidth(run.text), { x: xAt(column), y: at.y }, run.look));
  }
  const finish = () => {
    if (word !== '') picture.texts.push(wordElement(word, { x: xAt(wordColumn), y: at.y }, look));
    word = '';
  };
  for (const { segment } of graphemes.segment(run.text)) {
    const block = blockShape(segment, xAt(column), at.y);
    const isBraille = /^[\u2800-\u28ff]$/.test(segment);
    if (segment === ' ' || isBraille || block !== null) finish();
    else if (word === '') wordColumn = column;
    if (isBraille) {
      add(picture.dots, lookAttributes(look, 'stroke'), brailleDots(segment, xAt(column), at.y));
    } else if (block !== null) {
      add(picture.blocks, lookAttributes(look, 'fill'), block);
    } else if (segment !== ' ') {
      word += segment;
    }
    column += textWidth(segment);
  }
  finish();
}

/** All rows drawn, and how many columns the widest takes. */
function drawn(lines: readonly string[]): { picture: Picture; columnCount: number } {
  const picture: Picture = { grounds: [], texts: [], dots: new Map(), blocks: new Map() };
  let columnCount = 0;
  lines.forEach((line, row) => {
    let column = 0;
    for (const run of lookRuns(line)) {
      drawRun(picture, run, { column, y: MARGIN + row * CELL.height });
      column += textWidth(run.text);
    }
    columnCount = Math.max(columnCount, column);
  });
  return { picture, columnCount };
}

/**
 * Rows of terminal text, plain or painted by colour.ts, as the text of an SVG file that looks like
 * a dark terminal; `title` is what a screen reader says. At least `columnCount` columns wide.
 */
export function frameSvg(lines: readonly string[], about: { title: string; columnCount?: number }): string {
  const { picture, columnCount } = drawn(lines);
  const width = svgNumber(Math.max(columnCount, about.columnCount ?? 0) * CELL.width + 2 * MARGIN);
  const height = svgNumber(lines.length * CELL.height + 2 * MARGIN);
  const size = `width="${width}" height="${height}"`;
  const dots = [...picture.dots].map(([look, data]) => `<path${look} d="${data.join('')}"/>`);
  const blocks = [...picture.blocks].map(([look, data]) => `<path${look} d="${data.join('')}"/>`);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 ${width} ${height}" role="img">`,
    `<title>${svgText(about.title)}</title>`,
    `<rect ${size} rx="8" fill="${GROUND}"/>`,
    `<g fill="${INK}" stroke="none">${picture.grounds.join('')}</g>`,
    `<g stroke-width="2.3" stroke-linecap="round" fill="none">${dots.join('')}</g>`,
    `<g fill="${INK}" stroke="none">${blocks.join('')}</g>`,
    `<g fill="${INK}" font-family="ui-monospace,monospace" font-size="14">`,
    ...picture.texts,
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}
