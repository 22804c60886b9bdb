/** Metrics for the tests of cost and score: a run with nothing bad about it, and runs with anything bad. */
import fc from 'fast-check';
import type { Metrics } from '../../src/measure/metrics.js';
import { COST_NAMES, weightsWith } from '../../src/measure/scales.js';
import type { CostName } from '../../src/measure/scales.js';

/** A run with nothing bad about it. */
export const CALM: Metrics = {
  kind: 'disturbance',
  windowS: 8,
  measuredS: 8,
  calm: true,
  finalPitchRad: 0,
  overshootPercent: null,
  reboundPercent: 0,
  riseTimeS: null,
  settlingTimeS: 0,
  peakNoseDownRad: 0,
  peakNoseUpRad: 0,
  saturationShare: 0,
  longestSaturationS: 0,
  saturationByCeiling: { drive: 0, brake: 0, voltage: 0, 'pack out': 0, 'pack in': 0 },
  leastHeadroomShare: 1,
  pitchRateActivityRadPerS: 0,
  commandActivityAPerS: 0,
  riderTorqueRmsNm: 0,
  oneFootLightS: 0,
  peakCurrentA: 0,
  rmsCurrentA: 0,
  packEnergyJ: 0,
  leastPackV: 50,
  weightedFeetAccelerationMPerS2: 0,
};

/** A share from 0 to 1. */
export const share = fc.double({ min: 0, max: 1, noNaN: true });
const amount = (max: number): fc.Arbitrary<number> => fc.double({ min: 0, max, noNaN: true });

/** Every metric that makes a cost, so that more of it is worse. */
export const BAD = {
  reboundPercent: amount(200),
  settlingTimeS: amount(8),
  saturationShare: share,
  longestSaturationS: amount(8),
  peakNoseDownRad: amount(0.4),
  peakNoseUpRad: amount(0.4),
  pitchRateActivityRadPerS: amount(5),
  commandActivityAPerS: amount(50_000),
  riderTorqueRmsNm: amount(200),
  oneFootLightS: amount(8),
  weightedFeetAccelerationMPerS2: amount(10),
};

/** Metrics of a disturbance with anything bad about them. */
export const metricsArbitrary: fc.Arbitrary<Metrics> = fc
  .record({ ...BAD, leastHeadroomShare: share })
  .map((bad) => ({ ...CALM, ...bad }));

/** Weights from 0 to 5. */
export const weightsArbitrary = fc
  .record(
    Object.fromEntries(COST_NAMES.map((name) => [name, amount(5)])) as Record<CostName, fc.Arbitrary<number>>,
  )
  .map(weightsWith);
