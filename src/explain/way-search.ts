/**
 * Which sizes of a lever help? Some are looked at all over, since too much may hurt as too little does; then the stretch of them
 * that helps nearest to what is now is followed to its two ends by halving.
 */

/** A search over places of sizes, the last of them next to what is now; `helps` has what is known of each. */
export interface WaySearch {
  count: number;
  helps: ReadonlyMap<number, boolean>;
}

/** Places that are looked at all over, and the length of a stretch of which every place is looked at. */
const RUNGS = 9;
const SHORT = 10;

/** A search that knows nothing yet. */
export function openWaySearch(count: number): WaySearch {
  return { count, helps: new Map() };
}

/** The places to be looked at next, side by side; none when the ends are found, or nothing helps. */
export function nextPlaces({ count, helps }: WaySearch): number[] {
  if (helps.size === 0) {
    const rungs = Array.from({ length: RUNGS }, (_, rung) => Math.round((rung * (count - 1)) / (RUNGS - 1)));
    return [...new Set(rungs)];
  }
  const { near, far } = stretch({ count, helps });
  if (near === null || far === null) return [];
  const ends = [...between(near, next(helps, near, 1) ?? near), ...between(next(helps, far, -1) ?? far, far)];
  return ends.length > 0 ? ends : unknownBetween(helps, far, near);
}

/** Places of a short stretch that are not known yet: it may have a hole. */
function unknownBetween(helps: WaySearch['helps'], far: number, near: number): number[] {
  if (near - far > SHORT) return [];
  return Array.from({ length: near - far + 1 }, (_, index) => far + index).filter(
    (place) => !helps.has(place),
  );
}

/** The search with one more place known. */
export function withPlace({ count, helps }: WaySearch, place: number, isHelping: boolean): WaySearch {
  return { count, helps: new Map([...helps, [place, isHelping]]) };
}

/** The ends of the stretch that helps, nearest to what is now and farthest from it; null where nothing helps. */
export function stretch({ helps }: WaySearch): { near: number | null; far: number | null } {
  const places = [...helps.keys()].sort((a, b) => b - a);
  const first = places.findIndex((place) => helps.get(place));
  if (first === -1) return { near: null, far: null };
  const end = places.findIndex((place, index) => index > first && !helps.get(place));
  return { near: places[first]!, far: places[(end === -1 ? places.length : end) - 1]! };
}

/** The known place next to one on a side of it. */
function next(helps: WaySearch['helps'], place: number, side: 1 | -1): number | null {
  const beyond = [...helps.keys()].filter((other) => (other - place) * side > 0);
  return beyond.length === 0 ? null : side * Math.min(...beyond.map((other) => side * other));
}

/** The place half way between two, where there is one. */
function between(low: number, high: number): number[] {
  return high - low > 1 ? [Math.floor((low + high) / 2)] : [];
}
