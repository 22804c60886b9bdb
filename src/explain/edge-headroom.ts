/**
 * At which speed should the headroom lift begin? Where what is left below the ceiling in a steady ride is no more than what the
 * stated push takes.
 */
import { UPPER, UPPER_FULL } from '../control/ceilings.js';
import { REQUESTED } from '../control/law.js';
import { steadyRide, type RidePoint } from '../linear/steady-ride.js';
import { run } from '../simulate/run.js';
import { prepareTrial } from '../simulate/trial.js';
import type { Makings } from './makings.js';
import { searched } from './edge.js';
import { pushed, SPEED_LADDER_KM_PER_H, STATED_PUSH_NS, USUAL_CHARGE_PERCENT } from './edge-scenarios.js';

/**
 * Where the lift should begin with the pack at a charge. `neededShare` is what the stated push takes, of the drive ceiling: the
 * most that the law asks for after it at a low speed, less the current of that steady ride; null where the rig falls even then.
 * `speedKmPerH` is the highest steady speed on the level, to 1 km/h, up to which more than that is left between the request and
 * the nearest upper ceiling: there, at the latest, the lift begins. Null where not even standing leaves so much, or where it is
 * not known what is needed; the highest speed tried where all of them leave it.
 */
export interface LiftStart {
  chargePercent: number;
  neededShare: number | null;
  speedKmPerH: number | null;
}

/** The speed at which it is measured what a push takes, km/h: low enough that voltage does not cut it. */
export const LOW_SPEED_KM_PER_H = 6;

/** Where the lift should begin at each charge [%], for what the stated push takes [A], null where that is not known. */
export function liftStarts(
  { board, rider, profile }: Makings,
  neededA: number | null,
  chargePercents: readonly number[],
): LiftStart[] {
  return chargePercents.map((chargePercent) => {
    if (neededA === null) return { chargePercent, neededShare: null, speedKmPerH: null };
    const point = { board, rider, profile, gradePercent: 0, chargePercent };
    const isShort = (speedKmPerH: number) => leftA({ ...point, speedKmPerH }).leftA <= neededA;
    const { survived } = searched(SPEED_LADDER_KM_PER_H, (speedKmPerH) =>
      isShort(speedKmPerH) ? { kind: 'short', atS: 0 } : null,
    );
    const { fullA } = leftA({ ...point, speedKmPerH: LOW_SPEED_KM_PER_H });
    return { chargePercent, neededShare: neededA / fullA, speedKmPerH: survived };
  });
}

/** What is left above the request of a steady ride, and the full ceiling, A. */
function leftA(point: RidePoint): { leftA: number; fullA: number; requestedA: number } {
  const { ceilings, controller } = steadyRide(point).moment;
  const requestedA = controller[REQUESTED]!;
  return { leftA: ceilings[UPPER]! - requestedA, fullA: ceilings[UPPER_FULL]!, requestedA };
}

/** The most that is asked for after the stated push at the low speed, above the steady current, A; null after a fall. */
export function pushTakesA(makings: Makings): number | null {
  const ride = { speedKmPerH: LOW_SPEED_KM_PER_H, chargePercent: USUAL_CHARGE_PERCENT };
  const { profile, ...circumstances } = pushed(makings, { ...ride, pushNS: STATED_PUSH_NS });
  const { outcome, tape } = run(prepareTrial(circumstances), profile, { solver: 'fixed' });
  if (outcome.kind !== 'upright') return null;
  const { board, rider } = makings;
  const steady = leftA({ board, rider, profile, gradePercent: 0, ...ride });
  const asked = tape.columns.askedCurrentA.subarray(0, tape.length);
  return asked.reduce((most, currentA) => Math.max(most, currentA), steady.requestedA) - steady.requestedA;
}
