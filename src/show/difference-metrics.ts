/**
 * Which numbers of two runs are set side by side, and which way is better? Each with its unit and its number of
 * digits; what rounds to the same text is no difference.
 */
import { overshootOrReboundPercent, type Metrics } from '../measure/metrics.js';
import type { CostName } from '../measure/scales.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import type { ShownQuantity } from './quantities.js';

/** Joules in one watt hour. */
const J_PER_WH = 3600;

/**
 * One row of the difference table. `read` gives the value in the shown unit, null where it is not known; `bound` what
 * is known instead, a value that it is greater than. `cost` names the cost term that the number makes, if any.
 */
export interface DifferenceMetric {
  name: string;
  unit: string;
  quantity: ShownQuantity;
  read: (metrics: Metrics) => number | null;
  bound?: (metrics: Metrics) => number;
  better: 'less' | 'more';
  cost?: CostName;
}

/** Overshoot, or rebound, and settling: asked for wherever a scenario does not only ride. */
function responseMetrics(kind: Metrics['kind']): DifferenceMetric[] {
  if (kind === 'ride') return [];
  return [
    {
      name: kind === 'step' ? 'overshoot' : 'rebound',
      unit: ' %',
      quantity: 'percent',
      read: overshootOrReboundPercent,
      better: 'less',
      cost: 'overshoot',
    },
    {
      name: 'settling time',
      unit: ' s',
      quantity: 'timeS',
      read: ({ settlingTimeS }) => settlingTimeS,
      bound: ({ windowS }) => windowS,
      better: 'less',
      cost: 'settling',
    },
  ];
}

const RESERVE_METRICS: readonly DifferenceMetric[] = [
  {
    name: 'ticks cut',
    unit: ' %',
    quantity: 'percent',
    read: ({ saturationShare }) => 100 * saturationShare,
    better: 'less',
    cost: 'saturation',
  },
  {
    name: 'longest cut',
    unit: ' ms',
    quantity: 'timeMs',
    read: ({ longestSaturationS }) => 1000 * longestSaturationS,
    better: 'less',
    cost: 'saturation-stretch',
  },
  {
    name: 'nose down at most',
    unit: '°',
    quantity: 'angleDeg',
    read: ({ peakNoseDownRad }) => peakNoseDownRad * DEG_PER_RAD,
    better: 'less',
    cost: 'peak-pitch',
  },
  {
    name: 'nose up at most',
    unit: '°',
    quantity: 'angleDeg',
    read: ({ peakNoseUpRad }) => peakNoseUpRad * DEG_PER_RAD,
    better: 'less',
    cost: 'peak-pitch',
  },
  {
    name: 'least headroom',
    unit: ' %',
    quantity: 'percent',
    read: ({ leastHeadroomShare }) => (leastHeadroomShare === null ? null : 100 * leastHeadroomShare),
    better: 'more',
    cost: 'lack-of-headroom',
  },
];

const COMFORT_METRICS: readonly DifferenceMetric[] = [
  {
    name: 'shiver above 3 Hz',
    unit: '°/s',
    quantity: 'angularRateDegPerS',
    read: ({ pitchRateActivityRadPerS }) => pitchRateActivityRadPerS * DEG_PER_RAD,
    better: 'less',
    cost: 'pitch-rate-activity',
  },
  {
    name: 'request moves',
    unit: ' A/s',
    quantity: 'commandAPerS',
    read: ({ commandActivityAPerS }) => commandActivityAPerS,
    better: 'less',
    cost: 'command-activity',
  },
  {
    name: "rider's torque",
    unit: ' Nm',
    quantity: 'torqueNm',
    read: ({ riderTorqueRmsNm }) => riderTorqueRmsNm,
    better: 'less',
    cost: 'rider-torque',
  },
  {
    name: 'one foot light',
    unit: ' s',
    quantity: 'timeS',
    read: ({ oneFootLightS }) => oneFootLightS,
    better: 'less',
    cost: 'foot-light',
  },
  {
    name: 'peak current',
    unit: ' A',
    quantity: 'currentA',
    read: ({ peakCurrentA }) => peakCurrentA,
    better: 'less',
  },
  {
    name: 'energy',
    unit: ' Wh',
    quantity: 'energyWh',
    read: ({ packEnergyJ }) => packEnergyJ / J_PER_WH,
    better: 'less',
  },
  {
    name: 'feet vibration',
    unit: ' m/s2',
    quantity: 'accelerationMPerS2',
    read: ({ weightedFeetAccelerationMPerS2 }) => weightedFeetAccelerationMPerS2,
    better: 'less',
    cost: 'feet-acceleration',
  },
];

/** The metrics to be compared where a window of this kind was measured, in the order of their rows. */
export function differenceMetrics(kind: Metrics['kind']): DifferenceMetric[] {
  return [...responseMetrics(kind), ...RESERVE_METRICS, ...COMFORT_METRICS];
}
