/**
 * How is a sweep shared out between machines that know nothing of each other? Each runs a stated part of the candidates in every
 * cell; put together the parts are the whole. Only where nobody is dropped: a race needs all of its runners in one place.
 */
import { spreadOf } from '../sweep/search.js';
import { trialsOf } from './plan.js';
import { judgeFor } from './sweep.js';
import type { Ledger, LedgerOptions, SweepRun } from './sweep-ledger.js';
import type { SweepPlan } from './sweep-plan.js';

/** One part of so many, counted from 1. */
export interface Shard {
  part: number;
  parts: number;
}

/** Runs one part of a sweep; answers how many candidates it held, those left out before they were run not counted. */
export async function runShard(
  plan: SweepPlan,
  ledger: Ledger,
  { part, parts, ...options }: Shard & LedgerOptions,
): Promise<number> {
  const { isHopeless } = judgeFor(plan, ledger);
  const { base, ranges, count, grid, seed } = plan;
  const own = spreadOf({ base: base.value, ranges, count, grid, seed }).spread.filter(
    ({ profile }, index) => index % parts === part - 1 && !isHopeless(profile),
  );
  const trials = trialsOf(plan.cells).map((_, trial) => trial);
  const runs = own.flatMap(({ profile, values }) =>
    trials.map((trial): SweepRun => ({ profile, numbers: values, trial, how: 'fixed' })),
  );
  await ledger.run(runs, options);
  return own.length;
}
