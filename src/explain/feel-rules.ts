/**
 * When is a word for a feel said? Each word is a rule about a measured number, with its threshold and where that comes from. Every
 * threshold stands here.
 */
import type { Mode } from '../linear/modes.js';
import type { FeelWord } from '../quantity/feel-words.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import {
  comingLevelS,
  dampingOf,
  deckModes,
  doublingBelow,
  gyroNoise,
  meanOfCells,
  sensitivityIn,
  tiltDeg,
  type Band,
  type Reader,
} from './feel-readings.js';

/** What a rule measures. */
export type FeelMeasure =
  | 'tilt for a shift of weight'
  | 'largest pitch'
  | 'time to double'
  | 'time constant of coming level'
  | 'rise time'
  | 'damping ratio'
  | 'sensitivity peak'
  | 'movement of the request'
  | 'gyro noise in the request';

/** A rule: when a number makes a word, and where the threshold comes from. */
export interface Rule {
  word: FeelWord;
  measure: FeelMeasure;
  unit: string;
  side: 'above' | 'below';
  threshold: number;
  source: string;
  read: Reader;
}

/**
 * Slower than 0.4 Hz is the choice of a speed, and up to 3 Hz, where the metrics begin to count a shiver, a rider's body takes
 * part (common practice, no source). People feel 4 to 12.5 Hz most (ISO 2631-1:1997, Wk at 0.9 and above): what is faster is
 * a vibration, no movement.
 */
const BAND = { riderFromHz: 0.4, deckFromHz: 3, buzzFromHz: 12.5 } as const;
const DECK_BAND: Band = { fromHz: BAND.deckFromHz, toHz: BAND.buzzFromHz };
const BUZZ_BAND: Band = { fromHz: BAND.buzzFromHz, toHz: Infinity };
/** Least share of the energy: of the deck in a motion of the deck; of the rider, and with his travel, in a wobble (ours). */
const DECK_SHARE = 0.35;
const WOBBLE_SHARES = { rider: 0.2, riderAndTravel: 0.7 } as const;

const PRACTICE = 'common practice, no source';
const SENSITIVITY = 'Astrom and Hagglund, PID Controllers, 1995: 1.3 to 2';

function isWobble({ frequencyHz, shares: { rider, travel } }: Mode): boolean {
  const isRiders = frequencyHz >= BAND.riderFromHz && frequencyHz < BAND.deckFromHz;
  return isRiders && rider >= WOBBLE_SHARES.rider && rider + travel >= WOBBLE_SHARES.riderAndTravel;
}

/** Every threshold of every word. Ours: common practice, no source. */
export const RULES: readonly Rule[] = [
  {
    word: 'loose',
    measure: 'tilt for a shift of weight',
    unit: 'deg',
    side: 'above',
    threshold: 3.5,
    source: PRACTICE,
    read: tiltDeg,
  },
  {
    word: 'loose',
    measure: 'largest pitch',
    unit: 'deg',
    side: 'above',
    threshold: 6,
    source: PRACTICE,
    read: meanOfCells(
      ({ peakNoseDownRad, peakNoseUpRad }) => Math.max(peakNoseDownRad, peakNoseUpRad) * DEG_PER_RAD,
    ),
  },
  {
    word: 'loose',
    measure: 'time to double',
    unit: 's',
    side: 'below',
    threshold: 5,
    source: PRACTICE,
    read: doublingBelow(BAND.riderFromHz),
  },
  {
    word: 'sluggish',
    measure: 'time constant of coming level',
    unit: 's',
    side: 'above',
    threshold: 0.3,
    source: 'ours: 95 % of the way after three time constants (exact) is then longer than 0.9 s',
    read: comingLevelS,
  },
  {
    word: 'sluggish',
    measure: 'rise time',
    unit: 's',
    side: 'above',
    threshold: 1,
    source: PRACTICE,
    read: meanOfCells(({ riseTimeS }) => riseTimeS),
  },
  {
    word: 'stiff',
    measure: 'tilt for a shift of weight',
    unit: 'deg',
    side: 'below',
    threshold: 1.15,
    source: PRACTICE,
    read: tiltDeg,
  },
  {
    word: 'twitchy',
    measure: 'damping ratio',
    unit: '',
    side: 'below',
    threshold: 0.25,
    source: 'ours: a second-order system then overshoots by more than 44 % (exact)',
    read: dampingOf(deckModes(DECK_BAND, DECK_SHARE)),
  },
  {
    word: 'twitchy',
    measure: 'sensitivity peak',
    unit: '',
    side: 'above',
    threshold: 2,
    source: SENSITIVITY,
    read: sensitivityIn(DECK_BAND),
  },
  {
    word: 'buzzy',
    measure: 'movement of the request',
    unit: 'A/s',
    side: 'above',
    threshold: 500,
    source: 'ours: the scale of the cost term',
    read: meanOfCells(({ commandActivityAPerS }) => commandActivityAPerS),
  },
  {
    word: 'buzzy',
    measure: 'gyro noise in the request',
    unit: 'A',
    side: 'above',
    threshold: 1,
    source: PRACTICE,
    read: gyroNoise,
  },
  {
    word: 'buzzy',
    measure: 'damping ratio',
    unit: '',
    side: 'below',
    threshold: 0.05,
    source: 'ours: from swing to swing 73 % is left (exact)',
    read: dampingOf(deckModes(BUZZ_BAND, DECK_SHARE)),
  },
  {
    word: 'buzzy',
    measure: 'sensitivity peak',
    unit: '',
    side: 'above',
    threshold: 2,
    source: SENSITIVITY,
    read: sensitivityIn(BUZZ_BAND),
  },
  {
    word: 'rider-coupled wobble',
    measure: 'damping ratio',
    unit: '',
    side: 'below',
    threshold: 0.1,
    source: 'ours: a second-order system then overshoots by more than 73 % (exact)',
    read: dampingOf(isWobble),
  },
];
