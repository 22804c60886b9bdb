/** Where does a plain grid look? At evenly spaced places of every dimension of the unit cube, each with each. */

/**
 * The points of a grid with so many places in each dimension, ends included, the first dimension slowest; one place is
 * the middle.
 */
export function gridPoints(counts: readonly number[]): number[][] {
  let points: number[][] = [[]];
  for (const count of counts) {
    const places = Array.from({ length: count }, (_, index) => (count === 1 ? 0.5 : index / (count - 1)));
    points = points.flatMap((point) => places.map((place) => [...point, place]));
  }
  return points;
}
