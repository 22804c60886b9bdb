/**
 * Which numbers may a drawn file hold? Even steps over a plausible range, so that a counter-example shrinks to the
 * usual value and not to zero.
 */
import fc from 'fast-check';

const STEPS = 200;

/** A number from low to high; a counter-example shrinks towards the usual one. */
export function around(low: number, usual: number, high: number): fc.Arbitrary<number> {
  return fc
    .integer({ min: -STEPS, max: STEPS })
    .map((step) => usual + ((step < 0 ? usual - low : high - usual) * step) / STEPS);
}

/** A share from 0 to 1; a counter-example shrinks towards 0. */
export const share = fc.integer({ min: 0, max: STEPS }).map((step) => step / STEPS);

/** A whole number from `min` to `max`; a counter-example shrinks towards `min`. */
export function whole(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min, max });
}

/** A section some of whose fields may be left out. */
export function section<T, K extends keyof T>(
  fields: { [P in keyof T]: fc.Arbitrary<T[P]> },
  ...optional: K[]
): fc.Arbitrary<Omit<T, K> & Partial<Pick<T, K>>> {
  const requiredKeys = (Object.keys(fields) as (keyof T)[]).filter(
    (key): key is Exclude<keyof T, K> => !optional.includes(key as K),
  );
  return fc.record<T, Exclude<keyof T, K>>(fields, { requiredKeys }) as fc.Arbitrary<
    Omit<T, K> & Partial<Pick<T, K>>
  >;
}
