/** The Sweep screen with a made-up sweep: candidates spread over their ranges, a cliff across them, the best in the middle. */
import { profileResult } from '../../../src/measure/profile-result.js';
import { groupCosts, onFront } from '../../../src/sweep/front.js';
import { rankIntervals } from '../../../src/sweep/rank-interval.js';
import { placeOf } from '../../../src/sweep/range.js';
import { spreadOf } from '../../../src/sweep/search.js';
import type { Candidate } from '../../../src/sweep/candidate.js';
import { trialsOf } from '../../../src/tasks/plan.js';
import type { SweepPlan } from '../../../src/tasks/sweep-plan.js';
import type { Finalist } from '../../../src/tasks/sweep-finalists.js';
import { swept } from '../../../src/tui/bench/hear.js';
import { press } from '../../../src/tui/bench/press.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import type { SweepOutcome, SweepPoint, SweepRunState } from '../../../src/tui/bench/sweep-state.js';
import { CALM } from '../../measure/some-metrics.js';

const COUNT = 80;
const FINALISTS = 12;

/** The place of a candidate along the first range and along the last. */
function placesOf({ ranges }: SweepPlan, { values }: Candidate): { x: number; y: number } {
  const last = ranges.length - 1;
  return { x: placeOf(ranges[0]!, values[0]!), y: placeOf(ranges[last]!, values[last]!) };
}

/** The result of a candidate in some trials: it falls right below a line, and costs more the further from a point it is. */
function resultFor(plan: SweepPlan, candidate: Candidate, trials: readonly number[]) {
  const { x, y } = placesOf(plan, candidate);
  const falls = y < 0.1 + 0.4 * x;
  const all = trialsOf(plan.cells);
  const cells = trials.map((trial) => ({
    ...all[trial]!.key,
    outcome: falls ? { kind: 'nose strike' as const, atS: 2 } : { kind: 'upright' as const, atS: 8 },
    eventReached: true,
    metrics: {
      ...CALM,
      reboundPercent: 100 * Math.hypot(x - 0.4, y - 0.7),
      settlingTimeS: 0.3 + y,
      commandActivityAPerS: 500 * y,
      saturationShare: 0.1 * x,
    },
  }));
  return profileResult({ name: candidate.name, summary: 'Made for tests' }, cells, plan.cells.weights);
}

const SURE = { cellsChecked: 1, agreementRatio: 0.02, agrees: true, largestDifference: null };

function finalistOf(
  plan: SweepPlan,
  { candidate, own }: SweepPoint,
): Omit<Finalist, 'interval' | 'isOnFront'> {
  return {
    candidate,
    result: own!,
    groups: groupCosts(own!.cells, plan.cells.weights),
    feel: { rider: plan.cells.riders[0]!.name, words: ['composed'] },
    margins: null,
    halfStep: SURE,
    reference: SURE,
    slips: [],
    notFor: [],
  };
}

/** What a made-up sweep comes to; without anybody where all are hopeless. */
export function outcomeFor(plan: SweepPlan, { isHopeless = false } = {}): SweepOutcome {
  const all = trialsOf(plan.cells).map((_, trial) => trial);
  const { spread } = spreadOf({ ...plan, base: plan.base.value, count: COUNT });
  const points = spread.map((candidate): SweepPoint => {
    const { x } = placesOf(plan, candidate);
    if (isHopeless || x < 0.1) return { candidate, fate: { kind: 'hopeless' }, own: null, shared: null };
    const shared = resultFor(plan, candidate, all.slice(0, 2));
    if (shared.failures > 0) {
      return { candidate, fate: { kind: 'dropped', afterCells: 2, failures: 2 }, own: shared, shared };
    }
    return { candidate, fate: { kind: 'run in every cell' }, own: resultFor(plan, candidate, all), shared };
  });
  const best = points
    .filter(({ fate }) => fate.kind === 'run in every cell')
    .toSorted((a, b) => a.own!.score - b.own!.score)
    .slice(0, FINALISTS)
    .map((point) => finalistOf(plan, point));
  const intervals =
    best.length === 0
      ? []
      : rankIntervals(
          best.map(({ result }) => result),
          { seed: 1 },
        );
  const front = onFront(best.map(({ groups }) => Object.values(groups)));
  const finalists = best.map((finalist, index) => {
    return { ...finalist, interval: intervals[index]!, isOnFront: front[index]! };
  });
  const found = {
    tried: points.map(({ candidate, fate }) => ({ candidate, fate })),
    finalists: finalists.map(({ candidate }) => candidate),
    progress: [],
    spread: { count: COUNT, scores: finalists.map(({ result }) => result.score) },
  };
  const middle = { name: plan.base.name, values: plan.ranges.map(({ min, max }) => Math.sqrt(min * max)) };
  const base = resultFor(plan, { ...middle, profile: plan.base.value }, all);
  return { answer: { plan, base, found, finalists, runs: 1234 }, points };
}

const PROGRESS: NonNullable<SweepRunState['progress']> = {
  stage: 'racing',
  step: 2,
  steps: 3,
  done: 120,
  all: 480,
  known: 360,
  ratePerS: 52,
};

/** The state with a sweep just begun. */
export function begunSweep(state: BenchState): BenchState {
  return ['g', 'return'].reduce((now, name) => press(now, { name, text: '' }), state);
}

/** The state with a sweep that runs, and the best so far. */
export function runningSweep(state: BenchState): BenchState {
  const begun = begunSweep(state);
  const { plan } = begun.sweep.run!;
  const best = outcomeFor(plan)
    .answer.finalists.slice(0, 10)
    .map(({ candidate, result }) => ({ values: candidate.values, result }));
  return swept(begun, plan, { progress: PROGRESS, best, kept: 'sweeps/pebble-abc.ndjson' });
}

/** The state with a sweep that has come to its end. */
export function endedSweep(state: BenchState, unusual?: Parameters<typeof outcomeFor>[1]): BenchState {
  const running = begunSweep(state);
  const { plan } = running.sweep.run!;
  return swept(running, plan, { isRunning: false, outcome: outcomeFor(plan, unusual) });
}
