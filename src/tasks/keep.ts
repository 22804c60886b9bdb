/**
 * What is to be kept of a profile, so that it can be carried onto a board? It is proven anew: every cell, steady rides, what a slip
 * in a number does, and how far the edge is. The answer hangs on the plan alone, but for the time that it is given.
 */
import { SCALES_VERSION } from '../measure/scales.js';
import type { KeptFile } from '../quantity/kept-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { programVersion, type Places } from '../store/places.js';
import { numbersHash, sealOf } from '../store/short-hash.js';
import { openCrew } from './crew.js';
import { findEdge } from './edge.js';
import { finalistPoints, rideFinalists } from './finalist-rides.js';
import { cellsPart, figuresPart, limitsPart, marginsPart, rigPart, weakestPart } from './kept-parts.js';
import type { RankPlan } from './plan.js';
import { rank } from './rank.js';
import { planFor, type Selection } from './select.js';
import type { Labour } from './share-out.js';
import { usualRiders } from './sweep-select.js';
import { trySlips } from './tolerance.js';

/** What is being done, in words. */
export type KeepStage =
  'running every cell' | 'looking at steady rides' | 'trying slips' | 'looking for the edge';

/** How far it is; how many runs the edge takes nobody knows before: `all` is null. */
export interface KeepProgress {
  stage: KeepStage;
  done: number;
  all: number | null;
}

/** How a profile is proven; `on` is the time that it is kept under, the clock's unless given. */
export interface KeepOptions {
  threads: Labour;
  signal?: AbortSignal | undefined;
  onProgress?: ((progress: KeepProgress) => void) | undefined;
  on?: Date | undefined;
}

/** What a person asked for: one profile; `riders` undefined stands for those of different weight and practice, null for all. */
export interface KeepSelection extends Omit<Selection, 'profiles' | 'solver'> {
  profile: string;
}

/** The plan to prove a profile in, or everything that is wrong with what was asked for. */
export function keepPlanFor(places: Places, selection: KeepSelection): Checked<RankPlan, Problem> {
  const { profile, ...cells } = selection;
  const riders = cells.riders === undefined ? usualRiders(places) : cells.riders;
  return planFor(places, { ...cells, riders, profiles: [profile], solver: 'fixed' });
}

/**
 * Proves the one profile of a plan; note and rides are empty. Throws the reason of a signal that comes before the end, or a
 * WorkFailed for what could not be computed.
 */
export async function keep(plan: RankPlan, { threads, ...options }: KeepOptions): Promise<KeptFile> {
  if (typeof threads !== 'number' || threads <= 1) return proven(plan, { threads, ...options });
  // Opened once for all pieces of work.
  const crew = await openCrew(threads);
  try {
    return await proven(plan, { threads: crew, ...options });
  } finally {
    await crew.close();
  }
}

async function proven(plan: RankPlan, options: KeepOptions): Promise<KeptFile> {
  const { threads, signal, onProgress, on = new Date() } = options;
  const work = { threads, signal };
  const telling = (stage: KeepStage) => (done: number, all: number | null) =>
    onProgress?.({ stage, done, all });
  const profile = plan.profiles[0]!;
  const ranked = await rank(plan, { ...work, onCells: telling('running every cell') });
  const result = ranked[0]!;
  const candidate = { name: profile.name, values: [], profile: profile.value };
  const rideCount = finalistPoints(plan, candidate).length;
  const tellRides = telling('looking at steady rides');
  const [rides] = await rideFinalists(plan, [{ candidate, result }], {
    ...work,
    onReport: (done) => tellRides(done, rideCount),
  });
  const { margins, feel } = rides!;
  const slips = await trySlips(plan, result, { ...work, onRuns: telling('trying slips') });
  const tellEdge = telling('looking for the edge');
  const edge = await findEdge(plan, { ...work, onRuns: (done) => tellEdge(done, null) });
  const kept = {
    note: '',
    rides: [],
    numbers: numbersHash(profile.value),
    origin: {
      from: profile.name,
      on: instantText(on),
      underfoot: programVersion(),
      scales: SCALES_VERSION,
    },
    profile: profile.value,
    rig: rigPart(plan),
    cells: cellsPart(plan),
    figures: figuresPart(result),
    margins: marginsPart(margins),
    feel,
    limits: limitsPart(edge),
    weakest: weakestPart(result, plan),
    slips,
  };
  return withSeal(kept);
}

/** The content of a kept file with its seal, after the hash of the numbers. */
function withSeal({ note, rides, numbers, ...proof }: Omit<KeptFile, 'seal'>): KeptFile {
  return { note, rides, numbers, seal: sealOf({ note, rides, numbers, ...proof }), ...proof };
}

/** A time to the second, UTC. */
function instantText(on: Date): string {
  return `${on.toISOString().slice(0, 19)}Z`;
}
