/**
 * Are these still the numbers that were proven? Short hashes that a person can read aloud and type: one of the numbers of a profile,
 * one that seals what was proven with them.
 */
import { createHash } from 'node:crypto';
import type { KeptFile } from '../quantity/kept-file.js';
import { PROFILE_FIELDS, readField } from '../quantity/profile-fields.js';
import type { ProfileFile } from '../quantity/profile-file.js';

/**
 * Digits of 5 bits without those that are mistaken for one another: the symbols of Crockford's base 32 (Douglas Crockford,
 * "Base 32", crockford.com/base32.html), in lower case.
 */
export const HASH_DIGITS = '0123456789abcdefghjkmnpqrstvwxyz';

const BITS_A_DIGIT = 5;
const DIGITS_A_GROUP = 4;
const GROUPS = 2;

/** The first 40 bits of SHA-256 of a text in UTF-8, as two groups of four digits: `xxxx-xxxx`. */
export function shortHash(text: string): string {
  const head = createHash('sha256').update(text, 'utf8').digest().readUIntBE(0, 5);
  const digits = Array.from({ length: GROUPS * DIGITS_A_GROUP }, (_, place) => {
    const shift = BITS_A_DIGIT * (GROUPS * DIGITS_A_GROUP - 1 - place);
    // Not by shifting: 40 bits are more than a shift can hold.
    return HASH_DIGITS[Math.floor(head / 2 ** shift) % HASH_DIGITS.length];
  }).join('');
  return `${digits.slice(0, DIGITS_A_GROUP)}-${digits.slice(DIGITS_A_GROUP)}`;
}

/** The numbers of a profile as they are hashed: a line `key=value` for each that is given, in the order of its file. */
export function numbersText(profile: ProfileFile): string {
  return PROFILE_FIELDS.map((field) => ({ key: field.key, value: readField(profile, field) }))
    .filter(({ value }) => value !== undefined)
    .map(({ key, value }) => `${key}=${value}\n`)
    .join('');
}

/** The short hash of a profile's numbers alone: its name and summary do not count. */
export function numbersHash(profile: ProfileFile): string {
  return shortHash(numbersText(profile));
}

/** The short hash of all that was proven: everything but the note and the rides, whatever the order of keys. */
export function sealOf(kept: Omit<KeptFile, 'seal'> & { seal?: string }): string {
  const { note: _note, rides: _rides, seal: _seal, ...proven } = kept;
  return shortHash(sortedJson(proven));
}

/** JSON with the keys of every object in the order of their code units. */
function sortedJson(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
