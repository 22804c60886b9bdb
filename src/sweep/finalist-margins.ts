/**
 * How far from being lost is a finalist? Its margins on steady rides, each where it is smallest.
 */
import { hasMargins, loopStateOf } from '../linear/growth.js';
import type { Margin, Margins } from '../linear/margins.js';
import type { RideLook } from '../linear/ride-report.js';

/** A margin at the ride where it is least; `radPerS` is null where there is none at any frequency. */
export interface WorstMargin extends Margin {
  rider: string;
  speedKmPerH: number;
}

/** Margins that a finalist is told by. */
const TOLD = ['disk', 'gainUp', 'gainDown', 'phaseRad', 'delayS'] as const;

/** The margins of a profile, each at its own worst ride; a loop that does not hold has none: 0, and 1 for gains. */
export type FinalistMargins = Record<(typeof TOLD)[number], WorstMargin>;

const NONE: Pick<Margins, (typeof TOLD)[number]> = {
  disk: { value: 0, radPerS: null },
  gainUp: { value: 1, radPerS: null },
  gainDown: { value: 1, radPerS: null },
  phaseRad: { value: 0, radPerS: null },
  delayS: { value: 0, radPerS: null },
};

/** The margins of one steady ride. */
export interface RideMargins {
  rider: string;
  speedKmPerH: number;
  margins: Pick<Margins, (typeof TOLD)[number]>;
}

/** The margins of a steady ride, from its report. */
export function marginsOfRide(
  ride: Omit<RideMargins, 'margins'>,
  { modes, margins }: Pick<RideLook, 'modes' | 'margins'>,
): RideMargins {
  const holds = hasMargins(loopStateOf(modes, ride.speedKmPerH === 0));
  return { ...ride, margins: holds ? margins : NONE };
}

/** Each margin at the ride where it is smallest; null where there is no ride. */
export function worstMargins(rides: readonly RideMargins[]): FinalistMargins | null {
  if (rides.length === 0) return null;
  const worst = (told: (typeof TOLD)[number]): WorstMargin => {
    const each = rides.map(({ margins, ...ride }) => ({ ...ride, ...margins[told] }));
    // The gain may shrink to a share: nearest to being lost where that is greatest.
    return each.reduce((a, b) => ((told === 'gainDown' ? b.value > a.value : b.value < a.value) ? b : a));
  };
  return Object.fromEntries(TOLD.map((told) => [told, worst(told)])) as FinalistMargins;
}
