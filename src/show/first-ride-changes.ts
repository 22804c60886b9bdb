/**
 * What is to be changed when the board feels loose, sluggish, stiff, twitchy or buzzy? A sentence a feel, from what was tried in
 * the simulation on this rig.
 */
import type { ChangedAgainst, FeelChange, NumberChange } from '../explain/feel-changes.js';
import type { Nearness } from '../explain/feel.js';
import type { FirstRidePlan } from '../explain/first-ride.js';
import { PROFILE_FIELDS } from '../quantity/profile-fields.js';
import { numberLabel } from './kept-sentences.js';

/** How each feel shows itself to a rider. */
const FELT_AS: Readonly<Record<ChangedAgainst, string>> = {
  loose: 'Loose (the deck tips far under a small shift of weight)',
  sluggish: 'Sluggish (it comes back late)',
  stiff: 'Stiff (every unevenness comes through the deck)',
  twitchy: 'Twitchy (it swings on after every push, several times a second)',
  buzzy: 'Buzzy (it hums or shivers under the feet)',
};

/** What to change, feel by feel, and what to do with it. */
export function changeTexts({
  name,
  changes,
  kept,
}: Pick<FirstRidePlan, 'name' | 'changes' | 'kept'>): string[] {
  return [
    ...changes.map(changeText),
    `One change at a time, and again from the stand. Type what was felt: underfoot shortlist note ${name} "..." --felt ` +
      `twitchy=4; underfoot explain ${kept.origin.from} looks for the cause.`,
  ];
}

function changeText({ word, before, found }: FeelChange): string {
  const start = FELT_AS[word];
  if (before === null) {
    return (
      `${start}: nothing in the simulation speaks of it. Read the numbers back from the controller, then look for it in the ` +
      'machine: slack, bearings, the mount of the sensor.'
    );
  }
  const far = before.strength < FAR ? ' The simulation is far from it: read the numbers back first.' : '';
  if (found === null)
    return `${start}: of the small changes that were tried none lessens it without a new fall.${far}`;
  const { change, after, failures, scoreRatio } = found;
  const numbers = change.numbers.map(numberText).join(', ');
  const falls = failures === 0 ? 'nobody falls' : 'no more falls than before';
  const cost = `the cost goes to ${scoreRatio.toFixed(2)} of what it was`;
  return `${start}: ${numbers}. In the simulation ${nearText(before, after)}; ${falls}, ${cost}.${far}`;
}

/** Nearer to a feel than this part of its threshold it may well be felt (ours). */
const FAR = 0.4;

function nearText(before: Nearness, after: Nearness): string {
  const text = ({ reason: { measure, value, unit } }: Nearness) =>
    `${measure} ${`${Number(value.toPrecision(3))} ${unit}`.trimEnd()}`;
  const { word, side, threshold, unit, measure } = before.reason;
  const limit = `(${word} ${side} ${`${threshold} ${unit}`.trimEnd()})`;
  return measure === after.reason.measure
    ? `${text(before)}, then ${`${Number(after.reason.value.toPrecision(3))} ${unit}`.trimEnd()} ${limit}`
    : `${text(before)} ${limit}, then at most ${text(after)}`;
}

function numberText({ key, from, to }: NumberChange): string {
  const unit = PROFILE_FIELDS.find((field) => field.key === key)?.unit ?? '';
  return `${numberLabel(key)} from ${from} to ${`${to} ${unit}`.trimEnd()}`;
}
