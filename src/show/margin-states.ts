/**
 * Does the pitch loop hold, ride by ride, and if not, which motion grows? In sentences.
 */
import { doublingS, fateOf, type Fate, type LoopState } from '../linear/growth.js';
import type { Mode } from '../linear/modes.js';
import {
  grouped,
  hzText,
  listed,
  moversOf,
  pointName,
  seenPoints,
  stateOf,
  type MarginView,
  type SeenPoint,
} from './margin-view.js';
import type { SpeedUnit } from './quantities.js';

const ROLLS =
  "friction at rest against the rider's lasting lean, a slow rolling to and fro that is not the pitch loop's doing. " +
  'The margins there are about everything else.';

const CREEPS = 'That is slow enough to be met with a shift of weight, but it has no margins.';

/** Whether the loop holds; rides of which the same is to be said share a sentence. */
export function stateSentences({ points }: MarginView, unit: SpeedUnit): string[] {
  const seen = seenPoints(points);
  const rides = (some: readonly { speedKmPerH: number; gradePercent: number }[]) =>
    listed(some.map((point) => (point.speedKmPerH === 0 ? 'standing' : `at ${pointName(point, unit)}`)));
  const within = (state: LoopState) => seen.filter((point) => stateOf(point) === state);
  const held = within('holds');
  const cut = points.filter(({ report }) => report === null);
  const growing = (fate: Fate) => (point: SeenPoint) => growingText(point, fate);
  return [
    ...(held.length > 0 ? [`The pitch loop holds ${rides(held)}: every motion dies out.`] : []),
    ...within('rolls').map(
      (point) => `The pitch loop holds ${rides([point])}, but ${growingText(point, 'rolls')}: ${ROLLS}`,
    ),
    ...grouped(within('creeps'), growing('creeps')).map(
      ([what, some]) => `The pitch loop has nothing to spare ${rides(some)}: ${what}. ${CREEPS}`,
    ),
    ...grouped(within('lost'), growing('grows')).map(
      ([what, some]) => `The pitch loop is lost ${rides(some)}: ${what}. It has no margins there.`,
    ),
    ...(cut.length > 0
      ? [`A ceiling cuts the steady ride ${rides(cut)}: there is nothing steady to look at.`]
      : []),
  ];
}

/** What grows in a ride: `deck grows (at 81 Hz, doubling in 0.1 s)`. */
function growingText(point: SeenPoint, fate: Fate): string {
  const isStanding = point.speedKmPerH === 0;
  return listed(point.report.modes.filter((mode) => fateOf(mode, isStanding) === fate).map(motionText));
}

function motionText(mode: Mode): string {
  const beat = mode.swingRadPerS > 1e-6 ? `at ${hzText(mode.frequencyHz)}` : 'without a swing';
  const movers = moversOf(mode);
  return `${listed(movers)} ${movers.length > 1 ? 'grow' : 'grows'} (${beat}, doubling in ${doublingS(mode).toFixed(1)} s)`;
}
