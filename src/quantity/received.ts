/**
 * What came, in words a person recognises from his own file: "text 'abc'", "nothing", "NaN",
 * "minus infinity", "an empty list", "a section".
 */

const QUOTE_LIMIT = 60;

/** A text in quotes; a long one is cut and its length said. */
export function quoted(text: string): string {
  const letters = Array.from(text);
  if (letters.length <= QUOTE_LIMIT) return `'${text}'`;
  return `'${letters.slice(0, QUOTE_LIMIT).join('')}…' (${letters.length} characters)`;
}

function numberInWords(value: number): string {
  if (Number.isNaN(value)) return 'NaN';
  if (value === Infinity) return 'infinity';
  if (value === -Infinity) return 'minus infinity';
  return String(value);
}

function listInWords(list: readonly unknown[]): string {
  if (list.length === 0) return 'an empty list';
  return list.length === 1 ? 'a list of one entry' : `a list of ${list.length} entries`;
}

/** A value that was received, in words. */
export function receivedInWords(value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  if (typeof value === 'number') return numberInWords(value);
  if (typeof value === 'boolean') return value ? 'true' : 'false';
  if (typeof value === 'string') return value === '' ? 'empty text' : `text ${quoted(value)}`;
  if (Array.isArray(value)) return listInWords(value);
  if (typeof value !== 'object') return `a ${typeof value}`;
  return Object.keys(value).length === 0 ? 'an empty section' : 'a section';
}
