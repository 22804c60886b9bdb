/**
 * The motor as an equivalent direct-current machine: torque = K_t i, back voltage = K_t w, and a
 * current that follows its request with a first-order lag, solved exactly between ticks.
 */
import { RAD_PER_S_PER_RPM } from '../quantity/units.js';

/** Torque constant [Nm/A] of a no-load speed constant [rpm/V]: K_t = 60 / (2 pi Kv). */
export function torqueConstantFromSpeedConstant(speedConstantRpmPerV: number): number {
  return 1 / (speedConstantRpmPerV * RAD_PER_S_PER_RPM);
}

/** Share of the gap to the request that is left after `timeS`; with no lag, none. */
export function lagDecay(timeS: number, lagS: number): number {
  return lagS > 0 ? Math.exp(-timeS / lagS) : 0;
}
