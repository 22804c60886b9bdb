/**
 * How many motions of a closed loop grow faster than so, and swing slower than so? One minus the loop is followed along the
 * edge of that region of growth and swing, and turns about zero once for each motion inside (the argument principle, as in
 * Nyquist's criterion); the turns that are the plant's own are counted beforehand.
 *
 *   growth + j swing:   (growth, 0) -> (growth, top) -> (infinite, top);   the lower half is the mirror image
 */
import { angleOf, over, type Complex } from '../linear/complex.js';
import { loopParts, type SmallGains, type SmallShaping } from './linear-law.js';
import type { SensorAnswer, SensorsAt } from './linear-plant.js';

/** A region of motions: those that grow faster [1/s] and swing slower [rad/s]. */
export interface Region {
  growthPerS: number;
  topRadPerS: number;
}

/** The edge of a region as seen by a plant: z and the sensors' answers there, point by point. */
export interface Edge {
  z: Complex[];
  answers: SensorAnswer[];
  /** Half turns of the plant's own motions. */
  ownTurnRad: number;
}

/** Points stand no further apart than this share of the growth, or of the swing where that is more. */
const GROWTH_SHARE = 1 / 12;
const SWING_SHARE = 1 / 25;
/** Growth per tick, as a logarithm, beyond which nothing but 1 is left of one minus the loop. */
const FAR = 12;
/** Points that lead out there. */
const FAR_COUNT = 40;

/** The edge of a region. */
export function edgeOf(sensors: SensorsAt, tickS: number, { growthPerS, topRadPerS }: Region): Edge {
  const z: Complex[] = [];
  const add = (growth: number, swing: number) => {
    const size = Math.exp(growth * tickS);
    z.push({ re: size * Math.cos(swing * tickS), im: size * Math.sin(swing * tickS) });
  };
  const nyquist = Math.PI / tickS;
  const top = Math.min(topRadPerS, nyquist);
  for (let swing = 0; swing < top; swing += Math.max(GROWTH_SHARE * growthPerS, SWING_SHARE * swing)) {
    add(growthPerS, swing);
  }
  add(growthPerS, top);
  for (let step = 1; step <= FAR_COUNT; step++) {
    add(growthPerS * (FAR / tickS / growthPerS) ** (step / FAR_COUNT), top);
  }
  const answers = z.map(sensors);
  return { z, answers, ownTurnRad: turnOf(answers.map(({ ownMotion }) => ownMotion)) };
}

/** Sum of the small turns from number to number, rad. */
function turnOf(values: readonly Complex[]): number {
  return values.reduce(
    (sum, value, index) => (index === 0 ? 0 : sum + angleOf(over(value, values[index - 1]!))),
    0,
  );
}

/** One minus the loop along an edge, for laws that share their shaping: parts by gain, real and imaginary. */
export interface LoopTable {
  count: number;
  parts: Float64Array;
  ownTurnRad: number;
}

const PARTS = 8;

/** The table of a shaping along an edge. */
export function loopTable({ z, answers, ownTurnRad }: Edge, shaping: SmallShaping): LoopTable {
  const parts = new Float64Array(PARTS * z.length);
  z.forEach((point, index) => {
    const { rest, p, i, d } = loopParts(shaping, point, answers[index]!);
    parts.set([rest.re, rest.im, p.re, p.im, i.re, i.im, d.re, d.im], PARTS * index);
  });
  return { count: z.length, parts, ownTurnRad };
}

/** Motions inside the region for some gains: a swing counts as two, one each way round. */
export function countInside({ count, parts, ownTurnRad }: LoopTable, gains: SmallGains): number {
  const { proportional, integral, rate } = gains;
  let [turn, lastRe, lastIm] = [0, 0, 0];
  for (let index = 0; index < count; index++) {
    const at = PARTS * index;
    const re = parts[at]! - proportional * parts[at + 2]! - integral * parts[at + 4]! - rate * parts[at + 6]!;
    const im =
      parts[at + 1]! - proportional * parts[at + 3]! - integral * parts[at + 5]! - rate * parts[at + 7]!;
    if (index > 0) turn += Math.atan2(im * lastRe - re * lastIm, re * lastRe + im * lastIm);
    lastRe = re;
    lastIm = im;
  }
  return Math.round(-(turn + ownTurnRad) / Math.PI);
}
