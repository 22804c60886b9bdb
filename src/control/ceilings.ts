/**
 * What the motor may be asked for at this tick, both ways, and which ceiling is nearest. Positive
 * current drives forward; driving or braking depends on which way the motor turns.
 *
 *   voltage   i = (+-mod V - K_t w) / R_m with the V that the pack has at that very current: there the pack gives
 *             mod i, so V = U - mod i R and i = (+-mod U - K_t w) / (R_m + mod^2 R). With the V of the moment
 *             instead the ceiling would drive itself to and fro from tick to tick.
 *   pack out  K_t w i + i^2 R_m <= V_out I_out         the roots of that parabola; I_out is never past U / 2 R, where
 *                                                      the pack gives its most
 *   pack in   K_t w i + i^2 R_m >= -V_in I_in          the root next to zero
 */
import { MOTOR_SPEED, OPEN_VOLTAGE } from '../model/battery.js';
import type { Plant } from '../model/plant.js';

/** Codes of ceilings, the same that a tape's column `bindingCeiling` holds. */
export const NO_CEILING = 0;
/** Drive current ceiling. */
export const DRIVE_CEILING = 1;
/** Brake current ceiling. */
export const BRAKE_CEILING = 2;
/** Voltage ceiling. */
export const VOLTAGE_CEILING = 3;
/** Ceiling on what the pack gives. */
export const PACK_OUT_CEILING = 4;
/** Ceiling on what the pack takes. */
export const PACK_IN_CEILING = 5;

/** Where the upper limit on the request [A] lives in the ceilings of a tick. */
export const UPPER = 0;
/** Lower limit, A. */
export const LOWER = 1;
/** Which ceiling sets the upper limit. */
export const UPPER_CAUSE = 2;
/** Which ceiling sets the lower limit. */
export const LOWER_CAUSE = 3;
/** Current ceiling that the upper limit is a share of, A: drive or brake, by the way the motor turns. */
export const UPPER_FULL = 4;
/** Current ceiling that the lower limit is a share of, A, positive. */
export const LOWER_FULL = 5;
/** Length of the ceilings of a tick. */
export const CEILINGS_SIZE = 6;

/** Constants of the ceilings: the board's, lowered by the profile. */
export interface CeilingLaw {
  driveCurrentA: number;
  brakeCurrentA: number;
}

/** Writes the limits on the request and their causes for a motor speed and a pack as they are now. */
export function findCeilings(
  law: CeilingLaw,
  plant: Plant,
  { motion, pack, ceilings }: { motion: Float64Array; pack: Float64Array; ceilings: Float64Array },
): void {
  const speed = motion[MOTOR_SPEED]!;
  const forward = speed >= 0;
  ceilings[UPPER_FULL] = forward ? law.driveCurrentA : law.brakeCurrentA;
  ceilings[LOWER_FULL] = forward ? law.brakeCurrentA : law.driveCurrentA;
  ceilings[UPPER] = ceilings[UPPER_FULL];
  ceilings[LOWER] = -ceilings[LOWER_FULL];
  ceilings[UPPER_CAUSE] = forward ? DRIVE_CEILING : BRAKE_CEILING;
  ceilings[LOWER_CAUSE] = forward ? BRAKE_CEILING : DRIVE_CEILING;

  packCeilings(plant, motion, pack, ceilings);
  voltageCeilings(plant, motion, pack, ceilings);
  // Past the no-load speed the drive stage can't hold the current up: voltage wins over the rest.
  if (ceilings[LOWER]! > ceilings[UPPER]!) {
    if (forward) ceilings[LOWER] = ceilings[UPPER]!;
    else ceilings[UPPER] = ceilings[LOWER]!;
    ceilings[UPPER_CAUSE] = VOLTAGE_CEILING;
    ceilings[LOWER_CAUSE] = VOLTAGE_CEILING;
  }
}

// The two below take arrays only: a number handed to a function that is not inlined would be boxed at every tick.

function voltageCeilings(
  plant: Plant,
  motion: Float64Array,
  pack: Float64Array,
  ceilings: Float64Array,
): void {
  const backV = plant.motor.torqueConstantNmPerA * motion[MOTOR_SPEED]!;
  const { modulationRatio, resistanceOhm: packOhm } = plant.pack;
  const motorOhm = plant.motor.resistanceOhm;
  const openV = pack[OPEN_VOLTAGE]!;
  // A weak pack gives most current at less than full modulation: past that more duty only pulls it down.
  const matched = Math.sqrt(backV * backV + (openV * openV * motorOhm) / packOhm);
  const upDuty = Math.min(modulationRatio, (matched + backV) / openV);
  const downDuty = Math.min(modulationRatio, (matched - backV) / openV);
  const upper = (upDuty * openV - backV) / (motorOhm + upDuty * upDuty * packOhm);
  const lower = (-downDuty * openV - backV) / (motorOhm + downDuty * downDuty * packOhm);
  if (upper < ceilings[UPPER]!) {
    ceilings[UPPER] = upper;
    ceilings[UPPER_CAUSE] = VOLTAGE_CEILING;
  }
  if (lower > ceilings[LOWER]!) {
    ceilings[LOWER] = lower;
    ceilings[LOWER_CAUSE] = VOLTAGE_CEILING;
  }
}

function packCeilings(plant: Plant, motion: Float64Array, pack: Float64Array, ceilings: Float64Array): void {
  const backV = plant.motor.torqueConstantNmPerA * motion[MOTOR_SPEED]!;
  const openV = pack[OPEN_VOLTAGE]!;
  const { resistanceOhm: packOhm, dischargeCurrentA, chargeCurrentA } = plant.pack;
  const motorOhm = plant.motor.resistanceOhm;
  const mostOutA = Math.min(dischargeCurrentA, openV / (2 * packOhm));
  const mostOutW = (openV - mostOutA * packOhm) * mostOutA;
  const mostInW = (openV + chargeCurrentA * packOhm) * chargeCurrentA;
  const outRoot = Math.sqrt(backV * backV + 4 * motorOhm * mostOutW);
  const upper = (outRoot - backV) / (2 * motorOhm);
  const lower = (-outRoot - backV) / (2 * motorOhm);
  if (upper < ceilings[UPPER]!) {
    ceilings[UPPER] = upper;
    ceilings[UPPER_CAUSE] = PACK_OUT_CEILING;
  }
  if (lower > ceilings[LOWER]!) {
    ceilings[LOWER] = lower;
    ceilings[LOWER_CAUSE] = PACK_OUT_CEILING;
  }
  const inSquare = backV * backV - 4 * motorOhm * mostInW;
  if (inSquare <= 0) return;
  const inRoot = Math.sqrt(inSquare);
  if (backV > 0 && (inRoot - backV) / (2 * motorOhm) > ceilings[LOWER]!) {
    ceilings[LOWER] = (inRoot - backV) / (2 * motorOhm);
    ceilings[LOWER_CAUSE] = PACK_IN_CEILING;
  }
  if (backV < 0 && (-inRoot - backV) / (2 * motorOhm) < ceilings[UPPER]!) {
    ceilings[UPPER] = (-inRoot - backV) / (2 * motorOhm);
    ceilings[UPPER_CAUSE] = PACK_IN_CEILING;
  }
}
