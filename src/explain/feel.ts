/**
 * How does a board feel, in words? Each word is a rule about a measured number, with its threshold and where that comes from;
 * a word is said with the numbers that made it. Where no rule is met the board is composed. Every threshold stands here.
 */
import type { Mode } from '../linear/modes.js';
import { DEG_PER_RAD, GRAVITY_M_PER_S2 } from '../quantity/units.js';
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
  type FeelFacts,
  type Reader,
  type Reading,
} from './feel-readings.js';

/** A word for a feel. */
export type FeelWord =
  'loose' | 'sluggish' | 'composed' | 'stiff' | 'twitchy' | 'buzzy' | 'rider-coupled wobble';

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

interface Rule {
  word: FeelWord;
  measure: FeelMeasure;
  unit: string;
  side: 'above' | 'below';
  threshold: number;
  source: string;
  read: Reader;
}

/** A number that a rule looked at, where it was found, and what it is held against. */
export interface FeelReason extends Reading, Omit<Rule, 'read'> {}

/** A word with the numbers that made it, the strongest first; `strength` is 1 at a threshold and more beyond it. */
export interface Feel {
  word: FeelWord;
  strength: number;
  reasons: FeelReason[];
}

/** Part of the rider's weight that is moved from one foot to the other to try the deck (ours, no source). */
const SHIFTED_SHARE = 1 / 20;

/** Torque of the shift of weight that the deck is tried with, Nm. */
export function footShiftNm(rider: { massKg: number; stanceWidthM: number }): number {
  return SHIFTED_SHARE * rider.massKg * GRAVITY_M_PER_S2 * rider.stanceWidthM;
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
const RULES: readonly Rule[] = [
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

/** The words for what was measured, the strongest first; `composed` alone where no rule is met, nothing without any number. */
export function feelOf(facts: FeelFacts): Feel[] {
  const found = RULES.flatMap(({ read, ...rule }) =>
    read(facts).map((reading) => {
      const reason: FeelReason = { ...rule, ...reading };
      return { reason, strength: strengthOf(reason) };
    }),
  ).toSorted((a, b) => b.strength - a.strength);
  const met = found.filter(({ strength }) => strength > 1);
  if (found.length === 0) return [];
  if (met.length === 0) return [composed(found)];
  const words = [...new Set(met.map(({ reason }) => reason.word))];
  return words.map((word) => {
    const own = met.filter(({ reason }) => reason.word === word);
    const first = own.filter(
      ({ reason }, index) => own.findIndex((other) => other.reason.measure === reason.measure) === index,
    );
    return { word, strength: own[0]!.strength, reasons: first.map(({ reason }) => reason) };
  });
}

/** How far a number is past its threshold: 1 at it. A damping ratio may be below zero, so the lower side is no quotient. */
function strengthOf({ value, threshold, side }: FeelReason): number {
  return side === 'above' ? value / threshold : 1 + (threshold - value) / threshold;
}

/** Numbers that are named for a composed board: those that came nearest to a threshold. */
const NAMED_IF_COMPOSED = 2;

function composed(found: readonly { reason: FeelReason; strength: number }[]): Feel {
  const nearest = found.filter(
    ({ reason }, index) => found.findIndex((other) => other.reason.measure === reason.measure) === index,
  );
  return {
    word: 'composed',
    strength: found[0]!.strength,
    reasons: nearest.slice(0, NAMED_IF_COMPOSED).map(({ reason }) => reason),
  };
}
