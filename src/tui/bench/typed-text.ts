/**
 * What becomes of text that is typed or pasted, and taken back a character at a time?
 */
const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Longest text that can be typed, characters. */
export const LONGEST_TEXT = 200;

/** Text with more behind it, as far as there is room for `most` characters. */
export function appended(text: string, more: string, most = LONGEST_TEXT): string {
  // By code points, so that no character is cut in two; no more of a long paste is looked at than could fit.
  return Array.from(text + more.slice(0, 2 * most))
    .slice(0, most)
    .join('');
}

/** Text without its last character as people see characters. */
export function shortened(text: string): string {
  const last = [...graphemes.segment(text)].at(-1);
  return last === undefined ? '' : text.slice(0, last.index);
}
