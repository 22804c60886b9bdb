/**
 * Body data from stature, for riders who have not been on a swing.
 *
 * The rider stands sideways, so rolling forward sways his body from side to side.
 * Centre of mass 0.56 H above the ground and ankle 0.039 H: D. A. Winter, Biomechanics and Motor
 * Control of Human Movement; P. McGinnis, Biomechanics of Sport and Exercise (2005).
 * Inertia 0.0572 m H^2 (side to side): Y. Breniere, J. Motor Behavior 28 (1996) 291.
 */
import type { RiderFile } from '../quantity/rider-file.js';

/** Centre of mass above the ankles as a share of stature. */
export const CENTRE_ABOVE_ANKLE_RATIO = 0.56 - 0.039;

/** Moment of inertia about the centre of mass, side to side, over m H^2. */
export const SIDEWAYS_INERTIA_RATIO = 0.0572;

/** Height of the centre of mass above the ankles [m] and inertia about it [kg m2]. */
export function bodyOf(body: RiderFile['body']): { centreAboveAnkleM: number; inertiaKgM2: number } {
  return {
    centreAboveAnkleM: body.centreAboveAnkleM ?? CENTRE_ABOVE_ANKLE_RATIO * body.statureM,
    inertiaKgM2: body.inertiaKgM2 ?? SIDEWAYS_INERTIA_RATIO * body.massKg * body.statureM ** 2,
  };
}
