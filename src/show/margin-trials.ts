/**
 * Did the simulation lose the loop where the margins say? What was tried, and where it disagreed.
 */
import type { Confirmation, Trial } from '../linear/confirm.js';
import { hasMargins } from '../linear/growth.js';
import {
  factorText,
  grouped,
  heldPoints,
  listed,
  pointName,
  seenPoints,
  stateOf,
  type MarginView,
  type SeenPoint,
} from './margin-view.js';
import type { SpeedUnit } from './quantities.js';

/** Names of what is tried. */
const TRIED = { delay: 'delay', gainUp: 'more gain', gainDown: 'less gain' } as const;

type TriedName = keyof typeof TRIED;

interface Tried {
  point: SeenPoint;
  name: TriedName;
  confirmation: Confirmation;
}

/** What the simulation says of the margins. */
export function trialSentences({ points }: MarginView, unit: SpeedUnit): string[] {
  const seen = seenPoints(points);
  const tried = heldPoints(points).flatMap(triedAt);
  const recoveries = seen.filter((point) => !hasMargins(stateOf(point))).flatMap(triedAt);
  const agreeing = tried.filter(({ confirmation }) => confirmation.agrees);
  const others = tried.filter(({ confirmation }) => !confirmation.agrees);
  const example = agreeing.filter(({ point }) => point === (agreeing.at(-1) ?? tried[0])?.point);
  return [
    ...(agreeing.length > 0
      ? [
          `Tried in the simulation: ${agreeing.length} of ${tried.length} margins agree. ` +
            `${capital(pointName(example[0]!.point, unit))}: ${listed(example.map(outcomeText))}.`,
        ]
      : []),
    ...others.map((one) => disagreementText(one, unit)),
    ...recoveryTexts(recoveries, unit),
  ];
}

/** What brings a lost loop back, as far as it was tried. */
function recoveryTexts(tried: readonly Tried[], unit: SpeedUnit): string[] {
  const calming = tried.filter(
    ({ confirmation: { inside, outside } }) => inside.growthPerS > 0 && outside.growthPerS < 0,
  );
  const byChange = grouped(calming, ({ confirmation }) => changeText(confirmation.outside));
  return byChange.map(
    ([change, some]) =>
      `Tried where it does not hold (${listed(some.map(({ point }) => pointName(point, unit)))}): with ${change} it calms.`,
  );
}

function triedAt(point: SeenPoint): Tried[] {
  return (['delay', 'gainUp', 'gainDown'] as const).flatMap((name) => {
    const confirmation = point.report.tried[name];
    return confirmation === null ? [] : [{ point, name, confirmation }];
  });
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

function changeText({ change }: Trial): string {
  if (change.kind === 'gain') return `${factorText(change.factor)} the gain`;
  return `${change.ticks} tick${change.ticks === 1 ? '' : 's'} more`;
}

function doesText({ growthPerS }: Trial): string {
  return growthPerS > 0 ? 'grows' : 'calms';
}

function outcomeText({ confirmation: { inside, outside } }: Tried): string {
  return `with ${changeText(inside)} it ${doesText(inside)}, with ${changeText(outside)} it ${doesText(outside)}`;
}

function disagreementText(tried: Tried, unit: SpeedUnit): string {
  const { point, name } = tried;
  const why =
    stateOf(point) === 'rolls'
      ? ' Something else grows there by itself and may hide it.'
      : ' Do not rely on this margin.';
  return `The simulation disagrees about ${TRIED[name]}, ${pointName(point, unit)}: ${outcomeText(tried)}.${why}`;
}
