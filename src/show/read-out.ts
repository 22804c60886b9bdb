/**
 * What are all the values of a run at one moment, in words? The most telling first, so that a short list can be
 * cut at its end.
 */
import { previousMark } from '../measure/moments.js';
import type { TapeColumn } from '../simulate/tape.js';
import { plainText } from './plain-text.js';
import {
  currentText,
  distanceText,
  forceText,
  heightText,
  leanText,
  NO_VALUE,
  numberText,
  pitchRateText,
  pitchText,
  shareText,
  slopeText,
  speedText,
  timeText,
  torqueText,
  voltageText,
} from './quantities.js';
import type { SpeedUnit } from './quantities.js';
import { ceilingAt, runMarks } from './run-view.js';
import { roadHeightM, roadSlopeRatio } from './trace-road.js';
import type { TraceView } from './trace-view.js';

/** A value in words, and what it is the value of. */
export interface ReadOutRow {
  name: string;
  text: string;
}

/** One value of the tape at the moment that is read out. */
type Value = (column: TapeColumn) => number;

/** The last event and how long ago it was. */
function eventText(view: TraceView, timeS: number): string {
  // An event within half a tick is met.
  const last = previousMark(runMarks(view), timeS + view.tape.tickS / 2);
  return last === null
    ? 'none yet'
    : `${plainText(last.name)} ${timeText(Math.max(0, timeS - last.timeS))} ago`;
}

/** The ceiling that cut the request, and to what. */
function cutText(value: Value, ceiling: string | null): string {
  return ceiling === null ? 'nothing' : `${ceiling} to ${currentText(value('requestedCurrentA'))}`;
}

/** Which way the current of the pack flows: positive out of it. */
function packText(value: Value): string {
  const currentA = value('packCurrentA');
  const size = currentText(Math.abs(currentA));
  const way = size === NO_VALUE || Number.parseFloat(size) === 0 ? '' : currentA > 0 ? ' out' : ' in';
  return `${voltageText(value('packV'))}, ${size}${way}`;
}

/** What the rider's feet do to the deck: a torque on him is the opposite one on the deck. */
function riderText(torqueNm: number): string {
  const size = torqueText(Math.abs(torqueNm));
  if (size === NO_VALUE || Number.parseFloat(size) === 0) return size;
  return `${size}, nose ${torqueNm < 0 ? 'down' : 'up'}`;
}

/** Whether both feet carry: one is light where the torque between them is all that the stance can give. */
function feetText(value: Value): string {
  const light = Math.abs(value('riderTorqueNm')) >= value('riderTorqueLimitNm');
  return light ? 'one is light' : 'both carry';
}

/** How hard the deck pushes the feet up, or drops from under them. */
function shakeText(upwardMPerS2: number): string {
  const size = numberText(Math.abs(upwardMPerS2), 'accelerationMPerS2');
  if (size === NO_VALUE) return size;
  return `${size} m/s2 ${upwardMPerS2 < 0 ? 'down' : 'up'}`;
}

function loadText(loadN: number): string {
  return loadN <= 0 ? 'none, in the air' : forceText(loadN);
}

/** Every value of a row of the tape, the most telling first; empty for a row that is not on the tape. */
export function readOut(view: TraceView, row: number, speedUnit: SpeedUnit): ReadOutRow[] {
  const { tape, road, rig } = view;
  if (!(row >= 0 && row < tape.length)) return [];
  const value: Value = (column) => tape.columns[column][row] ?? NaN;
  const placeM = value('positionM');
  const slope = slopeText(roadSlopeRatio(road, placeM, rig.wheelRadiusM));
  const ceilings = [value('lowerCeilingA'), value('upperCeilingA')] as const;
  return [
    { name: 'time', text: timeText(value('timeS')) },
    { name: 'pitch', text: pitchText(value('pitchRad')) },
    { name: 'lean', text: leanText(value('leanRad')) },
    { name: 'speed', text: speedText(value('speedMPerS'), speedUnit) },
    { name: 'current', text: currentText(value('currentA')) },
    { name: 'request', text: currentText(value('askedCurrentA')) },
    { name: 'cut by', text: cutText(value, ceilingAt(tape, row)) },
    { name: 'headroom', text: shareText(value('headroomShare')) },
    { name: 'event', text: eventText(view, value('timeS')) },
    { name: 'set-point', text: pitchText(value('setPointRad')) },
    { name: 'road', text: `${heightText(roadHeightM(road, placeM))}, ${slope}` },
    { name: 'pitch rate', text: pitchRateText(value('pitchRateRadPerS')) },
    { name: 'pack', text: packText(value) },
    { name: 'feet push', text: riderText(value('riderTorqueNm')) },
    { name: 'feet', text: feetText(value) },
    { name: 'feet shake', text: shakeText(value('feetAccelerationMPerS2')) },
    { name: 'wheel load', text: loadText(value('wheelLoadN')) },
    { name: 'charge', text: shareText(value('chargeShare')) },
    { name: 'ceilings', text: `${numberText(ceilings[0], 'currentA')} to ${currentText(ceilings[1])}` },
    { name: 'place', text: distanceText(placeM) },
  ];
}
