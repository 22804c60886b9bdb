/**
 * How does a board feel, in words? A word is said with the numbers that made it; where no rule is met the board is composed.
 */
import type { FeelWord } from '../quantity/feel-words.js';
import { GRAVITY_M_PER_S2 } from '../quantity/units.js';
import type { FeelFacts, Reading } from './feel-readings.js';
import { RULES, type Rule } from './feel-rules.js';

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

/** The words for what was measured, the strongest first; `composed` alone where no rule is met, nothing without any number. */
export function feelOf(facts: FeelFacts): Feel[] {
  const found = readAll(facts);
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

/** How near the facts come to a word, met or not: the number that comes nearest; null where none speaks of it. */
export function nearestTo(word: FeelWord, facts: FeelFacts): Nearness | null {
  return readAll(facts).find(({ reason }) => reason.word === word) ?? null;
}

/** A number that a rule looked at, and how far it is past its threshold: 1 at it. */
export interface Nearness {
  reason: FeelReason;
  strength: number;
}

/** Every number of every rule, the strongest first. */
function readAll(facts: FeelFacts): Nearness[] {
  return RULES.flatMap(({ read, ...rule }) =>
    read(facts).map((reading) => {
      const reason: FeelReason = { ...rule, ...reading };
      return { reason, strength: strengthOf(reason) };
    }),
  ).toSorted((a, b) => b.strength - a.strength);
}

/** How far a number is past its threshold: 1 at it. A damping ratio may be below zero, so the lower side is no quotient. */
function strengthOf({ value, threshold, side }: FeelReason): number {
  return side === 'above' ? value / threshold : 1 + (threshold - value) / threshold;
}

/** Numbers that are named for a composed board: those that came nearest to a threshold. */
const NAMED_IF_COMPOSED = 2;

function composed(found: readonly Nearness[]): Feel {
  const nearest = found.filter(
    ({ reason }, index) => found.findIndex((other) => other.reason.measure === reason.measure) === index,
  );
  return {
    word: 'composed',
    strength: found[0]!.strength,
    reasons: nearest.slice(0, NAMED_IF_COMPOSED).map(({ reason }) => reason),
  };
}
