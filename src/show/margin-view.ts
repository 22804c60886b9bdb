/**
 * What is there to show of a profile's margins? Its name, its rig, and a report of the linear view for each steady ride;
 * how rides, motions and margins are called.
 */
import { hasMargins, loopStateOf, type LoopState } from '../linear/growth.js';
import { MOVERS, type Mode, type Mover } from '../linear/modes.js';
import type { RideReport } from '../linear/ride-report.js';
import { DEG_PER_RAD, KM_PER_H_PER_M_PER_S } from '../quantity/units.js';
import { speedIn, tickText, type SpeedUnit } from './quantities.js';

/** A steady ride with its report; null where a ceiling cuts it. */
export interface MarginPoint {
  speedKmPerH: number;
  gradePercent: number;
  report: RideReport | null;
}

/** The margins of one profile on one rig, steady ride by steady ride. */
export interface MarginView {
  board: string;
  rider: string;
  profile: string;
  chargePercent: number;
  loopRateHz: number;
  points: readonly MarginPoint[];
}

/** A steady ride that has a report. */
export interface SeenPoint extends MarginPoint {
  report: RideReport;
}

/** The rides that have a report. */
export function seenPoints(points: readonly MarginPoint[]): SeenPoint[] {
  return points.filter((point): point is SeenPoint => point.report !== null);
}

/** The rides that have margins: those in which the loop holds. */
export function heldPoints(points: readonly MarginPoint[]): SeenPoint[] {
  return seenPoints(points).filter((point) => hasMargins(stateOf(point)));
}

/** What becomes of the pitch loop in a ride. */
export function stateOf({ report, speedKmPerH }: SeenPoint): LoopState {
  return loopStateOf(report.modes, speedKmPerH === 0);
}

/** The pace of a ride in words: `standing`, `10 km/h`. */
export function paceText({ speedKmPerH }: Pick<MarginPoint, 'speedKmPerH'>, unit: SpeedUnit): string {
  if (speedKmPerH === 0) return 'standing';
  return `${tickText(speedIn(speedKmPerH / KM_PER_H_PER_M_PER_S, unit))} ${unit}`;
}

/** The grade of a ride in words: `level`, `8 % up`. */
export function gradeText({ gradePercent }: Pick<MarginPoint, 'gradePercent'>): string {
  if (gradePercent === 0) return 'level';
  return `${tickText(Math.abs(gradePercent))} % ${gradePercent > 0 ? 'up' : 'down'}`;
}

/** A ride in words: `standing`, `10 km/h`, `10 km/h up 8 %`. */
export function pointName(point: Pick<MarginPoint, 'speedKmPerH' | 'gradePercent'>, unit: SpeedUnit): string {
  const pace = paceText(point, unit);
  const { gradePercent } = point;
  if (gradePercent === 0) return pace;
  return `${pace} ${gradePercent > 0 ? 'up' : 'down'} ${tickText(Math.abs(gradePercent))} %`;
}

/** Parts with less of the energy than this are not named. */
const NAMED_SHARE = 0.2;

/** Who moves in a motion, the most first. */
export function moversOf({ shares }: Pick<Mode, 'shares'>): Mover[] {
  const named = MOVERS.filter((mover) => shares[mover] >= NAMED_SHARE);
  return named.toSorted((a, b) => shares[b] - shares[a]);
}

/** An angle without a side, with a digit more where it is small: `61°`, `4.7°`. */
export function degreesText(angleRad: number): string {
  const angleDeg = angleRad * DEG_PER_RAD;
  return `${angleDeg.toFixed(angleDeg < 9.95 ? 1 : 0)}°`;
}

/** A frequency with as many digits as it is worth: `0.07 Hz`, `1.6 Hz`, `27 Hz`. */
export function hzText(frequencyHz: number): string {
  const decimals = frequencyHz < 0.95 ? 2 : frequencyHz < 9.95 ? 1 : 0;
  return `${frequencyHz.toFixed(decimals)} Hz`;
}

/** A frequency given in rad/s. */
export function radPerSText(radPerS: number): string {
  return hzText(radPerS / (2 * Math.PI));
}

/** A factor on the gain: `x6.2`, `x1.16`, `x0.16`, `x25`. */
export function factorText(factor: number): string {
  return `x${factor.toFixed(factor < 3.95 ? 2 : factor < 9.95 ? 1 : 0)}`;
}

/** A short delay [s]: `8.8 ms`, `41 ms`. */
export function delayText(delayS: number): string {
  const ms = 1000 * delayS;
  return `${ms.toFixed(ms < 19.95 ? 1 : 0)} ms`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(names: readonly string[]): string {
  const [last] = names.slice(-1);
  return names.length < 2 ? (last ?? '') : `${names.slice(0, -1).join(', ')} and ${last}`;
}

/** Items by a text that they share, in the order in which the texts first come. */
export function grouped<T>(items: readonly T[], textOf: (item: T) => string): [string, T[]][] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const text = textOf(item);
    groups.set(text, [...(groups.get(text) ?? []), item]);
  }
  return [...groups];
}
