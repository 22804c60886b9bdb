/**
 * What is a key bound to? The words and the act of one binding, and the keys of one place.
 */
import type { BenchState } from './state.js';

/** A key's effect on the state. */
export type Act = (state: BenchState) => BenchState;

/** One thing that keys do. `label` is for the footer, `says` for the help; `off` gives the reason why not now, or null. */
export interface Binding {
  keys: readonly string[];
  label: string;
  says: string;
  act: Act;
  off?: (state: BenchState) => string | null;
  inFooter?: true;
}

/** The keys of one place. */
export interface PlaceKeys {
  title: string;
  bindings: readonly Binding[];
  /** What typed text does that is no key of the place. */
  typing?: (text: string) => Act;
}

/** Rows that a page key moves by. */
export const PAGE = 10;
