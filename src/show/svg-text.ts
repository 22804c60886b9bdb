/**
 * How is text put into an SVG picture? Markup is escaped, and what XML 1.0 forbids (its production
 * 2, "Char") is left out, so that any title gives a well-formed file. Numbers are written short.
 */
import { plainText } from './plain-text.js';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** A text for element content or a quoted attribute. */
export function svgText(text: string): string {
  return plainText(text)
    .replace(/[^\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replace(/[&<>"']/g, (character) => ENTITIES[character] ?? '');
}

/** A coordinate with at most one digit after the point. */
export function svgNumber(value: number): string {
  return String(Number(value.toFixed(1)) + 0);
}
