/**
 * Can files be added to the folder that the bench works in?
 */
import type { BenchState } from './state.js';

/** Why nothing can be written into the folder; null where it can. */
export function ownFolderOff({ options }: Pick<BenchState, 'options'>): string | null {
  return options.ownFolder
    ? null
    : 'the starter set stays as it is; begin in a folder made by underfoot init';
}
