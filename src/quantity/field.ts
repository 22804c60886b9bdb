/**
 * How a field of a file is declared: once, with unit, range and one sentence. The same declaration
 * checks the value, words the complaint and becomes the published JSON Schema.
 */
import * as z from 'zod';

interface NumberField {
  unit: string;
  min: number;
  max: number;
  says: string;
}

/** A number with a unit and an inclusive range; anything else is refused with both named. */
export function quantity({ unit, min, max, says }: NumberField) {
  const expected = `a number from ${min} to ${max}${unit === '' ? '' : ` ${unit}`}`;
  return z
    .number({ error: expected })
    .min(min, { error: expected })
    .max(max, { error: expected })
    .meta({ description: unit === '' ? says : `${says} [${unit}]` });
}

/** A whole number with an inclusive range. */
export function count({ unit, min, max, says }: NumberField) {
  const expected = `a whole number from ${min} to ${max}${unit === '' ? '' : ` ${unit}`}`;
  return z
    .number({ error: expected })
    .int({ error: expected })
    .min(min, { error: expected })
    .max(max, { error: expected })
    .meta({ description: unit === '' ? says : `${says} [${unit}]` });
}

/** Most characters of words for people. */
export const TEXT_LIMIT = 600;

/** Words for people: at most 600 characters, no control characters but line ends. */
export function text(says: string) {
  const expected = `text of 1 to ${TEXT_LIMIT} characters without control characters`;
  return z
    .string({ error: expected })
    .min(1, { error: expected })
    .max(TEXT_LIMIT, { error: expected })
    .regex(/^(?:[^\p{Cc}\p{Cf}]|\n)*$/u, { error: expected })
    .meta({ description: says });
}

const NAME_PATTERN = /^[a-z0-9][a-z0-9-]{0,39}$/;
const NAME_EXPECTED = 'a name of at most 40 lower-case letters, digits and hyphens';

/** True for a string that may name a profile, a board, a rider, a scenario or an event. */
export function isName(candidate: string): boolean {
  return NAME_PATTERN.test(candidate);
}

/** A short name: lower-case letters, digits and hyphens. */
export function name(says: string) {
  return z
    .string({ error: NAME_EXPECTED })
    .regex(NAME_PATTERN, { error: NAME_EXPECTED })
    .meta({ description: says });
}

/** One of a few words. */
export function choice<const T extends readonly [string, ...string[]]>(words: T, says: string) {
  return z.enum(words, { error: `one of ${words.join(', ')}` }).meta({ description: says });
}

/** A section with named fields and no others. */
export function section<T extends z.ZodRawShape>(shape: T, says: string) {
  return z
    .strictObject(shape, { error: `a section with ${Object.keys(shape).join(', ')}` })
    .meta({ description: says });
}
