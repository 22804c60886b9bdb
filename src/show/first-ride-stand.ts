/**
 * What is to be checked before anybody stands on the board? The sign, what the controller asks for, and that it lets go: first with
 * the wheel off the ground, then held by hand.
 */
import { errorForDeg } from '../control/law.js';
import type { Ceilings, FirstRidePlan } from '../explain/first-ride.js';
import type { BoardFile } from '../quantity/board-file.js';
import type { KeptFile } from '../quantity/kept-file.js';
import { torqueConstantOf } from '../quantity/motor-constant.js';
import { GRAVITY_M_PER_S2, M_PER_S_PER_KM_PER_H } from '../quantity/units.js';
import { check, expect, know, set, stop, type PlanSection } from './first-ride-item.js';
import { endsText, gainRows, numberLabel } from './kept-sentences.js';
import { listed } from './margin-view.js';
import { numberText, pitchText, timeText } from './quantities.js';

/** Ceilings as they are set. */
export function ceilingsText({ driveA, brakeA }: Ceilings): string {
  return `drive ceiling ${driveA} A, brake ceiling ${brakeA} A`;
}

/** The rate that is tried by hand. */
const HAND_DEG_PER_S = 20;

/** With the wheel off the ground: signs, and what the controller asks for. */
export function onTheStand({ kept, free }: FirstRidePlan): PlanSection {
  return {
    title: 'On a stand, wheel off the ground, nobody near the wheel',
    items: [
      set(
        `${ceilingsText(free)}${helpsText(kept, 'off')}; every other number as on the card, or as your controller sheet has it.`,
      ),
      know(
        'A ceiling is the most motor current that the controller gives, driving or braking, under whatever name it has there. ' +
          'Where it has none to be set, go no further.',
      ),
      ...helpsOf(kept).map((help) => know(WHY_OFF[help])),
      check(
        `Read every number back from the controller and hold it against what you typed (${gainRows(kept).length} numbers, ` +
          `on the card under hash ${kept.numbers}).`,
      ),
      check(
        'The sign: push the nose down by hand. The wheel has to turn as if to roll the board forward, towards the nose. Push ' +
          'the tail down: it has to turn backward.',
      ),
      ...(kept.profile.gains.rateAPerDegPerS === 0 ? [] : [check(RATE_SIGN)]),
      ...signTexts(kept).map(know),
      ...requestTexts(kept, free).map(expect),
      stop(
        `The wheel turns the other way, shivers, or runs up to full speed with the deck held ${levelText(kept)}: switch off and ` +
          'find out why. Nobody stands on it before.',
      ),
    ],
  };
}

/** What in a profile answers the current itself: a deck in the hand cannot end that, so that it is off as long as it is held. */
type Help = 'headroom lift' | 'load feed-forward';

/**
 * At its ceiling there is no headroom: the set-point rises, a held nose does not, and the request stays at the ceiling. A load that
 * is fed forward comes back as load: to 1 / (1 - share - P x nose up) of it, without end where that is not above 0.
 */
const WHY_OFF: Readonly<Record<Help, string>> = {
  'headroom lift':
    'Why off: at its ceiling the headroom lift raises the pitch that the controller aims for. A nose that is held cannot follow, and the ' +
    'wheel would run on with the deck level.',
  'load feed-forward':
    'Why off: the load feed-forward (current share and nose up 0 where it has no switch) goes along with a current that lasts. A ride ' +
    'takes the load away again, a hand does not: with the deck held still the request would go on changing by itself.',
};

function helpsOf({ profile }: KeptFile): Help[] {
  const { headroomLift: lift, loadFeedForward: load } = profile.shaping;
  const isLoadAnswered = load !== undefined && (load.currentShare !== 0 || load.noseUpDegPerA !== 0);
  return [
    ...(lift === undefined ? [] : ['headroom lift' as const]),
    ...(isLoadAnswered ? ['load feed-forward' as const] : []),
  ];
}

/** What a profile has besides its gains that answers the current, and how it is to be set: `; headroom lift off`; empty for none. */
export function helpsText(kept: KeptFile, how: 'off' | 'still off' | 'on'): string {
  const helps = helpsOf(kept);
  return helps.length === 0 ? '' : `; ${listed(helps)} ${how}`;
}

/** The pitch at which nothing is asked for. */
function levelText({ profile }: KeptFile): string {
  const trim = profile.shaping.restTrimNoseUpDeg;
  return trim === 0 ? 'level' : pitchText((-trim * Math.PI) / 180);
}

/** What the controller asks for with the deck in the hand. */
function requestTexts(kept: KeptFile, free: Ceilings): string[] {
  const { gains, shaping } = kept.profile;
  const { proportionalAPerDeg, rateAPerDegPerS, integralAPerDegS } = gains;
  const { progressiveStiffnessPerDeg: progressivePerDeg } = shaping;
  const moreA = numberText(rateAPerDegPerS * HAND_DEG_PER_S, 'currentA');
  const reached =
    proportionalAPerDeg === 0
      ? ''
      : `: the ceiling of ${free.driveA} A is reached at ${numberText(errorForDeg({ proportionalAPerDeg, progressivePerDeg }, free.driveA), 'angleDeg')}° already`;
  const growing =
    progressivePerDeg === 0
      ? ''
      : `, and ${Number((100 * progressivePerDeg).toPrecision(3))} % more of all of it for each such degree`;
  const integral =
    integralAPerDegS === 0
      ? 'The integral gain is 0: held still, the request does not creep.'
      : `The integral gain lets the request creep by ${integralAPerDegS} A a second for each degree, to ` +
        `${shaping.integralLimitA} A at most: a wheel that hangs free goes on turning for a while after the deck is level again.`;
  return [
    `With the deck held still the controller asks for ${proportionalAPerDeg} A for each degree away from ${levelText(kept)}${growing}${reached}.`,
    `Turned nose down at ${HAND_DEG_PER_S}° a second it asks for ${moreA} A more, as long as it turns.`,
    freeWheelText(kept, free),
    integral,
  ];
}

/** How fast a wheel speeds up that nothing holds back, so that nobody takes it for a fault or waits for the end of it. */
function freeWheelText({ rig }: KeptFile, { driveA }: Ceilings): string {
  const { wheel, motor } = rig.board;
  const speedsUpMPerS2 = ((torqueNmPerA(motor) * driveA) / wheel.inertiaKgM2) * wheel.radiusM;
  return (
    `Nothing holds a free wheel back: with ${driveA} A it gains ${(speedsUpMPerS2 / M_PER_S_PER_KM_PER_H).toFixed(0)} km/h a ` +
    'second, and would run up to full speed. Tip the deck for a moment only. Held by hand it is hardly ever quite level: a wheel ' +
    'that turns slowly, now one way and now the other, is no fault.'
  );
}

/** A deck that is held still shows nothing of the rate gain: it has to be seen while the deck turns. */
const RATE_SIGN =
  'The sign of the rate gain: from level, turn the nose down quickly. The wheel has to start forward at once. Where it first jerks ' +
  'backward and turns forward only then, the rate gain has the other sign.';

/** What the simulation says of the two gains that come onto the board with the other sign. */
function signTexts({ slips }: KeptFile): string[] {
  const seen = ['proportionalAPerDeg', 'rateAPerDegPerS'];
  return slips
    .filter(({ slip, key }) => slip === 'the other sign' && seen.includes(key))
    .map(({ key, failures, runs, soonestS, ending }) => {
      const start = `In the simulation a ${numberLabel(key)} with the other sign falls in ${failures} of ${runs} runs`;
      return soonestS === null
        ? `${start}.`
        : `${start}; the soonest ${endsText(ending)} at ${timeText(soonestS)}.`;
    });
}

/** On the ground, with nobody on it. */
export function byHand({ kept, free }: FirstRidePlan): PlanSection {
  const { wheel, motor } = kept.rig.board;
  const pushN = (torqueNmPerA(motor) * free.driveA) / wheel.radiusM;
  return {
    title: 'On the ground, held by hand, nobody on it',
    items: [
      set(`${ceilingsText(free)}${helpsText(kept, 'still off')}.`),
      check(
        'Tip the nose down a little by hand: the board has to roll forward under the hand and push back; let it come level.',
      ),
      check('The same with the tail. Both ways it has to feel the same.'),
      check(
        'Take away by hand what tells it that somebody stands on it, such as the weight on a foot sensor: the motor has to let go, ' +
          'every time, at rest and rolling.',
      ),
      expect(
        `With this ceiling the wheel pushes with ${pushN.toFixed(0)} N at most, as much as a weight of ` +
          `${(pushN / GRAVITY_M_PER_S2).toFixed(1)} kg. Hold it with both hands.`,
      ),
      stop('It rolls away from the hand the wrong way, does not let go, or hums and shivers under the hand.'),
    ],
  };
}

/** Torque of an ampere, Nm; a checked board gives one of both constants. */
function torqueNmPerA({ torqueConstantNmPerA, speedConstantRpmPerV = NaN }: BoardFile['motor']): number {
  return torqueConstantNmPerA ?? torqueConstantOf(speedConstantRpmPerV);
}
