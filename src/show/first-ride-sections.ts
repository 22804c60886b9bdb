/**
 * What does a first-ride plan say? Its sections from the stand to full ceilings, each with what to set, what to check, what to
 * expect, when to stop; the numbers are those of the kept profile on its rig, as simulated.
 */
import {
  STAGE_HEADROOM_SHARE,
  type Ceilings,
  type FirstRidePlan,
  type StagePlan,
  type StageRide,
} from '../explain/first-ride.js';
import { hasFailed } from '../measure/profile-result.js';
import type { KeptFile } from '../quantity/kept-file.js';
import { CAUTIONS } from './cautions.js';
import { changeTexts } from './first-ride-changes.js';
import { endsText, gainRows, limitSentences } from './kept-sentences.js';
import { listed } from './margin-view.js';
import { numberText, pitchText, shareText, timeText } from './quantities.js';

/** What a line of a section is for. */
export type PlanItemKind = 'set' | 'check' | 'expect' | 'stop' | 'know';

/** One line of a section. */
export interface PlanItem {
  kind: PlanItemKind;
  text: string;
}

/** A section of the plan. */
export interface PlanSection {
  title: string;
  items: PlanItem[];
}

const set = (text: string): PlanItem => ({ kind: 'set', text });
const check = (text: string): PlanItem => ({ kind: 'check', text });
const expect = (text: string): PlanItem => ({ kind: 'expect', text });
const stop = (text: string): PlanItem => ({ kind: 'stop', text });
const know = (text: string): PlanItem => ({ kind: 'know', text });

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

function ceilingsText({ driveA, brakeA }: Ceilings): string {
  return `drive ceiling ${driveA} A, brake ceiling ${brakeA} A`;
}

/** The rate that is tried by hand. */
const HAND_DEG_PER_S = 20;

function onTheStand({ kept, free }: FirstRidePlan): PlanSection {
  const { gains, shaping } = kept.profile;
  const { proportionalAPerDeg, rateAPerDegPerS, integralAPerDegS } = gains;
  const amperes = (currentA: number) => `${numberText(currentA, 'currentA')} A`;
  const trim = shaping.restTrimNoseUpDeg;
  const level = trim === 0 ? 'level' : pitchText((-trim * Math.PI) / 180);
  const integral =
    integralAPerDegS === 0
      ? 'The integral gain is 0: held still, the request does not creep.'
      : `The integral gain lets the request creep by ${integralAPerDegS} A a second for each degree, to ` +
        `${shaping.integralLimitA} A at most: a wheel that hangs free goes on turning for a while after the deck is level again.`;
  return {
    title: 'On a stand, wheel off the ground, nobody near the wheel',
    items: [
      set(`${ceilingsText(free)}; every other number as on the card.`),
      check(
        `Read every number back from the controller and hold it against the card (${gainRows(kept).length} numbers, ` +
          `hash ${kept.numbers}).`,
      ),
      check(
        'The sign: push the nose down by hand. The wheel has to turn as if to roll the board forward, towards the nose. Push ' +
          'the tail down: it has to turn backward.',
      ),
      ...signTexts(kept).map(know),
      expect(
        `With the deck held still the controller asks for ${proportionalAPerDeg} A for each degree away from ${level}: the ceiling ` +
          `of ${free.driveA} A is reached at ${numberText(free.driveA / proportionalAPerDeg, 'angleDeg')}° already. Level, the wheel rests.`,
      ),
      expect(
        `Turned nose down at ${HAND_DEG_PER_S}° a second it asks for ${amperes(rateAPerDegPerS * HAND_DEG_PER_S)} more, as ` +
          'long as it turns.',
      ),
      expect(integral),
      stop(
        'The wheel turns the other way, turns at once to full speed, shivers, or turns with the deck at rest and level: stop, ' +
          'take the pack off, find out why. Nobody stands on it before.',
      ),
    ],
  };
}

/** What the simulation says of gains that come onto the board with the other sign. */
function signTexts({ slips }: KeptFile): string[] {
  return slips
    .filter(({ slip, key }) => slip === 'the other sign' && key === 'proportionalAPerDeg')
    .map(({ failures, runs, soonestS, ending }) => {
      const start = `In the simulation a proportional gain with the other sign falls in ${failures} of ${runs} runs`;
      return soonestS === null
        ? `${start}.`
        : `${start}; the soonest ${endsText(ending)} at ${timeText(soonestS)}.`;
    });
}

function byHand({ free }: FirstRidePlan): PlanSection {
  return {
    title: 'On the ground, held by hand, nobody on it',
    items: [
      set(`${ceilingsText(free)}.`),
      check(
        'Tip the nose down a little by hand: the board has to roll forward under the hand and push back; let it come level.',
      ),
      check('The same with the tail. Both ways it has to feel the same.'),
      check(
        'Step off the foot sensor, or lift the foot: the motor has to let go, every time, standing and rolling.',
      ),
      stop('It rolls away from the hand the wrong way, does not let go, or hums and shivers under the hand.'),
    ],
  };
}

function ridden({ stage, ceilings, holds, rides, below }: StagePlan, { kept }: FirstRidePlan): PlanSection {
  const { name, upToKmPerH } = stage;
  const what = stage.rides.map((ride) => ride.name).join('; ');
  return {
    title: `${name}: up to ${upToKmPerH} km/h`,
    items: [
      set(`${ceilingsText(ceilings)}.`),
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
      stop(
        `The nose moves twice as far as that, the board asks for the ceiling for longer than a moment, or it feels ` +
          `anything but ${listed(kept.feel.words)}.`,
      ),
    ],
  };
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
  if (below === null) return 'Not lower than in the stage before.';
  const { ceilings, worst } = below;
  const { result, ride, rider } = worst;
  const with_ = `Why not lower: with ${ceilings.driveA} A and ${ceilings.brakeA} A ${ride} under ${rider}`;
  return hasFailed(result)
    ? `${with_} ${endsText(result.outcome.kind)} at ${timeText(result.outcome.atS)}.`
    : `${with_} keeps only ${shareText(result.metrics.leastHeadroomShare ?? 0)} of headroom.`;
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
