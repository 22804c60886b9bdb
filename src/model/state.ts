/**
 * Where each number lives in the arrays that the integrators work on. One flat array a role, so
 * that a step allocates nothing.
 *
 * Signs: X forward, Z up; pitch > 0 nose down, lean > 0 forward, wheel angle > 0 rolling forward.
 */

/** Axle position along the level, m. */
export const X = 0;
/** Axle height, m. */
export const Z = 1;
/** Wheel angle, rad. */
export const WHEEL = 2;
/** Deck pitch, rad, nose down positive. */
export const PITCH = 3;
/** Rider lean from upright, rad, forward positive. */
export const LEAN = 4;
/** Ankle line to rider's centre of mass, m. */
export const LEG = 5;
/** Rates follow their coordinates in the same order: the rate of X is at X + RATE. */
export const RATE = 6;
/** Tread shear, m: positive when the tread drives the board forward. */
export const TREAD = 12;
/** Length of a state. */
export const STATE_SIZE = 13;

/** Motor torque on the wheel, Nm; its reaction turns the deck the other way. */
export const MOTOR_TORQUE = 0;
/** Rider's active torque on his own body, Nm; its reaction turns the deck. */
export const RIDER_TORQUE = 1;
/** Horizontal push at the rider's centre of mass, N. */
export const SHOVE = 2;
/** Grip under the wheel, ratio. */
export const GRIP = 3;
/** Rolling resistance over load under the wheel, ratio. */
export const ROLLING = 4;
/** Length of an input vector. */
export const INPUT_SIZE = 5;

/** Behind the derivatives `derive` leaves what a tape wants: wheel load, N. */
export const WHEEL_LOAD = 13;
/** Force of the road on the tread, forward, N. */
export const TREAD_FORCE = 14;
/** Force in the legs, N. */
export const LEG_FORCE = 15;
/** Whole torque between rider and deck after its limit, on the rider, Nm. */
export const FOOT_TORQUE = 16;
/** Largest foot torque that keeps both feet loaded, Nm. */
export const FOOT_TORQUE_LIMIT = 17;
/** Vertical acceleration of the ankle line, m/s2. */
export const FEET_ACCELERATION = 18;
/** Road height at the contact, m. */
export const ROAD_HEIGHT = 19;
/** Road slope at the contact, ratio. */
export const ROAD_SLOPE = 20;
/** Length of what `derive` fills: derivatives of the state, then the extras above. */
export const DERIVE_SIZE = 21;
