/**
 * How is a quantity spoken? Angles by the nose, never by a sign; the number of digits of every
 * quantity is stated once, here. Below zero stands the plain hyphen ("-3.0 A"): it is ASCII, one
 * column wide everywhere, and a shell, a spreadsheet and a search read it as the number it is.
 */
import { DEG_PER_RAD, KM_PER_H_PER_M_PER_S } from '../quantity/units.js';

/** Digits after the point, by quantity and the unit it is shown in. */
export const DECIMALS = {
  angleDeg: 1,
  bandDeg: 1,
  angularRateDegPerS: 1,
  speed: 1,
  currentA: 1,
  voltageV: 1,
  percent: 1,
  torqueNm: 1,
  timeS: 2,
  timeMs: 0,
  meanTimeS: 1,
  commandAPerS: 0,
  distanceM: 1,
  heightM: 2,
  forceN: 0,
  accelerationMPerS2: 2,
  energyWh: 1,
  frequencyHz: 1,
  ratio: 2,
  score: 1,
} as const;

/** Quantities with a stated number of digits. */
export type ShownQuantity = keyof typeof DECIMALS;

/** Units in which a speed can be shown. */
export const SPEED_UNITS = ['km/h', 'mph'] as const;

/** A unit in which a speed can be shown. */
export type SpeedUnit = (typeof SPEED_UNITS)[number];

/** Stands where a quantity has no finite value. */
export const NO_VALUE = 'no value';

/** Stands where a signal did not come to rest inside its window. */
export const NOT_SETTLED = 'not settled';

/** Miles per hour in one metre per second (international mile, 1609.344 m exactly). */
const MPH_PER_M_PER_S = 3600 / 1609.344;

/** A number with the digits of its quantity and no unit, for a column whose header has the unit. */
export function numberText(value: number, quantity: ShownQuantity): string {
  if (!Number.isFinite(value)) return NO_VALUE;
  const text = value.toFixed(DECIMALS[quantity]);
  return /^-[0.]+$/.test(text) ? text.slice(1) : text;
}

/** A number with unit: `12.3 A`. */
function withUnit(value: number, quantity: ShownQuantity, unit: string): string {
  return Number.isFinite(value) ? `${numberText(value, quantity)}${unit}` : NO_VALUE;
}

/** Words for an angle: one for each side and one for what rounds to nothing. */
function spoken(angleRad: number, words: { above: string; below: string; zero: string }): string {
  if (!Number.isFinite(angleRad)) return NO_VALUE;
  const size = numberText(Math.abs(angleRad) * DEG_PER_RAD, 'angleDeg');
  if (Number(size) === 0) return words.zero;
  return `${angleRad > 0 ? words.above : words.below} ${size}°`;
}

/** A pitch [rad, nose down positive] as `nose down 3.0°`, `nose up 2.1°` or `level`. */
export function pitchText(pitchRad: number): string {
  return spoken(pitchRad, { above: 'nose down', below: 'nose up', zero: 'level' });
}

/** A rider's lean [rad, forward positive] as `forward 3.0°`, `back 2.1°` or `upright`. */
export function leanText(leanRad: number): string {
  return spoken(leanRad, { above: 'forward', below: 'back', zero: 'upright' });
}

/** A pitch rate [rad/s, nose down positive] as `12.0°/s nose down`, `3.0°/s nose up` or `steady`. */
export function pitchRateText(rateRadPerS: number): string {
  if (!Number.isFinite(rateRadPerS)) return NO_VALUE;
  const size = numberText(Math.abs(rateRadPerS) * DEG_PER_RAD, 'angularRateDegPerS');
  if (Number(size) === 0) return 'steady';
  return `${size}°/s nose ${rateRadPerS > 0 ? 'down' : 'up'}`;
}

/** A slope [ratio, climbing forward positive] as `4.0 % up`, `4.0 % down` or `level`. */
export function slopeText(slopeRatio: number): string {
  if (!Number.isFinite(slopeRatio)) return NO_VALUE;
  const size = numberText(Math.abs(slopeRatio) * 100, 'percent');
  return Number(size) === 0 ? 'level' : `${size} % ${slopeRatio > 0 ? 'up' : 'down'}`;
}

/** The size of an angle or of a band [rad] without a side: `0.5°`. */
export function angleText(angleRad: number): string {
  return withUnit(Math.abs(angleRad) * DEG_PER_RAD, 'bandDeg', '°');
}

/** A speed [m/s] as a number in the unit it is shown in. */
export function speedIn(speedMPerS: number, unit: SpeedUnit): number {
  return speedMPerS * (unit === 'mph' ? MPH_PER_M_PER_S : KM_PER_H_PER_M_PER_S);
}

/** A speed [m/s] as `18.0 km/h`, or in mph. */
export function speedText(speedMPerS: number, unit: SpeedUnit = 'km/h'): string {
  return withUnit(speedIn(speedMPerS, unit), 'speed', ` ${unit}`);
}

/** A current [A] as `41.2 A`. */
export function currentText(currentA: number): string {
  return withUnit(currentA, 'currentA', ' A');
}

/** A voltage [V] as `55.1 V`. */
export function voltageText(voltageV: number): string {
  return withUnit(voltageV, 'voltageV', ' V');
}

/** A torque [Nm] as `25.0 Nm`. */
export function torqueText(torqueNm: number): string {
  return withUnit(torqueNm, 'torqueNm', ' Nm');
}

/** A height [m] as `0.05 m`. */
export function heightText(heightM: number): string {
  return withUnit(heightM, 'heightM', ' m');
}

/** A distance [m] as `12.3 m`. */
export function distanceText(distanceM: number): string {
  return withUnit(distanceM, 'distanceM', ' m');
}

/** A force [N] as `812 N`. */
export function forceText(forceN: number): string {
  return withUnit(forceN, 'forceN', ' N');
}

/** A share [0 to 1] as `12.5 %`; a share above zero never reads as zero. */
export function shareText(share: number): string {
  const percent = 100 * share;
  if (percent > 0 && Number(numberText(percent, 'percent')) === 0) return 'under 0.1 %';
  return withUnit(percent, 'percent', ' %');
}

/** A time [s] as `1.90 s`. */
export function timeText(timeS: number): string {
  return withUnit(timeS, 'timeS', ' s');
}

/** A short stretch of time [s] as `35 ms`. */
export function stretchText(timeS: number): string {
  return withUnit(timeS * 1000, 'timeMs', ' ms');
}

/** A settling time [s] as `1.90 s`, or `not settled` for null. */
export function settlingText(settlingTimeS: number | null): string {
  return settlingTimeS === null ? NOT_SETTLED : timeText(settlingTimeS);
}

/** A number for an axis: at most one digit after the point, none where it is whole. */
export function tickText(value: number): string {
  return String(Number(value.toFixed(1)) + 0);
}

/** A pitch [deg, nose down positive] for an axis: `nose down 4°`, `nose up 4°`, `level`. */
export function pitchTickText(pitchDeg: number): string {
  if (pitchDeg === 0) return 'level';
  return `${pitchDeg > 0 ? 'nose down' : 'nose up'} ${tickText(Math.abs(pitchDeg))}°`;
}

/** A lean [deg, forward positive] for an axis: `forward 4°`, `back 4°`, `upright`. */
export function leanTickText(leanDeg: number): string {
  if (leanDeg === 0) return 'upright';
  return `${leanDeg > 0 ? 'forward' : 'back'} ${tickText(Math.abs(leanDeg))}°`;
}

/** A height of road [m] for an axis: `road 0.05 m`. */
export function heightTickText(heightM: number): string {
  return `road ${Number(heightM.toFixed(3)) + 0} m`;
}
