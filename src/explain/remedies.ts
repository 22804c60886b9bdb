/**
 * Which changes of a profile are worth a try? For what is to blame: towards the number of the reference, half way, all the
 * way and a little beyond, or without the thing; a headroom lift where a ceiling cuts. Proposed only: what they do is simulated.
 */
import { EARLY_LIFT } from '../control/reference-profile.js';
import { PROFILE_FIELDS, readField, withField } from '../quantity/profile-fields.js';
import { profileSchema, type ProfileFile } from '../quantity/profile-file.js';
import type { Finding } from './blame.js';

/** One number of a profile that a remedy changes; null where it is left out, before or after. */
export interface Edit {
  path: readonly string[];
  unit: string;
  from: number | null;
  to: number | null;
}

/** A changed profile, what is changed in it, and the causes that it is meant for; without any, it is just a step aside. */
export interface Proposal {
  causes: string[];
  edits: Edit[];
  profile: ProfileFile;
}

/** What is changed, from one profile to another, in the order of the file. */
export function editsBetween(before: ProfileFile, after: ProfileFile): Edit[] {
  return PROFILE_FIELDS.flatMap((field): Edit[] => {
    const [from = null, to = null] = [readField(before, field), readField(after, field)];
    return from === to ? [] : [{ path: field.path, unit: field.unit, from, to }];
  });
}

type Gain = keyof ProfileFile['gains'];
type Shaping = ProfileFile['shaping'];

/** Finds the changed profiles for one cause; null where a change is none that a profile can hold. */
type Proposer = (profile: ProfileFile, reference: ProfileFile) => (ProfileFile | null)[];

/** Digits that a proposed number has: enough to try, few enough to type. */
const DIGITS = 2;
const rounded = (value: number) => Number(value.toPrecision(DIGITS));

function setNumber(
  profile: ProfileFile,
  path: readonly string[],
  value: number | undefined,
): ProfileFile | null {
  return withField(profile, { path }, value === undefined ? undefined : rounded(value));
}

/** A gain towards that of the reference: half way, all the way, and a little beyond. */
const BEYOND = 0.25;
function towards(gain: Gain): Proposer {
  return (profile, reference) => {
    const [here, there] = [profile.gains[gain], reference.gains[gain]];
    const half = here > 0 && there > 0 ? Math.sqrt(here * there) : (here + there) / 2;
    const beyond = there > here ? there * (1 + BEYOND) : there * (1 - BEYOND);
    return [half, there, beyond].map((value) => setNumber(profile, ['gains', gain], value));
  };
}

/** A number of the shaping, multiplied. */
function scaled(key: keyof Shaping, ...factors: number[]): Proposer {
  return (profile) => {
    const value = profile.shaping[key];
    if (typeof value !== 'number') return [];
    return factors.map((factor) => setNumber(profile, ['shaping', key], value * factor));
  };
}

/** Some of the shaping as it is where a file leaves it out. */
function without(...keys: (keyof Shaping)[]): Proposer {
  return (profile) => {
    const kept = Object.entries(profile.shaping).filter(([key]) => !keys.some((other) => other === key));
    const parsed = profileSchema.safeParse({ ...profile, shaping: Object.fromEntries(kept) });
    return [parsed.success ? parsed.data : null];
  };
}

function gainBy(gain: Gain, ...factors: number[]): Proposer {
  return (profile) =>
    factors.map((factor) => setNumber(profile, ['gains', gain], profile.gains[gain] * factor));
}

function withLift(headroomLift: NonNullable<Shaping['headroomLift']>): Proposer {
  return (profile) => [{ ...profile, shaping: { ...profile.shaping, headroomLift } }];
}

/** A lift that comes late and quickly, and one that comes early and goes far (ours: what was tried on the starter rigs). */
const LIFTS: readonly Proposer[] = [
  withLift({ belowPercent: 30, upToDeg: 4, rateDegPerS: 10 }),
  withLift(EARLY_LIFT),
];

const halfFeedForward: Proposer = (profile) => {
  const { loadFeedForward } = profile.shaping;
  if (loadFeedForward === undefined) return [];
  const { currentShare, noseUpDegPerA } = loadFeedForward;
  const half = { ...loadFeedForward, currentShare: currentShare / 2, noseUpDegPerA: noseUpDegPerA / 2 };
  return [{ ...profile, shaping: { ...profile.shaping, loadFeedForward: half } }];
};

/** Limit of the integral that is the schema's own, A. */
const usualLimit: Proposer = (profile, reference) =>
  [reference.shaping.integralLimitA, profile.shaping.integralLimitA / 2].map((value) =>
    setNumber(profile, ['shaping', 'integralLimitA'], value),
  );

const referenceBlend: Proposer = (profile, reference) => {
  const [here, there] = [profile.shaping.blendTimeS, reference.shaping.blendTimeS];
  return [Math.sqrt(here * there), there, there * (1 + BEYOND)].map((value) =>
    setNumber(profile, ['shaping', 'blendTimeS'], value),
  );
};

/** A corner of a filter below which the deck's own motion lies, Hz (ours, no source). */
const lowPass: Proposer = (profile) =>
  profile.shaping.gyroLowPassHz === undefined ? [setNumber(profile, ['shaping', 'gyroLowPassHz'], 60)] : [];

/** What is proposed against each cause; nothing in a profile is for the rider, the grip and the road. */
const PROPOSERS: Readonly<Record<string, readonly Proposer[]>> = {
  'too little rate gain': [towards('rateAPerDegPerS')],
  'too much rate gain': [towards('rateAPerDegPerS')],
  'too little proportional gain': [towards('proportionalAPerDeg')],
  'too much proportional gain': [towards('proportionalAPerDeg')],
  'integral wind-up': [towards('integralAPerDegS'), usualLimit],
  'filter lag': [without('gyroLowPassHz'), scaled('gyroLowPassHz', 4)],
  'accelerometer pull': [referenceBlend],
  'slew limit': [without('slewLimitAPerS'), scaled('slewLimitAPerS', 4)],
  'progressive stiffness': [without('progressiveStiffnessPerDeg'), scaled('progressiveStiffnessPerDeg', 0.5)],
  "the profile's own ceilings": [
    without('driveCeilingA', 'brakeCeilingA'),
    scaled('driveCeilingA', 2),
    scaled('brakeCeilingA', 2),
  ],
  'load feed-forward': [without('loadFeedForward'), halfFeedForward],
  'headroom lift': [without('headroomLift'), ...LIFTS],
  trim: [without('restTrimNoseUpDeg'), scaled('restTrimNoseUpDeg', 0.5)],
  'loop delay': [gainBy('rateAPerDegPerS', 0.7), gainBy('proportionalAPerDeg', 0.7)],
  'noise of the gyro': [gainBy('rateAPerDegPerS', 0.5), lowPass],
  'current ceiling': LIFTS,
  'voltage ceiling': LIFTS,
  'pack ceiling': LIFTS,
  'low pack': LIFTS,
};

/** Steps aside that are always tried, so that "nothing helps" is never said of what was not tried. */
const STEPS_ASIDE: readonly Proposer[] = [
  gainBy('proportionalAPerDeg', 1.3, 0.75),
  gainBy('rateAPerDegPerS', 1.4, 0.7),
  (profile, reference) => [
    setNumber(profile, ['gains', 'proportionalAPerDeg'], reference.gains.proportionalAPerDeg),
  ],
  (profile, reference) => [setNumber(profile, ['gains', 'rateAPerDegPerS'], reference.gains.rateAPerDegPerS)],
];

/** Most changes against what is blamed that are tried one by one. */
const MOST_BLAMED = 10;

/** Changes of one thing each, none twice: those against the heaviest finding first, steps aside last. */
export function proposalsFor(
  profile: ProfileFile,
  reference: ProfileFile,
  findings: readonly Pick<Finding, 'cause' | 'rival'>[],
): Proposal[] {
  const proposals: Proposal[] = [];
  const propose = (cause: string | null, proposer: Proposer) => {
    for (const changed of proposer(profile, reference)) {
      const edits = changed === null ? [] : editsBetween(profile, changed);
      if (changed === null || edits.length === 0) continue;
      const same = proposals.find((other) => isSame(other.edits, edits));
      if (same === undefined) {
        proposals.push({ causes: cause === null ? [] : [cause], edits, profile: changed });
      } else if (cause !== null && !same.causes.includes(cause)) same.causes.push(cause);
    }
  };
  const blamed = findings.flatMap(({ cause, rival }) => (rival === null ? [cause] : [cause, rival]));
  for (const cause of new Set(blamed)) {
    for (const proposer of PROPOSERS[cause] ?? []) propose(cause, proposer);
  }
  proposals.splice(MOST_BLAMED);
  for (const proposer of STEPS_ASIDE) propose(null, proposer);
  return proposals;
}

function isSame(one: readonly Edit[], other: readonly Edit[]): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** Two changes in one profile; null where they touch the same number or do not fit together. */
export function combined(profile: ProfileFile, one: Proposal, other: Proposal): Proposal | null {
  const keys = ({ edits }: Proposal) => edits.map(({ path }) => path.join('.'));
  if (keys(one).some((key) => keys(other).includes(key))) return null;
  const sections = (['gains', 'shaping'] as const).map((section) => {
    const changed = { ...one.profile[section] } as Record<string, unknown>;
    const theirs = other.profile[section] as Record<string, unknown>;
    for (const { path } of other.edits) {
      const [at, key] = path;
      if (at !== section || key === undefined) continue;
      if (theirs[key] === undefined) delete changed[key];
      else changed[key] = theirs[key];
    }
    return [section, changed];
  });
  const parsed = profileSchema.safeParse({ ...profile, ...Object.fromEntries(sections) });
  if (!parsed.success) return null;
  const causes = [...new Set([...one.causes, ...other.causes])];
  return { causes, profile: parsed.data, edits: editsBetween(profile, parsed.data) };
}
