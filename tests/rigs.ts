/**
 * Boards, riders, profiles, scenarios and plain roads that the tests of physics share. The rig is the one whose
 * starting values the project began with; a test names only what it changes.
 */
import type { z } from 'zod';
import { plantOf, type Plant } from '../src/model/plant.js';
import { createMoment, type Moment } from '../src/simulate/moment.js';
import { boardSchema, type BoardFile } from '../src/quantity/board-file.js';
import { profileSchema, type ProfileFile } from '../src/quantity/profile-file.js';
import { riderSchema, type RiderFile } from '../src/quantity/rider-file.js';
import { scenarioSchema, type RoadPiece, type ScenarioFile } from '../src/quantity/scenario-file.js';
import type { Road } from '../src/scenario/road.js';
import { prepareTrial, type Trial } from '../src/simulate/trial.js';
import { validBoard } from './quantity/valid-values.js';

type Sections<T> = { [K in keyof T]?: T[K] extends object ? Partial<T[K]> : T[K] };

const BOARD = validBoard();

/** A board; sections given replace single values of the usual one. */
export function boardWith(changes: Sections<z.input<typeof boardSchema>> = {}): BoardFile {
  return boardSchema.parse({
    summary: 'test',
    ...changes,
    wheel: { ...BOARD.wheel, ...changes.wheel },
    deck: { ...BOARD.deck, ...changes.deck },
    motor: { ...BOARD.motor, ...changes.motor },
    pack: { ...BOARD.pack, ...changes.pack },
  });
}

/** A rider; sections given replace single values of the usual one. */
export function riderWith(changes: Sections<z.input<typeof riderSchema>> = {}): RiderFile {
  return riderSchema.parse({
    summary: 'test',
    ...changes,
    body: { massKg: 78, statureM: 1.8, centreAboveAnkleM: 0.95, inertiaKgM2: 9.5, ...changes.body },
    balance: { delayS: 0.14, frequencyRadPerS: 2, dampingRatio: 0.8, ...changes.balance },
  });
}

/** A profile: proportional gain [A/deg], rate gain [A/(deg/s)], integral gain [A/(deg s)] and its shaping. */
export function profileWith(
  [proportionalAPerDeg, rateAPerDegPerS, integralAPerDegS = 0]: readonly [number, number, number?],
  shaping: z.input<typeof profileSchema>['shaping'] = {},
): ProfileFile {
  const gains = { proportionalAPerDeg, rateAPerDegPerS, integralAPerDegS };
  return profileSchema.parse({ summary: 'test', gains, shaping });
}

/** The gains that ride well on the usual rig. */
export const COMPOSED = [20, 1.2] as const;

/** A scenario; left out: twelve seconds of standing on a level road. */
export function scenarioWith(changes: Partial<z.input<typeof scenarioSchema>> = {}): ScenarioFile {
  return scenarioSchema.parse({
    summary: 'test',
    durationS: 12,
    road: [{ lengthM: 60 }],
    speeds: [{ atS: 0, speedKmPerH: 0 }],
    measure: { as: 'ride' },
    ...changes,
  });
}

/** A road piece with its defaults filled in. */
export function roadPieces(...pieces: z.input<typeof scenarioSchema>['road']): RoadPiece[] {
  return scenarioWith({ road: pieces }).road;
}

interface Parts {
  board?: BoardFile;
  rider?: RiderFile;
  scenario?: ScenarioFile;
  seed?: number;
  noiseRatio?: number;
}

/** A trial without chance, unless a noise ratio is given. */
export function trialWith({ board, rider, scenario, seed = 1, noiseRatio = 0 }: Parts = {}): Trial {
  return prepareTrial({
    board: board ?? boardWith(),
    rider: rider ?? riderWith(),
    scenario: scenario ?? scenarioWith(),
    seed,
    noiseRatio,
  });
}

/** The plant of the usual rig with some of its values replaced. */
export function plantWith(changes: Partial<Plant> = {}): Plant {
  return { ...plantOf(boardWith(), riderWith()), ...changes };
}

/** What makes a plant lose nothing: no dampers, no air. Rolling resistance is an input and is zero where not set. */
export const LOSSLESS = {
  verticalDampingNSPerM: 0,
  treadDampingNSPerM: 0,
  legDampingNSPerM: 0,
  passiveDampingNmSPerRad: 0,
  halfDragAreaKgPerM: 0,
} as const;

/** A plane 200 m long that rises by `slope` per metre, as a tyre of a radius [m] meets it. */
export function planeRoad(slope: number, radiusM = 0.14): Road {
  const spacingM = 200;
  const originM = -100;
  const lift = radiusM * (Math.sqrt(1 + slope * slope) - 1);
  const height = (xM: number) => slope * xM + lift;
  return {
    originM,
    spacingM,
    knots: Float64Array.of(height(originM), slope * spacingM, height(originM + spacingM), slope * spacingM),
    bareHeightM: Float64Array.of(slope * originM, slope * (originM + spacingM)),
    pieceStartM: Float64Array.of(0),
    gripRatio: Float64Array.of(0.65),
    rollingResistanceRatio: Float64Array.of(0),
  };
}

/** A moment with a state and inputs set by place; the rest is zero. */
export function momentWith(state: Record<number, number>, inputs: Record<number, number> = {}): Moment {
  const moment = createMoment(0, 0);
  for (const [place, value] of Object.entries(state)) moment.state[Number(place)] = value;
  for (const [place, value] of Object.entries(inputs)) moment.inputs[Number(place)] = value;
  return moment;
}

/** The rows of a tape column that are valid. */
export function columnOf<C extends string>(
  tape: { length: number; columns: Record<C, Float64Array> },
  column: C,
): Float64Array {
  return tape.columns[column].subarray(0, tape.length);
}

/** Largest magnitude in a list. */
export function largest(values: Iterable<number>): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Math.abs(value));
  return most;
}

/** Even numbers from 0 to 1 by a seed (Park and Miller's minimal generator, apart from the project's own chance). */
export function chance(seed: number): () => number {
  let now = seed;
  return () => {
    now = (now * 48271) % 2147483647;
    return now / 2147483647;
  };
}
