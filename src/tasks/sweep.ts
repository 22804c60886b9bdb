/**
 * A sweep from beginning to end: the search asks, the ledger answers, and the few that are left are looked at from all sides. The
 * answer hangs on the plan alone: not on how many threads computed it, nor on how often it was begun anew.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import { USUAL_CHARGE_PERCENT, USUAL_SPEED_KM_PER_H } from '../explain/edge-scenarios.js';
import { hasFailed, profileResult, type ProfileResult } from '../measure/profile-result.js';
import { costOf, rankProfiles } from '../measure/score.js';
import type { Judge } from '../sweep/asked.js';
import { numbersKey, type Candidate } from '../sweep/candidate.js';
import { cellOrder } from '../sweep/cell-order.js';
import { openScreen, type Screen } from '../sweep/linear-screen.js';
import type { Priced } from '../sweep/racing.js';
import { search, type Found } from '../sweep/search.js';
import { readField } from '../quantity/profile-fields.js';
import { trialsOf, type PlannedTrial } from './plan.js';
import { DEFAULT_RIDER } from './select.js';
import { finalistsOf, type Finalist } from './sweep-finalists.js';
import type { Ledger, LedgerOptions, Numbers, SweepRun } from './sweep-ledger.js';
import type { SweepPlan } from './sweep-plan.js';

/** What is being done, in words. */
export type SweepStage =
  'ordering the cells' | 'racing' | 'going downhill' | 'running the best' | 'looking at the finalists';

/**
 * How far a sweep is: the stage, its step of at most so many, and runs of this step; a look at a steady ride counts as the runs that
 * take as long.
 */
export interface SweepProgress {
  stage: SweepStage;
  step: number;
  steps: number;
  done: number;
  all: number;
  /** All runs that are known by now, whatever they were for. */
  known: number;
}

/** One of the best so far, over the cells that it was run in. */
export interface Leader {
  candidate: Candidate;
  result: ProfileResult;
}

/** How a sweep is carried out; `onBest` hears of the best so far, over the cells that they were run in. */
export interface SweepOptions extends Pick<LedgerOptions, 'threads' | 'signal'> {
  onProgress?: (progress: SweepProgress) => void;
  onBest?: (best: readonly Leader[]) => void;
  /** Hears how the profile that all share does itself: at first in one cell of each scenario, then in all. */
  onBase?: (base: ProfileResult) => void;
}

/** What came of a sweep. */
export interface SweepAnswer {
  plan: SweepPlan;
  /** How the profile that all share does itself, in every cell. */
  base: ProfileResult;
  found: Found;
  finalists: Finalist[];
  runs: number;
}

/** The best that are told of on the way. */
const TOLD = 10;

/** Carries out a sweep. */
export async function sweep(
  plan: SweepPlan,
  ledger: Ledger,
  { threads, signal, onProgress, onBest, onBase }: SweepOptions,
): Promise<SweepAnswer> {
  const options = (stage: SweepStage, step: number, steps: number): LedgerOptions => ({
    threads,
    signal,
    onRuns: (done, all) => onProgress?.({ stage, step, steps, done, all, known: ledger.size() }),
  });
  const { order, base } = await orderOfCells(plan, ledger, {
    ...options('ordering the cells', 1, 1),
    ...(onBase && { onBase }),
  });
  const best = bestSoFar(plan, ledger, order);
  const judge = await judgeFor(plan, ledger);
  const searching = search(
    {
      base: plan.base.value,
      ranges: plan.ranges,
      count: plan.count,
      grid: plan.grid,
      isExhaustive: plan.isExhaustive,
      isRefined: plan.isRefined,
      seed: plan.seed,
      cellOrder: order,
    },
    judge,
  );
  for (let next = searching.next(); ; next = searching.next()) {
    if (next.done) {
      const found = next.value;
      const finalists = await finalistsOf(
        plan,
        { found, ledger, order },
        options('looking at the finalists', 1, 1),
      );
      return { plan, base, found, finalists, runs: ledger.size() };
    }
    const { stage, step, steps, candidates, cells } = next.value;
    await breathe();
    signal?.throwIfAborted();
    await ledger.run(runsOf(candidates, cells), options(stage, step, steps));
    onBest?.(best(candidates, order.indexOf(cells.at(-1)!) + 1));
  }
}

/** The runs of candidates in cells, cell by cell where there are more than a thread keeps ready. */
function runsOf(candidates: readonly Candidate[], cells: readonly number[]): SweepRun[] {
  return candidates.flatMap(({ profile, values }) =>
    cells.map((trial): SweepRun => ({ profile, numbers: values, trial, how: 'fixed' })),
  );
}

/** The order of cells, from how the profile that all share does in them. */
async function orderOfCells(
  { cells, base, ranges }: SweepPlan,
  ledger: Ledger,
  { onBase, ...options }: LedgerOptions & Pick<SweepOptions, 'onBase'>,
): Promise<{ order: number[]; base: ProfileResult }> {
  const trials = trialsOf(cells);
  const numbers: Numbers = ranges.map((range) => readField(base.value, range) ?? null);
  const runs = trials.map((_, trial): SweepRun => ({ profile: base.value, numbers, trial, how: 'fixed' }));
  const resultIn = (own: readonly SweepRun[]) => {
    const results = own.map((run) => ledger.result(run));
    return profileResult({ name: base.name, summary: base.value.summary }, results, cells.weights);
  };
  const first = firstOfEach(trials).map((trial) => runs[trial]!);
  await ledger.run(first, { ...options, onRuns: (done) => options.onRuns?.(done, runs.length) });
  if (first.length < runs.length) onBase?.(resultIn(first));
  await ledger.run(runs, options);
  const own = resultIn(runs);
  onBase?.(own);
  const order = cellOrder(
    own.cells.map(({ rider, failed, cost }, trial) => {
      return { rider, riderMassKg: trials[trial]!.circumstances.rider.body.massKg, failed, cost };
    }),
  );
  return { order, base: own };
}

/** The first cell of each scenario that the usual rider meets, or else the first rider. */
function firstOfEach(trials: readonly PlannedTrial[]): number[] {
  const riders = trials.map(({ key }) => key.rider);
  const rider = riders.includes(DEFAULT_RIDER) ? DEFAULT_RIDER : riders[0];
  const first = new Map<string, number>();
  trials.forEach(({ key }, trial) => {
    if (key.rider === rider && !first.has(key.scenario)) first.set(key.scenario, trial);
  });
  return [...first.values()];
}

/** What the search is told: the price of runs that are known, and who cannot hold the board up. */
export async function judgeFor({ cells, base }: SweepPlan, ledger: Ledger): Promise<Judge> {
  const screens: Screen[] = [];
  for (const rider of cells.riders) {
    await breathe();
    const screen = openScreen({
      board: cells.board.value,
      riders: [rider],
      chargePercent: USUAL_CHARGE_PERCENT,
      speedsKmPerH: [USUAL_SPEED_KM_PER_H],
    });
    // Where even the profile that all share cannot be ridden by somebody, it is no reason to drop another.
    if (screen.screen(base.value).keeps) screens.push(screen);
  }
  const prices = new Map<string, Priced>();
  const verdicts = new Map<object, boolean>();
  return {
    priced: ({ values }, trial) => {
      const key = `${trial} ${numbersKey(values)}`;
      const known = prices.get(key);
      if (known !== undefined) return known;
      const result = ledger.result({ numbers: values, trial, how: 'fixed' });
      const failed = hasFailed(result);
      const price = { failed, cost: costOf({ key: '', failed, metrics: result.metrics }, cells.weights) };
      prices.set(key, price);
      return price;
    },
    isHopeless: (profile) => {
      const known = verdicts.get(profile);
      if (known !== undefined) return known;
      const isHopeless = screens.some(({ screen }) => !screen(profile).keeps);
      verdicts.set(profile, isHopeless);
      return isHopeless;
    },
  };
}

/**
 * Tells of the best so far over the first cells of an order: of those that were just run in so many, and of the best before them
 * that were run in as many, so that the best never seems to get worse from one step to the next over the same cells.
 */
function bestSoFar(plan: SweepPlan, ledger: Ledger, order: readonly number[]) {
  let leading: { candidate: Candidate; cellCount: number }[] = [];
  return (candidates: readonly Candidate[], cellCount: number): Leader[] => {
    const cells = order.slice(0, cellCount);
    const fresh = candidates.map((candidate) => ({ candidate, cellCount }));
    const names = new Set(candidates.map(({ name }) => name));
    const known = leading.filter((one) => one.cellCount >= cellCount && !names.has(one.candidate.name));
    const byName = new Map([...fresh, ...known].map((one) => [one.candidate.name, one]));
    const results = [...byName.values()].map(({ candidate }) => resultOf(plan, ledger, { candidate, cells }));
    const best = rankProfiles(results).slice(0, TOLD);
    leading = best.map(({ name }) => byName.get(name)!);
    return best.map((result, place) => ({ candidate: leading[place]!.candidate, result }));
  };
}

/** A candidate over cells that it was run in. */
export function resultOf(
  { base, cells: { weights } }: SweepPlan,
  ledger: Ledger,
  { candidate, cells }: { candidate: Candidate; cells: readonly number[] },
): ProfileResult {
  const { name, values } = candidate;
  const results = cells.map((trial) => ledger.result({ numbers: values, trial, how: 'fixed' }));
  return profileResult({ name, summary: base.value.summary }, results, weights);
}
