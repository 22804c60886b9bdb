/**
 * Is there a screen to be seen? On a terminal that is too small nothing is drawn, and no key should change what nobody sees.
 */
import type { BenchState } from './state.js';

/** Smallest terminal that the bench draws on; on a smaller one it says so. */
export const LEAST_SIZE = { columns: 40, rows: 10 } as const;

/** True where the bench does not draw. */
export function isTooSmall({ size }: Pick<BenchState, 'size'>): boolean {
  return size.columns < LEAST_SIZE.columns || size.rows < LEAST_SIZE.rows;
}
