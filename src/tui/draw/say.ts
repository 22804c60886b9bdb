/**
 * Text for a place on the screen: in the characters of the symbol set, wrapped or cut to its width.
 */
import { padded, textWidth, truncated, wrapped } from '../../show/fit-text.js';
import { GLYPHS } from '../../show/glyphs.js';
import { plainText } from '../../show/plain-text.js';
import { writable } from '../../show/plot-frame.js';
import type { BenchOptions } from '../bench/state.js';

/** A place to draw in, columns and rows. */
export interface Area {
  width: number;
  height: number;
}

/** A text in the characters of a symbol set. */
function inSet(text: string, symbols: BenchOptions['symbols']): string {
  const plain = writable(plainText(text), GLYPHS[symbols]);
  return symbols === 'ascii' ? plain.replaceAll('²', '2') : plain;
}

/** A text in lines of a width. */
export function say(text: string, width: number, { symbols }: BenchOptions): string[] {
  return wrapped(inSet(text, symbols), Math.max(2, width));
}

/** A text in one line of a width, cut where it is longer. */
export function sayInOne(text: string, width: number, { symbols }: BenchOptions): string {
  return truncated(inSet(text, symbols), Math.max(1, width), GLYPHS[symbols].ellipsis);
}

/** Two texts at the ends of one line; the left one gives way. */
export function atBothEnds(
  left: string,
  right: string,
  { width, options }: { width: number; options: BenchOptions },
): string {
  const end = sayInOne(right, width, options);
  const room = width - textWidth(end) - (end === '' ? 0 : 2);
  if (room < 4) return end;
  return padded(sayInOne(left, room, options), width - textWidth(end)) + end;
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The end of a text that is being typed, as much of it as a width has room for. */
export function endOf(text: string, width: number): string {
  const segments = Array.from(graphemes.segment(plainText(text)), ({ segment }) => segment);
  while (textWidth(segments.join('')) > width) segments.shift();
  return segments.join('');
}

/** The rows that fit, those around `at` where not all do. */
export function inSight<T>(rows: readonly T[], at: number, height: number): T[] {
  const top = Math.max(0, Math.min(rows.length - height, at - Math.floor(height / 2)));
  return rows.slice(top, top + Math.max(0, height));
}
