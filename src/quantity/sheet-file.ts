/**
 * The file of a controller sheet: how the controller in front of its owner names, counts, scales, limits and rounds the numbers of
 * a profile. Written by the owner from the controller's own manual.
 */
import * as z from 'zod';
import { choice, count, quantity, section, text } from './field.js';
import { PROFILE_FIELDS } from './profile-fields.js';
import { SHEET_UNITS } from './sheet-units.js';

const FIELD_KEYS = PROFILE_FIELDS.map(({ key }) => key) as [string, ...string[]];

/** Largest number that is typed, least part of one that is told apart, and largest scale. */
const LARGEST = 1e9;
const LEAST_STEP = 1e-9;
const LARGEST_SCALE = 1e6;

/** Most letters of a label: it stands in one line beside its value. */
const LONGEST_LABEL = 40;
const LABEL_EXPECTED = `one line of 1 to ${LONGEST_LABEL} characters`;

const label = z
  .string({ error: LABEL_EXPECTED })
  .regex(/^(?!\s)[^\p{Cc}\p{Cf}\p{Cs}]{1,40}(?<!\s)$/u, { error: LABEL_EXPECTED })
  .meta({ description: 'What the controller calls it' });

const typedNumber = (says: string) => quantity({ unit: '', min: -LARGEST, max: LARGEST, says }).optional();

const row = section(
  {
    label,
    quantity: choice(FIELD_KEYS, 'The number of a profile that goes there'),
    unit: choice(SHEET_UNITS, 'The unit in which the controller counts it'),
    scale: quantity({
      unit: '',
      min: LEAST_STEP,
      max: LARGEST_SCALE,
      says: 'What is typed for one of this unit, such as 1000 where it counts in thousandths; left out: 1',
    }).default(1),
    sign: choice(
      ['plus', 'minus'],
      'Sign that the controller wants for a number that is positive here; left out: as `counts` says',
    ).optional(),
    decimals: count({ unit: '', min: 0, max: 9, says: 'Digits after the point that it takes' }).optional(),
    step: quantity({
      unit: '',
      min: LEAST_STEP,
      max: LARGEST,
      says: 'Step in which it takes the number, in place of decimals; neither: seven figures',
    }).optional(),
    least: typedNumber('Least number that it takes, as typed'),
    greatest: typedNumber('Greatest number that it takes, as typed'),
    whenLeftOut: typedNumber(
      'What is typed where the profile leaves this out: what means "none" to the controller; left out: nothing',
    ),
    note: text('What to know when typing it').optional(),
  },
  'One number as the controller wants it typed',
);

const counts = section(
  {
    pitch: choice(['nose down', 'nose up'], 'Which pitch it counts as positive'),
    current: choice(['forward', 'backward'], 'Which current it counts as positive: which way that drives'),
    error: choice(
      ['pitch minus set-point', 'set-point minus pitch'],
      'What its proportional and integral gain multiply',
    ).default('pitch minus set-point'),
    rate: choice(
      ['nose down', 'nose up'],
      'Which movement its rate gain multiplies as positive; left out: the one in which its error grows',
    ).optional(),
  },
  'Which way the controller counts: to be seen on the stand, wheel off the ground',
);

/** What a controller sheet holds. */
export const sheetSchema = section(
  {
    summary: text('Which controller, which version of its software, read from where'),
    loopRateHz: quantity({
      unit: 'Hz',
      min: 100,
      max: 4000,
      says: 'Loop rate of the controller: its tick dt is one second over it',
    }),
    currentLimitA: quantity({
      unit: 'A',
      min: 1,
      max: 1000,
      says: 'Motor current that it calls its limit: where it cuts, and what numbers may be counted as parts of',
    }).optional(),
    counts,
    rows: z
      .array(row)
      .min(1)
      .max(200)
      .meta({ description: 'The numbers, in the order in which they are typed' }),
  },
  'A controller sheet: how one controller names and counts the numbers of a profile',
);

/** A controller sheet, checked and with its defaults filled in. */
export type SheetFile = z.output<typeof sheetSchema>;

/** One number as the controller wants it typed. */
export type SheetRow = SheetFile['rows'][number];
