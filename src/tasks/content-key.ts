/**
 * Is it still the same? A short key of what a value holds, so that what was computed from it is found again.
 */
import { createHash } from 'node:crypto';

/** The key of a value that JSON can hold: equal for equal content, keys in their order. */
export function contentKey(value: unknown): string {
  return createHash('sha256').update(JSON.stringify(value)).digest('base64');
}

/** A map that keeps the entries used last, `capacity` of them. */
export class RecentMap<V> {
  readonly #entries = new Map<string, V>();

  constructor(readonly capacity: number) {}

  get(key: string): V | undefined {
    const value = this.#entries.get(key);
    if (value !== undefined) this.set(key, value);
    return value;
  }

  set(key: string, value: V): void {
    this.#entries.delete(key);
    this.#entries.set(key, value);
    const oldest = this.#entries.keys().next();
    if (this.#entries.size > this.capacity && !oldest.done) this.#entries.delete(oldest.value);
  }
}
