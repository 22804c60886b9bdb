/**
 * Can the quick solver be believed? Each profile's worst cell is run again with odex, and every term of the cost is
 * compared on its own scale. A different outcome is the largest difference there is.
 */
import { COST_TERMS, type CostName } from '../measure/scales.js';
import { runJobs, type Job } from './jobs.js';
import { trialsOf, type RankPlan } from './plan.js';
import type { CellResult, ProfileResult, RankedCell } from '../measure/profile-result.js';

/** Largest difference of a cost term, in parts of its scale, that still counts as agreement. */
export const AGREEMENT_RATIO = 0.02;

/** One metric of one cell by both solvers, in `unit`; `scaledDifference` is the difference over the term's scale. */
export interface Difference {
  profile: string;
  cell: string;
  metric: CostName | 'outcome';
  unit: string;
  quick: number | string | null;
  reference: number | string | null;
  scaledDifference: number;
}

/** What the check found. */
export interface ReferenceCheck {
  cellsChecked: number;
  agreementRatio: number;
  agrees: boolean;
  /** Null when nothing differs at all. */
  largestDifference: Difference | null;
}

/** Runs each profile's worst cell again with odex and compares. */
export async function checkAgainstReference(
  plan: RankPlan,
  ranked: readonly ProfileResult[],
  { threads, onCells }: { threads: number; onCells?: (done: number, all: number) => void },
): Promise<ReferenceCheck> {
  const differences: Difference[] = [];
  const trialIndexOf = new Map(trialsOf(plan).map(({ key }, index) => [JSON.stringify(key), index]));
  const profileIndexOf = new Map(plan.profiles.map(({ name }, index) => [name, index]));
  const jobs = ranked.map(({ name, worst: { scenario, rider, chargePercent, seed } }): Job => {
    const trialIndex = trialIndexOf.get(JSON.stringify({ scenario, rider, chargePercent, seed }))!;
    return { profileIndex: profileIndexOf.get(name)!, trialIndices: [trialIndex], solver: 'reference' };
  });
  let done = 0;
  await runJobs(plan, jobs, {
    threads,
    onDone: ({ profileIndex }, [again]) => {
      const { name, worst } = ranked.find((profile) => profile.name === plan.profiles[profileIndex]!.name)!;
      differences.push(...compare(name, worst, again!));
      onCells?.(++done, jobs.length);
    },
  });
  return verdict(jobs.length, differences);
}

function verdict(cellsChecked: number, differences: Difference[]): ReferenceCheck {
  const largest = differences.toSorted(
    (a, b) => b.scaledDifference - a.scaledDifference || (a.profile < b.profile ? -1 : 1),
  )[0];
  return {
    cellsChecked,
    agreementRatio: AGREEMENT_RATIO,
    agrees: (largest?.scaledDifference ?? 0) <= AGREEMENT_RATIO,
    largestDifference: largest === undefined || largest.scaledDifference === 0 ? null : largest,
  };
}

function compare(profile: string, quickCell: RankedCell, referenceCell: CellResult): Difference[] {
  const about = { profile, cell: quickCell.key };
  const [quick, reference] = [quickCell.outcome.kind, referenceCell.outcome.kind];
  const outcome = quick === reference ? 0 : Infinity;
  return [
    { ...about, metric: 'outcome', unit: '', quick, reference, scaledDifference: outcome },
    ...COST_TERMS.map(({ name, unit, scale, read }): Difference => {
      const values = { quick: read(quickCell.metrics), reference: read(referenceCell.metrics) };
      const one = values.quick ?? 0;
      const other = values.reference ?? 0;
      const known = (values.quick === null) === (values.reference === null);
      return {
        ...about,
        metric: name,
        unit,
        ...values,
        scaledDifference: known ? Math.abs(one - other) / scale : Infinity,
      };
    }),
  ];
}
