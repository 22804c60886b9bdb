/**
 * Who is to blame? The same cells were run as they are, with the reference profile for the rig, and with one suspect after the
 * other taken away. What the reference cures is the profile's doing, and of the profile's suspects the one whose removal cures
 * most is named; what the reference does not cure, no numbers in a profile will, and the other suspects are asked.
 */
import type { Family } from './cause.js';
import { CAUSES } from './causes.js';

/** What cells cost: the mean of their costs, a failed one as much as ten scales, and how many failed. */
export interface Toll {
  mean: number;
  failures: number;
}

/** The toll with one suspect taken away: under the profile, and under the reference where that was run. */
export interface Ablation {
  cause: string;
  toll: Toll;
  underReference: Toll | null;
}

/** How sure a finding is: `not sure` where another suspect cures nearly as much. */
export type Sureness = 'sure' | 'not sure';

/** One cause with what it is to blame for: `relief` is the part of the mean cost that goes with it. */
export interface Finding {
  cause: string;
  family: Family;
  relief: number;
  /** Part of all that can be cured in its group, 0 to 1. */
  share: number;
  failuresCured: number;
  sureness: Sureness;
  /** The suspect that cures nearly as much, where there is one. */
  rival: string | null;
}

/** What the runs say. */
export interface Blame {
  /** What the profile costs more than the reference; below zero where it is the better one. */
  excess: number;
  isProfileToBlame: boolean;
  findings: Finding[];
}

/** A profile is to blame for costing more than the reference by this much, absolutely and as a share (ours, no source). */
const LEAST_EXCESS = 0.015;
const LEAST_EXCESS_SHARE = 0.05;
/** The rig is looked at where the reference fails, or costs as much as a marginal cell. */
const TROUBLED_COST = 0.45;
/** A suspect is named for curing this share of what there is to cure. */
const LEAST_SHARE = 0.15;
/** A rival within this share of the first makes it unsure. */
const RIVAL_SHARE = 0.9;

/** What is part of the ride counts so much of what it cures, when it is held against other suspects (ours, no source). */
const PART_OF_THE_RIDE = 0.5;

const familyOf = new Map(CAUSES.map(({ name, family }) => [name, family]));
const partsOfTheRide = new Set(
  CAUSES.flatMap(({ name, isPartOfTheRide }) => (isPartOfTheRide ? [name] : [])),
);

/** How heavily a suspect weighs against others. */
function weightOf({ cause, relief }: { cause: string; relief: number }): number {
  return partsOfTheRide.has(cause) ? PART_OF_THE_RIDE * relief : relief;
}

/** Whose suspects are to be asked, before any of them is: those of the profile, those of the rig, both or none. */
export interface Asked {
  /** What the profile costs more than the reference. */
  excess: number;
  isProfileToBlame: boolean;
  /** The rig is asked under the reference where the profile is to blame, else under the profile. */
  isRigTroubled: boolean;
}

/** Who is to be asked, by what the cells cost under the profile and under the reference. */
export function whomToAsk(profile: Toll, reference: Toll): Asked {
  const excess = profile.mean - reference.mean;
  const isProfileToBlame = excess > Math.max(LEAST_EXCESS, LEAST_EXCESS_SHARE * reference.mean);
  const rigToll = isProfileToBlame ? reference : profile;
  return { excess, isProfileToBlame, isRigTroubled: rigToll.failures > 0 || rigToll.mean > TROUBLED_COST };
}

/** The findings, the heaviest first. */
export function blame(profile: Toll, reference: Toll, ablations: readonly Ablation[]): Blame {
  const { excess, isProfileToBlame, isRigTroubled } = whomToAsk(profile, reference);
  const ofProfile = ablations.filter(({ cause }) => familyOf.get(cause) === 'profile');
  const ofRig = ablations.filter(({ cause }) => familyOf.get(cause) !== 'profile');
  const rigFindings = isRigTroubled
    ? findingsOf(ofRig, isProfileToBlame ? reference : profile, ({ toll, underReference }) =>
        isProfileToBlame ? underReference : toll,
      )
    : [];
  const profileFindings = isProfileToBlame ? findingsOf(ofProfile, profile, ({ toll }) => toll, excess) : [];
  const findings = [...profileFindings, ...rigFindings].sort((a, b) => weightOf(b) - weightOf(a));
  return { excess, isProfileToBlame, findings };
}

/** Suspects by what goes with each of them; `curable` is all that could go. */
function findingsOf(
  ablations: readonly Ablation[],
  before: Toll,
  after: (ablation: Ablation) => Toll | null,
  curable = before.mean,
): Finding[] {
  const reliefs = ablations
    .flatMap((ablation) => {
      const toll = after(ablation);
      if (toll === null) return [];
      const relief = before.mean - toll.mean;
      return [{ cause: ablation.cause, relief, failuresCured: before.failures - toll.failures }];
    })
    .sort((a, b) => weightOf(b) - weightOf(a));
  const [first, second] = reliefs;
  const rival = first && second && weightOf(second) > RIVAL_SHARE * weightOf(first) ? second.cause : null;
  return reliefs
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
