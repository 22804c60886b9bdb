/**
 * Where no numbers in a profile help, how much of what else would? For each limit some levers, from what surely helps, if anything
 * does, to nearly what is there now; which sizes do help is simulated.
 */
import type { RankedCell } from '../measure/profile-result.js';
import { LEVERS, type Lever, type LeverName } from './levers.js';
import type { Makings } from './makings.js';

/** Which levers there are for a cause; those that the ride or the rider can move are last. */
const LEVERS_OF: Readonly<Record<string, readonly LeverName[]>> = {
  'voltage ceiling': ['cells in series', 'state of charge', 'speed'],
  'low pack': ['state of charge', 'cells in series', 'speed'],
  'current ceiling': ['drive ceiling', 'brake ceiling', 'haste', 'speed'],
  'pack ceiling': ['current out of the pack', 'current into the pack', 'haste', 'speed'],
  'loop delay': ['ticks of delay'],
  'noise of the gyro': ['gyro noise'],
  "the rider's delay": ["the rider's delay"],
  "the rider's stiffness": ['balance frequency'],
  "the rider's tremor": ['tremor'],
  grip: ['grip', 'haste', 'speed'],
  'rough road': ['speed'],
  "the tyre's own frequency": ['stiffness of the legs', 'speed'],
  'bumps and steps': ['speed'],
  slope: ['speed', 'haste'],
  'noise of the accelerometer': ['accelerometer noise'],
};

/** One way out: what is there now, at its worst in the cells, and sizes from what surely helps to nearly that. */
export interface WayOut {
  lever: LeverName;
  unit: string;
  now: number;
  sizes: readonly number[];
  change: Lever['change'];
}

/** The ways out of a limit in cells that it fells; those with nothing to move are left out. */
export function waysOut(cause: string, cells: readonly Makings[]): WayOut[] {
  return (LEVERS_OF[cause] ?? []).flatMap((lever): WayOut[] => {
    const { unit, better, read, enough, step, change }: Lever = LEVERS[lever];
    const towards = better === 'more' ? 1 : -1;
    const lacks = (makings: Makings) => towards * (enough(read(makings), makings) - read(makings));
    const worst = cells.reduce((most, other) => (lacks(other) > lacks(most) ? other : most));
    const now = read(worst);
    const from = enough(now, worst);
    const count = Math.max(0, Math.ceil(lacks(worst) / step(now) - WHOLE));
    const sizes = Array.from({ length: count }, (_, index) => from - towards * index * step(now));
    return sizes.length === 0 ? [] : [{ lever, unit, now, sizes, change }];
  });
}

/** What rounding may add to a whole count of steps. */
const WHOLE = 1e-9;

/**
 * A way out that was looked for: the sizes that help, from the one nearest to what is now to the farthest from it, both null where
 * none does; and the cells that fall with the nearest and stood before.
 */
export interface WayFound extends Pick<WayOut, 'lever' | 'unit' | 'now'> {
  helpsFrom: number | null;
  helpsTo: number | null;
  alsoFells: RankedCell[];
}

/** What else would help against a limit: in which cells that it fells, under the profile or its reference, and how much. */
export interface LimitWays {
  cause: string;
  isUnderReference: boolean;
  cells: RankedCell[];
  ways: WayFound[];
}
