/**
 * What torque does a motor give per ampere, when its maker says how fast it turns per volt? An ideal machine loses
 * nothing: V i = torque x speed, so in SI one constant is the inverse of the other.
 */
import { RAD_PER_S_PER_RPM } from './units.js';

/** Torque per ampere of the equivalent direct-current motor [Nm/A] from its no-load speed per volt [rpm/V]: 60 / (2 pi Kv). */
export function torqueConstantOf(speedConstantRpmPerV: number): number {
  return 1 / (speedConstantRpmPerV * RAD_PER_S_PER_RPM);
}
