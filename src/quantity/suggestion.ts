/**
 * Which known word was probably meant? Only a near one is offered: a wrong guess costs the reader
 * more than none.
 */
import { distance } from 'fastest-levenshtein';

const LONGEST_WORD = 80;
const LETTERS_PER_SLIP = 3;
const SHORTEST_STEM = 4;

/** Slips of the keyboard between two words; two neighbouring letters swapped count as one. */
function slipsBetween(a: string, b: string): number {
  const first = [...a].findIndex((letter, index) => letter !== b[index]);
  const swapped = a.slice(0, first) + (a[first + 1] ?? '') + (a[first] ?? '') + a.slice(first + 2);
  return first >= 0 && swapped === b ? 1 : distance(a, b);
}

/** The only candidate that begins with the word, such as the key without its unit. */
function completion(word: string, candidates: readonly string[]): string | undefined {
  if (word.length < SHORTEST_STEM) return undefined;
  const longer = candidates.filter((candidate) => candidate.toLowerCase().startsWith(word));
  return longer.length === 1 ? longer[0] : undefined;
}

/**
 * The nearest candidate when at most a third of its letters differ (upper and lower case count as
 * equal), or the only one that the word begins; undefined when none is near.
 */
export function suggestion(word: string, candidates: readonly string[]): string | undefined {
  if (word === '' || word.length > LONGEST_WORD) return undefined;
  const lower = word.toLowerCase();
  let nearest: string | undefined;
  let fewestSlips = Infinity;
  for (const candidate of candidates) {
    if (candidate === word) continue;
    const slips = slipsBetween(lower, candidate.toLowerCase());
    const allowed = Math.max(1, Math.floor(candidate.length / LETTERS_PER_SLIP));
    if (slips <= allowed && slips < candidate.length && slips < fewestSlips) {
      nearest = candidate;
      fewestSlips = slips;
    }
  }
  return nearest ?? completion(lower, candidates);
}
