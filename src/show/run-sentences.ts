/**
 * What does a plot of a run say in one sentence? The facts come measured; here they only get words.
 */
import type { Outcome } from '../simulate/outcome.js';
import type { Ceiling } from '../simulate/tape.js';
import type { Verdict } from './colour.js';
import { rangeOf } from './extremes.js';
import { plainText } from './plain-text.js';
import { angleText, currentText, numberText, pitchText, shareText, speedIn, timeText } from './quantities.js';
import type { SpeedUnit } from './quantities.js';

/**
 * The measured facts that the sentences speak of, all of the measured window. Times count from the
 * event; the settling time is null where pitch did not stay within the band; the ceiling is the one
 * that cut most ticks.
 */
export interface RunFacts {
  /** False where the run never came to its event, so that nothing was measured. */
  isMeasured: boolean;
  eventName: string;
  peakPitchRad: number;
  peakAfterS: number;
  bandRad: number;
  settlingTimeS: number | null | undefined;
  peakCurrentA: number;
  saturationShare: number;
  bindingCeiling: Ceiling;
  leastHeadroomShare: number;
}

/** How a run ended: `upright to the end at 8.00 s`, `nose strike at 3.21 s`. */
export function outcomeText(outcome: Outcome): string {
  const at = timeText(outcome.atS);
  if (outcome.kind === 'upright') return `upright to the end at ${at}`;
  const detail = outcome.detail === undefined ? '' : ` (${plainText(outcome.detail)})`;
  return `${outcome.kind} at ${at}${detail}`;
}

/** Upright is fine, a stopped solver asks for a look, all else is a fall. */
export function outcomeVerdict(outcome: Outcome): Verdict {
  if (outcome.kind === 'upright') return 'ok';
  return outcome.kind === 'solver stopped' ? 'warn' : 'bad';
}

/** One sentence about pitch: its peak, and whether it comes to rest. */
export function pitchSentence(facts: RunFacts, outcome: Outcome): string {
  const event = plainText(facts.eventName);
  if (!facts.isMeasured) {
    return `The run never came to the ${event}, from which pitch is measured; outcome: ${outcome.kind}.`;
  }
  const peak = pitchText(facts.peakPitchRad);
  const start =
    peak === 'level'
      ? `Pitch stays level after the ${event}`
      : `Pitch peaks ${peak} ${timeText(facts.peakAfterS)} after the ${event}`;
  if (outcome.kind !== 'upright') return `${start}; outcome: ${outcome.kind}.`;
  if (facts.settlingTimeS === undefined) return `${start}.`;
  const band = angleText(facts.bandRad);
  if (facts.settlingTimeS === null) return `${start} and has not settled within ${band} of its end.`;
  return `${start} and stays within ${band} of its end after ${timeText(facts.settlingTimeS)}.`;
}

/** One sentence about current: its peak, and how often it was cut or, if never, what was left. */
export function currentSentence(facts: RunFacts): string {
  if (!facts.isMeasured) return 'Current was not measured.';
  const peak = `Current peaks at ${currentText(facts.peakCurrentA)}`;
  if (facts.saturationShare === 0)
    return `${peak}; no ceiling cuts it, least headroom ${shareText(facts.leastHeadroomShare)}.`;
  const by = facts.bindingCeiling === 'none' ? '' : `, mostly ${facts.bindingCeiling}`;
  return `${peak}; ceilings cut ${shareText(facts.saturationShare)} of the ticks${by}.`;
}

/** One sentence about measured speeds [m/s]: first, last, and the range if it reaches further. */
export function speedSentence(speedMPerS: Float64Array, unit: SpeedUnit): string {
  const first = speedMPerS[0];
  const last = speedMPerS.at(-1);
  if (first === undefined || last === undefined) return 'Speed was not measured.';
  const { lowest, highest } = rangeOf(speedMPerS, first);
  const [from, to, low, high] = [first, last, lowest, highest].map((value) =>
    numberText(speedIn(value, unit), 'speed'),
  );
  const start = `Speed goes from ${from} to ${to} ${unit}`;
  const within = (from === low && to === high) || (from === high && to === low);
  return within ? `${start}.` : `${start} and stays between ${low} and ${high} ${unit}.`;
}
