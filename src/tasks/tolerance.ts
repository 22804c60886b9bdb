/**
 * Which number is dangerous to get wrong? Every number of a profile by itself a little off, with its first digit or its decimal point
 * slipped, and with the other sign: each simulated in the cells that tell soonest. No schema is asked: a controller takes what is typed.
 */
import { setImmediate as breathe } from 'node:timers/promises';
import { controlLaw } from '../control/law.js';
import { profileResult, type CellResult, type ProfileResult } from '../measure/profile-result.js';
import * as at from '../model/state.js';
import { SLIPS, type KeptFile, type Slip } from '../quantity/kept-file.js';
import { PROFILE_FIELDS, readField, type ProfileField } from '../quantity/profile-fields.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import { byDanger } from '../show/kept-slips.js';
import { startMoment } from '../simulate/start.js';
import { prepareTrial } from '../simulate/trial.js';
import { cellOrder } from '../sweep/cell-order.js';
import { slipped } from '../sweep/neighbours.js';
import type { CellTask } from './crew.js';
import { runTasks, type TaskOptions } from './labour.js';
import { trialsOf, type PlannedTrial, type RankPlan } from './plan.js';

/** What one slip did. */
export type SlipFound = KeptFile['slips'][number];

/** How slips are tried; `onRuns` hears how many runs are done. */
export interface ToleranceOptions extends Pick<TaskOptions, 'threads' | 'signal'> {
  onRuns?: ((done: number, all: number) => void) | undefined;
}

/** A profile with one number off, which no profile file may hold. */
export interface SlippedProfile {
  key: string;
  slip: Slip;
  value: number;
  profile: ProfileFile;
}

/** Cells that slips are tried in, and the least a rider. */
const SLIP_CELLS = 32;
const LEAST_A_RIDER = 2;

/**
 * Numbers whose sign is a matter of which way a controller counts. Times, limits and corners have none that could be meant, and no
 * controller takes them below 0.
 */
const SIGNED: ReadonlySet<string> = new Set([
  'proportionalAPerDeg',
  'rateAPerDegPerS',
  'integralAPerDegS',
  'currentShare',
  'noseUpDegPerA',
  'restTrimNoseUpDeg',
]);

/** Every slip of every number that a profile has, in the order of its file; a number that is 0 has none. */
export function slipsIn(profile: ProfileFile): SlippedProfile[] {
  return PROFILE_FIELDS.flatMap((field) => {
    const own = readField(profile, field);
    if (own === undefined || own === 0) return [];
    return SLIPS.filter((slip) => slip !== 'the other sign' || SIGNED.has(field.key))
      .map((slip) => ({ slip, value: slipped(own, slip) }))
      .filter(({ value }) => value !== own && canBeTyped(field, value))
      .map(({ slip, value }) => ({ key: field.key, slip, value, profile: withTyped(profile, field, value) }));
  });
}

/** A time or a ceiling of 0 makes no law; more or less than a file may say does. */
function canBeTyped({ min }: ProfileField, value: number): boolean {
  return min <= 0 || value > 0;
}

/** The profile with a number that it has exchanged for another, whether or not a file may hold it. */
function withTyped(profile: ProfileFile, { path }: ProfileField, value: number): ProfileFile {
  const typed = structuredClone(profile);
  let section = typed as unknown as Record<string, unknown>;
  for (const key of path.slice(0, -1)) section = section[key] as Record<string, unknown>;
  section[path.at(-1)!] = value;
  return typed;
}

/** Tries every slip of the one profile of a plan, whose cells are known; the most dangerous first. */
export async function trySlips(
  plan: RankPlan,
  own: ProfileResult,
  { threads, signal, onRuns }: ToleranceOptions,
): Promise<SlipFound[]> {
  const { value: profile } = plan.profiles[0]!;
  const places = placesFor(plan, own);
  const all = trialsOf(plan);
  const trials = places.map((place) => all[place]!);
  const balanced = await inBalanceOf(profile, trials, signal);
  const slips = slipsIn(profile);
  const tasks = slips.map((slip): CellTask => ({
    profile: slip.profile,
    trials: hasBalance(slip.profile) ? trials : balanced,
    solver: plan.solver,
  }));
  const results = Array<CellResult[]>(tasks.length);
  let done = 0;
  await runTasks(tasks, {
    threads,
    signal,
    onDone: (index, cells) => {
      results[index] = cells;
      onRuns?.((done += cells.length), tasks.length * trials.length);
    },
  });
  const without = over(
    plan,
    places.map((place) => own.cells[place]!),
  );
  return slips
    .map((slip, index) => foundOf(slip, { result: over(plan, results[index]!), without }))
    .toSorted(byDanger);
}

/** The cells that slips are tried in: the hardest that the profile survives, some under every rider. */
function placesFor(plan: RankPlan, { cells }: ProfileResult): number[] {
  const massOf = new Map(plan.riders.map(({ name, value }) => [name, value.body.massKg]));
  const order = cellOrder(
    cells.map(({ rider, failed, cost }) => ({ rider, riderMassKg: massOf.get(rider)!, failed, cost })),
  );
  return order.slice(0, Math.max(SLIP_CELLS, LEAST_A_RIDER * plan.riders.length));
}

/** A proportional gain of 0 or less holds no load at any pitch: there is no balance that a ride could begin from. */
export function hasBalance({ gains }: ProfileFile): boolean {
  return gains.proportionalAPerDeg > 0;
}

/** The trials with the deck at the start where a profile has it in balance, so that a fall with other numbers is not that of the start. */
export async function inBalanceOf(
  profile: ProfileFile,
  trials: readonly PlannedTrial[],
  signal: AbortSignal | undefined,
): Promise<PlannedTrial[]> {
  const balanced: PlannedTrial[] = [];
  for (const { key, circumstances } of trials) {
    await breathe();
    signal?.throwIfAborted();
    const { board, scenario } = circumstances;
    const { state } = startMoment(prepareTrial(circumstances), controlLaw(profile, board));
    const noseUpDeg = scenario.start.noseUpDeg ?? -state[at.PITCH]! * DEG_PER_RAD;
    const start = { ...scenario.start, noseUpDeg };
    balanced.push({ key, circumstances: { ...circumstances, scenario: { ...scenario, start } } });
  }
  return balanced;
}

function over({ weights }: RankPlan, cells: readonly CellResult[]): ProfileResult {
  return profileResult({ name: '', summary: '' }, cells, weights);
}

function foundOf(
  { key, slip, value }: SlippedProfile,
  { result, without }: { result: ProfileResult; without: ProfileResult },
): SlipFound {
  const ends = result.cells.map(({ outcome }) => outcome).filter(({ kind }) => kind !== 'upright');
  const soonest = ends.toSorted((a, b) => a.atS - b.atS)[0];
  return {
    key,
    slip,
    value,
    runs: result.cells.length,
    failures: result.failures,
    moreFailures: result.failures - without.failures,
    scoreRatio: without.score > 0 ? Number((result.score / without.score).toPrecision(4)) : 1,
    soonestS: soonest === undefined ? null : Number(soonest.atS.toFixed(3)),
    ending: soonest?.kind ?? null,
  };
}
