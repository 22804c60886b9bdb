/**
 * Can the quick solver be believed? Each profile's worst cell is run again with odex, and every term of the cost is
 * compared on its own scale. A different outcome is the largest difference there is.
 */
import { COST_TERMS, type CostName } from '../measure/scales.js';
import { runJobs, type Job, type JobOptions } from './jobs.js';
import { trialsOf, type RankPlan } from './plan.js';
import type { CellResult, ProfileResult, RankedCell } from '../measure/profile-result.js';

/** Largest difference of a cost term, in parts of its scale, or of itself where it is above that, that counts as agreement. */
export const AGREEMENT_RATIO = 0.02;

/** Falls that happen this far apart differ by one scale, s. */
const END_SCALE_S = 1;

/** One metric of one cell by both solvers, in `unit`; `scaledDifference` is the difference over the term's scale. */
export interface Difference {
  profile: string;
  cell: string;
  metric: CostName | 'outcome' | 'end';
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
  /** Null when no cell was compared. */
  largestDifference: Difference | null;
}

/** How a check is carried out; `onProfile` hears what was found of each profile. */
export interface CheckOptions extends Pick<JobOptions, 'threads' | 'signal'> {
  onCells?: (done: number, all: number) => void;
  onProfile?: (profile: string, check: ReferenceCheck) => void;
}

/** Runs each profile's worst cell again with odex and compares. */
export async function checkAgainstReference(
  plan: RankPlan,
  ranked: readonly ProfileResult[],
  { threads, signal, onCells, onProfile }: CheckOptions,
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
    signal,
    onDone: ({ profileIndex }, [again]) => {
      const { name, worst } = ranked.find((profile) => profile.name === plan.profiles[profileIndex]!.name)!;
      const found = compareCells(name, worst, again!);
      differences.push(...found);
      onProfile?.(name, verdict(1, found));
      onCells?.(++done, jobs.length);
    },
  });
  return verdict(jobs.length, differences);
}

export function verdict(cellsChecked: number, differences: Difference[]): ReferenceCheck {
  const largest = differences.toSorted(
    (a, b) => b.scaledDifference - a.scaledDifference || (a.profile < b.profile ? -1 : 1),
  )[0];
  return {
    cellsChecked,
    agreementRatio: AGREEMENT_RATIO,
    agrees: (largest?.scaledDifference ?? 0) <= AGREEMENT_RATIO,
    largestDifference: largest ?? null,
  };
}

/** The check of several profiles from their own ones; null where one of them is missing, or there is none. */
export function mergedCheck(checks: readonly (ReferenceCheck | null)[]): ReferenceCheck | null {
  const known = checks.filter((check) => check !== null);
  if (known.length === 0 || known.length < checks.length) return null;
  const differences = known.flatMap(({ largestDifference }) => largestDifference ?? []);
  return verdict(
    known.reduce((sum, { cellsChecked }) => sum + cellsChecked, 0),
    differences,
  );
}

/** A failed cell counts in the score by its outcome alone, so there only outcome and end [s] are compared. */
export function compareCells(
  profile: string,
  quickCell: RankedCell,
  referenceCell: CellResult,
): Difference[] {
  const about = { profile, cell: quickCell.key };
  const [quick, reference] = [quickCell.outcome, referenceCell.outcome];
  const scaledDifference = quick.kind === reference.kind ? 0 : Infinity;
  const outcome: Difference = {
    ...about,
    metric: 'outcome',
    unit: '',
    quick: quick.kind,
    reference: reference.kind,
    scaledDifference,
  };
  if (quickCell.failed) {
    const apart = Math.abs(quick.atS - reference.atS);
    const end = { metric: 'end', unit: 's', quick: quick.atS, reference: reference.atS } as const;
    return [outcome, { ...about, ...end, scaledDifference: apart / END_SCALE_S }];
  }
  return [
    outcome,
    ...COST_TERMS.map((term) => ({ ...about, ...compareTerm(term, quickCell, referenceCell) })),
  ];
}

function compareTerm(
  { name, unit, scale, read }: (typeof COST_TERMS)[number],
  quickCell: RankedCell,
  referenceCell: CellResult,
): Omit<Difference, 'profile' | 'cell'> {
  const quick = read(quickCell.metrics);
  const reference = read(referenceCell.metrics);
  const known = quick !== null && reference !== null;
  // Far above its scale a number counts by its own size: a tenth of a percent is no disagreement.
  const size = Math.max(scale, Math.abs(reference ?? 0));
  const alike = known ? Math.abs(quick - reference) / size : quick === reference ? 0 : Infinity;
  return { metric: name, unit, quick, reference, scaledDifference: alike };
}
