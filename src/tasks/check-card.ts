/**
 * Is this file a ride card in text, and are its numbers still those that were printed?
 */
import { readCard, isCardText } from '../store/card-reading.js';
import { readFileText } from '../store/file-text.js';
import { shownPath, type Places } from '../store/places.js';
import type { Checked, Problem } from '../quantity/problem.js';

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
  if (!text.ok || !isCardText(text.value)) return null;
  const card = readCard(text.value, shown);
  return card.ok ? { ok: true, value: { kind: CARD_KIND, name: card.value.name } } : card;
}
