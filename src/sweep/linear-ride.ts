/**
 * What is ready before any candidate comes: a steady ride with what its plant answers along the edges of ever quicker growth;
 * and is it lost with a candidate's law?
 */
import { findCeilings, LOWER, UPPER } from '../control/ceilings.js';
import { findHeadroom, HEADROOM, REQUESTED, type ControlLaw } from '../control/law.js';
import { steadyRide, type RidePoint, type SteadyRide } from '../linear/steady-ride.js';
import { profileSchema } from '../quantity/profile-file.js';
import { gainsOfSwings, smallGains } from './linear-law.js';
import { countInside, edgeOf, loopTable, type Edge, type LoopTable } from './linear-path.js';
import { sensorsOf, type SensorsAt } from './linear-plant.js';
import { motionFrom, type Motion } from './linear-root.js';

/**
 * A candidate is dropped where a motion that swings slower than so [Hz] doubles within so long [s]. Ours, found with 778 drawn
 * candidates on both starter boards under five riders in eight scenarios: each of the 145 that are dropped fell in all eight
 * with the rider under whom it grows most, and in 28 of 40 cells at least.
 */
export const DROPPING = { topHz: 3, doublingS: 1 } as const;

/** Growths between which the swiftest is looked for, 1/s; the first is the one that drops. */
const LEVELS = Array.from({ length: 16 }, (_, level) => (Math.LN2 / DROPPING.doublingS) * 2 ** (level / 2));

/** A level deck: gains so stiff that no load tilts it. */
const LEVEL_DECK = profileSchema.parse({
  summary: 'A level deck.',
  gains: { proportionalAPerDeg: 500, rateAPerDegPerS: 1 },
});

/** A ride that candidates are held against. */
export interface PreparedRide {
  steady: SteadyRide;
  sensors: SensorsAt;
  tickS: number;
  currentA: number;
  /** By level, made when first asked for; the tables are for the shaping of the candidate before. */
  edges: Edge[];
  tables: { shaping: string; byLevel: LoopTable[] };
}

/** Prepares a level ride. */
export function prepareRide(where: Omit<RidePoint, 'profile' | 'gradePercent'>): PreparedRide {
  const steady = steadyRide({ ...where, profile: LEVEL_DECK, gradePercent: 0 });
  const ride: PreparedRide = {
    steady,
    sensors: sensorsOf(steady),
    tickS: steady.plan.trial.tickS,
    currentA: steady.moment.controller[REQUESTED]!,
    edges: [],
    tables: { shaping: '', byLevel: [] },
  };
  edgeAt(ride, 0);
  return ride;
}

function edgeAt(ride: PreparedRide, level: number): Edge {
  const region = { growthPerS: LEVELS[level]!, topRadPerS: 2 * Math.PI * DROPPING.topHz };
  return (ride.edges[level] ??= edgeOf(ride.sensors, ride.tickS, region));
}

function tableAt(ride: PreparedRide, law: ControlLaw, level: number): LoopTable {
  const { estimator, loadFollowRatio, loadCurrentShare, loadSetPointRadPerA } = law;
  const { gyroTrustRatio, rateFollowRatio } = estimator;
  const numbers = [gyroTrustRatio, rateFollowRatio, loadFollowRatio, loadCurrentShare, loadSetPointRadPerA];
  const shaping = numbers.join(' ');
  if (ride.tables.shaping !== shaping) ride.tables = { shaping, byLevel: [] };
  return (ride.tables.byLevel[level] ??= loopTable(edgeAt(ride, level), law));
}

/** The highest level that a slow motion grows faster than while it is small; -1 for none, or where there is no steady ride. */
export function levelOf(ride: PreparedRide, law: ControlLaw): number {
  if (!isSteady(ride, law)) return -1;
  const gains = smallGains(law, ride.currentA);
  let level = -1;
  while (level + 1 < LEVELS.length && countInside(tableAt(ride, law, level + 1), gains) > 0) level++;
  return level;
}

/** Whether a slow motion grows too fast for anyone, whatever its size makes of the gains. */
export function isLost(ride: PreparedRide, law: ControlLaw): boolean {
  const table = tableAt(ride, law, 0);
  return gainsOfSwings(law, smallGains(law, ride.currentA)).every((gains) => countInside(table, gains) > 0);
}

/** False where a ceiling cuts the ride or the lift is at work in it: of that the linear view of the law knows nothing. */
function isSteady({ steady, currentA }: PreparedRide, law: ControlLaw): boolean {
  const { moment, plan } = steady;
  const ceilings = moment.ceilings.slice();
  const controller = moment.controller.slice();
  findCeilings(law.ceilings, plan.trial.plant, { motion: moment.motion, pack: moment.pack, ceilings });
  findHeadroom(ceilings, controller);
  const isCut = currentA > ceilings[UPPER]! || currentA < ceilings[LOWER]!;
  return !isCut && (law.liftMostRad === 0 || controller[HEADROOM]! >= law.liftBelowShare);
}

/** The small motion of a ride at its level. */
export function motionAt(ride: PreparedRide, law: ControlLaw, level: number): Motion {
  const { sensors, tickS, currentA } = ride;
  const gains = smallGains(law, currentA);
  return motionFrom(edgeAt(ride, level), { sensors, tickS, shaping: law, gains });
}
