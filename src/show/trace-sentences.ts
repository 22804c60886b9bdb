/**
 * What do the panels of a trace that a plot of a run does not have say in one sentence? And what does the view
 * from the side?
 */
import { rangeOf } from './extremes.js';
import { heightText, leanText, pitchText, slopeText, speedText } from './quantities.js';
import type { SpeedUnit } from './quantities.js';

/** One sentence about measured leans [rad, forward positive]. */
export function leanSentence(leanRad: Float64Array): string {
  const first = leanRad[0];
  if (first === undefined) return 'Lean was not measured.';
  const { lowest, highest } = rangeOf(leanRad, first);
  const [back, forward] = [leanText(lowest), leanText(highest)];
  return back === forward ? `Lean stays ${back}.` : `Lean stays between ${back} and ${forward}.`;
}

/** One sentence about measured heights of the road under the wheel [m]. */
export function roadSentence(heightM: Float64Array): string {
  const first = heightM[0];
  const last = heightM.at(-1);
  if (first === undefined || last === undefined) return 'Road was not measured.';
  const { lowest, highest } = rangeOf(heightM, first);
  const [from, to, low, high] = [first, last, lowest, highest].map(heightText);
  if (low === high) return `Road stays level at ${low}.`;
  const start = `Road goes from ${from} to ${to}`;
  const within = (from === low && to === high) || (from === high && to === low);
  return within ? `${start}.` : `${start} and stays between ${low} and ${high}.`;
}

/** What the view from the side shows at one moment; slope [ratio], climbing forward positive. */
export interface SideFacts {
  pitchRad: number;
  leanRad: number;
  speedMPerS: number;
  slopeRatio: number;
}

/** One sentence about board and rider at one moment. */
export function sideSentence(facts: SideFacts, unit: SpeedUnit): string {
  const slope = slopeText(facts.slopeRatio);
  const [size, way] = [slope.replace(/ (up|down)$/, ''), slope.endsWith('up') ? 'up' : 'down'];
  const road = slope === 'level' ? 'on level road' : `${way} a slope of ${size}`;
  const speed = speedText(facts.speedMPerS, unit);
  return `Board ${pitchText(facts.pitchRad)}, rider ${leanText(facts.leanRad)} at ${speed} ${road}.`;
}
