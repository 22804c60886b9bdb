/**
 * Which cells does a line of text fill? A line may hold SGR sequences, wide characters and combining
 * marks; every other escape sequence and control character is left out. What does not fit into the
 * columns is cut off.
 */
import { textWidth } from '../../show/fit-text.js';
import { blankLookOf, lookOf, PLAIN, slotsAfter, type Look, type Slots } from './sgr-look.js';

/**
 * A row of cells, one entry a column: glyphs and how they look. A glyph of several columns stands in
 * the first of them, the others hold an empty text.
 */
export interface CellRow {
  glyphs: string[];
  looks: Look[];
}

const ESCAPE = String.fromCodePoint(0x1b);
const BELL = String.fromCodePoint(0x07);

/** Escape sequences as ECMA-48 forms them, and the rests of broken ones; the parameters of SGR in a group. */
const SEQUENCES = new RegExp(
  [
    `${ESCAPE}\\[([\\d;:]*)m`,
    `${ESCAPE}\\[[0-?]*[ -/]*[@-~]?`,
    `${ESCAPE}[\\]PX^_][^${BELL}${ESCAPE}]*(?:${BELL}|${ESCAPE}\\\\)?`,
    `${ESCAPE}[ -/]*[0-~]?`,
  ].join('|'),
);

/** Characters to which every terminal gives a column of their own: nearly all that screens are made of. */
const ONE_COLUMN =
  '\\u0020-\\u007e\\u00a1-\\u00ac\\u00ae-\\u02ff\\u0370-\\u03ff\\u0400-\\u0482' +
  '\\u2010-\\u2027\\u2030-\\u205e\\u2190-\\u2193\\u219a-\\u22ff\\u2500-\\u25fc\\u2713\\u2717\\u2800-\\u28ff';

const ONE_COLUMN_EACH = new RegExp(`^[${ONE_COLUMN}]*$`);

/** Runs of such characters, and of others with the character before, which a mark would join. */
const RUNS = new RegExp(`[${ONE_COLUMN}]+(?![^${ONE_COLUMN}])|[${ONE_COLUMN}]?[^${ONE_COLUMN}]+`, 'g');

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Whether every terminal shows each character of a text in one column. */
export function hasOneColumnEach(text: string): boolean {
  return ONE_COLUMN_EACH.test(text);
}

/** A row of plain blanks. */
function blankRow(columnCount: number): CellRow {
  return {
    glyphs: new Array<string>(columnCount).fill(' '),
    looks: new Array<Look>(columnCount).fill(''),
  };
}

/** A row being filled from the left. */
interface Filling {
  row: CellRow;
  column: number;
  /** Where the glyph stands that marks would join; -1 where there is none. */
  markedColumn: number;
}

/** How the characters of a text look: glyphs, and the blanks between them. */
interface TextLooks {
  glyph: Look;
  blank: Look;
}

/** Puts a glyph into the next columns; one that does not fit ends the row. */
function put(filling: Filling, glyph: { text: string; width: number }, look: Look): void {
  const { row, column } = filling;
  const end = column + glyph.width;
  const fits = end <= row.glyphs.length;
  filling.column = fits ? end : row.glyphs.length;
  filling.markedColumn = fits ? column : -1;
  if (!fits) return;
  row.glyphs.fill('', column, end);
  row.looks.fill(look, column, end);
  row.glyphs[column] = glyph.text;
}

/** Puts a text in which each character has one column into the next columns. */
function putCharacters(filling: Filling, text: string, looks: TextLooks): void {
  const { row, column } = filling;
  const count = Math.min(text.length, row.glyphs.length - column);
  for (let index = 0; index < count; index++) {
    const glyph = text[index]!;
    row.glyphs[column + index] = glyph;
    row.looks[column + index] = glyph === ' ' ? looks.blank : looks.glyph;
  }
  filling.column += count;
  filling.markedColumn = count < text.length ? -1 : filling.column - 1;
}

/** Puts a text in which characters may be wide, joined or not shown into the next columns. */
function putGraphemes(filling: Filling, text: string, looks: TextLooks): void {
  for (const { segment } of graphemes.segment(text)) {
    const width = textWidth(segment);
    if (width > 0) put(filling, { text: segment, width }, segment === ' ' ? looks.blank : looks.glyph);
    else if (filling.markedColumn >= 0 && /^\p{M}+$/u.test(segment)) {
      filling.row.glyphs[filling.markedColumn] += segment;
    }
  }
}

/** Puts a text without escape sequences into the next columns. */
function putText(filling: Filling, text: string, looks: TextLooks): void {
  for (const run of text.match(RUNS) ?? []) {
    const putRun = hasOneColumnEach(run) ? putCharacters : putGraphemes;
    putRun(filling, run, looks);
  }
}

/** The cells of a line in a row of so many columns. */
export function cellsOf(line: string, columnCount: number): CellRow {
  const filling: Filling = { row: blankRow(columnCount), column: 0, markedColumn: -1 };
  let slots: Slots = PLAIN;
  let looks: TextLooks = { glyph: '', blank: '' };
  line.split(SEQUENCES).forEach((part: string | undefined, index) => {
    if (part === undefined) return;
    if (index % 2 === 1) {
      slots = slotsAfter(slots, part);
      looks = { glyph: lookOf(slots), blank: blankLookOf(slots) };
    } else {
      putText(filling, part, looks);
    }
  });
  return filling.row;
}

/** The text of a row, without blanks at its end. */
export function rowText({ glyphs }: CellRow): string {
  return glyphs.join('').trimEnd();
}
