/**
 * What do the proposed changes do? Each is run on all cells, then pairs of the best; ordered by what they achieve.
 */
import { referenceProfile } from '../control/reference-profile.js';
import { combined, proposalsFor, type Proposal } from '../explain/remedies.js';
import {
  effectOf,
  isWorthTwo,
  orderRemedies,
  remedyOf,
  verdictOf,
  type Remedy,
  type Verdict,
} from '../explain/remedy-effect.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { LimitWays } from '../explain/ways-out.js';
import type { Explanation } from './explain.js';
import { trialsOf, type RankPlan } from './plan.js';
import { runVariants, type StudyOptions } from './study.js';
import { findWaysOut } from './ways-out.js';

/** All changes that were tried, best first, what is to be said of them together, and what else would help. */
export interface TriedRemedies {
  remedies: Remedy[];
  /** Changes that were tried: of one thing, and of two, which are told only where two do clearly more than each of them. */
  counts: { ofOne: number; ofTwo: number };
  verdict: Verdict;
  /** What else would help against the limits of the verdict. */
  ways: LimitWays[];
}

/** So many of the best changes are paired with each other. */
const PAIRED = 3;

/** Proposes changes for what an explanation found, and tries them on all cells of its plan. */
export async function tryRemedies(
  plan: RankPlan,
  explanation: Explanation,
  options: StudyOptions,
): Promise<TriedRemedies> {
  const { profile, blame } = explanation;
  const proposals = proposalsFor(profile.value, referenceFor(plan), blame.findings);
  const singles = orderRemedies(await tried(plan, explanation, { proposals, options }));
  const pairs = await tried(plan, explanation, { proposals: pairsOf(profile.value, singles), options });
  const worthy = pairs.filter((pair) => isWorthTwo(pair, singles));
  const counts = { ofOne: singles.length, ofTwo: pairs.length };
  const verdict = verdictOf(blame, singles, worthy);
  const ways = await findWaysOut(plan, { explanation, limits: verdict.limits }, options);
  return { remedies: orderRemedies([...singles, ...worthy]), counts, verdict, ways };
}

async function tried(
  plan: RankPlan,
  { profile, result }: Explanation,
  { proposals, options }: { proposals: readonly Proposal[]; options: StudyOptions },
): Promise<Remedy[]> {
  if (proposals.length === 0) return [];
  const variants = proposals.map((proposal, index) => ({
    name: `remedy ${index + 1}`,
    change: <T extends { profile: ProfileFile }>(makings: T) => ({ ...makings, profile: proposal.profile }),
  }));
  const results = await runVariants({ plan, profile, trials: trialsOf(plan) }, variants, options);
  return proposals.map((proposal, index) =>
    remedyOf(proposal, effectOf(result, results[index]!, plan.weights)),
  );
}

/** Two of the best together: of changes of the same numbers only the best one. */
function pairsOf(profile: ProfileFile, singles: readonly Remedy[]): Proposal[] {
  const touched = ({ edits }: Remedy) => edits.map(({ path }) => path.join('.'));
  const best: Remedy[] = [];
  for (const single of singles) {
    const isTaken = best.some((other) => touched(other).some((key) => touched(single).includes(key)));
    if (!isTaken && best.length < PAIRED) best.push(single);
  }
  return best.flatMap((one, index) =>
    best.slice(index + 1).flatMap((other) => {
      const pair = combined(profile, one, other);
      return pair === null ? [] : [pair];
    }),
  );
}

/** The reference for the board under the mean of its riders; its gains go with their mass. */
function referenceFor({ board, riders }: RankPlan): ProfileFile {
  const meanKg = riders.reduce((sum, { value }) => sum + value.body.massKg, 0) / riders.length;
  const { value: rider } = riders[0]!;
  return referenceProfile(board.value, { ...rider, body: { ...rider.body, massKg: meanKg } });
}
