/**
 * How is a sweep shared out between machines that know nothing of each other? Each runs a stated part of the candidates in every
 * cell; put together the parts are the whole. Only where nobody is dropped: a race needs all of its runners in one place.
 */
import type { Judge } from '../sweep/asked.js';
import type { Candidate } from '../sweep/candidate.js';
import { spreadOf } from '../sweep/search.js';
import { trialsOf } from './plan.js';
import { judgeFor } from './sweep.js';
import type { Ledger, LedgerOptions, SweepRun } from './sweep-ledger.js';
import type { Shard, SweepPlan } from './sweep-plan.js';

/** Runs one part of a sweep; answers how many candidates it held, those left out before they were run not counted. */
export async function runShard(
  plan: SweepPlan,
  ledger: Ledger,
  { part, parts, ...options }: Shard & LedgerOptions,
): Promise<number> {
  const own = hopeful(await judgeFor(plan, ledger), sharesOf(plan, parts)[part - 1]!);
  await ledger.run(runsOf(plan, own), options);
  return own.length;
}

/** A part of which some runs are not known. */
export interface PartLeft extends Shard {
  missing: number;
}

/** The parts of a sweep of which some runs are not known. */
export async function partsLeft(plan: SweepPlan, ledger: Ledger, parts: number): Promise<PartLeft[]> {
  const judge = await judgeFor(plan, ledger);
  return sharesOf(plan, parts).flatMap((share, index) => {
    const missing = ledger.missing(runsOf(plan, hopeful(judge, share)));
    return missing === 0 ? [] : [{ part: index + 1, parts, missing }];
  });
}

/** The candidates of each part. */
function sharesOf({ base, ranges, count, grid, seed }: SweepPlan, parts: number): Candidate[][] {
  const { spread } = spreadOf({ base: base.value, ranges, count, grid, seed });
  const shares = Array.from({ length: parts }, (): Candidate[] => []);
  spread.forEach((candidate, index) => shares[index % parts]!.push(candidate));
  return shares;
}

/** Those that can hold the board up. */
function hopeful({ isHopeless }: Judge, candidates: readonly Candidate[]): Candidate[] {
  return candidates.filter(({ profile }) => !isHopeless(profile));
}

function runsOf(plan: SweepPlan, candidates: readonly Candidate[]): SweepRun[] {
  const trials = trialsOf(plan.cells).map((_, trial) => trial);
  return candidates.flatMap(({ profile, values }) =>
    trials.map((trial): SweepRun => ({ profile, numbers: values, trial, how: 'fixed' })),
  );
}
