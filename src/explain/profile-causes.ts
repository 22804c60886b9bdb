/**
 * What can be wrong in a profile? A number on the wrong side of the reference for the rig, or a shaping that the reference has
 * not; it is taken away by what the reference has.
 */
import type { ProfileFile } from '../quantity/profile-file.js';
import { NEAR_USUAL, type Cause } from './cause.js';
import type { Makings } from './makings.js';

type Gains = ProfileFile['gains'];
type Shaping = ProfileFile['shaping'];

const withGains = (makings: Makings, gains: Partial<Gains>): Makings => ({
  ...makings,
  profile: { ...makings.profile, gains: { ...makings.profile.gains, ...gains } },
});

/** The makings with some of the shaping as in another profile, or gone where that has none. */
function withShaping(makings: Makings, reference: ProfileFile, keys: readonly (keyof Shaping)[]): Makings {
  const shaping: Record<string, unknown> = { ...makings.profile.shaping };
  for (const key of keys) {
    const value = reference.shaping[key];
    if (value === undefined) delete shaping[key];
    else shaping[key] = value;
  }
  return { ...makings, profile: { ...makings.profile, shaping: shaping as unknown as Shaping } };
}

const gain = (name: string, key: keyof Gains, side: 'below' | 'above'): Cause => ({
  name,
  family: 'profile',
  isPresent: ({ profile }, reference) => {
    const [here, there] = [profile.gains[key], reference.gains[key]];
    return side === 'below' ? here * NEAR_USUAL < there : here > there * NEAR_USUAL;
  },
  remove: (makings, reference) => withGains(makings, { [key]: reference.gains[key] }),
});

const shaping = (
  name: string,
  keys: readonly (keyof Shaping)[],
  isPresent: (shaping: Shaping, reference: Shaping) => boolean,
): Cause => ({
  name,
  family: 'profile',
  isPresent: ({ profile }, reference) => isPresent(profile.shaping, reference.shaping),
  remove: (makings, reference) => withShaping(makings, reference, keys),
});

/** Every suspect in a profile, in no order of likelihood. */
export const PROFILE_CAUSES: readonly Cause[] = [
  gain('too little rate gain', 'rateAPerDegPerS', 'below'),
  gain('too much rate gain', 'rateAPerDegPerS', 'above'),
  gain('too little proportional gain', 'proportionalAPerDeg', 'below'),
  gain('too much proportional gain', 'proportionalAPerDeg', 'above'),
  gain('integral wind-up', 'integralAPerDegS', 'above'),
  shaping('filter lag', ['gyroLowPassHz'], ({ gyroLowPassHz }) => gyroLowPassHz !== undefined),
  shaping(
    'accelerometer pull',
    ['blendTimeS'],
    (here, reference) => here.blendTimeS * NEAR_USUAL < reference.blendTimeS,
  ),
  shaping('slew limit', ['slewLimitAPerS'], ({ slewLimitAPerS }) => slewLimitAPerS !== undefined),
  shaping(
    'progressive stiffness',
    ['progressiveStiffnessPerDeg'],
    (here) => here.progressiveStiffnessPerDeg > 0,
  ),
  shaping(
    "the profile's own ceilings",
    ['driveCeilingA', 'brakeCeilingA'],
    ({ driveCeilingA, brakeCeilingA }) => driveCeilingA !== undefined || brakeCeilingA !== undefined,
  ),
  shaping('load feed-forward', ['loadFeedForward'], ({ loadFeedForward }) => loadFeedForward !== undefined),
  shaping('headroom lift', ['headroomLift'], ({ headroomLift }) => headroomLift !== undefined),
  shaping('trim', ['restTrimNoseUpDeg'], ({ restTrimNoseUpDeg }) => restTrimNoseUpDeg !== 0),
];
