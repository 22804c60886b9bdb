/**
 * What is there to change when a board feels loose, sluggish, stiff, twitchy or buzzy? Small changes of one or two numbers, each to
 * be tried in the simulation, and which of those that were tried takes most of a feel away.
 */
import type { FeelWord } from '../quantity/feel-words.js';
import { PROFILE_FIELDS, readField, withFields } from '../quantity/profile-fields.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { nearestTo, type Nearness } from './feel.js';
import type { FeelFacts } from './feel-readings.js';

/** The feels that a number can be changed against. */
export const CHANGED_AGAINST = [
  'loose',
  'sluggish',
  'stiff',
  'twitchy',
  'buzzy',
] as const satisfies readonly FeelWord[];

/** One of them. */
export type ChangedAgainst = (typeof CHANGED_AGAINST)[number];

/** A number that is changed: its key, from what to what. */
export interface NumberChange {
  key: string;
  from: number;
  to: number;
}

/** A small change and the profile that it makes. */
export interface SmallChange {
  numbers: readonly NumberChange[];
  profile: ProfileFile;
}

/** How far a number is moved at a time. */
const STEP_SHARE = 0.1;
const LOW_PASS_FACTOR = 1.5;

/** What is moved together, each by its factor. */
const MOVES: readonly Readonly<Record<string, number>>[] = [
  { proportionalAPerDeg: 1 + STEP_SHARE },
  { proportionalAPerDeg: 1 - STEP_SHARE },
  { rateAPerDegPerS: 1 + STEP_SHARE },
  { rateAPerDegPerS: 1 - STEP_SHARE },
  { proportionalAPerDeg: 1 + STEP_SHARE, rateAPerDegPerS: 1 + STEP_SHARE },
  { proportionalAPerDeg: 1 - STEP_SHARE, rateAPerDegPerS: 1 - STEP_SHARE },
  { gyroLowPassHz: LOW_PASS_FACTOR },
  { gyroLowPassHz: 1 / LOW_PASS_FACTOR },
  { progressiveStiffnessPerDeg: 1 / LOW_PASS_FACTOR },
  { progressiveStiffnessPerDeg: LOW_PASS_FACTOR },
];

/** Digits that a changed number keeps. */
const DIGITS = 3;

/** The small changes that a profile allows; what would change nothing, or make no profile, is left out. */
export function smallChanges(profile: ProfileFile): SmallChange[] {
  return MOVES.flatMap((move): SmallChange[] => {
    const changes = Object.entries(move).map(([key, factor]) => {
      const field = PROFILE_FIELDS.find((one) => one.key === key)!;
      const from = readField(profile, field) ?? 0;
      return { path: field.path, key, from, to: Number((factor * from).toPrecision(DIGITS)) };
    });
    if (changes.some(({ from, to }) => from === to)) return [];
    const changed = withFields(
      profile,
      changes.map(({ path, to }) => ({ path, value: to })),
    );
    const numbers = changes.map(({ key, from, to }) => ({ key, from, to }));
    return changed === null ? [] : [{ numbers, profile: changed }];
  });
}

/** What a profile came to: what its feel is told from, how many runs fell, and its score. */
export interface Felt {
  facts: FeelFacts;
  failures: number;
  score: number;
}

/** The change that takes most of a feel away without a further fall; `before` and `after` are how near the feel is. */
export interface FeelChange {
  word: ChangedAgainst;
  before: Nearness | null;
  /** Null where no small change does. */
  found: { change: SmallChange; after: Nearness; failures: number; scoreRatio: number } | null;
}

/** Less than this part of a feel taken away is not worth a change (ours). */
const LEAST_RELIEF = 0.03;

/** For each feel the change that takes most of it away, out of those that were tried. */
export function changesAgainst(
  own: Felt,
  tried: readonly { change: SmallChange; felt: Felt }[],
): FeelChange[] {
  return CHANGED_AGAINST.map((word) => {
    const before = nearestTo(word, own.facts);
    if (before === null) return { word, before, found: null };
    const helping = tried
      .filter(({ felt }) => felt.failures <= own.failures)
      .flatMap(({ change, felt }) => {
        const after = nearestTo(word, felt.facts);
        return after === null ? [] : [{ change, felt, after }];
      })
      .filter(({ after }) => after.strength < before.strength - LEAST_RELIEF * Math.abs(before.strength))
      .toSorted((a, b) => a.after.strength - b.after.strength);
    const [best] = helping;
    if (best === undefined) return { word, before, found: null };
    const { change, felt, after } = best;
    return {
      word,
      before,
      found: { change, after, failures: felt.failures, scoreRatio: felt.score / own.score },
    };
  });
}
