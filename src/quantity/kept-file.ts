/**
 * The file of a shortlisted profile: its numbers, the rig and the cells that it was proven in, what came out, and what its rider
 * says of it. Note and rides are the rider's; everything else is sealed, so that a number changed by hand is found.
 */
import * as z from 'zod';
import { boardSchema } from './board-file.js';
import { FEEL_WORDS, FELT_KEYS, type FeltKey } from './feel-words.js';
import { choice, count, name, quantity, section, text } from './field.js';
import { profileSchema } from './profile-file.js';
import { riderSchema } from './rider-file.js';

/** Ways in which a number can come onto the board wrongly. */
export const SLIPS = [
  'a tenth less',
  'a tenth more',
  'first digit one less',
  'first digit one more',
  'a tenth of it',
  'ten times it',
  'the other sign',
] as const;

/** One of the ways. */
export type Slip = (typeof SLIPS)[number];

const LARGEST = 1e9;
const anyNumber = (unit: string, says: string) => quantity({ unit, min: -LARGEST, max: LARGEST, says });
const positive = (unit: string, says: string) => quantity({ unit, min: 0, max: LARGEST, says });

/** Words that may be missing: nothing written is an empty text. */
const note = (says: string) => text(says).or(z.literal('')).meta({ description: says });

/** The same or nothing, with the sentence of the same. */
const orNull = <T extends z.ZodType>(schema: T) =>
  schema.nullable().meta({ description: schema.meta()?.description ?? '' });

const listOf = <T extends z.ZodType>(schema: T, says: string) =>
  z.array(schema, { error: 'a list' }).meta({ description: says });

const pattern = (shape: RegExp, expected: string, says: string) =>
  z.string({ error: expected }).regex(shape, { error: expected }).meta({ description: says });

const day = (says: string) => pattern(/^\d{4}-\d{2}-\d{2}$/, 'a day such as 2026-05-31', says);
const instant = (says: string) =>
  pattern(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/, 'a time such as 2026-05-31T18:20:00Z', says);
const shortHash = (says: string) =>
  pattern(/^[0-9a-hjkmnp-tv-z]{4}-[0-9a-hjkmnp-tv-z]{4}$/, 'a short hash such as 7k2m-q9dx', says);

const rating = (word: FeltKey) =>
  count({ unit: '', min: 1, max: 5, says: `How ${word} it felt: 1 not at all, 5 very` }).optional();
const felt = section(
  Object.fromEntries(FELT_KEYS.map((word) => [word, rating(word)])) as {
    [K in FeltKey]: ReturnType<typeof rating>;
  },
  'How it felt, word by word, from 1 to 5',
);

const ride = section(
  { on: day('Day of the ride'), note: note('What was felt').default(''), felt: felt.prefault({}) },
  'One ride on the board, after which it was rated',
);

const where = {
  scenario: name('Scenario'),
  rider: name('Rider'),
  chargePercent: quantity({ unit: '%', min: 0, max: 100, says: 'Charge of the pack' }),
  seed: count({ unit: '', min: 0, max: 0xffff_ffff, says: 'Seed of chance' }),
};

const origin = section(
  {
    from: name('Name of the profile that was kept'),
    on: instant('When it was proven and kept, UTC'),
    underfoot: text('Version of the program that proved it'),
    scales: count({ unit: '', min: 1, max: 1000, says: 'Version of the scales of the score' }),
  },
  'Where it comes from',
);

const rig = section(
  {
    boardName: name('Name of the board'),
    board: boardSchema,
    riders: listOf(
      section({ name: name('Name of the rider'), rider: riderSchema }, 'A rider it was proven under'),
      'The riders that it was proven under',
    ).min(1),
  },
  'The board and the riders that it was proven on, as they were then',
);

const cells = section(
  {
    scenarios: listOf(name('Scenario'), 'Names of the scenarios').min(1),
    chargesPercent: listOf(
      orNull(where.chargePercent),
      "Charges of the pack; null is each scenario's own [%]",
    ).min(1),
    seeds: listOf(where.seed, 'Seeds of chance').min(1),
    count: count({
      unit: '',
      min: 1,
      max: 1_000_000,
      says: "Runs: scenarios x riders x charges x seeds; a charge that is also a scenario's own counts once",
    }),
    scenarioHash: shortHash('Hash of what these scenarios held').optional(),
    weights: z
      .record(z.string(), positive('', 'Weight of a term of the score'))
      .meta({ description: 'Weights of the score that were not the usual ones' })
      .optional(),
  },
  'What it was run in',
);

const figures = section(
  {
    failures: count({ unit: '', min: 0, max: 1_000_000, says: 'Runs that did not stay upright' }),
    score: positive('', 'Score over the runs: less is better'),
    overshootPercent: orNull(positive('%', 'Mean overshoot or rebound')),
    settlingTimeS: orNull(positive('s', 'Mean settling time')),
    notSettled: count({ unit: '', min: 0, max: 1_000_000, says: 'Runs that did not settle in their time' }),
    saturationPercent: orNull(positive('%', 'Mean share of ticks in which the request was cut')),
    notFor: listOf(where.rider, 'Riders who fell with it in some run'),
  },
  'What came out',
);

const margin = (unit: string, says: string) =>
  section(
    { value: orNull(positive(unit, says)), rider: where.rider, speedKmPerH: positive('km/h', 'Speed') },
    `${says}, where it is smallest; null where it is without end`,
  );
const margins = section(
  {
    disk: margin('', 'Disk margin: 0 is lost'),
    gainUpRatio: margin('', 'Factor by which all gains may grow'),
    gainDownRatio: margin('', 'Factor by which all gains may shrink'),
    phaseDeg: margin('deg', 'Phase margin'),
    delayMs: margin('ms', 'Delay that may come on top'),
  },
  'Margins on steady rides, each under the rider where it is smallest',
);

const feel = section(
  { rider: where.rider, words: listOf(choice(FEEL_WORDS, 'A word for the feel'), 'The words') },
  'How it is meant to feel according to the simulation',
);

const limit = section(
  {
    what: text('What was made larger until the rig fell'),
    unit: text('Unit of the sizes'),
    rider: where.rider,
    speedKmPerH: orNull(positive('km/h', 'Speed of the ride; null where it is what was searched for')),
    chargePercent: where.chargePercent,
    survived: orNull(positive('', 'Largest size survived; null where none was')),
    failed: orNull(positive('', 'Smallest size that failed; null where the largest tried was survived')),
    ending: orNull(text('How the smallest one that failed ended')),
  },
  'One edge, under the rider who comes to it first',
);

const weakness = section(
  { says: text('The weak point in words'), ...where },
  'A run in which it is at its weakest',
);

const slip = section(
  {
    key: text('Number of the profile that is off'),
    slip: choice(SLIPS, 'How it is off'),
    value: anyNumber('', 'What is typed instead, in the unit of the number'),
    runs: count({ unit: '', min: 1, max: 1_000_000, says: 'Runs that it was tried in' }),
    failures: count({ unit: '', min: 0, max: 1_000_000, says: 'Runs that did not stay upright' }),
    moreFailures: count({
      unit: '',
      min: -1_000_000,
      max: 1_000_000,
      says: 'More of them than without the slip',
    }),
    scoreRatio: positive('', 'Score over that without the slip'),
    soonestS: orNull(positive('s', 'How soon the soonest of these falls came; null where there is none')),
    ending: orNull(text('How that one ended')),
  },
  'What one number that is off does',
);

/** What the file of a shortlisted profile holds. */
export const keptSchema = section(
  {
    note: note("The rider's own words").default(''),
    rides: listOf(ride, 'What was felt on the board').default([]),
    numbers: shortHash('Hash of the numbers of the profile'),
    seal: shortHash('Hash of everything but note and rides'),
    origin,
    profile: profileSchema,
    rig,
    cells,
    figures,
    margins: orNull(margins),
    feel,
    limits: listOf(limit, 'The edges: what was made larger until the rig fell'),
    weakest: listOf(weakness, 'Where it is at its weakest'),
    slips: listOf(slip, 'What a number typed wrongly does, the most dangerous first'),
  },
  'A shortlisted profile: its numbers, what they were proven in, and what was felt',
);

/** The file of a shortlisted profile, checked and with its defaults filled in. */
export type KeptFile = z.output<typeof keptSchema>;
