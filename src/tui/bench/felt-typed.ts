/**
 * Which ratings does a line say, such as `twitchy 4, loose 2` or `twitchy=4`?
 */
import { FEEL_WORDS, FELT_KEYS, feltKeyOf, type FeltKey } from '../../quantity/feel-words.js';
import type { Checked } from '../../quantity/problem.js';
import { quoted } from '../../quantity/received.js';
import { suggestion } from '../../quantity/suggestion.js';

/** Ratings from 1, not at all, to 5, very. */
export type Felt = Partial<Record<FeltKey, number>>;

const RATING = /^[1-5]$/;

const NEITHER = 'expected ratings from 1 not at all to 5 very, such as twitchy 4, loose 2';

/** The key of a word, as it is spoken or as a file has it. */
function keyOf(word: string): FeltKey | undefined {
  const spoken = FEEL_WORDS.find((known) => known === word);
  return spoken === undefined ? FELT_KEYS.find((known) => known === word) : feltKeyOf(spoken);
}

function unknownText(word: string): string {
  const near = suggestion(word, FELT_KEYS);
  const hint = near === undefined ? '' : `; did you mean ${near}?`;
  return `expected a word of ${FELT_KEYS.join(', ')}, received ${quoted(word)}${hint}`;
}

/** The ratings of a line, or everything that is wrong with it, a sentence each. */
export function typedFelt(text: string): Checked<Felt, string> {
  const parts = text
    .split(/[,;]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const felt: Felt = {};
  const faults = parts.flatMap((part): string[] => {
    const [, word = part, rating = ''] = /^(.*?)[\s=:]+(\S+)$/.exec(part) ?? [];
    const key = keyOf(word.toLowerCase());
    const own = [
      ...(key === undefined ? [unknownText(word)] : []),
      ...(RATING.test(rating)
        ? []
        : [`${word}: expected a rating from 1 to 5, received ${rating === '' ? 'none' : quoted(rating)}`]),
      ...(key !== undefined && felt[key] !== undefined ? [`${key}: expected one rating, received two`] : []),
    ];
    if (own.length === 0 && key !== undefined) felt[key] = Number(rating);
    return own;
  });
  if (parts.length === 0) return { ok: false, faults: [NEITHER] };
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value: felt };
}
