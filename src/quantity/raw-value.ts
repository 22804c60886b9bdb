/**
 * What stands at a place of a value that has not been checked? Every reader here answers undefined
 * for what is missing or of another type, so that a rule across fields can run on a faulty file.
 */

/** The value at the path, through own keys and list positions only; undefined when there is none. */
export function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  let value = raw;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = Reflect.get(value, step);
  }
  return value;
}

/** The finite number at the path, or undefined. */
export function numberAt(raw: unknown, path: readonly PropertyKey[]): number | undefined {
  const value = valueAt(raw, path);
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}

/** The text at the path, or undefined. */
export function textAt(raw: unknown, path: readonly PropertyKey[]): string | undefined {
  const value = valueAt(raw, path);
  return typeof value === 'string' ? value : undefined;
}

/** The list at the path; empty when there is none. */
export function listAt(raw: unknown, path: readonly PropertyKey[]): readonly unknown[] {
  const value = valueAt(raw, path);
  return Array.isArray(value) ? value : [];
}

/** True when the key stands there, whatever its value. */
export function isGiven(raw: unknown, path: readonly PropertyKey[]): boolean {
  return valueAt(raw, path) !== undefined;
}

/** A number for people: four figures, without trailing zeros. */
export function figures(value: number): string {
  return String(Number(value.toPrecision(4)));
}
