/**
 * Does the pitch loop hold, ride by ride, and if not, which motion grows? In sentences.
 */
import { doublingS, fateOf } from '../linear/growth.js';
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

/** Whether the loop holds; rides of which the same is to be said share a sentence. */
export function stateSentences({ points }: MarginView, unit: SpeedUnit): string[] {
  const seen = seenPoints(points);
  const rides = (some: readonly { speedKmPerH: number; gradePercent: number }[]) =>
    listed(some.map((point) => (point.speedKmPerH === 0 ? 'standing' : `at ${pointName(point, unit)}`)));
  const held = seen.filter((point) => stateOf(point) === 'holds');
  const creeping = seen.filter((point) => stateOf(point) === 'creeps');
  const lost = grouped(
    seen.filter((point) => stateOf(point) === 'lost'),
    growingText,
  );
  const cut = points.filter(({ report }) => report === null);
  return [
    ...(held.length > 0 ? [`The pitch loop holds ${rides(held)}: every motion dies out.`] : []),
    ...creeping.map((point) => `The pitch loop holds ${rides([point])}, but ${creepText(point)}`),
    ...lost.map(
      ([growing, some]) =>
        `The pitch loop is lost ${rides(some)}: ${growing} by itself. It has no margins there.`,
    ),
    ...(cut.length > 0
      ? [`A ceiling cuts the steady ride ${rides(cut)}: there is nothing steady to look at.`]
      : []),
  ];
}

/** What grows where the loop is lost: `deck grows (81 Hz, doubling in 0.1 s)`. */
function growingText(point: SeenPoint): string {
  const isStanding = point.speedKmPerH === 0;
  return listed(point.report.modes.filter((mode) => fateOf(mode, isStanding) === 'grows').map(motionText));
}

function creepText(point: SeenPoint): string {
  const isStanding = point.speedKmPerH === 0;
  const creeping = point.report.modes.filter((mode) => fateOf(mode, isStanding) === 'creeps');
  const isTravel = creeping.every((mode) => moversOf(mode)[0] === 'travel');
  const why =
    isStanding && isTravel
      ? "at rest, friction works against the rider's lasting lean; a slow rolling to and fro, not the pitch loop"
      : 'slow enough to be met with a shift of weight';
  return `${listed(creeping.map(motionText))}: ${why}. The margins there are about everything else.`;
}

function motionText(mode: Mode): string {
  const beat = mode.swingRadPerS > 1e-6 ? `at ${hzText(mode.frequencyHz)}` : 'without a swing';
  const movers = moversOf(mode);
  return `${listed(movers)} ${movers.length > 1 ? 'grow' : 'grows'} (${beat}, doubling in ${doublingS(mode).toFixed(1)} s)`;
}
