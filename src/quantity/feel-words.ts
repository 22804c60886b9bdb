/**
 * In which words is a feel spoken of? The words themselves; what each is tied to stands in `explain/feel.ts`.
 */

/** A word for a feel. */
export const FEEL_WORDS = [
  'loose',
  'sluggish',
  'composed',
  'stiff',
  'twitchy',
  'buzzy',
  'rider-coupled wobble',
] as const;

/** One of the words. */
export type FeelWord = (typeof FEEL_WORDS)[number];

/** The words under which a rider rates what he felt, as keys of a file: one a word, `wobble` for the longest. */
export const FELT_KEYS = [
  'loose',
  'sluggish',
  'composed',
  'stiff',
  'twitchy',
  'buzzy',
  'wobble',
] as const satisfies readonly string[];

/** One of the keys. */
export type FeltKey = (typeof FELT_KEYS)[number];

/** The key under which a word is rated. */
export function feltKeyOf(word: FeelWord): FeltKey {
  return word === 'rider-coupled wobble' ? 'wobble' : word;
}
