/**
 * Is this file a ride card in text, or the text of its code, and are its numbers still those that were printed?
 */
import { basename, extname } from 'node:path';
import { keyPath } from '../quantity/key-path.js';
import { readCard, isCardText } from '../store/card-reading.js';
import { readFileText } from '../store/file-text.js';
import { shownPath, type Places } from '../store/places.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { readShortText, SHORT_TEXT_MARK } from '../quantity/short-text.js';
import { numbersHash } from '../store/short-hash.js';
import { fileProblem } from '../store/system-fault.js';

/** What a card is called where the kinds of files are. */
export const CARD_KIND = 'card';

/** A name that only a file of another kind has. */
const YAML_NAME = /\.ya?ml$/i;

/** The check of the file at an absolute path as a ride card; null where it is none, or where nothing can be read of it. */
export function checkCard(
  places: Places,
  path: string,
): Checked<{ kind: typeof CARD_KIND; name: string }, Problem> | null {
  if (YAML_NAME.test(path)) return null;
  const shown = shownPath(places, path);
  const text = readFileText(path, shown);
  if (!text.ok) return null;
  if (text.value.trimStart().toUpperCase().startsWith(`${SHORT_TEXT_MARK} `)) {
    const read = readShortText(text.value, numbersHash);
    if (read.ok) return { ok: true, value: { kind: CARD_KIND, name: basename(path, extname(path)) } };
    const faults = read.faults.map((fault) => ({
      ...fileProblem(shown, fault.expected, fault.received),
      key: keyPath(fault.path),
    }));
    return { ok: false, faults };
  }
  if (!isCardText(text.value)) return null;
  const card = readCard(text.value, shown);
  return card.ok ? { ok: true, value: { kind: CARD_KIND, name: card.value.name } } : card;
}
