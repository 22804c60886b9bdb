/**
 * What linear theory says about a body that balances with delayed feedback of lean and lean rate:
 *
 *   J s^2 - m g h + K + B s + (K_P + K_D s) e^(-s tau) H(s) = 0,   H = 1 or second-order activation of the muscles
 *
 * and about its loop, L = (K_P + K_D s) e^(-s tau) H / (J s^2 + B s + K - m g h).
 */
import { GRAVITY_M_PER_S2 } from '../../src/quantity/units.js';
import type { Body, Feedback } from './fixed-floor.js';

/** What is left to topple the body when its passive spring has done its part, m g h - K, Nm/rad. */
export function topplingNmPerRad(
  { massKg, heightM, passiveStiffnessNmPerRad }: Body,
  gravity = GRAVITY_M_PER_S2,
): number {
  return massKg * gravity * heightM - passiveStiffnessNmPerRad;
}

/**
 * Where stability is lost as the delay grows: s = j w in the characteristic equation. Its magnitudes give
 * K_P^2 + K_D^2 w^2 = (J w^2 + n)^2 + B^2 w^2 with n = m g h - K, which has one root w while K_P > n; its angles the delay.
 */
export function edgeOfStability(
  body: Body,
  feedback: Omit<Feedback, 'delayS'>,
): { frequency: number; delayS: number } {
  const { ankleInertiaKgM2: J, passiveDampingNmSPerRad: B } = body;
  const { stiffnessNmPerRad: KP, dampingNmSPerRad: KD } = feedback;
  const n = topplingNmPerRad(body);
  const half = (2 * J * n + B * B - KD * KD) / 2;
  const square = (-half + Math.sqrt(half * half - J * J * (n * n - KP * KP))) / (J * J);
  const w = Math.sqrt(square);
  return { frequency: w, delayS: (Math.atan2(w * KD, KP) + Math.atan2(w * B, J * square + n)) / w };
}

/** How fast [1/s] a body falls whose feedback is too weak to hold it, K_P < m g h - K: the positive root of its equation. */
export function fallingRate(body: Body, feedback: Feedback): number {
  const { ankleInertiaKgM2: J, passiveDampingNmSPerRad: B } = body;
  const { stiffnessNmPerRad: KP, dampingNmSPerRad: KD, delayS } = feedback;
  const n = topplingNmPerRad(body);
  let [low, high] = [0, 100];
  for (let k = 0; k < 60; k++) {
    const s = (low + high) / 2;
    if (J * s * s - n + B * s + (KP + KD * s) * Math.exp(-s * delayS) < 0) low = s;
    else high = s;
  }
  return low;
}

/**
 * The gains that damp a body without passive parts fastest at a delay, K_P and K_D over J, and the rate s at which they do so:
 * (p + d s) = (a - s^2) e^(s tau) has a triple root there, tau s = -2 + sqrt(2 + a tau^2), a = m g h / J. It is negative, and any
 * gains balance at all, only for tau < sqrt(2 / a): G. Stepan, Phil. Trans. R. Soc. A 367 (2009) 1195; G. Stepan, L. Kollar,
 * Math. Comput. Modelling 31 (2000) 199 (the law is theirs, from memory; the gains are derived here).
 */
export function bestGains(a: number, delayS: number): { perJ: readonly [number, number]; rate: number } {
  const s = (-2 + Math.sqrt(2 + a * delayS * delayS)) / delayS;
  const lead = Math.exp(s * delayS);
  const d = lead * (delayS * (a - s * s) - 2 * s);
  return { perJ: [lead * (a - s * s) - d * s, d], rate: s };
}

/** Second-order activation w0^2 / (s^2 + 2 beta w0 s + w0^2). */
export interface Activation {
  frequency: number;
  damping: number;
}

/** Margins of a loop: phase margin [deg] at the crossover [rad/s], delay margin [s], peak of |1 / (1 + L)|. */
export interface LoopMargins {
  phaseDeg: number;
  crossover: number;
  delayS: number;
  sensitivityPeak: number;
}

/** Margins of a body's loop with one crossover, at a given gravity [m/s2] for figures that were worked with another. */
export function loopMargins(
  body: Body,
  feedback: Feedback,
  { gravity = GRAVITY_M_PER_S2, activation }: { gravity?: number; activation?: Activation } = {},
): LoopMargins {
  const { ankleInertiaKgM2: J, passiveDampingNmSPerRad: B } = body;
  const n = topplingNmPerRad(body, gravity);
  const polar = (w: number) => {
    const muscle = activation
      ? [activation.frequency ** 2 - w * w, 2 * activation.damping * activation.frequency * w]
      : [1, 0];
    const [KP, KD] = [feedback.stiffnessNmPerRad, w * feedback.dampingNmSPerRad];
    const gain =
      (Math.hypot(KP, KD) * (activation ? activation.frequency ** 2 : 1)) /
      (Math.hypot(J * w * w + n, B * w) * Math.hypot(muscle[0]!, muscle[1]!));
    // The body's denominator is -(J w^2 + n) + j B w, beyond 90 degrees.
    const angle =
      Math.atan2(KD, KP) -
      w * feedback.delayS -
      Math.atan2(B * w, -(J * w * w + n)) -
      Math.atan2(muscle[1]!, muscle[0]!);
    return { gain, angle };
  };
  let [low, high] = [0, 100];
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (polar(middle).gain > 1) low = middle;
    else high = middle;
  }
  const phase = Math.PI + polar(low).angle;
  let nearest = Infinity;
  for (let w = 1e-3; w < 40; w += 1e-3) {
    const { gain, angle } = polar(w);
    nearest = Math.min(nearest, Math.hypot(1 + gain * Math.cos(angle), gain * Math.sin(angle)));
  }
  return {
    phaseDeg: (180 / Math.PI) * phase,
    crossover: low,
    delayS: phase / low,
    sensitivityPeak: 1 / nearest,
  };
}
