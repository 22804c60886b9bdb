/**
 * How does the current follow its request? With a first-order lag, solved exactly between ticks. The motor is an
 * equivalent direct-current machine: torque = K_t i, back voltage = K_t w.
 */

/** Share of the gap to the request that is left after `timeS`; with no lag, none. */
export function lagDecay(timeS: number, lagS: number): number {
  return lagS > 0 ? Math.exp(-timeS / lagS) : 0;
}
