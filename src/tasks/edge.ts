/**
 * How far from the edge is a profile on this rig, under each rider of a plan and all of its seeds? All searches of all riders go
 * side by side, one size of each at a time, so that every thread has work.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import type { Makings } from '../explain/makings.js';
import type { EdgeReport, FoundEnding, RiderEdges } from '../explain/edge-found.js';
import { liftStarts, pushTakesA, type LiftStart } from '../explain/edge-headroom.js';
import { countsToRun, edgeOf, openQuest, withMet, type Met, type Quest } from '../explain/edge-quest.js';
import {
  edgeKinds,
  STATED_PUSH_NS,
  USUAL_CHARGE_PERCENT,
  USUAL_SPEED_KM_PER_H,
} from '../explain/edge-scenarios.js';
import { hasMargins, loopStateOf } from '../linear/growth.js';
import type { RideLook } from '../linear/ride-report.js';
import type { RidePoint } from '../linear/steady-ride.js';
import type { CellResult } from '../measure/profile-result.js';
import type { RiderFile } from '../quantity/rider-file.js';
import type { CellTask } from './crew.js';
import { runTasks, type TaskOptions } from './labour.js';
import type { Named, RankPlan } from './plan.js';
import { lookAtRides } from './ride-looks.js';

/** How the edge is looked for; `onRuns` hears of the runs that are done: how many there will be nobody knows before. */
export interface EdgeOptions extends Pick<TaskOptions, 'threads' | 'signal'> {
  onRuns?: ((done: number) => void) | undefined;
}

/**
 * Looks for the edge of the one profile of a plan under each of its riders; survived is what is survived under all of its seeds.
 * Throws the reason of a signal that comes before the end.
 */
export async function findEdge(plan: RankPlan, options: EdgeOptions): Promise<EdgeReport> {
  const { board, profiles, seeds } = plan;
  const kinds = edgeKinds(board.value);
  const charges = kinds.filter(({ name }) => name === 'speed').map(({ chargePercent }) => chargePercent);
  const opened = plan.riders.flatMap((rider) => kinds.map((kind) => ({ rider, quest: openQuest(kind) })));
  const searched = await searchAll(opened, plan, options);
  const points = plan.riders.map((rider) => steadyPoint(plan, rider));
  const looks = await lookAtRides(points, options);
  const riders: RiderEdges[] = [];
  for (const [index, rider] of plan.riders.entries()) {
    const edges = searched.filter((search) => search.rider === rider).map(({ quest }) => edgeOf(quest));
    const lifts = await liftsOf(plan, rider, { charges, ...options });
    riders.push({ rider: rider.name, edges, lifts, spareDelayMs: spareDelayMs(looks[index]!) });
  }
  const { headroomLift } = profiles[0]!.value.shaping;
  const liftBelowShare = headroomLift === undefined ? null : headroomLift.belowPercent / 100;
  return { seeds, statedPushNS: STATED_PUSH_NS, riders, liftBelowShare };
}

/** What is looked for under one rider. */
interface Searching {
  rider: Named<RiderFile>;
  quest: Quest;
}

async function searchAll(
  opened: readonly Searching[],
  plan: RankPlan,
  { threads, signal, onRuns }: EdgeOptions,
): Promise<Searching[]> {
  const searches = [...opened];
  const { seeds } = plan;
  let done = 0;
  for (;;) {
    const level = searches.flatMap(({ quest }, index) =>
      countsToRun(quest).map((count) => ({ index, count })),
    );
    if (level.length === 0) return searches;
    const tasks = level.flatMap(({ index, count }) =>
      seeds.map((seed) => taskFor(searches[index]!, { count, seed }, plan)),
    );
    const cells = Array<CellResult>(tasks.length);
    await runTasks(tasks, {
      threads,
      signal,
      onDone: (place, [cell]) => {
        cells[place] = cell!;
        onRuns?.(++done);
      },
    });
    level.forEach(({ index, count }, place) => {
      const search = searches[index]!;
      const met = metIn(cells.slice(place * seeds.length, (place + 1) * seeds.length));
      searches[index] = { ...search, quest: withMet(search.quest, count, met) };
    });
  }
}

function taskFor(
  { rider, quest: { kind } }: Searching,
  { count, seed }: { count: number; seed: number },
  plan: RankPlan,
): CellTask {
  const { profile, ...circumstances } = kind.change(makingsOf(plan, rider, seed), count * kind.step);
  const key = { scenario: kind.name, rider: rider.name, chargePercent: kind.chargePercent, seed };
  return { profile, trials: [{ key, circumstances }], solver: plan.solver };
}

function makingsOf({ board, profiles, scenarios }: RankPlan, rider: Named<RiderFile>, seed: number): Makings {
  return {
    profile: profiles[0]!.value,
    board: board.value,
    rider: rider.value,
    scenario: scenarios[0]!.value,
    seed,
    noiseRatio: 1,
  };
}

/** What the runs of one size came to, a cell for each seed. */
function metIn(cells: readonly CellResult[]): Met {
  return {
    ending: cells.map(endingOf).find((ending) => ending !== null) ?? null,
    isFootLight: cells.some(({ metrics }) => metrics.oneFootLightS > 0),
  };
}

/** How a run ended that was not survived; null for one that ended upright after it had met what it was to meet. */
function endingOf({ outcome: { kind, atS }, eventReached, seed }: CellResult): FoundEnding | null {
  if (kind !== 'upright') return { kind, atS, seed };
  return eventReached ? null : { kind: 'not met', atS, seed };
}

/** The steady ride of the edges under a rider. */
function steadyPoint({ board, profiles }: RankPlan, { value: rider }: Named<RiderFile>): RidePoint {
  return {
    board: board.value,
    rider,
    profile: profiles[0]!.value,
    speedKmPerH: USUAL_SPEED_KM_PER_H,
    gradePercent: 0,
    chargePercent: USUAL_CHARGE_PERCENT,
  };
}

/** Delay that the loop can spare by the linear view: 0 for one that is lost, null where none is known. */
function spareDelayMs(look: RideLook | null): number | null {
  if (look === null) return null;
  if (!hasMargins(loopStateOf(look.modes, false))) return 0;
  const delayMs = 1000 * look.margins.delayS.value;
  return Number.isFinite(delayMs) ? delayMs : null;
}

/** Where the lift should begin under a rider: for the most that the stated push takes under any seed. */
async function liftsOf(
  plan: RankPlan,
  rider: Named<RiderFile>,
  { charges, signal }: { charges: readonly number[] } & Pick<EdgeOptions, 'signal'>,
): Promise<LiftStart[]> {
  const takenA: (number | null)[] = [];
  for (const seed of plan.seeds) {
    takenA.push(pushTakesA(makingsOf(plan, rider, seed)));
    await breathe();
    signal?.throwIfAborted();
  }
  const neededA = takenA.reduce((most, a) => (most === null || a === null ? null : Math.max(most, a)));
  return liftStarts(makingsOf(plan, rider, plan.seeds[0]!), neededA, charges);
}
