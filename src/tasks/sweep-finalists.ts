/**
 * What is to be known of a finalist before anyone rides it? Its figures in every cell, how it stands when the step is halved and
 * when odex computes it, its margins, what it trades for what, how sure its rank is, what a slip in a number does to it, and who
 * falls with it.
 */
import { profileResult, ridersWhoFall, type ProfileResult } from '../measure/profile-result.js';
import type { Candidate } from '../sweep/candidate.js';
import { groupCosts, onFront, type GroupCosts } from '../sweep/front.js';
import { neighboursOf, type Neighbour } from '../sweep/neighbours.js';
import { rankIntervals, type RankInterval } from '../sweep/rank-interval.js';
import type { Found } from '../sweep/search.js';
import { finalistPoints, rideFinalists, type FinalistRides } from './finalist-rides.js';
import { trialsOf } from './plan.js';
import { compareCells, verdict, type ReferenceCheck } from './reference-check.js';
import type { How, Ledger, LedgerOptions, SweepRun } from './sweep-ledger.js';
import type { SweepPlan } from './sweep-plan.js';

/** A finalist with one number off, over the cells that tell soonest: falls and score, and more falls than it has itself there. */
export interface Slipped extends Pick<Neighbour, 'range' | 'slip' | 'values'> {
  failures: number;
  score: number;
  moreFailures: number;
  /** Score over that of the finalist itself in these cells. */
  scoreRatio: number;
}

/** All that is known of a finalist. */
export interface Finalist extends FinalistRides {
  candidate: Candidate;
  result: ProfileResult;
  groups: GroupCosts;
  isOnFront: boolean;
  interval: RankInterval;
  halfStep: ReferenceCheck;
  reference: ReferenceCheck;
  slips: Slipped[];
  /** Riders who fall with it in some cell. */
  notFor: string[];
}

/** Cells that slips are tried in: the first ones of the race. */
const SLIP_CELLS = 16;

/** So many runs take about as long as a look at one steady ride. */
const RUNS_OF_RIDE = 15;

/** Looks at the finalists of a search from all sides; `order` is that of the cells in the race. */
export async function finalistsOf(
  plan: SweepPlan,
  { found, ledger, order }: { found: Found; ledger: Ledger; order: readonly number[] },
  options: LedgerOptions,
): Promise<Finalist[]> {
  const slipCells = order.slice(0, SLIP_CELLS);
  const looked = found.finalists.map((candidate) => lookOf(plan, ledger, { candidate, slipCells }));
  const rides = await workedOut(plan, ledger, { looked, options });
  const results = looked.map(({ result }) => result);
  const intervals = rankIntervals(results, { seed: plan.seed });
  const groups = results.map(({ cells }) => groupCosts(cells, plan.cells.weights));
  const front = onFront(groups.map(({ comfort, reserve, agility }) => [comfort, reserve, agility]));
  return looked.map(({ candidate, result, checked, neighbours }, index) => ({
    candidate,
    result,
    groups: groups[index]!,
    isOnFront: front[index]!,
    interval: intervals[index]!,
    ...rides[index]!,
    halfStep: checkOf(ledger, result, { how: 'half step', trials: allTrials(plan), candidate }),
    reference: checkOf(ledger, result, { how: 'reference', trials: checked, candidate }),
    slips: neighbours.map((neighbour) => slippedOf(plan, ledger, { candidate, neighbour, slipCells })),
    notFor: ridersWhoFall(result.cells),
  }));
}

const allTrials = ({ cells }: SweepPlan) => trialsOf(cells).map((_, trial) => trial);

/** What has to be run to know a finalist. */
function lookOf(
  plan: SweepPlan,
  ledger: Ledger,
  { candidate, slipCells }: { candidate: Candidate; slipCells: readonly number[] },
) {
  const all = allTrials(plan);
  const cells = all.map((trial) => ledger.result({ numbers: candidate.values, trial, how: 'fixed' }));
  const { name, values, profile } = candidate;
  const result = profileResult({ name, summary: plan.base.value.summary }, cells, plan.cells.weights);
  const hardest = all.toSorted((a, b) => result.cells[b]!.cost - result.cells[a]!.cost || a - b);
  const checked = hardest.slice(0, plan.checkedCells ?? all.length);
  const neighbours = neighboursOf(candidate, { base: plan.base.value, ranges: plan.ranges });
  const own =
    (how: How) =>
    (trial: number): SweepRun => ({ profile, numbers: values, trial, how });
  const runs = [
    ...all.map(own('half step')),
    ...checked.map(own('reference')),
    ...neighbours.flatMap((neighbour) =>
      slipCells.map((trial): SweepRun => {
        return { profile: neighbour.profile, numbers: neighbour.values, trial, how: 'fixed' };
      }),
    ),
  ];
  return { candidate, result, checked, neighbours, runs };
}

/** Makes the runs of finalists, then looks at their steady rides; each of these counts as the runs that take as long. */
async function workedOut(
  plan: SweepPlan,
  ledger: Ledger,
  { looked, options }: { looked: readonly ReturnType<typeof lookOf>[]; options: LedgerOptions },
): Promise<FinalistRides[]> {
  const { threads, signal, onRuns } = options;
  const runs = looked.flatMap(({ runs: own }) => own);
  const rideCount = looked.flatMap(({ candidate }) => finalistPoints(plan.cells, candidate)).length;
  const all = runs.length + RUNS_OF_RIDE * rideCount;
  await ledger.run(runs, { threads, signal, onRuns: (done) => onRuns?.(done, all) });
  const onReport = (done: number) => onRuns?.(runs.length + RUNS_OF_RIDE * done, all);
  return rideFinalists(plan.cells, looked, { threads, signal, onReport });
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
