/**
 * How does a ride card look as plain text? One page for a pocket, its numbers in lines that are read back by `check`: they stand
 * first, between a line "numbers" and their hash, so that nothing that a person wrote further down can be taken for one.
 *
 * A6 upright is 105 x 148 mm (ISO 216). In a monospace of 7 pt a letter is 0.6 x 7 pt = 1.48 mm wide and a row 7 pt = 2.47 mm
 * high: 64 columns are 94.8 mm and 56 rows 138.3 mm, with 5 mm of margin left on every side.
 */
import { cardRows } from './card-rows.js';
import { rideCard, type CardPart } from './card.js';
import type { KeptFile } from '../quantity/kept-file.js';
import { padded } from './fit-text.js';

/** Columns and rows of A6 in 7 pt. */
export const CARD_PAGE = { columns: 64, rows: 56 } as const;

/** Columns of the label before a text. */
const LABEL_COLUMNS = 9;
/** Fewer columns of text than this are not legible. */
const LEAST_COLUMNS = 20;
/** Columns of a key and of a value among the numbers. */
const KEY_COLUMNS = 26;
const VALUE_COLUMNS = 9;

/** Words that begin the lines around the numbers; `check` looks for them. */
export const CARD_WORDS = { title: 'Ride card', numbers: 'numbers', hash: 'hash of these numbers' } as const;

const ASCII_OF: Readonly<Record<string, string>> = {
  '°': ' deg',
  '×': 'x',
  '²': '2',
  '–': '-',
  '—': '-',
  '−': '-',
  '…': '...',
  '±': '+-',
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  ß: 'ss',
  æ: 'ae',
  ø: 'o',
};

/** A text in ASCII alone: letters without their marks, signs in words, a question mark for what has none. */
export function asciiText(text: string): string {
  return text
    .replace(/[^\u0020-\u007e]/gu, (sign) => ASCII_OF[sign] ?? sign)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\u0020-\u007e]/gu, '?');
}

/**
 * The card as text with a line end behind its last row: at most 64 columns, or less where `width` is (the numbers take what they
 * need). At 64 it is one page of 56 rows for which long parts are cut; where it is narrower nothing is.
 */
export function cardText(
  name: string,
  kept: KeptFile,
  { width = CARD_PAGE.columns, ascii = false }: { width?: number; ascii?: boolean } = {},
): string {
  const card = rideCard(name, kept);
  const said = (text: string) => (ascii ? asciiText(text) : text);
  const saidPart = (part: CardPart) => ({ ...part, text: said(part.text) });
  const head = [
    `${CARD_WORDS.title} ${card.name}`,
    CARD_WORDS.numbers,
    ...card.numbers.map(({ key, value, unit }) =>
      `  ${padded(key, KEY_COLUMNS)} ${padded(value, VALUE_COLUMNS, 'right')} ${unit}`.trimEnd(),
    ),
    `${CARD_WORDS.hash} ${card.hash}`,
  ];
  const isPage = width >= CARD_PAGE.columns;
  const rows = cardRows([card.feel, ...card.parts].map(saidPart), {
    columns: Math.max(LEAST_COLUMNS, Math.min(width, CARD_PAGE.columns) - LABEL_COLUMNS),
    rows: isPage ? CARD_PAGE.rows - head.length : Infinity,
    ascii,
  });
  const lines = rows.map(({ label, text }) => `${padded(label, LABEL_COLUMNS)}${text}`.trimEnd());
  return `${[...head, ...lines].join('\n')}\n`;
}
