/**
 * What is to be known of a finalist before anyone rides it? Its figures in every cell, how it stands when the step is halved and
 * when odex computes it, its margins, what it trades for what, how sure its rank is, what a slip in a number does to it, and who
 * falls with it.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import { profileResult, type ProfileResult } from '../measure/profile-result.js';
import { USUAL_CHARGE_PERCENT, USUAL_SPEED_KM_PER_H } from '../explain/edge-scenarios.js';
import type { FeelWord } from '../explain/feel.js';
import type { Candidate } from '../sweep/candidate.js';
import { groupCosts, onFront, type GroupCosts } from '../sweep/front.js';
import { marginsOfRide, worstMargins, type FinalistMargins } from '../sweep/finalist-margins.js';
import { neighboursOf, type Neighbour } from '../sweep/neighbours.js';
import { rankIntervals, type RankInterval } from '../sweep/rank-interval.js';
import type { Found } from '../sweep/search.js';
import { trialsOf } from './plan.js';
import { compareCells, verdict, type ReferenceCheck } from './reference-check.js';
import type { How, Ledger, LedgerOptions, SweepRun } from './sweep-ledger.js';
import type { SweepPlan } from './sweep-plan.js';
import { feelIn } from './why.js';

/** A finalist with one number off, over the cells that tell soonest: falls and score, and more falls than it has itself there. */
export interface Slipped extends Pick<Neighbour, 'range' | 'slip' | 'values'> {
  failures: number;
  score: number;
  moreFailures: number;
  /** Score over that of the finalist itself in these cells. */
  scoreRatio: number;
}

/** All that is known of a finalist; `slips` is null for those too far down to be looked at so closely. */
export interface Finalist {
  candidate: Candidate;
  result: ProfileResult;
  groups: GroupCosts;
  isOnFront: boolean;
  interval: RankInterval;
  /** Each margin where it is smallest; null where a ceiling cuts every ride, and for those too far down. */
  margins: FinalistMargins | null;
  halfStep: ReferenceCheck;
  reference: ReferenceCheck;
  slips: Slipped[] | null;
  /** How it feels, in words, to the usual rider or else to the first; null for those too far down. */
  feel: { rider: string; words: FeelWord[] } | null;
  /** Riders who fall with it in some cell. */
  notFor: string[];
}

/** Finalists whose numbers are tried a little off, and whose margins are told. */
const LOOKED_AT_CLOSELY = 5;

/** Cells that slips are tried in: the first ones of the race. */
const SLIP_CELLS = 32;

/** Looks at the finalists of a search from all sides; `order` is that of the cells in the race. */
export async function finalistsOf(
  plan: SweepPlan,
  { found, ledger, order }: { found: Found; ledger: Ledger; order: readonly number[] },
  options: LedgerOptions,
): Promise<Finalist[]> {
  const slipCells = order.slice(0, SLIP_CELLS);
  const looked = found.finalists.map((candidate, index) =>
    lookOf(plan, ledger, { candidate, index, slipCells }),
  );
  await ledger.run(
    looked.flatMap(({ runs }) => runs),
    options,
  );
  const results = looked.map(({ result }) => result);
  const margins: Finalist['margins'][] = [];
  const feels: Finalist['feel'][] = [];
  for (const { candidate, result } of looked.slice(0, LOOKED_AT_CLOSELY)) {
    margins.push(await marginsOf(plan, candidate, options.signal));
    await breathe();
    feels.push(feelOfFinalist(plan, { candidate, result }));
  }
  const intervals = rankIntervals(results, { seed: plan.seed });
  const groups = results.map(({ cells }) => groupCosts(cells, plan.cells.weights));
  const front = onFront(groups.map(({ comfort, reserve, agility }) => [comfort, reserve, agility]));
  return looked.map(({ candidate, result, checked, neighbours }, index) => ({
    candidate,
    result,
    groups: groups[index]!,
    isOnFront: front[index]!,
    interval: intervals[index]!,
    margins: margins[index] ?? null,
    feel: feels[index] ?? null,
    halfStep: checkOf(ledger, result, { how: 'half step', trials: allTrials(plan), candidate }),
    reference: checkOf(ledger, result, { how: 'reference', trials: checked, candidate }),
    slips:
      neighbours?.map((neighbour) => slippedOf(plan, ledger, { candidate, neighbour, slipCells })) ?? null,
    notFor: ridersWhoFall(result),
  }));
}

const allTrials = ({ cells }: SweepPlan) => trialsOf(cells).map((_, trial) => trial);

/** What has to be run to know a finalist. */
function lookOf(
  plan: SweepPlan,
  ledger: Ledger,
  { candidate, index, slipCells }: { candidate: Candidate; index: number; slipCells: readonly number[] },
) {
  const all = allTrials(plan);
  const cells = all.map((trial) => ledger.result({ numbers: candidate.values, trial, how: 'fixed' }));
  const { name, values, profile } = candidate;
  const result = profileResult({ name, summary: plan.base.value.summary }, cells, plan.cells.weights);
  const hardest = all.toSorted((a, b) => result.cells[b]!.cost - result.cells[a]!.cost || a - b);
  const checked = hardest.slice(0, plan.checkedCells ?? all.length);
  const neighbours =
    index < LOOKED_AT_CLOSELY
      ? neighboursOf(candidate, { base: plan.base.value, ranges: plan.ranges })
      : null;
  const own =
    (how: How) =>
    (trial: number): SweepRun => ({ profile, numbers: values, trial, how });
  const runs = [
    ...all.map(own('half step')),
    ...checked.map(own('reference')),
    ...(neighbours ?? []).flatMap((neighbour) =>
      slipCells.map((trial): SweepRun => {
        return { profile: neighbour.profile, numbers: neighbour.values, trial, how: 'fixed' };
      }),
    ),
  ];
  return { candidate, result, checked, neighbours, runs };
}

/** How far a finalist's cells are from those computed otherwise. */
function checkOf(
  ledger: Ledger,
  { name, cells }: ProfileResult,
  { how, trials, candidate }: { how: How; trials: readonly number[]; candidate: Candidate },
): ReferenceCheck {
  const differences = trials.flatMap((trial) =>
    compareCells(name, cells[trial]!, ledger.result({ numbers: candidate.values, trial, how })),
  );
  return verdict(trials.length, differences);
}

function slippedOf(
  plan: SweepPlan,
  ledger: Ledger,
  {
    candidate,
    neighbour: { range, slip, values },
    slipCells,
  }: { candidate: Candidate; neighbour: Neighbour; slipCells: readonly number[] },
): Slipped {
  const over = (numbers: readonly number[]) =>
    profileResult(
      { name: slip, summary: '' },
      slipCells.map((trial) => ledger.result({ numbers, trial, how: 'fixed' })),
      plan.cells.weights,
    );
  const [own, { failures, score }] = [over(candidate.values), over(values)];
  const moreFailures = failures - own.failures;
  return { range, slip, values, failures, score, moreFailures, scoreRatio: score / own.score };
}

/** Margins under every rider, with a breath between two, in which a signal is heard. */
async function marginsOf(
  { cells }: SweepPlan,
  { profile }: Candidate,
  signal: AbortSignal | undefined,
): Promise<Finalist['margins']> {
  const where = {
    speedKmPerH: USUAL_SPEED_KM_PER_H,
    gradePercent: 0,
    chargePercent: USUAL_CHARGE_PERCENT,
  };
  const rides = [];
  for (const { name, value: rider } of cells.riders) {
    await breathe();
    signal?.throwIfAborted();
    rides.push(marginsOfRide(name, { board: cells.board.value, rider, profile, ...where }));
  }
  return worstMargins(rides.filter((ride) => ride !== null));
}

function feelOfFinalist(
  { cells }: SweepPlan,
  { candidate: { name, profile }, result }: { candidate: Candidate; result: ProfileResult },
): Finalist['feel'] {
  const { rider, words } = feelIn(cells, { profile: { name, value: profile }, result });
  return { rider, words: words.map(({ word }) => word) };
}

function ridersWhoFall({ cells }: ProfileResult): string[] {
  return [...new Set(cells.filter(({ failed }) => failed).map(({ rider }) => rider))].sort();
}
