/**
 * How fast does the search by covariance matrix adaptation learn? The defaults of table 1 in N. Hansen, "The CMA Evolution
 * Strategy: A Tutorial" (arXiv 1604.00772), which depend on the dimension and the size of a generation only.
 */

/** Weights by rank, and how quickly everything is learnt; `mass` is mu_eff, `typical` the mean length of a white step. */
export interface Rates {
  weights: number[];
  mass: number;
  stepPath: number;
  damping: number;
  shapePath: number;
  one: number;
  many: number;
  typical: number;
}

/** The defaults for so many dimensions and so many points in a generation. */
export function ratesOf(n: number, population: number): Rates {
  const raw = Array.from({ length: population }, (_, rank) => Math.log((population + 1) / 2 / (rank + 1)));
  const [good, bad] = [raw.filter((weight) => weight > 0), raw.filter((weight) => weight < 0)];
  const [mass, badMass] = [massOf(good), massOf(bad)];
  const stepPath = (mass + 2) / (n + mass + 5);
  const one = 2 / ((n + 1.3) ** 2 + mass);
  const many = Math.min(1 - one, (2 * (0.25 + mass + 1 / mass - 2)) / ((n + 2) ** 2 + mass));
  const badSum = Math.min(1 + one / many, 1 + (2 * badMass) / (mass + 2), (1 - one - many) / (n * many));
  const [goodScale, badScale] = [1 / sumOf(good), badSum / -sumOf(bad)];
  return {
    weights: raw.map((weight) => weight * (weight > 0 ? goodScale : badScale)),
    mass,
    stepPath,
    damping: 1 + 2 * Math.max(0, Math.sqrt((mass - 1) / (n + 1)) - 1) + stepPath,
    shapePath: (4 + mass / n) / (n + 4 + (2 * mass) / n),
    one,
    many,
    typical: Math.sqrt(n) * (1 - 1 / (4 * n) + 1 / (21 * n ** 2)),
  };
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** How many equal weights these are worth. */
function massOf(weights: readonly number[]): number {
  return sumOf(weights) ** 2 / sumOf(weights.map((weight) => weight ** 2));
}
