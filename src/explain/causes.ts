/**
 * Everything that can be to blame: the profile, and all that it meets.
 */
import type { Cause } from './cause.js';
import { PROFILE_CAUSES } from './profile-causes.js';
import { RIG_CAUSES } from './rig-causes.js';

/** Every suspect, in no order of likelihood. */
export const CAUSES: readonly Cause[] = [...PROFILE_CAUSES, ...RIG_CAUSES];
