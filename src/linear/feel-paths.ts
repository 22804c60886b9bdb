/**
 * What does the linear view say of how a board feels? The stiffness under the feet, the way from a foot's weight to the
 * board's acceleration, and how much of the gyro's noise comes out as current.
 */
import { angleOf, magnitude, over } from './complex.js';
import { responseAt, type LoopView } from './loop-view.js';

const HZ = 2 * Math.PI;
const BOTH = { request: true, rider: true } as const;

/** Torque with which the motor answers a swinging deck, Nm per rad of pitch, at a frequency [Hz]; feet do the moving. */
export function deckStiffnessNmPerRad(
  view: LoopView,
  torqueConstantNmPerA: number,
  frequencyHz: number,
): number {
  const at = { radPerS: frequencyHz * HZ, closed: { request: true, rider: false } };
  const asked = responseAt(view, { from: 'riderTorque', to: 'asked' }, at);
  const pitch = responseAt(view, { from: 'riderTorque', to: 'pitch' }, at);
  return torqueConstantNmPerA * magnitude(over(asked, pitch));
}

/** The way from a torque of the front foot to the acceleration of the board. */
export interface FootPath {
  /** Frequency at which the answer has fallen by 3 dB from its greatest below, Hz; null where it has not by half the sampling. */
  bandwidthHz: number | null;
  /** Lag of the answer at 1 Hz as a time, s. */
  delayAt1HzS: number;
  /** Answer at 1 Hz, m/s2 per Nm. */
  gainAt1Hz: number;
}

/** 3 dB, as a factor. */
const THREE_DB = 10 ** (-3 / 20);

/** Looks along the way from foot to acceleration, the rider's own feedback at work. */
export function footPath(view: LoopView): FootPath {
  const answer = (frequencyHz: number) => {
    const at = { radPerS: frequencyHz * HZ, closed: BOTH };
    return responseAt(view, { from: 'riderTorque', to: 'acceleration' }, at);
  };
  const at1Hz = answer(1);
  // A torque that turns the nose down drives forward; on the rider's body it is a negative one.
  const lagRad = -angleOf({ re: -at1Hz.re, im: -at1Hz.im });
  const most = view.nyquistRadPerS / HZ;
  const grid = Array.from({ length: 160 }, (_, index) => 0.3 * (most / 0.3) ** (index / 159));
  let greatest = 0;
  let bandwidthHz: number | null = null;
  for (const frequencyHz of grid) {
    const size = magnitude(answer(frequencyHz));
    if (size > greatest) {
      greatest = size;
      bandwidthHz = null;
    } else if (size < THREE_DB * greatest) bandwidthHz ??= frequencyHz;
  }
  return { bandwidthHz, delayAt1HzS: lagRad / HZ, gainAt1Hz: magnitude(at1Hz) };
}

/** Frequencies over which the noise is added up, evenly spaced. */
const NOISE_COUNT = 400;

/**
 * Root mean square of the request [A] that white noise of the gyro makes, a reading's deviation given [rad/s]: by Parseval's
 * theorem the mean of the squared response over all frequencies of the sampled loop.
 */
export function noiseInRequestA(view: LoopView, gyroNoiseRadPerS: number): number {
  let sum = 0;
  for (let index = 0; index < NOISE_COUNT; index++) {
    const radPerS = ((index + 0.5) / NOISE_COUNT) * view.nyquistRadPerS;
    sum += magnitude(responseAt(view, { from: 'gyro', to: 'asked' }, { radPerS, closed: BOTH })) ** 2;
  }
  return gyroNoiseRadPerS * Math.sqrt(sum / NOISE_COUNT);
}
