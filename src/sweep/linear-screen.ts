/**
 * Which candidates cannot hold the board up? The linear view says so before any run.
 *
 * A candidate is dropped where the closed loop of some rider, his delay included, has a motion that is slow enough to carry him
 * along and grows so quickly that a fall is certain, small or large: with its gains as they are, and with all that progressive
 * gain, the integral's limit and the ceilings make of them. Growth that these can tame to a lasting swing, and what shakes the
 * deck alone, is left to the runs; so is standing, where rolling resistance tames it. The plant is that of a level deck: the few
 * degrees at which a candidate carries a load hardly change a growth.
 */
import { controlLaw, type ControlLaw } from '../control/law.js';
import { doublingS } from '../linear/growth.js';
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
