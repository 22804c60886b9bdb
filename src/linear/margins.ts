/**
 * How much may a loop change before it is lost? Gain, phase and delay margins one at a time, the disk margin for gain and
 * phase together, and the peak of the sensitivity, of any loop gain L with negative feedback whose closed loop is stable.
 *
 *   gain     L is real and below zero: the loop is lost when the gain grows, or shrinks, by -1 / L there
 *   phase    |L| = 1: angle from there to -1
 *   delay    the same crossings: the time whose lag turns L into -1
 *   disk     alpha = 1 / max |S - 1/2|, S = 1 / (1 + L): every factor on L inside the disk from (2 - alpha) / (2 + alpha) to
 *            (2 + alpha) / (2 - alpha), turned by up to 2 atan(alpha / 2), leaves the loop stable
 *            (P. Seiler, A. Packard, P. Gahinet, IEEE Control Systems 40:5 (2020) 78)
 */
import { angleOf, magnitude, minus, real, type Complex } from './complex.js';
import { sensitivity } from './loop-view.js';

/** A margin and where it is; infinite where there is none, and the frequency is null then. */
export interface Margin {
  value: number;
  radPerS: number | null;
}

/** The margins of a loop. Gain as a factor, phase in rad, delay in s, frequencies in rad/s. */
export interface Margins {
  /** Least factor above 1, and greatest below 1 (0 for none), that lose the loop. */
  gainUp: Margin;
  gainDown: Margin;
  /** The smallest turn, either way, that loses the loop. */
  phaseRad: Margin;
  delayS: Margin;
  disk: Margin;
  /** max |S|. */
  sensitivityPeak: Margin;
}

/** A loop gain at a frequency [rad/s]. */
export type Loop = (radPerS: number) => Complex;

/** Frequencies a grid has, evenly in their logarithm; between them crossings are found to the last digits. */
const GRID_COUNT = 500;

/** The margins of a loop over a range of frequencies. */
export function marginsOf(loop: Loop, range: { fromRadPerS: number; toRadPerS: number }): Margins {
  const grid = gridOf(range);
  const values = grid.map(loop);
  const unit = crossings(grid, values, { loop, height: (value) => magnitude(value) - 1 });
  const opposite = crossings(grid, values, { loop, height: ({ im }) => im }).filter((w) => loop(w).re < 0);
  const gains = opposite.map((radPerS) => ({ value: -1 / loop(radPerS).re, radPerS }));
  const phases = unit.map((radPerS) => ({ value: Math.abs(fromMinusOne(loop(radPerS))), radPerS }));
  const delays = unit.map((radPerS) => {
    const turn = fromMinusOne(loop(radPerS));
    return { value: (turn < 0 ? turn + 2 * Math.PI : turn) / radPerS, radPerS };
  });
  const none = { value: Infinity, radPerS: null };
  const least = (margins: Margin[]) => margins.reduce<Margin>((a, b) => (b.value < a.value ? b : a), none);
  const below = gains.filter(({ value }) => value < 1);
  const peakOf = (height: (value: Complex) => number) => peak(grid, values, { loop, height });
  const disk = peakOf((value) => magnitude(minus(sensitivity(value), real(0.5))));
  return {
    gainUp: least(gains.filter(({ value }) => value > 1)),
    gainDown: below.reduce<Margin>((a, b) => (b.value > a.value ? b : a), { value: 0, radPerS: null }),
    phaseRad: least(phases),
    delayS: least(delays),
    disk: { ...disk, value: 1 / disk.value },
    sensitivityPeak: peakOf((value) => magnitude(sensitivity(value))),
  };
}

/** The factors on the loop gain that a disk margin allows, and the turn [rad] it allows. */
export function allowedByDisk(disk: number): { gainDown: number; gainUp: number; phaseRad: number } {
  const gainUp = disk < 2 ? (2 + disk) / (2 - disk) : Infinity;
  return { gainDown: Math.max(0, (2 - disk) / (2 + disk)), gainUp, phaseRad: 2 * Math.atan(disk / 2) };
}

/** The angle from -1 to a number, rad: positive where more lag brings it there. */
function fromMinusOne({ re, im }: Complex): number {
  return angleOf({ re: -re, im: -im });
}

function gridOf({ fromRadPerS, toRadPerS }: { fromRadPerS: number; toRadPerS: number }): number[] {
  const ratio = toRadPerS / fromRadPerS;
  return Array.from({ length: GRID_COUNT }, (_, index) => fromRadPerS * ratio ** (index / (GRID_COUNT - 1)));
}

interface Search {
  loop: Loop;
  height: (value: Complex) => number;
}

/** Frequencies at which a height of the loop passes zero. */
function crossings(grid: readonly number[], values: readonly Complex[], { loop, height }: Search): number[] {
  return grid.flatMap((low, index) => {
    const high = grid[index + 1];
    if (high === undefined) return [];
    const [before, after] = [height(values[index]!), height(values[index + 1]!)];
    if (before === 0) return [low];
    return before * after < 0 ? [halved({ low, high, before }, (radPerS) => height(loop(radPerS)))] : [];
  });
}

function halved(
  { low, high, before }: { low: number; high: number; before: number },
  height: (radPerS: number) => number,
): number {
  let [from, to] = [low, high];
  for (let pass = 0; pass < 60 && to - from > 1e-13 * to; pass++) {
    const middle = Math.sqrt(from * to);
    if (height(middle) * before > 0) from = middle;
    else to = middle;
  }
  return Math.sqrt(from * to);
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The greatest height of the loop, its neighbourhood on the grid searched by golden section. */
function peak(
  grid: readonly number[],
  values: readonly Complex[],
  { loop, height }: Search,
): Margin & { radPerS: number } {
  const heights = values.map(height);
  const best = heights.reduce((at, value, index) => (value > heights[at]! ? index : at), 0);
  let [from, to] = [grid[Math.max(0, best - 1)]!, grid[Math.min(grid.length - 1, best + 1)]!].map(
    Math.log,
  ) as [number, number];
  const at = (logarithm: number) => height(loop(Math.exp(logarithm)));
  for (let pass = 0; pass < 60; pass++) {
    const [left, right] = [to - GOLDEN * (to - from), from + GOLDEN * (to - from)];
    if (at(left) > at(right)) to = right;
    else from = left;
  }
  const radPerS = Math.exp((from + to) / 2);
  const found = height(loop(radPerS));
  return found > heights[best]! ? { value: found, radPerS } : { value: heights[best]!, radPerS: grid[best]! };
}
