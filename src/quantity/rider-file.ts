/**
 * The file that describes a rider: body, stance and skill. Body data left out are taken from
 * stature by published proportions (src/model/rider-body.ts names them).
 */
import type * as z from 'zod';
import { quantity, section, text } from './field.js';

const body = section(
  {
    massKg: quantity({ unit: 'kg', min: 20, max: 200, says: 'Mass with shoes, helmet and pads' }),
    statureM: quantity({ unit: 'm', min: 1, max: 2.3, says: 'Standing height' }),
    centreAboveAnkleM: quantity({
      unit: 'm',
      min: 0.4,
      max: 1.4,
      says: 'Centre of mass above the ankles as he stands on the board; left out: 0.521 of stature',
    }).optional(),
    inertiaKgM2: quantity({
      unit: 'kg m2',
      min: 1,
      max: 60,
      says: 'Moment of inertia about the own centre of mass, swaying sideways; left out: 0.0572 m H^2',
    }).optional(),
    dragAreaM2: quantity({ unit: 'm2', min: 0, max: 2, says: 'Drag coefficient times frontal area' }).default(
      0.5,
    ),
  },
  "The rider's body",
);

const stance = section(
  {
    widthM: quantity({
      unit: 'm',
      min: 0.2,
      max: 1,
      says: 'Distance between the feet along the deck',
    }).default(0.5),
    legStiffnessNPerM: quantity({
      unit: 'N/m',
      min: 3_000,
      max: 120_000,
      says: 'Both legs together',
    }).default(14_000),
    legDampingNSPerM: quantity({ unit: 'N s/m', min: 50, max: 10_000, says: 'Both legs together' }).default(
      900,
    ),
    passiveStiffnessNmPerRad: quantity({
      unit: 'Nm/rad',
      min: 0,
      max: 1_500,
      says: 'Spring between body and deck that acts without delay',
    }).default(60),
    passiveDampingNmSPerRad: quantity({
      unit: 'Nm s/rad',
      min: 0,
      max: 400,
      says: 'Damping between body and deck that acts without delay',
    }).default(8),
  },
  'How the rider stands: feet and legs',
);

const balance = section(
  {
    delayS: quantity({
      unit: 's',
      min: 0,
      max: 0.5,
      says: 'From sensing own lean and speed to acting on it',
    }),
    frequencyRadPerS: quantity({
      unit: 'rad/s',
      min: 0.5,
      max: 10,
      says: 'How firmly the body is held: stiffness grows with m g L + J w^2; on a board that gives way the return is quicker',
    }),
    dampingRatio: quantity({
      unit: '',
      min: 0.1,
      max: 2,
      says: 'Damping that goes with it: 2 zeta w J, over the give of the board',
    }),
    tremorNm: quantity({
      unit: 'Nm',
      min: 0,
      max: 30,
      says: 'Standard deviation of restless foot torque',
    }).default(1),
    leanLimitDeg: quantity({
      unit: 'deg',
      min: 10,
      max: 80,
      says: 'A lean past this counts as stepping or falling off',
    }).default(40),
  },
  'How the rider keeps upright',
);

const pace = section(
  {
    driveMPerS2: quantity({
      unit: 'm/s2',
      min: 0.1,
      max: 5,
      says: 'Hardest speeding-up the rider asks for',
    }).default(0.8),
    brakeMPerS2: quantity({
      unit: 'm/s2',
      min: 0.1,
      max: 6,
      says: 'Hardest slowing-down the rider asks for',
    }).default(1.2),
    speedTimeS: quantity({
      unit: 's',
      min: 0.2,
      max: 10,
      says: 'Speed error divided by this is the acceleration asked for',
    }).default(1),
    trimTimeS: quantity({
      unit: 's',
      min: 0.5,
      max: 60,
      says: 'Time over which a lasting speed error becomes lasting lean',
    }).default(4),
    smoothingRadPerS: quantity({
      unit: 'rad/s',
      min: 0.5,
      max: 20,
      says: 'How quickly the rider changes his mind about acceleration',
    }).default(3),
  },
  'How the rider holds the speed he wants',
);

/** What a rider file holds. */
export const riderSchema = section(
  {
    summary: text('One or two sentences: who this is'),
    body,
    stance: stance.prefault({}),
    balance,
    pace: pace.prefault({}),
  },
  'A rider: body, stance and skill',
);

/** A rider file, checked and with its defaults filled in. */
export type RiderFile = z.output<typeof riderSchema>;
