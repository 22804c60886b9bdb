/**
 * What does the linear view tell a sweep? Before any run, which candidates cannot hold the board up; at the end, how far from
 * being lost each finalist is.
 *
 * A candidate is dropped where the closed loop of some rider, his delay included, has a motion that is slow enough to carry him
 * along and grows so quickly that a fall is certain, small or large: with its gains as they are, and with all that progressive
 * gain, the integral's limit and the ceilings make of them. Growth that these can tame to a lasting swing, and what shakes the
 * deck alone, is left to the runs; so is standing, where rolling resistance tames it. The plant is that of a level deck: the few
 * degrees at which a candidate carries a load hardly change a growth.
 */
import { controlLaw, type ControlLaw } from '../control/law.js';
import { doublingS, hasMargins, loopStateOf } from '../linear/growth.js';
import type { Margin, Margins } from '../linear/margins.js';
import { reportRide } from '../linear/ride-report.js';
import type { BoardFile } from '../quantity/board-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import { isLost, levelOf, motionAt, prepareRide, type PreparedRide } from './linear-ride.js';

/** Rides that profiles are held against: every rider at every speed, on a level road. */
export interface LevelRides {
  board: BoardFile;
  riders: readonly { name: string; value: RiderFile }[];
  chargePercent: number;
  speedsKmPerH: readonly number[];
}

/** The swiftest of the growing motions: under whom, how fast ridden, how it goes; 0 Hz tips over without swinging. */
export interface Worst {
  rider: string;
  speedKmPerH: number;
  doublingS: number;
  frequencyHz: number;
}

/** What is said of a candidate; `worst` is null for one that is kept. */
export interface Screened {
  keeps: boolean;
  worst: Worst | null;
}

/** A screen through which candidates pass one after another. */
export interface Screen {
  screen: (profile: ProfileFile) => Screened;
}

interface NamedRide extends PreparedRide {
  rider: string;
  speedKmPerH: number;
}

/** Prepares all that does not hang on the candidate; of the rides those that move are looked at. */
export function openScreen({ board, riders, chargePercent, speedsKmPerH }: LevelRides): Screen {
  const moving = speedsKmPerH.filter((speed) => speed !== 0);
  const rides = riders.flatMap(({ name, value }) =>
    moving.map((speedKmPerH): NamedRide => {
      const prepared = prepareRide({ board, rider: value, speedKmPerH, chargePercent });
      return { ...prepared, rider: name, speedKmPerH };
    }),
  );
  return {
    screen: (profile) => {
      const worst = worstOf(rides, controlLaw(profile, board));
      return { keeps: worst === null, worst };
    },
  };
}

/** The swiftest motion by which a ride is lost; null where none is. */
function worstOf(rides: readonly NamedRide[], law: ControlLaw): Worst | null {
  const levels = rides.map((ride) => levelOf(ride, law));
  for (let level = Math.max(...levels); level >= 0; level--) {
    const lost = rides.filter((ride, index) => levels[index] === level && isLost(ride, law));
    if (lost.length === 0) continue;
    const motions = lost.map((ride) => ({ ...motionAt(ride, law, level), ride }));
    const { ride, ...motion } = motions.reduce((a, b) => (b.growthPerS > a.growthPerS ? b : a));
    return {
      rider: ride.rider,
      speedKmPerH: ride.speedKmPerH,
      doublingS: doublingS(motion),
      frequencyHz: motion.swingRadPerS / (2 * Math.PI),
    };
  }
  return null;
}

/** A margin at the ride where it is least; `radPerS` is null where there is none at any frequency. */
export interface WorstMargin extends Margin {
  rider: string;
  speedKmPerH: number;
}

/** Margins that a finalist is told by. */
const TOLD = ['disk', 'gainUp', 'gainDown', 'phaseRad', 'delayS'] as const;

/** The margins of a profile, each at its own worst ride; a loop that does not hold has none: 0, and 1 for gains. */
export type FinalistMargins = Record<(typeof TOLD)[number], WorstMargin>;

const NONE: Pick<Margins, (typeof TOLD)[number]> = {
  disk: { value: 0, radPerS: null },
  gainUp: { value: 1, radPerS: null },
  gainDown: { value: 1, radPerS: null },
  phaseRad: { value: 0, radPerS: null },
  delayS: { value: 0, radPerS: null },
};

/** The margins of a finalist; null where a ceiling cuts every ride. Slow: tenths of a second a ride. */
export function marginsOfFinalist(
  profile: ProfileFile,
  { board, riders, chargePercent, speedsKmPerH }: LevelRides,
): FinalistMargins | null {
  const rides = riders.flatMap(({ name, value }) =>
    speedsKmPerH.flatMap((speedKmPerH) => {
      const where = { speedKmPerH, gradePercent: 0, chargePercent };
      const report = reportRide({ board, rider: value, profile, ...where }, { tries: false });
      if (report === null) return [];
      const holds = hasMargins(loopStateOf(report.modes, speedKmPerH === 0));
      return [{ rider: name, speedKmPerH, margins: holds ? report.margins : NONE }];
    }),
  );
  if (rides.length === 0) return null;
  const worst = (told: (typeof TOLD)[number]): WorstMargin => {
    const each = rides.map(({ margins, ...ride }) => ({ ...ride, ...margins[told] }));
    // The gain may shrink to a share: nearest to being lost where that is greatest.
    return each.reduce((a, b) => ((told === 'gainDown' ? b.value > a.value : b.value < a.value) ? b : a));
  };
  return Object.fromEntries(TOLD.map((told) => [told, worst(told)])) as FinalistMargins;
}
