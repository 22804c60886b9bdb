/** A small plan with one profile, spoiled in one way, for tests of what is found and tried. */
import { profileSchema, type ProfileFile } from '../../src/quantity/profile-file.js';
import type { RankPlan } from '../../src/tasks/plan.js';
import { smallPlan } from './small-plan.js';

/** A profile that suits the rig of the small plan, with some of its numbers changed. */
export function profileWith(gains: object = {}, shaping: object = {}): ProfileFile {
  return profileSchema.parse({
    summary: 'A profile for tests',
    gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1.2, ...gains },
    shaping: { blendTimeS: 4, ...shaping },
  });
}

/** The small plan with this profile alone, under one seed. */
export function planWith(profile: ProfileFile, parts: Partial<RankPlan> = {}): RankPlan {
  return smallPlan({ profiles: [{ name: 'wool', value: profile }], seeds: [1], ...parts });
}
