/**
 * How far does something go before the rig falls? A search over sizes: upwards rung by rung to the first that fails, so that no
 * island of luck above it is taken for the edge, then by halving between that and the last that was survived.
 */

/** How a run ended that was not survived; `not met` where it stayed up without ever coming to the disturbance. */
export interface Ending {
  kind: string;
  atS: number;
}

/**
 * A search in whole steps. `survived` is the largest count known to be survived below the first failure, `failed` the smallest
 * known to fail, with its ending; null as long as none is known.
 */
export interface Search {
  /** Counts of steps that are tried upwards, rising. */
  ladder: readonly number[];
  survived: number | null;
  failed: number | null;
  ending: Ending | null;
}

/** A search that knows nothing yet. */
export function openSearch(ladder: readonly number[]): Search {
  return { ladder, survived: null, failed: null, ending: null };
}

/** The count to be tried next; null when the edge is found, lies above the ladder, or lies below it. */
export function nextCount({ ladder, survived, failed }: Search): number | null {
  if (failed === null) return ladder.find((count) => survived === null || count > survived) ?? null;
  if (survived === null || failed - survived <= 1) return null;
  return Math.floor((survived + failed) / 2);
}

/** The search with one more count known: survived where `ending` is null. */
export function withResult(search: Search, count: number, ending: Ending | null): Search {
  return ending === null ? { ...search, survived: count } : { ...search, failed: count, ending };
}

/** Searches to the end with a function that says at once how a count ends, null where it is survived. */
export function searched(ladder: readonly number[], endingOf: (count: number) => Ending | null): Search {
  let search = openSearch(ladder);
  for (let count = nextCount(search); count !== null; count = nextCount(search)) {
    search = withResult(search, count, endingOf(count));
  }
  return search;
}
