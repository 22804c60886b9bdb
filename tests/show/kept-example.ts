/**
 * A kept profile with invented figures, and changes of it, to show.
 */
import { keptSchema, type KeptFile } from '../../src/quantity/kept-file.js';
import { profileSchema, type ProfileFile } from '../../src/quantity/profile-file.js';
import { numbersHash, sealOf } from '../../src/store/short-hash.js';

const BOARD = {
  summary: 'An invented board.',
  wheel: { radiusM: 0.14, massKg: 6, inertiaKgM2: 0.06 },
  deck: { massKg: 9, inertiaKgM2: 0.5, reachM: 0.38 },
  motor: { torqueConstantNmPerA: 0.6, resistanceOhm: 0.09, driveCurrentA: 80, brakeCurrentA: 70 },
  pack: {
    seriesCells: 15,
    cellResistanceMilliohm: 20,
    cellCapacityAh: 4,
    dischargeCurrentA: 40,
    chargeCurrentA: 20,
  },
};

const rider = (name: string, massKg: number, delayS: number) => ({
  name,
  rider: {
    summary: `An invented rider of ${massKg} kg.`,
    body: { massKg, statureM: 1.8 },
    balance: { delayS, frequencyRadPerS: 2, dampingRatio: 0.8 },
  },
});

const RIDERS = [rider('light', 55, 0.14), rider('first-timer', 78, 0.17), rider('heavy', 100, 0.14)];

/** Scenarios of the example. */
export const SCENARIOS = ['bump', 'cobbled-lane', 'hard-stop', 'hill-down', 'hill-up', 'kerb-drop', 'shove'];

/** The profile of the example. */
export const PROFILE: ProfileFile = profileSchema.parse({
  summary:
    'Firm but calm: the deck hardly tilts for a shift of weight, and comes back without a second swing.',
  gains: { proportionalAPerDeg: 22, rateAPerDegPerS: 1.4 },
  shaping: {
    blendTimeS: 4,
    driveCeilingA: 60,
    headroomLift: { belowPercent: 25, upToDeg: 4, rateDegPerS: 8 },
  },
});

/** A profile that has every number, some with as many digits as a number can have. */
export const FULL_PROFILE: ProfileFile = profileSchema.parse({
  summary: 'Everything at once. '.repeat(30).trim(),
  gains: {
    proportionalAPerDeg: 22.123456789012344,
    rateAPerDegPerS: 1.4000000000000001,
    integralAPerDegS: 0.1 + 0.2,
  },
  shaping: {
    progressiveStiffnessPerDeg: 1.2345678901234566e-7,
    integralLimitA: 20,
    slewLimitAPerS: 999_999.123456789,
    driveCeilingA: 60,
    brakeCeilingA: 55.5,
    gyroLowPassHz: 180,
    blendTimeS: 4,
    restTrimNoseUpDeg: -0.30000000000000004,
    engageRampS: 0.4,
    loadFeedForward: { filterTimeS: 0.8, currentShare: 0.5, noseUpDegPerA: -0.012 },
    headroomLift: { belowPercent: 25, upToDeg: 4, rateDegPerS: 8 },
  },
});

const SLIPS = ['a tenth less', 'a tenth more', 'a tenth of it', 'ten times it', 'the other sign'] as const;

function slipsOf(key: string, value: number): unknown[] {
  const factors = [0.9, 1.1, 0.1, 10, -1];
  const falls = [0, 0, 12, key === 'rateAPerDegPerS' ? 21 : 0, 21];
  return SLIPS.map((slip, index) => ({
    key,
    slip,
    value: value * factors[index]!,
    runs: 21,
    failures: falls[index],
    moreFailures: falls[index],
    scoreRatio: 1 + falls[index]! / 3,
    soonestS: falls[index] === 0 ? null : 0.41,
    ending: falls[index] === 0 ? null : 'nose strike',
  }));
}

function limit(what: string, unit: string, [survived, failed]: [number | null, number | null]) {
  const ending = failed === null ? null : 'nose strike';
  const speedKmPerH = what === 'speed' ? null : 12;
  return { what, unit, rider: 'heavy', speedKmPerH, chargePercent: 80, survived, failed, ending };
}

const margin = (value: number | null, speedKmPerH: number) => ({ value, rider: 'light', speedKmPerH });

const EXAMPLE = {
  note: '',
  rides: [],
  origin: { from: 'denim', on: '2026-05-31T18:20:00Z', underfoot: '0.1.0', scales: 3 },
  rig: { boardName: 'otter', board: BOARD, riders: RIDERS },
  cells: { scenarios: SCENARIOS, chargesPercent: [null], seeds: [1], count: 21 },
  figures: {
    failures: 2,
    score: 41.5,
    overshootPercent: 12,
    settlingTimeS: 1.2,
    notSettled: 1,
    saturationPercent: 0.4,
    notFor: ['first-timer'],
  },
  margins: {
    disk: margin(0.9, 12),
    gainUpRatio: margin(2.41, 0),
    gainDownRatio: margin(0.31, 20),
    phaseDeg: margin(38, 12),
    delayMs: margin(7.4, 0),
  },
  feel: { rider: 'light', words: ['stiff', 'composed'] },
  limits: [
    limit('bump', 'mm', [90, 91]),
    limit('climb', '%', [14, 14.5]),
    limit('descent', '%', [22, 22.5]),
    limit('push from behind', 'N s', [48, 49]),
    limit('speed', 'km/h', [34, 35]),
    { ...limit('speed', 'km/h', [null, 0]), chargePercent: 20 },
  ],
  weakest: ['hard-stop', 'kerb-drop', 'hill-up'].map((scenario, index) => ({
    says: `${scenario} with heavy, pack at 80 %: settles only after ${index + 1}.40 s`,
    scenario,
    rider: 'heavy',
    chargePercent: 80,
    seed: 1,
  })),
};

/** What may be another in an example. */
type Changes = Partial<Record<keyof KeptFile, unknown>> & { profile?: ProfileFile };

/** The example with something changed; hashes and slips are those of its profile, unless slips are given. */
export function keptExample(changes: Changes = {}): KeptFile {
  const profile = changes.profile ?? PROFILE;
  const slips = Object.entries(profile.gains).flatMap(([key, value]) => slipsOf(key, value));
  const parsed = keptSchema.parse({
    ...EXAMPLE,
    slips,
    ...changes,
    profile,
    numbers: numbersHash(profile),
    seal: '0000-0000',
  });
  return { ...parsed, seal: sealOf(parsed) };
}

const longName = (index: number) => `a-name-that-is-as-long-as-a-name-may-${String(index).padStart(3, '0')}`;
const WORDS = 'Words to the last letter that there is room for in a file. '.repeat(11).slice(0, 600).trim();

/** An example in which everything is as long as a file may have it. */
export const LONG_NAME = longName(0);
/** That example itself. */
export const LONGEST = keptExample({
  profile: FULL_PROFILE,
  note: `<b>&amp;"'</b> 路面很滑 🛹 ${WORDS}`.slice(0, 600),
  rides: [
    {
      on: '2026-06-01',
      note: WORDS,
      felt: { loose: 1, sluggish: 1, stiff: 5, twitchy: 4, buzzy: 3, wobble: 2 },
    },
  ],
  origin: { ...EXAMPLE.origin, from: longName(1), underfoot: WORDS },
  rig: {
    boardName: longName(2),
    board: BOARD,
    riders: Array.from({ length: 12 }, (_, index) =>
      rider(longName(index), 40.123456 + index, 0.1 + index / 97),
    ),
  },
  cells: {
    ...EXAMPLE.cells,
    scenarios: Array.from({ length: 40 }, (_, index) => longName(index)),
    seeds: [4, 8, 15, 16, 23, 42],
    chargesPercent: [null, 15, 20.5, 100],
  },
  figures: { ...EXAMPLE.figures, notFor: Array.from({ length: 12 }, (_, index) => longName(index)) },
  limits: EXAMPLE.limits.map((one, index) => ({ ...one, rider: longName(index) })),
  weakest: EXAMPLE.weakest.map((one) => ({ ...one, says: WORDS, rider: longName(3) })),
});

/** An example of which nothing is known that may be unknown. */
export const BAREST = keptExample({
  profile: profileSchema.parse({
    summary: 'x',
    gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1 },
  }),
  rig: { ...EXAMPLE.rig, riders: RIDERS.slice(0, 1) },
  figures: { ...EXAMPLE.figures, failures: 0, notFor: [] },
  margins: null,
  feel: { rider: 'light', words: [] },
  limits: [],
  weakest: [],
  slips: [],
});
