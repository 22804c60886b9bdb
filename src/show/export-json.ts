/**
 * How is a kept profile written for another program? Everything that is kept, with the keys of its file, which have their units
 * in them; `profile` holds what a profile file holds, so that it can be taken out and used as one.
 */
import type { KeptFile } from '../quantity/kept-file.js';
import { shortText } from '../quantity/short-text.js';

/** The text of the file: name, short text, and the whole kept record. */
export function exportJson(name: string, kept: KeptFile): string {
  return `${JSON.stringify({ name, shortText: shortText(kept.profile, kept.numbers), ...kept }, null, 2)}\n`;
}
