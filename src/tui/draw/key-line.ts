/**
 * Keys with their labels in one line, as many as fit.
 */
import { textWidth } from '../../show/fit-text.js';

/** A key with its label, as the footer names it. */
export interface NamedKey {
  text: string;
  /** True for what is named first where there is little room: the way back, and the way to all other keys. */
  isKept: boolean;
  /** False for a key that means the same anywhere. */
  isOwn: boolean;
}

const KEY_GAP = '  ';

/** As many keys as fit into a width, in their order. */
export function keyLine(keys: readonly NamedKey[], width: number): string {
  const widthOf = (shown: readonly NamedKey[]) => textWidth(shown.map(({ text }) => text).join(KEY_GAP));
  let shown = keys.filter(({ isKept }) => isKept);
  for (const key of keys) {
    const longer = keys.filter((other) => other === key || shown.includes(other));
    if (!key.isKept && widthOf(longer) > width) break;
    shown = longer;
  }
  return shown.map(({ text }) => text).join(KEY_GAP);
}
