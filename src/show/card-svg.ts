/**
 * How does a ride card look on paper? A6 upright in tenths of a millimetre, text as text, black on white. Letters are monospaced
 * and no row is longer than its columns, so that no reader's font can run over the edge.
 */
import type { KeptFile } from '../quantity/kept-file.js';
import { cardRows, rowCount } from './card-rows.js';
import { slipBoxes, slipHeads, SLIP_LEGEND, SLIP_WIDTH } from './card-slips.js';
import { rideCard, type CardPart, type RideCard } from './card.js';
import { textWidth, truncated } from './fit-text.js';
import { svgNumber, svgText } from './svg-text.js';

/** A6 upright, 0.1 mm (ISO 216: 105 x 148 mm), and what is left free on every side. */
export const CARD_SIZE = { width: 1050, height: 1480, margin: 50 } as const;

/** A square code to be read by a camera: a path of dark modules inside `size` x `size` modules, light ones around it counted. */
export interface CardCode {
  size: number;
  path: string;
}

/** What may be on a card besides its words. */
export interface CardSvgOptions {
  qr?: CardCode | null;
  /** Short lines in the corners along which it is cut out. */
  cutMarks?: boolean;
}

/**
 * Width of a letter over its size that is counted with: 0.600 in Courier, 0.602 in DejaVu Sans Mono and Menlo, 0.55 in Consolas
 * (the fonts' own tables of advance widths, from memory).
 */
export const LETTER_RATIO = 0.61;

const FONTS =
  "ui-monospace, 'DejaVu Sans Mono', 'Liberation Mono', Menlo, Consolas, 'Courier New', monospace";

const { width: WIDTH, height: HEIGHT, margin: MARGIN } = CARD_SIZE;
const INNER = WIDTH - 2 * MARGIN;
const GREY = '#444444';

/** Side of the code, and what is free beside it, 0.1 mm: modules of 0.4 mm and more. */
const CODE = { side: 240, gap: 20 } as const;
const NAME_SIZE = 56;
const SMALL_SIZE = 20;
const LEGEND_SIZE = 16;
/** Height of a row over the size of its letters. */
const LEADING = 1.2;

/** Sizes of letters that are tried until all rows fit, 0.1 mm: 6.8 to 5.2 pt. */
const BODY_SIZES = [24, 23, 22, 21, 20, 19, 18.5] as const;
const LABEL_COLUMNS = 9;

const columnsIn = (width: number, size: number) => Math.floor(width / (LETTER_RATIO * size) + 1e-9);

interface At {
  x: number;
  y: number;
  size: number;
}

function textAt({ x, y, size }: At, text: string, look = ''): string {
  const place = `x="${svgNumber(x)}" y="${svgNumber(y)}" font-size="${svgNumber(size)}"`;
  return text === '' ? '' : `<text ${place}${look}>${svgText(text)}</text>`;
}

const BOLD = ' font-weight="700"';
const RIGHT = ' text-anchor="end"';
const DIM = ` fill="${GREY}"`;

/** What was drawn, and where the next thing may begin, 0.1 mm from the top. */
interface Drawn {
  svg: string[];
  bottom: number;
}

/** Name, board, hash and feel, beside the code where there is one. */
function header(card: RideCard, qr: CardCode | null): Drawn {
  const room = qr === null ? INNER : INNER - CODE.side - CODE.gap;
  const nameSize = Math.min(NAME_SIZE, room / (LETTER_RATIO * textWidth(card.name)));
  const smallColumns = columnsIn(room, SMALL_SIZE);
  const about = `board ${card.board}, proven ${card.provenOn}, underfoot ${card.version}`;
  const nameY = MARGIN + NAME_SIZE * 0.8;
  const hash = { x: MARGIN, y: nameY + 68, size: 30 };
  const svg = [
    textAt({ x: MARGIN, y: nameY, size: nameSize }, card.name, BOLD),
    textAt({ x: MARGIN, y: nameY + 30, size: SMALL_SIZE }, truncated(about, smallColumns), DIM),
    textAt(hash, `numbers ${card.hash}`, BOLD),
  ];
  const rows = cardRows([card.feel], { columns: columnsIn(room, 22), rows: 4, ascii: false });
  const first = hash.y + 34;
  svg.push(
    ...rows.map(({ text }, index) => textAt({ x: MARGIN, y: first + index * 22 * LEADING, size: 22 }, text)),
  );
  const bottom = first + (rows.length - 1) * 22 * LEADING + 14;
  if (qr === null) return { svg, bottom };
  const scale = CODE.side / qr.size;
  const place = `translate(${svgNumber(WIDTH - MARGIN - CODE.side)} ${MARGIN}) scale(${scale.toFixed(4)})`;
  svg.push(`<path transform="${place}" d="${svgText(qr.path)}" shape-rendering="crispEdges"/>`);
  return { svg, bottom: Math.max(bottom, MARGIN + CODE.side + 8) };
}

/** The numbers, a row each, with what a slip does beside them. */
function numbersTable(card: RideCard, kept: KeptFile, top: number): Drawn {
  const { numbers } = card;
  const hasSlips = kept.slips.length > 0;
  const room = hasSlips ? INNER - SLIP_WIDTH - 20 : INNER;
  const longest = (text: (row: (typeof numbers)[number]) => string) =>
    Math.max(...numbers.map((row) => textWidth(text(row))));
  const columns = [longest(({ label }) => label), longest(({ value }) => value), longest(({ unit }) => unit)];
  const all = columns[0]! + columns[1]! + columns[2]! + 3;
  const size = Math.min(25, room / (LETTER_RATIO * all));
  const pitch = numbers.length > 12 ? 26 : 31;
  const letter = LETTER_RATIO * size;
  const valueEnd = MARGIN + (columns[0]! + 2 + columns[1]!) * letter;
  const svg = [rule(top)];
  const slipX = WIDTH - MARGIN - SLIP_WIDTH + 6;
  const first = top + (hasSlips ? 46 : 30);
  if (hasSlips) svg.push(slipHeads(slipX, top + 18));
  numbers.forEach(({ label, key, value, unit }, index) => {
    const y = first + index * pitch;
    svg.push(
      textAt({ x: MARGIN, y, size }, label),
      textAt({ x: valueEnd, y, size }, value, BOLD + RIGHT),
      textAt({ x: valueEnd + letter, y, size }, unit),
      slipBoxes(kept, key, { x: slipX, y: y + 2 }),
    );
  });
  const last = first + (numbers.length - 1) * pitch;
  if (!hasSlips) return { svg, bottom: last + 12 };
  const legendY = (index: number) => last + 26 + index * LEGEND_SIZE * LEADING;
  SLIP_LEGEND.forEach((line, index) => {
    const text = truncated(line, columnsIn(INNER, LEGEND_SIZE));
    svg.push(textAt({ x: MARGIN, y: legendY(index), size: LEGEND_SIZE }, text, DIM));
  });
  return { svg, bottom: legendY(SLIP_LEGEND.length - 1) + 10 };
}

function rule(y: number): string {
  return `<path d="M${MARGIN},${svgNumber(y)}H${WIDTH - MARGIN}" stroke="#000000" stroke-width="2"/>`;
}

/** Columns of text and rows that there are at a size of letters. */
function roomAt(size: number, height: number) {
  return {
    columns: columnsIn(INNER, size) - LABEL_COLUMNS,
    rows: Math.floor(height / (size * LEADING)),
    ascii: false,
  };
}

/** The parts, as large as they fit. */
function partsAt(parts: readonly CardPart[], top: number): string[] {
  const height = HEIGHT - MARGIN - top - 6;
  const fits = (size: number) => {
    const { columns, rows } = roomAt(size, height);
    return rowCount(parts, columns) <= rows;
  };
  const size = BODY_SIZES.find(fits) ?? BODY_SIZES.at(-1)!;
  const textX = MARGIN + LABEL_COLUMNS * LETTER_RATIO * size;
  const rows = cardRows(parts, roomAt(size, height)).flatMap(({ label, text }, index) => {
    const y = top + 6 + (index + 0.85) * size * LEADING;
    return [textAt({ x: MARGIN, y, size }, label, BOLD), textAt({ x: textX, y, size }, text)];
  });
  return [rule(top), ...rows];
}

/** Lines of 3 mm along the edges at every corner. */
function cutLines(): string {
  const ends = [0, WIDTH].flatMap((x) => [0, HEIGHT].map((y) => ({ x, y })));
  const inwards = (at: number) => (at === 0 ? 30 : -30);
  const data = ends.map(({ x, y }) => `M${x + inwards(x)},${y}H${x}V${y + inwards(y)}`).join('');
  return `<path d="${data}" fill="none" stroke="#000000" stroke-width="3"/>`;
}

/** What is inside of the picture of a card, without the element around it. */
function drawing(card: RideCard, kept: KeptFile, { qr = null, cutMarks = false }: CardSvgOptions): string[] {
  const head = header(card, qr);
  const table = numbersTable(card, kept, head.bottom);
  return [
    `<title>${svgText(`Ride card ${card.name}`)}</title>`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#ffffff"/>`,
    ...(cutMarks ? [cutLines()] : []),
    `<g font-family="${svgText(FONTS)}" fill="#000000">`,
    ...[...head.svg, ...table.svg, ...partsAt(card.parts, table.bottom)].filter((part) => part !== ''),
    '</g>',
  ];
}

/** The ride card of a kept profile as an SVG file of 105 x 148 mm, with a code for a camera where one is given. */
export function cardSvg(name: string, kept: KeptFile, options: CardSvgOptions = {}): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="105mm" height="148mm" viewBox="0 0 ${WIDTH} ${HEIGHT}">`,
    ...drawing(rideCard(name, kept), kept, options),
    '</svg>',
    '',
  ].join('\n');
}
