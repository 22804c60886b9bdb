/**
 * Where does a search look first? Points spread over the unit cube so that every strip of every dimension is visited once
 * (McKay, Beckman and Conover 1979). Of a few such draws the one is taken whose two nearest points are farthest apart
 * (the maximin distance of Johnson, Moore and Ylvisaker 1990): no clumps by bad luck.
 */
import { STREAMS, uniforms } from '../scenario/random.js';

/** How many draws are compared. Ours: more of them hardly push the nearest points further apart. */
const DRAWS = 5;

/** `count` points in the open unit cube, one in each of `count` equal strips of every dimension; the same for a seed. */
export function latinHypercube(wanted: { count: number; dimensions: number; seed: number }): number[][] {
  const { count, dimensions, seed } = wanted;
  const chance = uniforms(seed, STREAMS.candidates, DRAWS * dimensions * count * 2);
  let best: number[][] = [];
  let farthest = -Infinity;
  for (let draw = 0; draw < DRAWS; draw++) {
    const length = dimensions * count * 2;
    const points = oneDraw(count, dimensions, chance.subarray(draw * length, (draw + 1) * length));
    const apart = leastDistanceSquared(points);
    if (apart > farthest || draw === 0) [best, farthest] = [points, apart];
  }
  return best;
}

/** One draw: in each dimension the strips in an order by chance, and a place by chance within each. */
function oneDraw(count: number, dimensions: number, chance: Float64Array): number[][] {
  const columns = Array.from({ length: dimensions }, (_, dimension) => {
    const from = dimension * count * 2;
    const strips = shuffled(count, chance.subarray(from, from + count));
    return strips.map((strip, index) => (strip + chance[from + count + index]!) / count);
  });
  return Array.from({ length: count }, (_, index) => columns.map((column) => column[index]!));
}

/** The numbers below `count` in an order by chance (Fisher and Yates). */
function shuffled(count: number, chance: Float64Array): number[] {
  const numbers = Array.from({ length: count }, (_, index) => index);
  for (let last = count - 1; last > 0; last--) {
    const other = Math.floor(chance[last]! * (last + 1));
    [numbers[last], numbers[other]] = [numbers[other]!, numbers[last]!];
  }
  return numbers;
}

/** Squared distance of the two nearest points; infinite for fewer than two. */
function leastDistanceSquared(points: readonly (readonly number[])[]): number {
  const sorted = [...points].sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0));
  let least = Infinity;
  for (const [index, point] of sorted.entries()) {
    for (let other = index + 1; other < sorted.length; other++) {
      const neighbour = sorted[other]!;
      // Sorted by the first dimension: from here on all are farther away in it alone.
      if (((neighbour[0] ?? 0) - (point[0] ?? 0)) ** 2 >= least) break;
      least = Math.min(least, distanceSquared(point, neighbour));
    }
  }
  return least;
}

function distanceSquared(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let index = 0; index < a.length; index++) sum += (a[index]! - b[index]!) ** 2;
  return sum;
}
