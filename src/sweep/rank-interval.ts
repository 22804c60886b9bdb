/**
 * How sure is a rank? The cells that were asked for are a sample of all that could have been. Drawn anew with replacement,
 * the same ones for every profile (bootstrap, Efron 1979), they give other scores and another order; where a profile
 * stands in most of those orders is its interval.
 */
import { byFailuresAndScore, scoreOfCosts } from '../measure/score.js';
import { STREAMS, uniforms } from '../scenario/random.js';

/** What an interval needs of a profile: its cells, the same keys for every profile, in any order. */
export interface Resampled {
  readonly name: string;
  readonly cells: readonly { readonly key: string; readonly failed: boolean; readonly cost: number }[];
}

/** Ranks between which a profile stands in the central share of the resamples, both included, 1 being the first. */
export interface RankInterval {
  name: string;
  low: number;
  high: number;
}

/**
 * An interval for each profile, in the order given. Profiles that tie in a resample share all the places that they fill, so
 * that a name decides nothing; the margin, which is of no cell, does not part them. Profiles with different cells throw.
 */
export function rankIntervals(
  profiles: readonly Resampled[],
  { resamples = 1000, seed, share = 0.9 }: { resamples?: number; seed: number; share?: number },
): RankInterval[] {
  const keys = (profiles[0]?.cells ?? []).map(({ key }) => key).sort();
  const cells = profiles.map((profile) => inOrder(profile, keys));
  const draws = uniforms(seed, STREAMS.resampling, resamples * keys.length).map((u) =>
    Math.floor(u * keys.length),
  );
  const firsts = profiles.map(() => new Uint32Array(resamples));
  const lasts = profiles.map(() => new Uint32Array(resamples));
  for (let resample = 0; resample < resamples; resample++) {
    const drawn = draws.subarray(resample * keys.length, (resample + 1) * keys.length);
    const places = placesOf(cells.map((own) => standing(own, drawn)));
    for (const [index, { first, last }] of places.entries()) {
      firsts[index]![resample] = first;
      lasts[index]![resample] = last;
    }
  }
  const outside = Math.floor(((1 - share) * resamples) / 2 + 1e-6);
  return profiles.map(({ name }, index) => ({
    name,
    low: firsts[index]!.sort()[outside] ?? index + 1,
    high: lasts[index]!.sort()[resamples - 1 - outside] ?? index + 1,
  }));
}

interface Cells {
  costs: Float64Array;
  failed: Uint8Array;
}

interface Standing {
  failures: number;
  score: number;
}

/** The cells of a profile in the order of the keys. */
function inOrder({ name, cells }: Resampled, keys: readonly string[]): Cells {
  const byKey = new Map(cells.map((cell) => [cell.key, cell]));
  const found = keys.map((key) => byKey.get(key));
  if (found.includes(undefined) || cells.length !== keys.length) {
    throw new Error(`${name} was not run in the same cells as the others`);
  }
  return {
    costs: Float64Array.from(found, (cell) => cell?.cost ?? NaN),
    failed: Uint8Array.from(found, (cell) => Number(cell?.failed)),
  };
}

/** Failures and score over the cells drawn, which are places. */
function standing({ costs, failed }: Cells, drawn: Float64Array): Standing {
  const resampled = new Float64Array(drawn.length);
  let failures = 0;
  for (let index = 0; index < drawn.length; index++) {
    const cell = drawn[index]!;
    resampled[index] = costs[cell]!;
    failures += failed[cell]!;
  }
  return { failures, score: scoreOfCosts(resampled) };
}

/** The first and last place of each; they differ where several stand alike. */
function placesOf(standings: readonly Standing[]): { first: number; last: number }[] {
  return standings.map((own) => {
    let better = 0;
    let alike = 0;
    for (const other of standings) {
      const order = byFailuresAndScore(other, own);
      if (order < 0) better++;
      if (order === 0) alike++;
    }
    return { first: better + 1, last: better + alike };
  });
}
