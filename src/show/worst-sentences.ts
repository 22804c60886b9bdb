/**
 * Where is a profile at its worst, in words? A fall speaks for itself; else the term that adds most to the cell's cost
 * is put into a phrase with its number.
 */
import { overshootOrReboundPercent, type Metrics } from '../measure/metrics.js';
import type { RankedCell } from '../measure/profile-result.js';
import type { CostName, Weights } from '../measure/scales.js';
import { termCosts } from '../measure/score.js';
import { CEILINGS } from '../simulate/tape.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import { numberText, pitchText, shareText, stretchText, timeText, torqueText } from './quantities.js';
import { outcomeText } from './run-sentences.js';

/** Where a cell is: `kerb-drop with heavy, pack at 20 %`. */
export function cellPlace({
  scenario,
  rider,
  chargePercent,
}: Pick<RankedCell, 'scenario' | 'rider' | 'chargePercent'>): string {
  return `${scenario} with ${rider}, pack at ${chargePercent} %`;
}

/** A cell with its place, and how it ended or what cost it most. */
export function weakPointText(cell: RankedCell, weights: Weights): string {
  return `${cellPlace(cell)}: ${cellPhrase(cell, weights)}`;
}

/** One phrase about a cell: how it ended, or what cost it most. */
export function cellPhrase({ outcome, eventReached, metrics }: RankedCell, weights: Weights): string {
  if (outcome.kind !== 'upright') return outcomeText(outcome);
  if (!eventReached) return 'upright, but never came to the event that is measured';
  const [dearest] = termCosts(metrics, weights).sort((a, b) => b.weight * b.cost - a.weight * a.cost);
  return dearest === undefined ? 'nothing measured' : PHRASES[dearest.name](metrics);
}

const PHRASES: Readonly<Record<CostName, (metrics: Metrics) => string>> = {
  overshoot: (metrics) => {
    const kind = metrics.kind === 'step' ? 'overshoots by' : 'rebounds by';
    return `${kind} ${numberText(overshootOrReboundPercent(metrics) ?? 0, 'percent')} %`;
  },
  settling: ({ settlingTimeS, windowS }) =>
    settlingTimeS === null
      ? `not settled when its ${timeText(windowS)} were over`
      : `settles only after ${timeText(settlingTimeS)}`,
  saturation: ({ saturationShare, saturationByCeiling }) =>
    `${shareText(saturationShare)} of the ticks are cut, most by the ${mostBinding(saturationByCeiling)} ceiling`,
  'saturation-stretch': ({ longestSaturationS, saturationByCeiling }) =>
    `cut for ${stretchText(longestSaturationS)} on end, most by the ${mostBinding(saturationByCeiling)} ceiling`,
  'peak-pitch': ({ peakNoseDownRad, peakNoseUpRad }) =>
    pitchText(peakNoseDownRad >= peakNoseUpRad ? peakNoseDownRad : -peakNoseUpRad),
  'lack-of-headroom': ({ leastHeadroomShare }) =>
    leastHeadroomShare ? `${shareText(leastHeadroomShare)} headroom left` : 'no headroom left for a moment',
  'foot-light': ({ oneFootLightS }) => `one foot light for ${timeText(oneFootLightS)}`,
  'pitch-rate-activity': ({ pitchRateActivityRadPerS }) =>
    `shivers at ${numberText(pitchRateActivityRadPerS * DEG_PER_RAD, 'angularRateDegPerS')} deg/s rms above 3 Hz`,
  'command-activity': ({ commandActivityAPerS }) =>
    `the request moves by ${numberText(commandActivityAPerS, 'commandAPerS')} A each second`,
  'rider-torque': ({ riderTorqueRmsNm }) => `the rider works with ${torqueText(riderTorqueRmsNm)} rms`,
  'feet-acceleration': ({ weightedFeetAccelerationMPerS2 }) =>
    `shakes the feet with ${numberText(weightedFeetAccelerationMPerS2, 'accelerationMPerS2')} m/s² (Wk)`,
};

function mostBinding(shares: Metrics['saturationByCeiling']): string {
  const named = CEILINGS.filter((ceiling) => ceiling !== 'none');
  return named.toSorted((a, b) => shares[b] - shares[a])[0] ?? 'drive';
}
