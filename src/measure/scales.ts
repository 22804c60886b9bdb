/**
 * What counts as one unit of bad? Fixed physical scales: a cost term is its metric over its scale, so
 * 1 means "at the scale" whatever the other profiles do. Change a number, raise the version.
 * "Ours" beside a scale means common practice, no source.
 */
import { RAD_PER_DEG } from '../quantity/units.js';
import { overshootOrReboundPercent } from './metrics.js';
import type { Metrics } from './metrics.js';

/** Version of this table; results of different versions do not compare. */
export const SCALES_VERSION = 1;

/** A score up to this times another is no worse to speak of: so much is what chance does (ours). */
export const CHANCE_SCORE_RATIO = 1.1;

/** The three things a profile trades against each other. */
export const COST_GROUPS = ['comfort', 'reserve', 'agility'] as const;

/** One line of the table; `read` gives the metric in the unit of the scale, null where it does not apply. */
export interface CostTerm {
  readonly name: string;
  readonly group: (typeof COST_GROUPS)[number];
  readonly scale: number;
  readonly unit: string;
  readonly weight: number;
  readonly source: string;
  readonly read: (metrics: Metrics) => number | null;
}

/** The cost terms with their scales and default weights. */
export const COST_TERMS = [
  {
    name: 'overshoot',
    group: 'agility',
    scale: 25,
    unit: '%',
    weight: 2,
    source: 'overshoot of a second-order system with damping ratio 0.4 is 25.4 % (exact)',
    read: overshootOrReboundPercent,
  },
  {
    name: 'settling',
    group: 'agility',
    scale: 2,
    unit: 's',
    weight: 2,
    source: 'ours; not settled counts as the length of the window',
    read: (metrics) => (metrics.kind === 'ride' ? null : (metrics.settlingTimeS ?? metrics.windowS)),
  },
  {
    name: 'saturation',
    group: 'reserve',
    scale: 0.05,
    unit: 'share of ticks',
    weight: 2,
    source: 'ours',
    read: (metrics) => metrics.saturationShare,
  },
  {
    name: 'saturation-stretch',
    group: 'reserve',
    scale: 0.2,
    unit: 's',
    weight: 1,
    source: 'an upright person of 1.75 m left alone doubles a lean in ln 2 / (3.0 rad/s) = 0.23 s (computed)',
    read: (metrics) => metrics.longestSaturationS,
  },
  {
    name: 'peak-pitch',
    group: 'reserve',
    scale: 8 * RAD_PER_DEG,
    unit: 'rad',
    weight: 1,
    source: 'ours; the larger of nose down and nose up, from level',
    read: (metrics) => Math.max(metrics.peakNoseDownRad, metrics.peakNoseUpRad),
  },
  {
    name: 'lack-of-headroom',
    group: 'reserve',
    scale: 0.5,
    unit: 'share',
    weight: 1,
    source: 'ours; 1 less the least headroom',
    read: ({ leastHeadroomShare }) =>
      leastHeadroomShare === null ? null : Math.min(1, Math.max(0, 1 - leastHeadroomShare)),
  },
  {
    name: 'foot-light',
    group: 'reserve',
    scale: 0.2,
    unit: 's',
    weight: 1,
    source: 'ours; as for the saturation stretch',
    read: (metrics) => metrics.oneFootLightS,
  },
  {
    name: 'pitch-rate-activity',
    group: 'comfort',
    scale: 10 * RAD_PER_DEG,
    unit: 'rad/s',
    weight: 1,
    source: 'ours',
    read: (metrics) => metrics.pitchRateActivityRadPerS,
  },
  {
    name: 'command-activity',
    group: 'comfort',
    scale: 500,
    unit: 'A/s',
    weight: 1,
    source: 'ours',
    read: (metrics) => metrics.commandActivityAPerS,
  },
  {
    name: 'rider-torque',
    group: 'comfort',
    scale: 20,
    unit: 'Nm',
    weight: 1,
    source: 'ours',
    read: (metrics) => metrics.riderTorqueRmsNm,
  },
  {
    name: 'feet-acceleration',
    group: 'comfort',
    scale: 2,
    unit: 'm/s2',
    weight: 0.5,
    source: 'ISO 2631-1:1997 annex C: "extremely uncomfortable" from 2 m/s2 weighted rms (second-hand)',
    read: (metrics) => metrics.weightedFeetAccelerationMPerS2,
  },
] as const satisfies readonly CostTerm[];

/** Name of a cost term, as a weight is addressed by it. */
export type CostName = (typeof COST_TERMS)[number]['name'];

/** Names of all cost terms; any other name of a weight is a mistake for the caller to complain about. */
export const COST_NAMES: readonly CostName[] = COST_TERMS.map((term) => term.name);

/** A weight for every cost term, not negative. */
export type Weights = Readonly<Record<CostName, number>>;

/** The weights of the table, with some put in their place; weights are finite and not negative. */
export function weightsWith(overrides: Partial<Weights> = {}): Weights {
  const entries = COST_TERMS.map((term) => [term.name, overrides[term.name] ?? term.weight]);
  return Object.fromEntries(entries) as Weights;
}
