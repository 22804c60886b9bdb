/**
 * Kept profiles to export: the starter set's, one with every number, and such as make trouble.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { keptSchema, type KeptFile } from '../../src/quantity/kept-file.js';
import { PROFILE_FIELDS } from '../../src/quantity/profile-fields.js';
import { profileSchema, type ProfileFile } from '../../src/quantity/profile-file.js';
import { profileOfText } from '../../src/store/profile-text.js';
import { numbersHash } from '../../src/store/short-hash.js';
import { validKept, validProfile } from '../quantity/valid-values.js';

const GAINS = new URL('../../profiles/gains/', import.meta.url);

/** The profiles of the starter set by name. */
export function starterProfiles(): { name: string; profile: ProfileFile }[] {
  return readdirSync(GAINS)
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => {
      const read = profileOfText(readFileSync(new URL(file, GAINS), 'utf8'), file);
      if (!read.ok) throw new Error(`${file} is no profile`);
      return { name: file.replace('.yaml', ''), profile: read.value };
    });
}

/** A kept file with this profile and its hash. */
export function keptOf(profile: ProfileFile): KeptFile {
  return keptSchema.parse({ ...validKept(), profile, numbers: numbersHash(profile) });
}

/** A profile that leaves out all that may be left out. */
export const bareProfile: ProfileFile = profileSchema.parse(validProfile());

/** A profile with every number that there is, as a person would set them. */
export const fullProfile: ProfileFile = profileSchema.parse({
  summary: 'Everything at once',
  gains: { proportionalAPerDeg: 20.5, rateAPerDegPerS: 1.25, integralAPerDegS: 12 },
  shaping: {
    progressiveStiffnessPerDeg: 0.05,
    integralLimitA: 15,
    slewLimitAPerS: 20_000,
    driveCeilingA: 45,
    brakeCeilingA: 50,
    gyroLowPassHz: 150,
    blendTimeS: 2.5,
    restTrimNoseUpDeg: -0.5,
    engageRampS: 0.8,
    loadFeedForward: { filterTimeS: 0.8, currentShare: 0.4, noseUpDegPerA: -0.02 },
    headroomLift: { belowPercent: 45, upToDeg: 12, rateDegPerS: 2 },
  },
});

/** Numbers that a float cannot hold, or only just. */
export const fineProfile: ProfileFile = profileSchema.parse({
  ...fullProfile,
  summary: 'Ends a comment */ and begins one /* in it; asks what??/ and "why"',
  gains: { proportionalAPerDeg: 0.1234567890123456, rateAPerDegPerS: 1e-60, integralAPerDegS: 1e-40 },
  shaping: {
    ...fullProfile.shaping,
    progressiveStiffnessPerDeg: 1.5e-7,
    slewLimitAPerS: 999_999.9999999999,
    restTrimNoseUpDeg: -1 / 3,
    // Half-way between two floats (1 + 2^-24) but for digits that the shortest decimal leaves out.
    blendTimeS: 1.000000059604645,
  },
});

function drawn(section: string): fc.Arbitrary<Record<string, number>> {
  const fields = PROFILE_FIELDS.filter(({ path }) => path.slice(0, -1).join('.') === section);
  const required = section === 'shaping' ? [] : fields.map(({ key }) => key);
  const values = Object.fromEntries(
    fields.map(({ key, min, max }) => [
      key,
      fc.oneof(
        fc.double({ min, max, noNaN: true }),
        fc.constantFrom(min, max),
        fc.integer({ min: Math.ceil(min), max: Math.floor(max) }),
      ),
    ]),
  );
  return fc.record(values, { requiredKeys: required }) as fc.Arbitrary<Record<string, number>>;
}

/** Any valid profile: every number anywhere in its range, what may be left out sometimes left out. */
export const anyProfile: fc.Arbitrary<ProfileFile> = fc
  .record({
    gains: drawn('gains'),
    shaping: drawn('shaping'),
    loadFeedForward: fc.option(drawn('shaping.loadFeedForward'), { nil: undefined }),
    headroomLift: fc.option(drawn('shaping.headroomLift'), { nil: undefined }),
  })
  .map(({ gains, shaping, loadFeedForward, headroomLift }) =>
    profileSchema.parse({
      summary: 'drawn',
      gains,
      shaping: {
        ...shaping,
        ...(loadFeedForward && { loadFeedForward }),
        ...(headroomLift && { headroomLift }),
      },
    }),
  );
