/**
 * Factors between what people read and write (degrees, km/h, percent, milliohm) and SI.
 * Inside the program everything is SI and radians; these are used where files are read in and
 * where numbers are shown.
 */

/** Radians in one degree. */
export const RAD_PER_DEG = Math.PI / 180;

/** Degrees in one radian. */
export const DEG_PER_RAD = 180 / Math.PI;

/** Metres per second in one kilometre per hour. */
export const M_PER_S_PER_KM_PER_H = 1 / 3.6;

/** Kilometres per hour in one metre per second. */
export const KM_PER_H_PER_M_PER_S = 3.6;

/** Radians per second in one revolution per minute. */
export const RAD_PER_S_PER_RPM = (2 * Math.PI) / 60;

/** Coulombs (ampere seconds) in one ampere hour. */
export const COULOMB_PER_AH = 3600;

/** Standard acceleration of gravity, m/s2 (ISO 80000-3; CGPM 1901). */
export const GRAVITY_M_PER_S2 = 9.80665;
