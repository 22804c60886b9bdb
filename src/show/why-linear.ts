/**
 * What does the linear view say about a cause? One sentence with its number, where there is one that fits.
 */
import type { FeelRide } from '../explain/feel-readings.js';
import { hasMargins, loopStateOf } from '../linear/growth.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import { delayText, hzText, listed, moversOf, paceText } from './margin-view.js';
import type { FeelView } from './why-view.js';

type Report = NonNullable<FeelRide['report']>;

/** What is said of a ride, and of one whose loop holds. */
type Saying = (report: Report, isHeld: boolean) => string | null;

/**
 * The sentence for a cause; null where the linear view has nothing to say about it, or has not been made. What lies in a rider
 * is said of the one who was looked at only.
 */
export function linearSentence(cause: string, feel: FeelView | null, rider: string): string | null {
  if (OF_THE_RIDER.includes(cause) && feel?.rider !== rider) return null;
  const seen = (feel?.rides ?? []).filter(({ report }) => report !== null);
  const ride = seen.find(({ speedKmPerH }) => speedKmPerH > 0) ?? seen[0];
  const say = SENTENCES[cause];
  if (ride === undefined || ride.report === null || say === undefined || feel === null) return null;
  const isHeld = hasMargins(loopStateOf(ride.report.modes, ride.speedKmPerH === 0));
  const said = say(ride.report, isHeld);
  return said === null ? null : `At ${where(ride)} under ${feel.rider} ${said}.`;
}

function where(ride: FeelRide): string {
  const pace = paceText({ speedKmPerH: ride.speedKmPerH }, 'km/h');
  return pace === 'standing' ? 'rest' : pace;
}

/** Motions faster than a shift of speed, Hz. */
const LEAST_HZ = 0.4;

function leastDamped({ modes }: Report): string | null {
  const mode = modes.find(({ frequencyHz }) => frequencyHz >= LEAST_HZ);
  if (mode === undefined) return null;
  return `the least damped motion is one of ${listed(moversOf(mode))} ${howDamped(mode)}`;
}

function howDamped({ frequencyHz, dampingRatio }: Report['modes'][number]): string {
  return `at ${hzText(frequencyHz)} with a damping ratio of ${dampingRatio.toFixed(2)}`;
}

/** The least damped motion that is mostly the tyre's. */
function tyreBounce({ modes }: Report): string | null {
  const mode = modes.find(({ shares }) => shares.tyre > 0.5);
  return mode === undefined ? null : `the bounce on the tyre is ${howDamped(mode)}`;
}

/** A loop that is lost has nothing to spare. */
function spareDelay({ margins: { delayS, phaseRad } }: Report, isHeld: boolean): string | null {
  if (!isHeld || !Number.isFinite(delayS.value)) return null;
  const phase = `${(phaseRad.value * DEG_PER_RAD).toFixed(0)}°`;
  return `the pitch loop could spare ${delayText(delayS.value)} of delay (${phase} of phase)`;
}

const stiffness = ({ deckStiffnessNmPerDeg: { at1Hz } }: Report) =>
  `the motor answers a deck that swings once a second with ${at1Hz.toFixed(1)} Nm per degree`;

/** Nor has noise a size in it. */
const noise = ({ gyroNoiseA }: Report, isHeld: boolean) =>
  isHeld ? `gyro noise alone moves the request by ${gyroNoiseA.toFixed(2)} A rms` : null;

const both =
  (...parts: Saying[]) =>
  (report: Report, isHeld: boolean) => {
    const said = parts.map((part) => part(report, isHeld)).filter((text) => text !== null);
    return said.length === 0 ? null : said.join(', and ');
  };

const SENTENCES: Readonly<Record<string, Saying>> = {
  'too little rate gain': leastDamped,
  'too much rate gain': both(noise, leastDamped),
  'too little proportional gain': stiffness,
  'too much proportional gain': both(stiffness, leastDamped),
  'integral wind-up': leastDamped,
  'filter lag': both(spareDelay, leastDamped),
  'loop delay': both(spareDelay, leastDamped),
  'noise of the gyro': noise,
  'progressive stiffness': stiffness,
  "the rider's delay": leastDamped,
  "the rider's stiffness": leastDamped,
  "the tyre's own frequency": tyreBounce,
};

const OF_THE_RIDER = ["the rider's delay", "the rider's stiffness", "the tyre's own frequency"];
