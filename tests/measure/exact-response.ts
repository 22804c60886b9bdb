/**
 * Step responses that are known exactly, as samples for the metrics: the normalised second-order
 * system in closed form, and any linear system with one input by fine Runge-Kutta steps.
 */
import type { Span } from '../../src/measure/window.js';

/** Samples of `signal(t)` from t = 0 to `durationS`. */
export function sampled(signal: (timeS: number) => number, durationS: number, tickS: number): Span {
  const count = Math.round(durationS / tickS) + 1;
  return {
    samples: Float64Array.from({ length: count }, (_, k) => signal(k * tickS)),
    first: 0,
    end: count,
    tickS,
  };
}

/** Error 1 - y(t) of the unit step response of wn^2 / (s^2 + 2 zeta wn s + wn^2), zeta < 1. */
export function secondOrderError(zeta: number, wn: number): (timeS: number) => number {
  const root = Math.sqrt(1 - zeta ** 2);
  return (timeS) =>
    Math.exp(-zeta * wn * timeS) *
    (Math.cos(root * wn * timeS) + (zeta / root) * Math.sin(root * wn * timeS));
}

/** Exact settling time of that response: the error's extremes lie at k pi / wd and fall off as exp(-zeta wn t). */
export function exactSettlingTimeS(zeta: number, wn: number, band: number): number {
  const error = secondOrderError(zeta, wn);
  const halfPeriodS = Math.PI / (wn * Math.sqrt(1 - zeta ** 2));
  let extreme = 0;
  while (Math.abs(error((extreme + 1) * halfPeriodS)) > band) extreme += 1;
  let outside = extreme * halfPeriodS;
  let inside = (extreme + 1) * halfPeriodS;
  const side = Math.sign(error(outside));
  for (let k = 0; k < 60; k += 1) {
    const middle = (outside + inside) / 2;
    if (side * error(middle) > band) outside = middle;
    else inside = middle;
  }
  return inside;
}

/**
 * Unit step response of a transfer function in descending powers of s; the denominator begins with 1 and is of higher
 * order than the numerator. Controllable canonical form, classical Runge-Kutta steps of `tickS`.
 */
export function stepResponse(
  { numerator, denominator }: { numerator: readonly number[]; denominator: readonly number[] },
  durationS: number,
  tickS: number,
): Span {
  const order = denominator.length - 1;
  const feedback = denominator.slice(1).toReversed();
  const output = numerator.toReversed();
  const slope = (state: readonly number[]): number[] =>
    state.map((_, k) =>
      k < order - 1
        ? (state[k + 1] as number)
        : 1 - state.reduce((sum, value, j) => sum + (feedback[j] as number) * value, 0),
    );
  const moved = (state: readonly number[], by: readonly number[], h: number): number[] =>
    state.map((value, k) => value + h * (by[k] as number));
  let state: number[] = Array.from({ length: order }, () => 0);
  const samples = Float64Array.from({ length: Math.round(durationS / tickS) + 1 }, () => {
    const y = output.reduce((sum, c, k) => sum + c * (state[k] as number), 0);
    const k1 = slope(state);
    const k2 = slope(moved(state, k1, tickS / 2));
    const k3 = slope(moved(state, k2, tickS / 2));
    const k4 = slope(moved(state, k3, tickS));
    state = state.map(
      (value, k) =>
        value +
        (tickS / 6) * ((k1[k] as number) + 2 * (k2[k] as number) + 2 * (k3[k] as number) + (k4[k] as number)),
    );
    return y;
  });
  return { samples, first: 0, end: samples.length, tickS };
}
