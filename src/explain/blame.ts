/**
 * Who is to blame? The same cells were run as they are, with the reference profile for the rig, and with one suspect after the
 * other taken away. Cells are compared one by one: what the reference does better is the profile's doing, and of the profile's
 * suspects the one whose removal cures most is named; what falls under both no numbers in a profile will cure, and the other
 * suspects are asked.
 */
import { FAILED_CELL_COST } from '../measure/score.js';
import type { Family } from './cause.js';
import { CAUSES } from './causes.js';

/** What came of a cell; the same cells in the same order in everything that is compared. */
export interface Outcome {
  key: string;
  failed: boolean;
  cost: number;
}

/** The cells with one suspect taken away: from under the profile, or from under the reference. */
export interface Ablation {
  cause: string;
  cells: readonly Outcome[];
  isUnderReference: boolean;
}

/** How sure a finding is: `not sure` where another suspect may cure as much. */
export type Sureness = 'sure' | 'not sure';

/** One cause with what it is to blame for: `relief` is the part of a mean cell's cost that goes with it. */
export interface Finding {
  cause: string;
  family: Family;
  relief: number;
  /** Part of all that can be cured in its group, 0 to 1. */
  share: number;
  /** Fewer cells fail by so many, and these stand then. */
  failuresCured: number;
  cured: string[];
  sureness: Sureness;
  /** The suspect that may cure as much, where there is one. */
  rival: string | null;
}

/** What the runs say. */
export interface Blame {
  /** What a mean cell costs more than under the reference, those left out that fall under both. */
  excess: number;
  isProfileToBlame: boolean;
  /** Whether the suspects of the rig were asked. */
  isRigTroubled: boolean;
  findings: Finding[];
}

/** A profile is to blame for costing more than the reference by this much, absolutely and as a share (ours, no source). */
export const LEAST_EXCESS = 0.03;
export const LEAST_EXCESS_SHARE = 0.1;
/** The rig is looked at where a cell falls, or where they cost so much on the mean. */
export const TROUBLED_COST = 0.35;
/** A suspect is named for curing this share of what there is to cure. */
export const LEAST_SHARE = 0.15;
/** A rival within this share of the first makes it unsure: another seed may turn the two round (ours, no source). */
const RIVAL_SHARE = 0.8;

/** What is part of the ride counts so much of what it cures, when it is held against other suspects (ours, no source). */
const PART_OF_THE_RIDE = 0.5;

/** The question is about the profile: what lies in it counts so many times as much as what lies elsewhere (ours, no source). */
const ASKED_ABOUT = 4;

/** Two names of one thing: a low pack is a low voltage. */
export const ONE_THING = ['voltage ceiling', 'low pack'] as const;

const familyOf = new Map(CAUSES.map(({ name, family }) => [name, family]));
const partsOfTheRide = new Set(
  CAUSES.flatMap(({ name, isPartOfTheRide }) => (isPartOfTheRide ? [name] : [])),
);

/** How heavily a suspect weighs against others. */
function weightOf({ cause, relief }: { cause: string; relief: number }): number {
  if (familyOf.get(cause) === 'profile') return ASKED_ABOUT * relief;
  return partsOfTheRide.has(cause) ? PART_OF_THE_RIDE * relief : relief;
}

/** Whose suspects are to be asked, before any of them is: those of the profile, those of the rig, both or none. */
export type Asked = Pick<Blame, 'excess' | 'isProfileToBlame' | 'isRigTroubled'>;

const costOf = ({ failed, cost }: Outcome) => (failed ? FAILED_CELL_COST : cost);
const meanOf = (values: readonly number[]) =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;

/** Who is to be asked, by what the cells cost under the profile and under the reference. */
export function whomToAsk(profile: readonly Outcome[], reference: readonly Outcome[]): Asked {
  const more = profile.map((cell, index) => {
    const other = reference[index]!;
    // What falls under both is the rig's; that the reference falls where the profile stands makes up for nothing.
    return other.failed ? 0 : costOf(cell) - other.cost;
  });
  const excess = meanOf(more);
  const usual = meanOf(reference.map((cell) => (cell.failed ? 0 : cell.cost)));
  const isProfileToBlame = excess > Math.max(LEAST_EXCESS, LEAST_EXCESS_SHARE * usual);
  const base = (isProfileToBlame ? reference : profile).filter(
    (_, index) => !isBetterThan(profile, reference, index),
  );
  const isRigTroubled = base.some(({ failed }) => failed) || meanOf(base.map(costOf)) > TROUBLED_COST;
  return { excess, isProfileToBlame, isRigTroubled };
}

/** True for a cell in which the profile stands though the reference falls: whatever fells that is no trouble of the profile. */
function isBetterThan(profile: readonly Outcome[], reference: readonly Outcome[], index: number): boolean {
  return !profile[index]!.failed && reference[index]!.failed;
}

/** The findings, the heaviest first. */
export function blame(
  profile: readonly Outcome[],
  reference: readonly Outcome[],
  ablations: readonly Ablation[],
): Blame {
  const asked = whomToAsk(profile, reference);
  const isOfProfile = ({ cause }: Ablation) => familyOf.get(cause) === 'profile';
  // Nor does a suspect in the profile have to do with what falls under both.
  const isItsOwn = profile.map(({ failed }, index) => !(failed && reference[index]!.failed));
  const ofProfile = asked.isProfileToBlame
    ? findingsOf(ablations.filter(isOfProfile), { before: profile, counts: isItsOwn, curable: asked.excess })
    : [];
  const base = asked.isProfileToBlame ? reference : profile;
  const isTheirs = base.map(
    (_, index) => !asked.isProfileToBlame || !isBetterThan(profile, reference, index),
  );
  const ofRig = asked.isRigTroubled
    ? findingsOf(
        ablations.filter((one) => !isOfProfile(one) && one.isUnderReference === asked.isProfileToBlame),
        {
          before: base,
          counts: isTheirs,
          curable: meanOf(base.map((cell, index) => (isTheirs[index] ? costOf(cell) : 0))),
        },
      )
    : [];
  return { ...asked, findings: [...ofProfile, ...ofRig].sort((a, b) => weightOf(b) - weightOf(a)) };
}

interface Ground {
  before: readonly Outcome[];
  /** Whether a cell is counted. */
  counts: readonly boolean[];
  /** All that could go, of a mean cell's cost. */
  curable: number;
}

/** Suspects by what goes with each of them. */
function findingsOf(ablations: readonly Ablation[], { before, counts, curable }: Ground): Finding[] {
  const suspects = ablations
    .map(({ cause, cells }) => {
      const reliefs = cells.map((after, index) =>
        counts[index] ? costOf(before[index]!) - costOf(after) : 0,
      );
      const cured = cells.filter((after, index) => counts[index] && before[index]!.failed && !after.failed);
      const failures = (some: readonly Outcome[]) =>
        some.filter(({ failed }, index) => counts[index] && failed).length;
      return {
        cause,
        relief: meanOf(reliefs),
        cured: cured.map(({ key }) => key),
        failuresCured: failures(before) - failures(cells),
      };
    })
    .sort((a, b) => weightOf(b) - weightOf(a));
  const [first] = suspects;
  const rival = first === undefined ? null : rivalOf(first, suspects);
  return suspects
    .map((found, index): Finding => {
      const isUnsure = index === 0 && rival !== null;
      return {
        ...found,
        family: familyOf.get(found.cause)!,
        share: Math.min(1, found.relief / curable),
        sureness: isUnsure ? 'not sure' : 'sure',
        rival: isUnsure ? rival : null,
      };
    })
    .filter(({ share }) => share >= LEAST_SHARE);
}

interface Suspect {
  cause: string;
  relief: number;
}

/** The suspect that cures nearly as much as the first; null where there is none. */
function rivalOf(first: Suspect, suspects: readonly Suspect[]): string | null {
  const isTwin = ({ cause }: Suspect) =>
    ONE_THING.some((name) => name === cause) && ONE_THING.some((name) => name === first.cause);
  const second = suspects.find((one) => one !== first && !isTwin(one));
  if (second === undefined || second.relief <= 0) return null;
  return weightOf(second) > RIVAL_SHARE * weightOf(first) ? second.cause : null;
}
