/**
 * The file of a profile: one named set of control gains and shaping. The file's own name is the
 * profile's name.
 */
import type * as z from 'zod';
import { quantity, section, text } from './field.js';

const gains = section(
  {
    proportionalAPerDeg: quantity({
      unit: 'A/deg',
      min: 0,
      max: 500,
      says: 'Motor current per degree of pitch away from the set-point',
    }),
    rateAPerDegPerS: quantity({
      unit: 'A/(deg/s)',
      min: 0,
      max: 100,
      says: 'Motor current per degree per second of pitch rate: the damping',
    }),
    integralAPerDegS: quantity({
      unit: 'A/(deg s)',
      min: 0,
      max: 1000,
      says: 'Motor current per degree and second of lasting error',
    }).default(0),
  },
  'The three gains',
);

const loadFeedForward = section(
  {
    filterTimeS: quantity({ unit: 's', min: 0.05, max: 10, says: 'Time constant of the load filter' }),
    currentShare: quantity({
      unit: '',
      min: 0,
      max: 0.95,
      says: 'Share of the filtered load current added to the request',
    }).default(0),
    noseUpDegPerA: quantity({
      unit: 'deg/A',
      min: -1,
      max: 1,
      says: 'Set-point change per ampere of filtered load, nose up',
    }).default(0),
  },
  'What the board adds by itself for the lasting load of a slope',
);

const headroomLift = section(
  {
    belowPercent: quantity({
      unit: '%',
      min: 1,
      max: 90,
      says: 'Headroom under which the nose begins to rise',
    }),
    upToDeg: quantity({ unit: 'deg', min: 0.5, max: 15, says: 'Rise of the nose when no headroom is left' }),
    rateDegPerS: quantity({
      unit: 'deg/s',
      min: 0.5,
      max: 60,
      says: 'How fast the nose rises and comes back',
    }),
  },
  'The nose rises to slow the rider while headroom is short',
);

const shaping = section(
  {
    progressiveStiffnessPerDeg: quantity({
      unit: '1/deg',
      min: 0,
      max: 1,
      says: 'The proportional gain grows by this share per degree of error',
    }).default(0),
    integralLimitA: quantity({ unit: 'A', min: 0, max: 500, says: 'Most the integral may ask for' }).default(
      20,
    ),
    slewLimitAPerS: quantity({
      unit: 'A/s',
      min: 50,
      max: 1_000_000,
      says: 'Fastest change of the request; left out: none',
    }).optional(),
    driveCeilingA: quantity({
      unit: 'A',
      min: 1,
      max: 1000,
      says: "Lower drive ceiling than the board's; left out: the board's",
    }).optional(),
    brakeCeilingA: quantity({
      unit: 'A',
      min: 1,
      max: 1000,
      says: "Lower brake ceiling than the board's; left out: the board's",
    }).optional(),
    gyroLowPassHz: quantity({
      unit: 'Hz',
      min: 1,
      max: 2000,
      says: 'Corner of the first-order low-pass on the gyro rate; left out: none',
    }).optional(),
    blendTimeS: quantity({
      unit: 's',
      min: 0.05,
      max: 60,
      says: 'Time constant of the complementary filter: shorter trusts the accelerometer more',
    }).default(1),
    restTrimNoseUpDeg: quantity({
      unit: 'deg',
      min: -10,
      max: 10,
      says: 'Resting pitch the controller aims for, nose up; nose down is negative',
    }).default(0),
    engageRampS: quantity({
      unit: 's',
      min: 0,
      max: 5,
      says: 'Time over which the gains fade in when the board takes over',
    }).default(0),
    loadFeedForward: loadFeedForward.optional(),
    headroomLift: headroomLift.optional(),
  },
  'What the profile shapes beyond the three gains; each off unless given',
);

/** What a profile file holds. */
export const profileSchema = section(
  {
    summary: text('One or two sentences: how this profile is meant to feel'),
    gains,
    shaping: shaping.prefault({}),
  },
  'A profile: one named set of control gains and shaping',
);

/** A profile file, checked and with its defaults filled in. */
export type ProfileFile = z.output<typeof profileSchema>;
