/**
 * What does a search believe is still to be found? Two beliefs, neither of them a promise.
 *
 * Independent draws: before n + 1 of them are made, each is as likely as any other to turn out the best (they are
 * exchangeable), so the chance that one more beats the best of n is 1 / (n + 1), whatever the scores look like. That is exact
 * (less where scores can tie). By how much, is not: when the next one is the best, it beats the old best by the gap between
 * the best two of n + 1. That gap is estimated from the gaps between the best few: where scores thin out exponentially
 * towards the best, i times the gap between the i-th and the next has the same mean for every i (Renyi 1953), so their mean
 * is the estimate. Where scores end at a smooth best instead, as in the bowl about a best set of gains, later gaps
 * shrink more slowly, and it says too much rather than too little: 1.6 times with four gains, 1.2 with twelve (computed).
 *
 * A search that learns: its improvements become smaller. If they go on shrinking as the later half of the last ones did beside
 * the earlier half, all that are still to come add up to a geometric series. It knows nothing of another valley.
 */

/** What is believed to be left; amounts are in the unit of the scores, of which less is better. */
export interface WhatIsLeft {
  draws: number;
  /** Chance that one more independent draw is better than all so far. */
  chanceOfBetter: number;
  /** How much better it would be, if it is; null where fewer than two draws have a score. */
  gainIfBetter: number | null;
  /** What one more draw brings on the mean: the product of the two. */
  gainPerDraw: number | null;
  /** All that the learning search would still find; null when its improvements do not shrink, or there are too few. */
  gainOfSearch: number | null;
}

/** So many gaps make the estimate. More are less noisy, but tell less of the best; ours. */
const GAPS = 4;

/**
 * What is left after independent draws with these scores, in any order (one that is not finite counts as a draw without a
 * score), and after a search whose last steps brought these improvements, none negative, the oldest first.
 */
export function whatIsLeft(
  scoresOfIndependentDraws: readonly number[],
  lastImprovements: readonly number[],
): WhatIsLeft {
  const draws = scoresOfIndependentDraws.length;
  const chanceOfBetter = 1 / (draws + 1);
  const gainIfBetter = gapBeforeBest(scoresOfIndependentDraws);
  return {
    draws,
    chanceOfBetter,
    gainIfBetter,
    gainPerDraw: gainIfBetter === null ? null : chanceOfBetter * gainIfBetter,
    gainOfSearch: restOfSeries(lastImprovements),
  };
}

/** The mean of i times the i-th of the best gaps. */
function gapBeforeBest(scores: readonly number[]): number | null {
  const best = scores
    .filter(Number.isFinite)
    .sort((a, b) => a - b)
    .slice(0, GAPS + 1);
  if (best.length < 2) return null;
  const gaps = best.slice(1).map((score, index) => (index + 1) * (score - best[index]!));
  return sumOf(gaps) / gaps.length;
}

/** Later half b, earlier half a: what follows is b q + b q^2 + ... with q = b / a. */
function restOfSeries(improvements: readonly number[]): number | null {
  const half = Math.floor(improvements.length / 2);
  if (half === 0) return null;
  const later = sumOf(improvements.slice(-half));
  const earlier = sumOf(improvements.slice(-2 * half, -half));
  if (later === 0) return 0;
  return later < earlier ? later ** 2 / (earlier - later) : null;
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
