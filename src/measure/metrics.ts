/**
 * What did one run measure? Every metric of a tape over one window, as a flat record whose names
 * carry their units. Nothing in it is NaN: what cannot be known is null and says so here.
 */
import type { Outcome } from '../simulate/outcome.js';
import type { Tape, TapeColumn } from '../simulate/tape.js';
import { commandActivityAPerS } from './command-activity.js';
import { leastPackV, packEnergyJ, peakCurrentA, rmsCurrentA } from './electrical.js';
import { weightedFeetAccelerationMPerS2 } from './feet-vibration.js';
import { peakPitch } from './peak-pitch.js';
import { pitchRateActivityRadPerS } from './pitch-rate-activity.js';
import { reboundPercent } from './rebound.js';
import { oneFootLightS, riderTorqueRmsNm } from './rider-work.js';
import { leastHeadroomShare, saturation } from './saturation.js';
import type { CeilingShares } from './saturation.js';
import { settlingTimeS } from './settling-time.js';
import { overshootPercent, riseTimeS } from './step-response.js';
import { endingOf, spanOf } from './window.js';
import type { MeasureWindow, Span } from './window.js';

/** How the pitch got to where it ended; see the fields of the same names in Metrics. */
export interface PitchResponse {
  /** The pitch stayed within the band about its final value for the tail of a whole window. */
  readonly calm: boolean;
  /** Mean pitch over the tail [rad]; null when the window was cut short. */
  readonly finalPitchRad: number | null;
  /** Kind 'step' only: percent of the step from the window's first row to the final pitch; null when cut short. */
  readonly overshootPercent: number | null;
  /** Kind 'disturbance' only: percent of the first peak; null when cut short. */
  readonly reboundPercent: number | null;
  /** Kind 'step' only: 10 to 90 % of the step [s]; null when cut short or there was no step. */
  readonly riseTimeS: number | null;
  /** Kinds 'step' and 'disturbance': from the window's start [s]; null when it did not calm before the window's end. */
  readonly settlingTimeS: number | null;
}

/** The metrics of one run over one window: SI and radians, percent where the name says so, shares from 0 to 1. */
export interface Metrics extends PitchResponse {
  readonly kind: MeasureWindow['kind'];
  /** Length that was to be measured, and that the tape held, both [s]; less when the run ended early. */
  readonly windowS: number;
  readonly measuredS: number;
  /** Largest pitch each way from level, never negative. */
  readonly peakNoseDownRad: number;
  readonly peakNoseUpRad: number;
  /** Share of ticks with a cut request, longest unbroken stretch of them, and the share by ceiling. */
  readonly saturationShare: number;
  readonly longestSaturationS: number;
  readonly saturationByCeiling: CeilingShares;
  /** Null when nothing was measured. */
  readonly leastHeadroomShare: number | null;
  readonly pitchRateActivityRadPerS: number;
  readonly commandActivityAPerS: number;
  readonly riderTorqueRmsNm: number;
  readonly oneFootLightS: number;
  readonly peakCurrentA: number;
  readonly rmsCurrentA: number;
  readonly packEnergyJ: number;
  /** Null when nothing was measured. */
  readonly leastPackV: number | null;
  readonly weightedFeetAccelerationMPerS2: number;
}

/**
 * Measures a run over a window. When the run ended before the window did (a fall, or a tape that stops), the metrics
 * cover what there is, calm is false, and those that need a final value are null.
 */
export function measureRun(tape: Tape, window: MeasureWindow, outcome: Outcome): Metrics {
  const column = (name: TapeColumn): Span => spanOf(tape, name, window);
  const pitch = column('pitchRad');
  const fellInside = outcome.kind !== 'upright' && Math.round(outcome.atS / tape.tickS) < window.endRow;
  const whole = tape.length >= window.endRow && !fellInside;
  const peaks = peakPitch(pitch);
  const saturated = saturation(column('bindingCeiling'));
  return {
    kind: window.kind,
    windowS: Math.max(0, window.endRow - window.firstRow) * tape.tickS,
    measuredS: (pitch.end - pitch.first) * tape.tickS,
    ...(whole ? pitchResponse(pitch, window) : UNKNOWN_RESPONSE),
    peakNoseDownRad: peaks.noseDownRad,
    peakNoseUpRad: peaks.noseUpRad,
    saturationShare: saturated.share,
    longestSaturationS: saturated.longestS,
    saturationByCeiling: saturated.byCeiling,
    leastHeadroomShare: leastHeadroomShare(column('headroomShare')),
    pitchRateActivityRadPerS: pitchRateActivityRadPerS(column('pitchRateRadPerS')),
    commandActivityAPerS: commandActivityAPerS(column('requestedCurrentA')),
    riderTorqueRmsNm: riderTorqueRmsNm(column('riderTorqueNm')),
    oneFootLightS: oneFootLightS(column('riderTorqueNm'), column('riderTorqueLimitNm')),
    peakCurrentA: peakCurrentA(column('currentA')),
    rmsCurrentA: rmsCurrentA(column('currentA')),
    packEnergyJ: packEnergyJ(column('packV'), column('packCurrentA')),
    leastPackV: leastPackV(column('packV')),
    weightedFeetAccelerationMPerS2: weightedFeetAccelerationMPerS2(column('feetAccelerationMPerS2')),
  };
}

/**
 * The one number for a table's overshoot column [percent]: the overshoot of a step, the rebound of a disturbance (the
 * same number for a second-order system), null for a ride or where it is unknown.
 */
export function overshootOrReboundPercent(metrics: PitchResponse): number | null {
  return metrics.overshootPercent ?? metrics.reboundPercent;
}

const UNKNOWN_RESPONSE: PitchResponse = {
  calm: false,
  finalPitchRad: null,
  overshootPercent: null,
  reboundPercent: null,
  riseTimeS: null,
  settlingTimeS: null,
};

/** A step smaller than the band is no step: overshoot 0, no rise time; like a first peak inside the band: rebound 0. */
function pitchResponse(pitch: Span, { kind, bandRad }: MeasureWindow): PitchResponse {
  const ending = endingOf(pitch, bandRad);
  if (ending === null) return UNKNOWN_RESPONSE;
  const { finalValue, calm } = ending;
  const response = { ...UNKNOWN_RESPONSE, calm, finalPitchRad: finalValue };
  if (kind === 'ride') return response;
  const settled = { ...response, settlingTimeS: calm ? settlingTimeS(pitch, finalValue, bandRad) : null };
  if (kind === 'disturbance') {
    return { ...settled, reboundPercent: reboundPercent(pitch, finalValue, bandRad) };
  }
  const step = { initial: pitch.samples[pitch.first] as number, final: finalValue };
  const stepped = Math.abs(step.final - step.initial) > bandRad;
  return {
    ...settled,
    overshootPercent: stepped ? overshootPercent(pitch, step) : 0,
    riseTimeS: stepped ? riseTimeS(pitch, step) : null,
  };
}
