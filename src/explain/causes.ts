/**
 * What can be wrong, and how is each suspect taken away? A cause names what it changes in a cell's makings: in the profile,
 * in the loop's hardware, in motor and pack, in the rider, or in the road. Taking it away and running the same cells again
 * shows what it is to blame for.
 */
import type { BoardFile } from '../quantity/board-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import type { ScenarioFile } from '../quantity/scenario-file.js';

/** What a cell is made from. */
export interface Makings {
  profile: ProfileFile;
  board: BoardFile;
  rider: RiderFile;
  scenario: ScenarioFile;
  seed: number;
  noiseRatio: number;
}

/** Where a cause lies: `profile` can be cured by other numbers in the profile, the others cannot. */
export const FAMILIES = ['profile', 'loop', 'power', 'rider', 'road'] as const;

/** Where a cause lies. */
export type Family = (typeof FAMILIES)[number];

/** One suspect: `remove` takes it away; for those of the profile with the help of a reference for the same rig. */
export interface Cause {
  name: string;
  family: Family;
  /** False where there is nothing to take away, so that no run is wasted. */
  isPresent: (makings: Makings, reference: ProfileFile) => boolean;
  remove: (makings: Makings, reference: ProfileFile) => Makings;
}

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

const withController = (makings: Makings, controller: Partial<BoardFile['controller']>): Makings => ({
  ...makings,
  board: { ...makings.board, controller: { ...makings.board.controller, ...controller } },
});

const withMotor = (makings: Makings, motor: Partial<BoardFile['motor']>): Makings => ({
  ...makings,
  board: { ...makings.board, motor: { ...makings.board.motor, ...motor } },
});

const withPack = (makings: Makings, pack: Partial<BoardFile['pack']>): Makings => ({
  ...makings,
  board: { ...makings.board, pack: { ...makings.board.pack, ...pack } },
});

/** A gain that is off the reference by less than this factor is not a suspect. */
const NEAR_REFERENCE = 1.1;

const gain = (name: string, key: keyof Gains, side: 'below' | 'above'): Cause => ({
  name,
  family: 'profile',
  isPresent: ({ profile }, reference) => {
    const [here, there] = [profile.gains[key], reference.gains[key]];
    return side === 'below' ? here * NEAR_REFERENCE < there : here > there * NEAR_REFERENCE;
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

const always = () => true;

/** So much more that a limit is never met. */
const PLENTY = 20;
/** Nerves and legs that are as good as none in the way: delay s, damping ratio. */
const QUICK_DELAY_S = 0.03;
const NO_SLIP_RATIO = 1.5;

/** Every suspect, in no order of likelihood. */
export const CAUSES: readonly Cause[] = [
  gain('too little rate gain', 'rateAPerDegPerS', 'below'),
  gain('too much rate gain', 'rateAPerDegPerS', 'above'),
  gain('too little proportional gain', 'proportionalAPerDeg', 'below'),
  gain('too much proportional gain', 'proportionalAPerDeg', 'above'),
  gain('integral wind-up', 'integralAPerDegS', 'above'),
  shaping('filter lag', ['gyroLowPassHz'], ({ gyroLowPassHz }) => gyroLowPassHz !== undefined),
  shaping(
    'accelerometer pull',
    ['blendTimeS'],
    (here, reference) => here.blendTimeS * NEAR_REFERENCE < reference.blendTimeS,
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
  shaping('trim', ['restTrimNoseUpDeg'], ({ restTrimNoseUpDeg }) => restTrimNoseUpDeg !== 0),
  {
    name: 'loop delay',
    family: 'loop',
    isPresent: ({ board }) => board.controller.delayTicks > 0 || board.motor.currentLagMs > 0,
    remove: (makings) => withMotor(withController(makings, { delayTicks: 0 }), { currentLagMs: 0 }),
  },
  {
    name: 'noise of the gyro',
    family: 'loop',
    isPresent: ({ board }) => board.controller.gyroNoiseDegPerS > 0,
    remove: (makings) => withController(makings, { gyroNoiseDegPerS: 0 }),
  },
  {
    name: 'current ceiling',
    family: 'power',
    isPresent: always,
    remove: (makings) =>
      withMotor(makings, {
        driveCurrentA: PLENTY * makings.board.motor.driveCurrentA,
        brakeCurrentA: PLENTY * makings.board.motor.brakeCurrentA,
      }),
  },
  {
    name: 'voltage ceiling',
    family: 'power',
    isPresent: always,
    // Twice the cells; the current they may give goes down with it, so that their power stays.
    remove: (makings) => {
      const { seriesCells, dischargeCurrentA, chargeCurrentA, cellResistanceMilliohm } = makings.board.pack;
      return withPack(makings, {
        seriesCells: 2 * seriesCells,
        dischargeCurrentA: dischargeCurrentA / 2,
        chargeCurrentA: chargeCurrentA / 2,
        cellResistanceMilliohm: cellResistanceMilliohm / 2,
      });
    },
  },
  {
    name: 'pack ceiling',
    family: 'power',
    isPresent: always,
    remove: (makings) => {
      const { dischargeCurrentA, chargeCurrentA } = makings.board.pack;
      return withPack(makings, {
        dischargeCurrentA: PLENTY * dischargeCurrentA,
        chargeCurrentA: PLENTY * chargeCurrentA,
      });
    },
  },
  {
    name: 'low pack',
    family: 'power',
    isPresent: ({ scenario }) => scenario.chargePercent < 95,
    remove: (makings) => ({ ...makings, scenario: { ...makings.scenario, chargePercent: 100 } }),
  },
  {
    name: "the rider's delay",
    family: 'rider',
    isPresent: ({ rider }) => rider.balance.delayS > QUICK_DELAY_S,
    remove: (makings) => ({
      ...makings,
      rider: { ...makings.rider, balance: { ...makings.rider.balance, delayS: QUICK_DELAY_S } },
    }),
  },
  {
    name: "the rider's tremor",
    family: 'rider',
    isPresent: ({ rider }) => rider.balance.tremorNm > 0,
    remove: (makings) => ({
      ...makings,
      rider: { ...makings.rider, balance: { ...makings.rider.balance, tremorNm: 0 } },
    }),
  },
  {
    name: 'grip',
    family: 'road',
    isPresent: always,
    remove: (makings) => ({
      ...makings,
      scenario: {
        ...makings.scenario,
        road: makings.scenario.road.map((piece) => ({ ...piece, gripRatio: NO_SLIP_RATIO })),
      },
    }),
  },
  {
    name: 'rough road',
    family: 'road',
    isPresent: ({ scenario }) => scenario.road.some(({ roughness }) => roughness !== undefined),
    remove: (makings) => ({
      ...makings,
      scenario: {
        ...makings.scenario,
        road: makings.scenario.road.map(({ roughness: _smooth, ...piece }) => piece),
      },
    }),
  },
];
