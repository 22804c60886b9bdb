/**
 * The file of a scenario: road, rider's script, events and what to measure. It reads from top to
 * bottom as the ride goes: road pieces one after another, speeds wanted at times, then the question.
 */
import * as z from 'zod';
import { choice, count, name, quantity, section, text } from './field.js';

/** Surfaces with grip and rolling resistance from handbooks (src/scenario/surface.ts has the values). */
export const SURFACES = [
  'dry-asphalt',
  'wet-asphalt',
  'worn-cobbles',
  'packed-gravel',
  'wet-leaves',
  'soft-grass',
  'loose-sand',
] as const;

/** Road classes of ISO 8608 that a rider may meet. */
export const ROUGHNESS_CLASSES = ['A', 'B', 'C', 'D', 'E'] as const;

const roadPiece = section(
  {
    name: name('Makes the start of this piece an event that a measurement can begin from').optional(),
    lengthM: quantity({ unit: 'm', min: 0.05, max: 2000, says: 'Length along the level' }),
    gradePercent: quantity({
      unit: '%',
      min: -40,
      max: 40,
      says: 'Rise over run; downhill is negative',
    }).default(0),
    easeM: quantity({
      unit: 'm',
      min: 0,
      max: 100,
      says: 'Length over which the grade changes from that of the piece before, within this piece; 0 is a kink',
    }).default(0),
    stepUpM: quantity({
      unit: 'm',
      min: -0.3,
      max: 0.3,
      says: 'Upright step where the piece begins; a drop is negative',
    }).default(0),
    bumpHeightM: quantity({
      unit: 'm',
      min: -0.3,
      max: 0.3,
      says: 'Height of one raised-cosine bump over the whole piece; a dip is negative',
    }).default(0),
    bumpCount: count({ unit: '', min: 1, max: 500, says: 'That many equal bumps instead of one' }).default(1),
    roughness: choice(ROUGHNESS_CLASSES, 'ISO 8608 class of random unevenness on this piece').optional(),
    surface: choice(SURFACES, 'What the tyre runs on').default('dry-asphalt'),
    gripRatio: quantity({
      unit: '',
      min: 0.02,
      max: 1.5,
      says: "Grip in place of the surface's own",
    }).optional(),
    rollingResistanceRatio: quantity({
      unit: '',
      min: 0,
      max: 0.4,
      says: "Rolling resistance over load in place of the surface's own",
    }).optional(),
  },
  'One piece of road',
);

const speedPoint = section(
  {
    atS: quantity({ unit: 's', min: 0, max: 600, says: 'Time since the start' }),
    speedKmPerH: quantity({ unit: 'km/h', min: -15, max: 60, says: 'Speed the rider wants then' }),
  },
  'A speed wanted at a time; straight lines between',
);

const weightShift = section(
  {
    name: name('Makes the start of this shift an event').optional(),
    atS: quantity({ unit: 's', min: 0, max: 600, says: 'Time since the start' }),
    forS: quantity({ unit: 's', min: 0.01, max: 600, says: 'How long it lasts' }),
    noseDownNm: quantity({
      unit: 'Nm',
      min: -200,
      max: 200,
      says: 'Torque with which the feet push the nose down; up is negative',
    }),
    frequencyHz: quantity({
      unit: 'Hz',
      min: 0,
      max: 10,
      says: 'To and fro that often as a sine; 0 holds it steady',
    }).default(0),
  },
  'A shift of weight between the feet',
);

const shove = section(
  {
    name: name('Makes this shove an event').optional(),
    atS: quantity({ unit: 's', min: 0, max: 600, says: 'Time since the start' }),
    forS: quantity({ unit: 's', min: 0.01, max: 60, says: 'How long it lasts' }),
    forwardN: quantity({
      unit: 'N',
      min: -2000,
      max: 2000,
      says: "Horizontal force at the rider's centre of mass; backward is negative",
    }),
  },
  'A push on the rider',
);

const start = section(
  {
    speedKmPerH: quantity({
      unit: 'km/h',
      min: -15,
      max: 60,
      says: 'Speed at the start, rolling steadily',
    }).default(0),
    noseUpDeg: quantity({
      unit: 'deg',
      min: -20,
      max: 20,
      says: 'Pitch at the start; left out: the pitch at which this profile rolls steadily',
    }).optional(),
    takesOver: z
      .boolean({ error: 'true or false' })
      .meta({ description: 'True when the controller takes over at the start, so that an engage ramp acts' })
      .default(false),
  },
  'How the run begins',
);

/** Ways to measure: against the step that was asked for, after a disturbance, or just riding. */
export const MEASURE_KINDS = ['step', 'disturbance', 'ride'] as const;

const measure = section(
  {
    from: name(
      "The event the measurement starts at: 'start', or the name of a piece, a shift, a shove",
    ).default('start'),
    atS: quantity({
      unit: 's',
      min: 0,
      max: 600,
      says: 'Start at this time instead of at an event',
    }).optional(),
    forS: quantity({
      unit: 's',
      min: 0.2,
      max: 600,
      says: 'How long to measure; left out: to the end of the run',
    }).optional(),
    as: choice(
      MEASURE_KINDS,
      'step: pitch must go to the set-point; disturbance: pitch must come back; ride: neither',
    ),
    bandDeg: quantity({
      unit: 'deg',
      min: 0.05,
      max: 10,
      says: 'Settled means staying within this of the final pitch',
    }).default(0.5),
  },
  'What is measured, and from when',
);

/** What a scenario file holds. */
export const scenarioSchema = section(
  {
    summary: text('One or two sentences: what happens and what it shows'),
    durationS: quantity({ unit: 's', min: 0.5, max: 600, says: 'Length of the run' }),
    chargePercent: quantity({
      unit: '%',
      min: 1,
      max: 100,
      says: 'State of charge of the pack at the start',
    }).default(80),
    start: start.prefault({}),
    road: z
      .array(roadPiece, { error: 'a list of road pieces, each with lengthM' })
      .min(1, { error: 'at least one road piece' })
      .max(500, { error: 'at most 500 road pieces' })
      .meta({ description: 'Road pieces one after another from the start; the last one goes on level' }),
    speeds: z
      .array(speedPoint, { error: 'a list of points { atS, speedKmPerH }' })
      .min(1, { error: 'at least one speed' })
      .max(500, { error: 'at most 500 speeds' })
      .meta({ description: 'What speed the rider wants when; times rise' }),
    shifts: z
      .array(weightShift, { error: 'a list of shifts { atS, forS, noseDownNm }' })
      .max(200, { error: 'at most 200 shifts' })
      .meta({ description: 'Scripted shifts of weight' })
      .default([]),
    shoves: z
      .array(shove, { error: 'a list of shoves { atS, forS, forwardN }' })
      .max(200, { error: 'at most 200 shoves' })
      .meta({ description: 'Scripted pushes on the rider' })
      .default([]),
    measure,
  },
  "A scenario: road, rider's script, events and what to measure",
);

/** A scenario file, checked and with its defaults filled in. */
export type ScenarioFile = z.output<typeof scenarioSchema>;

/** One road piece of a scenario file. */
export type RoadPiece = ScenarioFile['road'][number];
