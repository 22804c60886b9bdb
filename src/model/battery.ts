/**
 * The pack: open-circuit voltage from charge, sag over its resistance, and the current that the
 * motor's electrical power draws from it.
 *
 *   P = K_t i w + i^2 R_m                   power at the motor, W
 *   V = U - I R,  V I = P                   so  I = (U - sqrt(U^2 - 4 R P)) / 2R
 */
import { CHARGE_INTERVALS } from './open-circuit.js';
import type { Plant } from './plant.js';

/** Where the numbers of the pack live: charge (0 to 1). */
export const CHARGE = 0;
/** Pack current, A, out of the pack positive. */
export const PACK_CURRENT = 1;
/** Voltage at the terminals, V. */
export const PACK_VOLTAGE = 2;
/** Voltage with nothing drawn, V. */
export const OPEN_VOLTAGE = 3;
/** Length of the pack's numbers. */
export const PACK_SIZE = 4;

/** Brings voltages and current of `pack` up to date for a motor current [A] at a motor speed [rad/s], in `motion`. */
export function updatePack(plant: Plant, motion: Float64Array, pack: Float64Array): void {
  const { cellOpenCircuitV, seriesCells, resistanceOhm } = plant.pack;
  const place = Math.min(Math.max(pack[CHARGE]!, 0), 1) * CHARGE_INTERVALS;
  const left = Math.min(Math.floor(place), CHARGE_INTERVALS - 1);
  const low = cellOpenCircuitV[left]!;
  const open = seriesCells * (low + (place - left) * (cellOpenCircuitV[left + 1]! - low));
  const current = motion[MOTOR_CURRENT]!;
  const power =
    current * (plant.motor.torqueConstantNmPerA * motion[MOTOR_SPEED]! + current * plant.motor.resistanceOhm);
  const root = Math.sqrt(Math.max(0, open * open - 4 * resistanceOhm * power));
  const packCurrent = (open - root) / (2 * resistanceOhm);
  pack[OPEN_VOLTAGE] = open;
  pack[PACK_CURRENT] = packCurrent;
  pack[PACK_VOLTAGE] = open - packCurrent * resistanceOhm;
}

/** Takes what flows during a tick [s] out of the charge; the tick comes in its owner, for a bare number would be boxed. */
export function drawCharge(plant: Plant, { tickS }: { tickS: number }, pack: Float64Array): void {
  pack[CHARGE] = Math.min(
    1,
    Math.max(0, pack[CHARGE]! - (pack[PACK_CURRENT]! * tickS) / plant.pack.capacityC),
  );
}

/** Where motor current [A] and motor speed, wheel against deck [rad/s], live in a motion. */
export const MOTOR_CURRENT = 0;
/** Motor speed, wheel against deck, rad/s. */
export const MOTOR_SPEED = 1;
/** Length of a motion. */
export const MOTION_SIZE = 2;
