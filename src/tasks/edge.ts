/**
 * How far from the edge is a profile on this rig? All searches go side by side, one run of each at a time, so that every thread
 * has work.
 */
import { nextCount, openSearch, withResult, type Ending, type Search } from '../explain/edge.js';
import type { Edge, EdgeReport } from '../explain/edge-found.js';
import { liftStarts } from '../explain/edge-headroom.js';
import { edgeKinds, STATED_PUSH_NS, type EdgeKind } from '../explain/edge-scenarios.js';
import type { Makings } from '../explain/causes.js';
import type { CellResult } from '../measure/profile-result.js';
import type { CellTask } from './crew.js';
import { runTasks, type TaskOptions } from './labour.js';
import type { RankPlan } from './plan.js';
import { DEFAULT_RIDER } from './select.js';

/** How the edge is looked for; `onRuns` hears of the runs that are done: how many there will be nobody knows before. */
export interface EdgeOptions extends Pick<TaskOptions, 'threads' | 'signal'> {
  onRuns?: ((done: number) => void) | undefined;
}

/** The chance of every run, so that all of them can be made again. */
const SEED = 1;

/** Looks for the edge of the one profile of a plan, under the usual rider, if he is among its own, or else under the first. */
export async function findEdge(plan: RankPlan, options: EdgeOptions): Promise<EdgeReport> {
  const { board, riders, profiles } = plan;
  const rider = riders.find(({ name }) => name === DEFAULT_RIDER) ?? riders[0]!;
  const makings: Makings = {
    profile: profiles[0]!.value,
    board: board.value,
    rider: rider.value,
    scenario: plan.scenarios[0]!.value,
    seed: SEED,
    noiseRatio: 1,
  };
  const kinds = edgeKinds(board.value);
  const searches = await searchAll(kinds, { makings, rider: rider.name, solver: plan.solver }, options);
  const charges = kinds.filter(({ name }) => name === 'speed').map(({ chargePercent }) => chargePercent);
  return {
    rider: rider.name,
    seed: SEED,
    statedPushNS: STATED_PUSH_NS,
    edges: kinds.map((kind, index) => edgeOf(kind, searches[index]!)),
    lifts: liftStarts(makings, charges),
    liftBelowShare: liftBelowShareOf(makings),
  };
}

interface Trying {
  makings: Makings;
  rider: string;
  solver: RankPlan['solver'];
}

async function searchAll(
  kinds: readonly EdgeKind[],
  trying: Trying,
  { threads, signal, onRuns }: EdgeOptions,
): Promise<Search[]> {
  const searches = kinds.map(({ ladder }) => openSearch(ladder));
  let done = 0;
  for (;;) {
    const level = searches.flatMap((search, index) => {
      const count = nextCount(search);
      return count === null ? [] : [{ index, count }];
    });
    if (level.length === 0) return searches;
    const tasks = level.map(({ index, count }) => taskFor(kinds[index]!, count, trying));
    await runTasks(tasks, {
      threads,
      signal,
      onDone: (place, [cell]) => {
        const { index, count } = level[place]!;
        searches[index] = withResult(searches[index]!, count, endingOf(cell!));
        onRuns?.(++done);
      },
    });
  }
}

function taskFor(kind: EdgeKind, count: number, { makings, rider, solver }: Trying): CellTask {
  const { profile, ...circumstances } = kind.change(makings, count * kind.step);
  const key = { scenario: kind.name, rider, chargePercent: kind.chargePercent, seed: makings.seed };
  return { profile, trials: [{ key, circumstances }], solver };
}

/** How a run ended that was not survived; null for one that ended upright after it had met what it was to meet. */
function endingOf({ outcome, eventReached }: CellResult): Ending | null {
  const { kind, atS } = outcome;
  if (kind !== 'upright') return { kind, atS };
  return eventReached ? null : { kind: 'not met', atS };
}

function edgeOf(kind: EdgeKind, { survived, failed, ending, ladder }: Search): Edge {
  const { name, unit, speedKmPerH, chargePercent, pushNS, step } = kind;
  const sized = (count: number | null) => (count === null ? null : count * step);
  return {
    name,
    unit,
    speedKmPerH,
    chargePercent,
    pushNS,
    survived: sized(survived),
    failed: sized(failed),
    ending,
    largestTried: ladder.at(-1)! * step,
  };
}

function liftBelowShareOf({ profile }: Makings): number | null {
  const { headroomLift } = profile.shaping;
  return headroomLift === undefined ? null : headroomLift.belowPercent / 100;
}
