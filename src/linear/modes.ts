/**
 * Which motions does a rig have of its own, how fast do they swing, how soon do they die out, and who moves in them? The
 * closed loop with the rider's delay: first with the delay as a chain of all-passes, whose matrix has eigenvalues, then each
 * of them brought to the exact loop by Muller's method.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { angleOf, magnitude, minus, over, plus, real, root, times, type Complex } from './complex.js';
import { closingTerms, type LoopView } from './loop-view.js';
import { solveComplex } from './solve.js';
import { INPUTS, OUTPUTS } from './tick-map.js';

/** Masses and inertias by which the shares of a mode are weighed. */
export interface ModeWeights {
  deckInertiaKgM2: number;
  riderInertiaKgM2: number;
  totalMassKg: number;
}

/** Parts of a rig that can move in a mode; `travel` is its speed along the road, `tyre` its bouncing. */
export const MOVERS = ['deck', 'rider', 'tyre', 'travel'] as const;

/** A part of a rig that can move in a mode. */
export type Mover = (typeof MOVERS)[number];

/** One mode: growth [1/s] and swing [rad/s]; a negative damping ratio grows. Shares are of the kinetic energy. */
export interface Mode {
  growthPerS: number;
  swingRadPerS: number;
  frequencyHz: number;
  dampingRatio: number;
  shares: Readonly<Record<Mover, number>>;
}

/** All-passes that stand for the rider's delay in the first guess. */
const SECTIONS = 6;

/** Modes that die out quicker than this are over before anybody feels them, 1/s. */
const FASTEST_DECAY_PER_S = 60;

/** Two roots nearer than this (of 1 + their size, 1/s) are one. */
const SAME_ROOT = 1e-4;

/** The modes of the closed loop, the least damped first; places along the road, where nothing changes, are left out. */
export function modesOf(view: LoopView, weights: ModeWeights): Mode[] {
  const { tickS } = view.map;
  const found: Complex[] = [];
  for (const guess of guesses(view)) {
    const rate = over({ re: Math.log(magnitude(guess)), im: angleOf(guess) }, real(tickS));
    if (rate.im < -1e-9 || rate.re < -FASTEST_DECAY_PER_S || magnitude(rate) < 1e-3) continue;
    const exact = refined(view, guess);
    if (exact === null) continue;
    const there = over({ re: Math.log(magnitude(exact)), im: angleOf(exact) }, real(tickS));
    if (there.im < -1e-6 || there.re < -FASTEST_DECAY_PER_S || magnitude(there) < 1e-3) continue;
    const isKnown = found.some(
      (other) => magnitude(minus(other, there)) < SAME_ROOT * (1 + magnitude(there)),
    );
    if (!isKnown) found.push(there);
  }
  return found.map((rate) => modeAt(view, rate, weights)).sort((a, b) => a.dampingRatio - b.dampingRatio);
}

/** True when no deviation grows. */
export function isStable(modes: readonly Mode[]): boolean {
  return modes.every(({ growthPerS }) => growthPerS < 0);
}

/** Eigenvalues of the loop with all-passes in place of the delay. */
function guesses({ map, rider }: LoopView): Complex[] {
  const { A, B, C } = map;
  const size = A.rows;
  const sensed = (['lean', 'leanRate', 'speed'] as const).map((name) =>
    C.getRowVector(OUTPUTS.indexOf(name)),
  );
  const chain = sensed.length * SECTIONS;
  const all = Matrix.zeros(size + chain + 3, size + chain + 3);
  const request = B.getColumnVector(INPUTS.indexOf('request')).mmul(C.getRowVector(OUTPUTS.indexOf('asked')));
  all.setSubMatrix(Matrix.add(A, request), 0, 0);
  const delay = rider.delayTicks / SECTIONS;
  const a = (1 - delay) / (1 + delay);
  // What each signal is after its chain, as a row over all states.
  const late = sensed.map((row, signal) => {
    let now = Matrix.zeros(1, all.columns);
    now.setSubMatrix(row, 0, 0);
    for (let section = 0; section < SECTIONS; section++) {
      const place = size + signal * SECTIONS + section;
      all.setSubMatrix(Matrix.mul(now, 1 - a * a), place, 0);
      all.set(place, place, all.get(place, place) - a);
      now = Matrix.mul(now, a);
      now.set(0, place, now.get(0, place) + 1);
    }
    return now;
  });
  const memory = size + chain;
  const torque = Matrix.zeros(1, all.columns);
  torque.setSubMatrix(rider.C, 0, memory);
  all.setSubMatrix(rider.A, memory, memory);
  late.forEach((row, signal) => {
    torque.add(Matrix.mul(row, rider.D.get(0, signal)));
    for (let place = 0; place < 3; place++) {
      const added = Matrix.add(all.getRowVector(memory + place), Matrix.mul(row, rider.B.get(place, signal)));
      all.setSubMatrix(added, memory + place, 0);
    }
  });
  const push = B.getColumnVector(INPUTS.indexOf('riderTorque')).mmul(torque);
  all.setSubMatrix(Matrix.add(all.subMatrix(0, size - 1, 0, all.columns - 1), push), 0, 0);
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(all);
  return realEigenvalues.map((re, index) => ({ re, im: imaginaryEigenvalues[index]! }));
}

/** A vector that has a part of every mode. */
function probe(size: number): Matrix {
  return Matrix.columnVector(Array.from({ length: size }, (_, index) => Math.sin(1 + 2.7 * index)));
}

/** The deviation that answers a push at z: grows without bound as z comes to a mode. */
function answerAt(view: LoopView, z: Complex): Complex[] {
  const { A } = view.map;
  const x = solveComplex(A, z, probe(A.rows), closingTerms(view, z, { request: true, rider: true }));
  return x.map(([value]) => value!);
}

/** One over the answer, which is zero at a mode; right on it there is no answer. */
function lack(view: LoopView, z: Complex): Complex {
  let answer: Complex[];
  try {
    answer = answerAt(view, z);
  } catch {
    return real(0);
  }
  const sum = answer.reduce(
    (total, value, index) => plus(total, times(real(Math.cos(index)), value)),
    real(0),
  );
  return over(real(1), sum);
}

/** Muller's method from a guess; null where it does not come to rest near it. */
function refined(view: LoopView, guess: Complex): Complex | null {
  let points = [1e-4, -1e-4, 0].map((off) => plus(guess, { re: off, im: off / 3 }));
  let values = points.map((z) => lack(view, z));
  for (let pass = 0; pass < 40; pass++) {
    const [z0, z1, z2] = points as [Complex, Complex, Complex];
    const [f0, f1, f2] = values as [Complex, Complex, Complex];
    const [h0, h1] = [minus(z1, z0), minus(z2, z1)];
    const [d0, d1] = [over(minus(f1, f0), h0), over(minus(f2, f1), h1)];
    const second = over(minus(d1, d0), plus(h1, h0));
    const slope = plus(times(second, h1), d1);
    const inner = root(minus(times(slope, slope), times(real(4), times(second, f2))));
    const [sum, difference] = [plus(slope, inner), minus(slope, inner)];
    const bottom = magnitude(sum) > magnitude(difference) ? sum : difference;
    if (magnitude(bottom) === 0 || !Number.isFinite(magnitude(bottom))) return z2;
    const move = over(times(real(-2), f2), bottom);
    const next = plus(z2, move);
    if (magnitude(move) < 1e-14) return next;
    points = [z1, z2, next];
    values = [f1, f2, lack(view, next)];
  }
  return null;
}

function modeAt(view: LoopView, rate: Complex, weights: ModeWeights): Mode {
  const { map } = view;
  const size = Math.exp(rate.re * map.tickS);
  const z = { re: size * Math.cos(rate.im * map.tickS), im: size * Math.sin(rate.im * map.tickS) };
  const x = answerAt(view, times(z, real(1 + 1e-9)));
  const square = (name: string) => magnitude(x[map.states.indexOf(name)]!) ** 2;
  const energy: Record<Mover, number> = {
    deck: weights.deckInertiaKgM2 * square('pitchRate'),
    rider: weights.riderInertiaKgM2 * square('leanRate'),
    tyre: weights.totalMassKg * square('zRate'),
    travel: weights.totalMassKg * square('speed'),
  };
  const whole = MOVERS.reduce((sum, mover) => sum + energy[mover], 0);
  const shares = Object.fromEntries(MOVERS.map((mover) => [mover, energy[mover] / whole])) as Mode['shares'];
  const swift = magnitude(rate);
  return {
    growthPerS: rate.re,
    swingRadPerS: rate.im,
    frequencyHz: swift / (2 * Math.PI),
    dampingRatio: -rate.re / swift,
    shares,
  };
}
