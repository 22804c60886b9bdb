/**
 * Which stages lead from a finished board to its first ride, and what is ridden in each? Short rides, each asking a little more than
 * the one before; the speeds and sizes are ours (common practice, no source).
 */
import type { CellResult } from '../measure/profile-result.js';
import type { BoardFile } from '../quantity/board-file.js';
import type { KeptFile } from '../quantity/kept-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { scenarioSchema, type ScenarioFile } from '../quantity/scenario-file.js';
import { USUAL_CHARGE_PERCENT } from './edge-scenarios.js';
import type { FeelChange } from './feel-changes.js';

/** A stage that is ridden: up to which speed, and the rides that stand for it in the simulation. */
export interface RiddenStage {
  name: string;
  upToKmPerH: number;
  rides: readonly { name: string; value: ScenarioFile }[];
}

/** Parts of the full ceilings that are tried for a stage, upwards. */
export const CEILING_SHARES = [0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.65, 0.8, 1] as const;

/** Headroom that has to be left in every ride of a stage, as a part of its ceilings. */
export const STAGE_HEADROOM_SHARE = 0.25;

/** Part of the full ceilings for a wheel that hangs free, and for a board that is held by hand. */
export const FREE_WHEEL_SHARE = 0.1;

/** The stages that are ridden, before the full ceilings. */
export function riddenStages(): RiddenStage[] {
  return [
    { name: 'First metres', upToKmPerH: 5, rides: [ride('setting off and slowing down', TO_WALKING_PACE)] },
    {
      name: 'Up to a jog',
      upToKmPerH: 10,
      rides: [ride('setting off and slowing down', TO_A_JOG), ride('weaving', WEAVING)],
    },
    {
      name: 'Small things on the way',
      upToKmPerH: 12,
      rides: [
        ride('a bump of 15 mm', OVER_A_BUMP),
        ride('4 % uphill', onto(SLOPE_PERCENT)),
        ride('4 % downhill', onto(-SLOPE_PERCENT)),
        ride('slowing down firmly', FIRM_SLOWING),
      ],
    },
  ];
}

/** What the schema does not fill in by itself. */
type Given = Omit<Parameters<typeof scenarioSchema.parse>[0] & object, 'summary'>;

function ride(name: string, given: Given): RiddenStage['rides'][number] {
  const value = scenarioSchema.parse({ summary: name, chargePercent: USUAL_CHARGE_PERCENT, ...given });
  return { name, value };
}

const AS_A_RIDE = { atS: 0.5, as: 'ride' };

/** A ride ends by stepping off, not by standing still on one wheel, km/h. */
const STEPPED_OFF_KM_PER_H = 1;

const TO_WALKING_PACE = {
  durationS: 11.5,
  road: [{ lengthM: 30 }],
  speeds: [
    { atS: 0, speedKmPerH: 0 },
    { atS: 1, speedKmPerH: 0 },
    { atS: 5, speedKmPerH: 5 },
    { atS: 8, speedKmPerH: 5 },
    { atS: 11, speedKmPerH: STEPPED_OFF_KM_PER_H },
  ],
  measure: AS_A_RIDE,
};

const TO_A_JOG = {
  durationS: 15.5,
  road: [{ lengthM: 60 }],
  speeds: [
    { atS: 0, speedKmPerH: 0 },
    { atS: 1, speedKmPerH: 0 },
    { atS: 7, speedKmPerH: 10 },
    { atS: 10, speedKmPerH: 10 },
    { atS: 15, speedKmPerH: STEPPED_OFF_KM_PER_H },
  ],
  measure: AS_A_RIDE,
};

const WEAVING = {
  durationS: 8,
  start: { speedKmPerH: 8 },
  road: [{ lengthM: 40 }],
  speeds: [{ atS: 0, speedKmPerH: 8 }],
  shifts: [{ atS: 1, forS: 6, noseDownNm: 8, frequencyHz: 0.5 }],
  measure: AS_A_RIDE,
};

const OVER_A_BUMP = {
  durationS: 6,
  start: { speedKmPerH: 12 },
  road: [{ lengthM: 5 }, { name: 'it', lengthM: 0.4, bumpHeightM: 0.015 }, { lengthM: 40 }],
  speeds: [{ atS: 0, speedKmPerH: 12 }],
  measure: { from: 'it', as: 'disturbance', bandDeg: 1 },
};

const SLOPE_PERCENT = 4;

const onto = (gradePercent: number) => ({
  durationS: 10,
  start: { speedKmPerH: 12 },
  road: [{ lengthM: 5 }, { name: 'it', lengthM: 60, gradePercent, easeM: 2 }],
  speeds: [{ atS: 0, speedKmPerH: 12 }],
  measure: { from: 'it', as: 'disturbance', bandDeg: 1 },
});

const FIRM_SLOWING = {
  durationS: 5,
  start: { speedKmPerH: 12 },
  road: [{ lengthM: 40 }],
  speeds: [
    { atS: 0, speedKmPerH: 12 },
    { atS: 1, speedKmPerH: 12 },
    { atS: 1.1, speedKmPerH: 3 },
  ],
  measure: { atS: 1, as: 'ride' },
};

/** Ceilings on the motor current, A. */
export interface Ceilings {
  driveA: number;
  brakeA: number;
}

/** The ceilings of a profile on a board: its own where they are lower. */
export function fullCeilings({ shaping }: ProfileFile, { motor }: BoardFile): Ceilings {
  return {
    driveA: Math.min(shaping.driveCeilingA ?? Infinity, motor.driveCurrentA),
    brakeA: Math.min(shaping.brakeCeilingA ?? Infinity, motor.brakeCurrentA),
  };
}

/** A part of the ceilings, to whole amperes upwards: one at least, and never more than the full ones. */
export function partOf({ driveA, brakeA }: Ceilings, share: number): Ceilings {
  const part = (fullA: number) => Math.min(fullA, Math.max(1, Math.ceil(share * fullA)));
  return { driveA: part(driveA), brakeA: part(brakeA) };
}

/** The profile under ceilings. */
export function underCeilings(profile: ProfileFile, { driveA, brakeA }: Ceilings): ProfileFile {
  return {
    ...profile,
    shaping: { ...profile.shaping, driveCeilingA: driveA, brakeCeilingA: brakeA },
  };
}

/** A ride of a stage under a rider, as the simulation has it. */
export interface StageRide {
  ride: string;
  rider: string;
  result: CellResult;
}

/**
 * A stage with its ceilings. `holds` is false where even the full ones do not do; `below` is what happens with the next lower ones
 * that were tried, null where these are the lowest.
 */
export interface StagePlan {
  stage: RiddenStage;
  ceilings: Ceilings;
  holds: boolean;
  rides: StageRide[];
  below: { ceilings: Ceilings; worst: StageRide } | null;
}

/** The whole plan. */
export interface FirstRidePlan {
  name: string;
  kept: KeptFile;
  full: Ceilings;
  /** For a wheel that hangs free. */
  free: Ceilings;
  stages: StagePlan[];
  changes: FeelChange[];
}
