/**
 * Which text has which style in a line with colour escapes? Reads back the subset that colour.ts
 * writes; every other escape and control character is left out.
 */
import { BACKGROUNDS, STYLE_COLOURS } from './colour.js';
import { plainText } from './plain-text.js';

/** How a run of text is to look; `colour` is a hexadecimal colour or null for the terminal's own. */
export interface TextLook {
  colour: string | null;
  bold: boolean;
  dim: boolean;
  /** Text and background with their colours exchanged. */
  inverse: boolean;
}

/** A run of text with one look. */
export interface LookRun {
  text: string;
  look: TextLook;
}

/** Select-graphic-rendition sequences (ECMA-48, 8.3.117), their codes in a group. */
const SEQUENCE = new RegExp(`${String.fromCodePoint(0x1b)}\\[([\\d;]*)m`);

const PLAIN: TextLook = { colour: null, bold: false, dim: false, inverse: false };

/** A byte as two hexadecimal digits; null where it is none. */
function hexByte(text: string | undefined): string | null {
  const value = Number(text);
  return Number.isInteger(value) && value >= 0 && value <= 255 ? value.toString(16).padStart(2, '0') : null;
}

/** The colour of a code sequence of paint; undefined where it sets none that paint knows. */
function colourOf(codes: string): string | undefined {
  const [first, second, ...rest] = codes.split(';');
  if (first === '38' && second === '2') {
    const bytes = [0, 1, 2].map((index) => hexByte(rest[index]));
    return bytes.includes(null) ? undefined : `#${bytes.join('')}`;
  }
  const known = BACKGROUNDS.flatMap((background) => Object.values(STYLE_COLOURS[background]));
  if (first === '38' && second === '5')
    return known.find(({ index256 }) => String(index256) === rest[0])?.hex;
  return known.find(({ code16 }) => String(code16) === codes)?.hex;
}

/** The look after one code sequence. */
function lookAfter(look: TextLook, codes: string): TextLook {
  if (codes === '' || codes === '0') return PLAIN;
  if (codes === '1') return { ...look, bold: true };
  if (codes === '2') return { ...look, dim: true };
  if (codes === '22') return { ...look, bold: false, dim: false };
  if (codes === '7') return { ...look, inverse: true };
  if (codes === '27') return { ...look, inverse: false };
  if (codes === '39') return { ...look, colour: null };
  return { ...look, colour: colourOf(codes) ?? look.colour };
}

/** The runs of a line, in order; runs without text are left out. */
export function lookRuns(line: string): LookRun[] {
  const runs: LookRun[] = [];
  let look = PLAIN;
  line.split(SEQUENCE).forEach((part, index) => {
    if (index % 2 === 1) {
      look = lookAfter(look, part);
    } else {
      const text = plainText(part);
      if (text !== '') runs.push({ text, look });
    }
  });
  return runs;
}
