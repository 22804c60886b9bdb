/**
 * How rough is the ride on the feet? Rms of the vertical acceleration weighted by Wk of ISO 2631-1:1997,
 * the weighting for vertical vibration of a standing person at the feet. Section form and parameters:
 * ISO 8041, as tabled in the manual of the Larson Davis HVM200, table 3.1.
 *
 * The four analog sections are made digital at the tape's own rate. Largest error of the magnitude against
 * the analog weighting, up to 80 Hz (or 0.45 of the rate, if that is less): 0.01 % at 800 Hz and faster, 0.2 %
 * at 400 Hz, 1.2 % at 250 Hz, 4 % at 200 Hz, 6 % down to 100 Hz. (ISO 8041 grants 11 to 12 %, from memory.)
 */
import { butterworthHighPass, matchedSection, rootMeanSquareThrough } from './biquad.js';
import type { AnalogSection, Biquad } from './biquad.js';
import type { Span } from './window.js';

const HIGH_PASS_HZ = 0.4;
const LOW_PASS_HZ = 100;
const TRANSITION_HZ = 12.5;
const TRANSITION_Q = 0.63;
const STEP_FROM_HZ = 2.37;
const STEP_TO_HZ = 3.35;
const STEP_Q = 0.91;

/**
 * The digital sections agree with the analog ones at 0 Hz, at an anchor of each section's own and at 80 Hz, the last
 * third octave of the ISO 2631-1 table; at low rates both anchors keep clear of half of the rate.
 */
const HIGH_ANCHOR_HZ = 80;
const LOW_ANCHOR_OVER_RATE = 0.35;
const HIGH_ANCHOR_OVER_RATE = 0.45;

/** 1 + s / (Q w) + (s / w)^2, in powers of s. */
function quadratic(cornerHz: number, q: number): [number, number, number] {
  const radPerS = 2 * Math.PI * cornerHz;
  return [1, 1 / (q * radPerS), 1 / radPerS ** 2];
}

/** Low-pass at 100 Hz; from acceleration to velocity at 12.5 Hz; upward step between 2.37 and 3.35 Hz. */
const SECTIONS: readonly { anchorHz: number; analog: AnalogSection }[] = [
  {
    anchorHz: LOW_PASS_HZ / 2,
    analog: { numerator: [1, 0, 0], denominator: quadratic(LOW_PASS_HZ, Math.SQRT1_2) },
  },
  {
    anchorHz: TRANSITION_HZ,
    analog: {
      numerator: [1, 1 / (2 * Math.PI * TRANSITION_HZ), 0],
      denominator: quadratic(TRANSITION_HZ, TRANSITION_Q),
    },
  },
  {
    anchorHz: STEP_TO_HZ,
    analog: {
      numerator: scaled(quadratic(STEP_FROM_HZ, STEP_Q), (STEP_FROM_HZ / STEP_TO_HZ) ** 2),
      denominator: quadratic(STEP_TO_HZ, STEP_Q),
    },
  },
];

function scaled([c0, c1, c2]: [number, number, number], by: number): [number, number, number] {
  return [c0 * by, c1 * by, c2 * by];
}

/** The weighting Wk as digital sections for signals sampled at `rateHz` (100 Hz and faster). */
export function weightingWk(rateHz: number): Biquad[] {
  const highHz = Math.min(HIGH_ANCHOR_HZ, HIGH_ANCHOR_OVER_RATE * rateHz);
  const matched = SECTIONS.map(({ anchorHz, analog }) => {
    const lowHz = Math.min(anchorHz, LOW_ANCHOR_OVER_RATE * rateHz);
    return matchedSection(analog, rateHz, [lowHz, highHz]);
  });
  return [butterworthHighPass(HIGH_PASS_HZ, rateHz), ...matched];
}

/** Frequency-weighted rms [m/s2] of the vertical acceleration at the feet; 0 when the span is empty. */
export function weightedFeetAccelerationMPerS2(acceleration: Span): number {
  return rootMeanSquareThrough(weightingWk(1 / acceleration.tickS), acceleration);
}
