/**
 * What is to be set, looked for and expected from the stand to the first ride with full ceilings? Each ridden stage with the lowest
 * ceilings that the simulation gets through it with headroom to spare, under every rider of the kept profile.
 */
import {
  CEILING_SHARES,
  FREE_WHEEL_SHARE,
  fullCeilings,
  partOf,
  riddenStages,
  STAGE_HEADROOM_SHARE,
  underCeilings,
  type Ceilings,
  type FirstRidePlan,
  type RiddenStage,
  type StagePlan,
  type StageRide,
} from '../explain/first-ride.js';
import {
  changesAgainst,
  smallChanges,
  type FeelChange,
  type Felt,
  type SmallChange,
} from '../explain/feel-changes.js';
import { hasFailed, profileResult, type CellResult } from '../measure/profile-result.js';
import { weightsWith } from '../measure/scales.js';
import type { KeptFile } from '../quantity/kept-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { quoted } from '../quantity/received.js';
import type { RiderFile } from '../quantity/rider-file.js';
import { suggestion } from '../quantity/suggestion.js';
import { feelFacts, feelPoints } from './feel-rides.js';
import { runTasks, type TaskOptions } from './labour.js';
import { trialsOf, type Named, type PlannedTrial, type RankPlan } from './plan.js';
import { lookAtRides } from './ride-looks.js';

/** How the plan is made; `onRuns` hears how many runs and looks are done: how many there will be nobody knows before. */
export interface FirstRideOptions extends Pick<TaskOptions, 'threads' | 'signal'> {
  onRuns?: (done: number) => void;
}

/** Makes the plan. Throws the reason of a signal that comes before the end. */
export async function firstRidePlan(
  { name, value: kept }: Named<KeptFile>,
  { onRuns, ...options }: FirstRideOptions,
): Promise<FirstRidePlan> {
  const full = fullCeilings(kept.profile, kept.rig.board);
  let done = 0;
  const work: Work = { ...options, onRun: () => onRuns?.(++done) };
  const stages: StagePlan[] = [];
  let leastShare = 0;
  for (const stage of riddenStages()) {
    const { share, plan } = await stagePlan(kept, { stage, full, leastShare }, work);
    leastShare = share;
    stages.push(plan);
  }
  const changes = await changesFor(kept, stages, work);
  return { name, kept, full, free: partOf(full, FREE_WHEEL_SHARE), stages, changes };
}

/** The kept profile with some of its riders alone, all of them for undefined; a name that is none of theirs is a fault. */
export function underRiders(
  kept: KeptFile,
  names: readonly string[] | undefined,
): Checked<KeptFile, Problem> {
  if (names === undefined) return { ok: true, value: kept };
  const known = kept.rig.riders.map(({ name }) => name);
  const faults = names
    .filter((name) => !known.includes(name))
    .map((name): Problem => {
      const near = suggestion(name, known);
      const problem = {
        file: '',
        line: null,
        column: null,
        key: 'rider',
        expected: `a rider that it was proven under (${known.join(', ')})`,
        received: quoted(name),
      };
      return near === undefined ? problem : { ...problem, suggestion: near };
    });
  if (faults.length > 0) return { ok: false, faults };
  const riders = kept.rig.riders.filter(({ name }) => names.includes(name));
  return { ok: true, value: { ...kept, rig: { ...kept.rig, riders } } };
}

interface Work extends Pick<TaskOptions, 'threads' | 'signal'> {
  onRun: () => void;
}

/** The lowest ceilings, from those of the stage before upwards, with which every ride stands and has headroom to spare. */
async function stagePlan(
  kept: KeptFile,
  { stage, full, leastShare }: { stage: RiddenStage; full: Ceilings; leastShare: number },
  work: Work,
): Promise<{ share: number; plan: StagePlan }> {
  let below: StagePlan['below'] = null;
  for (const share of CEILING_SHARES.filter((one) => one >= leastShare)) {
    const ceilings = partOf(full, share);
    const rides = await ridesWith(kept, { stage, profile: underCeilings(kept.profile, ceilings) }, work);
    const worst = worstOf(rides);
    const holds = isEnough(worst.result);
    if (holds || share === 1) return { share, plan: { stage, ceilings, holds, rides, below } };
    below = { ceilings, worst };
  }
  throw new Error('the full ceilings are among those that are tried');
}

async function ridesWith(
  { rig }: KeptFile,
  { stage, profile }: { stage: RiddenStage; profile: ProfileFile },
  { threads, signal, onRun }: Work,
): Promise<StageRide[]> {
  const rides = stage.rides.flatMap((ride) => rig.riders.map(({ name, rider }) => ({ ride, name, rider })));
  const results = Array<CellResult>(rides.length);
  const tasks = rides.map(({ ride, name, rider }) => ({
    profile,
    trials: [trialOf(rig.board, { name, value: rider }, ride)],
    solver: 'fixed' as const,
  }));
  await runTasks(tasks, {
    threads,
    signal,
    onDone: (index, [cell]) => {
      results[index] = cell!;
      onRun();
    },
  });
  return rides.map(({ ride, name }, index) => ({ ride: ride.name, rider: name, result: results[index]! }));
}

function trialOf(
  board: KeptFile['rig']['board'],
  rider: Named<RiderFile>,
  { name, value }: RiddenStage['rides'][number],
): PlannedTrial {
  const { chargePercent } = value;
  return {
    key: { scenario: name, rider: rider.name, chargePercent, seed: 1 },
    circumstances: { board, rider: rider.value, scenario: value, seed: 1 },
  };
}

/** Stands, with the headroom that a stage has to leave. */
function isEnough(result: CellResult): boolean {
  return !hasFailed(result) && (result.metrics.leastHeadroomShare ?? 0) >= STAGE_HEADROOM_SHARE;
}

/** The soonest fall, or else the ride with the least headroom. */
function worstOf(rides: readonly StageRide[]): StageRide {
  const headroom = ({ result }: StageRide) => result.metrics.leastHeadroomShare ?? 0;
  return rides.reduce((worst, ride) => {
    const [a, b] = [hasFailed(worst.result), hasFailed(ride.result)];
    if (a !== b) return b ? ride : worst;
    if (a) return ride.result.outcome.atS < worst.result.outcome.atS ? ride : worst;
    return headroom(ride) < headroom(worst) ? ride : worst;
  });
}

/** What to change against each feel, tried in the rides of the stages with full ceilings under the usual rider. */
async function changesFor(kept: KeptFile, stages: readonly StagePlan[], work: Work): Promise<FeelChange[]> {
  const changes = smallChanges(kept.profile);
  const [own, ...felt] = await feltWith(
    ridePlan(kept, stages),
    [kept.profile, ...changes.map(profileOf)],
    work,
  );
  return changesAgainst(
    own!,
    changes.map((change, index) => ({ change, felt: felt[index]! })),
  );
}

const profileOf = ({ profile }: SmallChange) => profile;

/** All rides of all stages, under the rider that the feel is told by. */
function ridePlan({ rig, feel }: KeptFile, stages: readonly StagePlan[]): RankPlan {
  const { name, rider } = rig.riders.find((one) => one.name === feel.rider) ?? rig.riders[0]!;
  return {
    board: { name: rig.boardName, value: rig.board },
    riders: [{ name, value: rider }],
    profiles: [],
    scenarios: stages.flatMap(({ stage }) =>
      stage.rides.map((ride) => ({ name: `${stage.name}, ${ride.name}`, value: ride.value })),
    ),
    charges: [null],
    seeds: [1],
    solver: 'fixed',
    weights: weightsWith(),
  };
}

/** What each of some profiles comes to in the rides of a plan. */
async function feltWith(
  plan: RankPlan,
  profiles: readonly ProfileFile[],
  { threads, signal, onRun }: Work,
): Promise<Felt[]> {
  const trials = trialsOf(plan);
  const cells: CellResult[][] = profiles.map(() => []);
  await runTasks(
    profiles.map((profile) => ({ profile, trials, solver: plan.solver })),
    {
      threads,
      signal,
      onDone: (index, results) => {
        cells[index] = results;
        onRun();
      },
    },
  );
  const points = profiles.map((profile) => feelPoints(plan, profile));
  const reports = await lookAtRides(points.flat(), { threads, signal, onReport: onRun });
  return profiles.map((_, index): Felt => {
    const result = profileResult({ name: 'felt', summary: '' }, cells[index]!, plan.weights);
    const before = points.slice(0, index).flat().length;
    const own = reports.slice(before, before + points[index]!.length);
    return { facts: feelFacts(plan, result.cells, own), failures: result.failures, score: result.score };
  });
}
