/**
 * Rigs and profiles spoiled in one known way each, drawn by a seed, as strong as it takes to be felt: the truth that an
 * explanation is held against.
 */
import { bounceHz } from '../../src/explain/bounce.js';
import type { Makings } from '../../src/explain/makings.js';
import type { BoardFile } from '../../src/quantity/board-file.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import type { RiderFile } from '../../src/quantity/rider-file.js';
import type { RoadPiece } from '../../src/quantity/scenario-file.js';

/** One way to spoil: `strength` from 0, hardly, to 1, badly. */
export interface Spoil {
  cause: string;
  spoil: (makings: Makings, strength: number) => Makings;
}

/** A number between two, evenly in its logarithm. */
const between = (mild: number, bad: number, strength: number) => mild * (bad / mild) ** strength;

const gains = (makings: Makings, change: Partial<ProfileFile['gains']>): Makings => ({
  ...makings,
  profile: { ...makings.profile, gains: { ...makings.profile.gains, ...change } },
});
const shaping = (makings: Makings, change: Partial<ProfileFile['shaping']>): Makings => ({
  ...makings,
  profile: { ...makings.profile, shaping: { ...makings.profile.shaping, ...change } },
});
const controller = (makings: Makings, change: Partial<BoardFile['controller']>): Makings => ({
  ...makings,
  board: { ...makings.board, controller: { ...makings.board.controller, ...change } },
});
const motor = (makings: Makings, change: Partial<BoardFile['motor']>): Makings => ({
  ...makings,
  board: { ...makings.board, motor: { ...makings.board.motor, ...change } },
});
const pack = (makings: Makings, change: Partial<BoardFile['pack']>): Makings => ({
  ...makings,
  board: { ...makings.board, pack: { ...makings.board.pack, ...change } },
});
const balance = (makings: Makings, change: Partial<RiderFile['balance']>): Makings => ({
  ...makings,
  rider: { ...makings.rider, balance: { ...makings.rider.balance, ...change } },
});

/** Every road spoiled alike. */
const road = (makings: Makings, change: (piece: RoadPiece) => RoadPiece): Makings => ({
  ...makings,
  scenario: { ...makings.scenario, road: makings.scenario.road.map(change) },
});

/** A train of bumps, as many as pass in this time. */
const TRAIN_S = 3;
const train = (makings: Makings, frequencyHz: number, bumpHeightM: number): Makings => {
  const speedMPerS = makings.scenario.start.speedKmPerH / 3.6;
  const bumpCount = Math.ceil(TRAIN_S * frequencyHz);
  return road(makings, (piece) => {
    if (piece.name !== 'road') return piece;
    return { ...piece, bumpHeightM, bumpCount, lengthM: (bumpCount * speedMPerS) / frequencyHz };
  });
};

/** Ways to spoil a road that is ridden steadily, and comes as a piece of that name. */
export const ROAD_SPOILS: readonly Spoil[] = [
  {
    cause: "the tyre's own frequency",
    spoil: (makings, s) => train(makings, bounceHz(makings.board, makings.rider), between(0.018, 0.045, s)),
  },
  {
    cause: 'bumps and steps',
    spoil: (makings, s) =>
      train(makings, 2.4 * bounceHz(makings.board, makings.rider), between(0.018, 0.045, s)),
  },
  {
    cause: 'rough road',
    spoil: (makings, s) => road(makings, (piece) => ({ ...piece, roughness: s < 0.5 ? 'D' : 'E' })),
  },
];

/** Every way to spoil what is ridden otherwise. */
export const SPOILS: readonly Spoil[] = [
  {
    cause: 'too little rate gain',
    spoil: (makings, s) =>
      gains(makings, { rateAPerDegPerS: between(0.3, 0.001, s) * makings.profile.gains.rateAPerDegPerS }),
  },
  {
    cause: 'too much rate gain',
    spoil: (makings, s) =>
      gains(makings, { rateAPerDegPerS: between(3, 10, s) * makings.profile.gains.rateAPerDegPerS }),
  },
  {
    cause: 'too little proportional gain',
    spoil: (makings, s) =>
      gains(makings, {
        proportionalAPerDeg: between(0.4, 0.05, s) * makings.profile.gains.proportionalAPerDeg,
      }),
  },
  {
    cause: 'integral wind-up',
    spoil: (makings, s) =>
      shaping(gains(makings, { integralAPerDegS: between(60, 800, s) }), { integralLimitA: 100 }),
  },
  { cause: 'filter lag', spoil: (makings, s) => shaping(makings, { gyroLowPassHz: between(4, 1, s) }) },
  {
    cause: 'accelerometer pull',
    spoil: (makings, s) => shaping(makings, { blendTimeS: between(0.8, 0.06, s) }),
  },
  { cause: 'slew limit', spoil: (makings, s) => shaping(makings, { slewLimitAPerS: between(120, 50, s) }) },
  {
    cause: "the profile's own ceilings",
    spoil: (makings, s) =>
      shaping(makings, { driveCeilingA: between(20, 5, s), brakeCeilingA: between(20, 5, s) }),
  },
  {
    cause: 'headroom lift',
    spoil: (makings, s) =>
      shaping(makings, {
        headroomLift: { belowPercent: between(70, 90, s), upToDeg: between(6, 15, s), rateDegPerS: 30 },
      }),
  },
  { cause: 'trim', spoil: (makings, s) => shaping(makings, { restTrimNoseUpDeg: between(3, 9, s) }) },
  {
    cause: 'loop delay',
    spoil: (makings, s) => {
      const { loopRateHz } = makings.board.controller;
      return controller(makings, { delayTicks: Math.round(between(0.012, 0.05, s) * loopRateHz) });
    },
  },
  {
    cause: 'noise of the gyro',
    spoil: (makings, s) => controller(makings, { gyroNoiseDegPerS: between(1, 8, s) }),
  },
  {
    cause: 'noise of the accelerometer',
    spoil: (makings, s) => controller(makings, { accelerometerNoiseMPerS2: between(20, 300, s) }),
  },
  {
    cause: 'current ceiling',
    spoil: (makings, s) =>
      motor(makings, { driveCurrentA: between(20, 6, s), brakeCurrentA: between(20, 6, s) }),
  },
  {
    cause: 'voltage ceiling',
    // Fewer cells in series, more side by side, so that the pack gives as much power as before.
    spoil: (makings, s) => {
      const { seriesCells, dischargeCurrentA, chargeCurrentA } = makings.board.pack;
      const cells = Math.max(3, Math.round(seriesCells * between(0.55, 0.3, s)));
      const ratio = seriesCells / cells;
      return pack(makings, {
        seriesCells: cells,
        parallelCells: 4,
        dischargeCurrentA: ratio * dischargeCurrentA,
        chargeCurrentA: ratio * chargeCurrentA,
      });
    },
  },
  { cause: 'pack ceiling', spoil: (makings, s) => pack(makings, { dischargeCurrentA: between(8, 1.5, s) }) },
  { cause: "the rider's delay", spoil: (makings, s) => balance(makings, { delayS: between(0.19, 0.3, s) }) },
  {
    cause: "the rider's stiffness",
    spoil: (makings, s) => balance(makings, { frequencyRadPerS: between(2.6, 5, s) }),
  },
  { cause: "the rider's tremor", spoil: (makings, s) => balance(makings, { tremorNm: between(4, 20, s) }) },
  {
    cause: 'grip',
    spoil: (makings, s) => road(makings, (piece) => ({ ...piece, gripRatio: between(0.12, 0.02, s) })),
  },
  {
    cause: 'rough road',
    spoil: (makings, s) => road(makings, (piece) => ({ ...piece, roughness: s < 0.5 ? 'D' : 'E' })),
  },
];
