/**
 * What does a first-ride plan say? Its sections from the stand to full ceilings, each with what to set, what to check, what to
 * expect, when to stop; the numbers are those of the kept profile on its rig, as simulated.
 */
import {
  STAGE_HEADROOM_SHARE,
  type FirstRidePlan,
  type StagePlan,
  type StageRide,
} from '../explain/first-ride.js';
import { hasFailed } from '../measure/profile-result.js';
import type { KeptFile } from '../quantity/kept-file.js';
import { CAUTIONS } from './cautions.js';
import { changeTexts } from './first-ride-changes.js';
import { check, expect, know, set, stop, type PlanSection } from './first-ride-item.js';
import { byHand, ceilingsText, helpsText, onTheStand } from './first-ride-stand.js';
import { endsText, limitSentences } from './kept-sentences.js';
import { listed } from './margin-view.js';
import { numberText, pitchText, shareText, timeText } from './quantities.js';

/** The sections of the plan, in the order in which they are gone through. */
export function firstRideSections(plan: FirstRidePlan): PlanSection[] {
  return [
    { title: 'Before anything', items: CAUTIONS.map(know) },
    onTheStand(plan),
    byHand(plan),
    ...plan.stages.map((stage) => ridden(stage, plan)),
    fullCeilings(plan),
    { title: 'If it does not feel as it should', items: changeTexts(plan).map(know) },
  ];
}

function ridden({ stage, ceilings, holds, rides, below }: StagePlan, { kept }: FirstRidePlan): PlanSection {
  const { name, upToKmPerH } = stage;
  const what = stage.rides.map((ride) => ride.name).join('; ');
  return {
    title: `${name}: up to ${upToKmPerH} km/h`,
    items: [
      set(`${ceilingsText(ceilings)}${helpsText(kept, 'on')}.`),
      check(
        `Ride: ${what}. Dry, closed ground, level unless it says otherwise; the pack well charged but not full, for a full one cannot take what braking gives.`,
      ),
      ...expectations(rides).map(expect),
      know(belowText(below)),
      ...(holds
        ? []
        : [
            know(
              `Even with these, the full ceilings, the simulation keeps less than ${shareText(STAGE_HEADROOM_SHARE)} of headroom, or falls: ride this stage last, slower, or not at all.`,
            ),
          ]),
      stop(stopText(kept)),
    ],
  };
}

/** When a ride is to be ended; a profile that no word fits promises nothing that it could feel unlike. */
function stopText({ feel }: KeptFile): string {
  const signs = [
    'The nose moves twice as far as that',
    'the deck goes soft underfoot, as at its ceiling, for longer than a moment',
  ];
  const unlike =
    feel.words.length === 0
      ? []
      : [`it feels other than promised (${listed(feel.words)}, under ${feel.rider})`];
  return `${[...signs, ...unlike].join(', or ')}.`;
}

function expectations(rides: readonly StageRide[]): string[] {
  const standing = rides.filter(({ result }) => !hasFailed(result));
  const fallen = rides.filter(({ result }) => hasFailed(result));
  const most = (of: (ride: StageRide) => number) => standing.reduce((a, b) => (of(b) > of(a) ? b : a));
  const texts = fallen.map(
    ({ ride, rider, result }) =>
      `In the simulation ${ride} under ${rider} ${endsText(result.outcome.kind)} at ${timeText(result.outcome.atS)}.`,
  );
  if (standing.length === 0) return texts;
  const pitchOf = ({ result: { metrics } }: StageRide) =>
    Math.max(metrics.peakNoseDownRad, metrics.peakNoseUpRad);
  const currentOf = ({ result }: StageRide) => result.metrics.peakCurrentA;
  const headroomOf = ({ result }: StageRide) => result.metrics.leastHeadroomShare ?? 0;
  const [pitch, current] = [most(pitchOf), most(currentOf)];
  const tight = most((ride) => -headroomOf(ride));
  const { peakNoseDownRad, peakNoseUpRad } = pitch.result.metrics;
  const tilt = pitchText(peakNoseDownRad >= peakNoseUpRad ? peakNoseDownRad : -peakNoseUpRad);
  return [
    ...texts,
    `The deck moves to ${tilt} at most (${pitch.ride}, ${pitch.rider}), the motor takes up to ` +
      `${numberText(currentOf(current), 'currentA')} A (${current.ride}, ${current.rider}), and at least ` +
      `${shareText(headroomOf(tight))} of headroom is left (${tight.ride}, ${tight.rider}).`,
  ];
}

function belowText(below: StagePlan['below']): string {
  if (below === null) return 'Lower ones were not tried: from stage to stage they only rise.';
  const { ceilings, worst } = below;
  const { result, ride, rider } = worst;
  const lower = `Why not lower: with ${ceilings.driveA} A and ${ceilings.brakeA} A ${ride} under ${rider}`;
  return hasFailed(result)
    ? `${lower} ${endsText(result.outcome.kind)} at ${timeText(result.outcome.atS)}.`
    : `${lower} keeps only ${shareText(result.metrics.leastHeadroomShare ?? 0)} of headroom.`;
}

function fullCeilings({ kept, full }: FirstRidePlan): PlanSection {
  const { figures, cells, rig, weakest } = kept;
  const people = listed(rig.riders.map(({ name }) => name));
  const falls = figures.failures === 0 ? 'none fell' : `${figures.failures} fell`;
  const notFor =
    figures.notFor.length === 0
      ? []
      : [know(`Not for ${listed(figures.notFor)}: in the simulation they fall with it.`)];
  return {
    title: 'Full ceilings, one new thing at a time',
    items: [
      set(`${ceilingsText(full)}.`),
      know(`Simulated in ${cells.count} runs under ${people}: ${falls}.`),
      ...notFor,
      ...limitSentences(kept).map(know),
      ...weakest.map(({ says }) => know(`Weak point: ${says}.`)),
      know(
        'Keep well inside these limits: there the simulation falls, and the board itself may fall sooner.',
      ),
    ],
  };
}
