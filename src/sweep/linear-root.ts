/**
 * How does the swiftest motion inside a region go exactly? From the point of the edge where one minus the loop is least, by
 * the secant method to where it is zero.
 */
import { angleOf, magnitude, minus, over, times, type Complex } from '../linear/complex.js';
import { loopParts, oneMinusLoop, type SmallGains, type SmallShaping } from './linear-law.js';
import type { Edge } from './linear-path.js';
import type { SensorsAt } from './linear-plant.js';

/** A motion of a closed loop: growth [1/s] and swing [rad/s]. */
export interface Motion {
  growthPerS: number;
  swingRadPerS: number;
}

/** A loop whose motions are looked for. */
export interface Loop {
  sensors: SensorsAt;
  tickS: number;
  shaping: SmallShaping;
  gains: SmallGains;
}

const PASSES = 30;
/** Moves in z below this are rounding. */
const AT_REST = 1e-13;
/** The second point of the secant, from the first. */
const FIRST_MOVE = 1e-4;

/** The motion nearest to an edge; where the search does not come to rest, the point of the edge where it began. */
export function motionFrom({ z, answers }: Edge, { sensors, tickS, shaping, gains }: Loop): Motion {
  const sizes = z.map((point, index) =>
    magnitude(oneMinusLoop(loopParts(shaping, point, answers[index]!), gains)),
  );
  const start = z[sizes.indexOf(Math.min(...sizes))]!;
  const lack = (point: Complex) => oneMinusLoop(loopParts(shaping, point, sensors(point)), gains);
  let [before, now] = [start, { re: start.re + FIRST_MOVE, im: start.im }];
  let [lackBefore, lackNow] = [lack(before), lack(now)];
  for (let pass = 0; pass < PASSES; pass++) {
    const move = over(times(lackNow, minus(now, before)), minus(lackNow, lackBefore));
    [before, lackBefore] = [now, lackNow];
    now = minus(now, move);
    if (!(magnitude(now) > 0.5 && magnitude(now) < 2)) break;
    if (magnitude(move) < AT_REST) return motionAt(now, tickS);
    lackNow = lack(now);
  }
  return motionAt(start, tickS);
}

function motionAt(z: Complex, tickS: number): Motion {
  return { growthPerS: Math.log(magnitude(z)) / tickS, swingRadPerS: Math.abs(angleOf(z)) / tickS };
}
