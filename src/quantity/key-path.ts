/**
 * How is a place inside a value written? Keys joined by points, list positions in brackets,
 * counted from 0: road[2].lengthM.
 */

/** The path in words; empty for the value as a whole. */
export function keyPath(path: readonly PropertyKey[]): string {
  let written = '';
  for (const step of path) {
    if (typeof step === 'number') written += `[${step}]`;
    else written += written === '' ? String(step) : `.${String(step)}`;
  }
  return written;
}
