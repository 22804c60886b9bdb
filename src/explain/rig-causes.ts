/**
 * What can be wrong outside of a profile: in loop, motor, pack, rider and road? Each is taken away by plenty of what it lacks, or
 * by what is usual.
 */
import type { RiderFile } from '../quantity/rider-file.js';
import { keepsBouncing, withoutBounce } from './bounce.js';
import { NEAR_USUAL, type Cause } from './cause.js';
import {
  withBalance,
  withCellsInSeries,
  withController,
  withMotor,
  withPack,
  withRoad,
  withScenario,
} from './makings.js';

const always = () => true;

/** So much more that a limit is never met, at least so many amperes, and a grip at which no tyre slips. */
const PLENTY = 20;
const PLENTY_A = 500;
const NO_SLIP_RATIO = 1.5;
const plenty = (currentA: number) => Math.max(PLENTY * currentA, PLENTY_A);

/**
 * How late a usual rider corrects himself, s: the middle of the 0.1 to 0.2 s of people who stand (R. J. Peterka 2002,
 * J. Neurophysiol. 88:1097, from memory).
 */
export const USUAL_DELAY_S = 0.14;

/**
 * How stiffly a usual rider corrects himself, as the frequency of his balance, rad/s: a stiffness half above m g h for a body of
 * usual build (the same source has about a third).
 */
export const USUAL_FREQUENCY_RAD_PER_S = 2;

/** How restless a usual rider is, Nm: 1 for 78 kg, and as heavy bodies move more, in proportion (ours, no source). */
export function usualTremorNm({ body }: RiderFile): number {
  return body.massKg / 78;
}

/** Every suspect outside of the profile, in no order of likelihood. */
export const RIG_CAUSES: readonly Cause[] = [
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
    name: 'noise of the accelerometer',
    family: 'loop',
    isPresent: ({ board }) => board.controller.accelerometerNoiseMPerS2 > 0,
    remove: (makings) => withController(makings, { accelerometerNoiseMPerS2: 0 }),
  },
  {
    name: 'current ceiling',
    family: 'power',
    isPresent: always,
    remove: (makings) =>
      withMotor(makings, {
        driveCurrentA: plenty(makings.board.motor.driveCurrentA),
        brakeCurrentA: plenty(makings.board.motor.brakeCurrentA),
      }),
  },
  {
    name: 'voltage ceiling',
    family: 'power',
    isPresent: always,
    remove: (makings) => withCellsInSeries(makings, 2 * makings.board.pack.seriesCells),
  },
  {
    name: 'pack ceiling',
    family: 'power',
    isPresent: always,
    remove: (makings) => {
      const { dischargeCurrentA, chargeCurrentA } = makings.board.pack;
      return withPack(makings, {
        dischargeCurrentA: plenty(dischargeCurrentA),
        chargeCurrentA: plenty(chargeCurrentA),
      });
    },
  },
  {
    name: 'low pack',
    family: 'power',
    isPresent: ({ scenario }) => scenario.chargePercent < 95,
    remove: (makings) => withScenario(makings, { chargePercent: 100 }),
  },
  {
    name: "the rider's delay",
    family: 'rider',
    isPresent: ({ rider }) => rider.balance.delayS > NEAR_USUAL * USUAL_DELAY_S,
    remove: (makings) => withBalance(makings, { delayS: USUAL_DELAY_S }),
  },
  {
    name: "the rider's stiffness",
    family: 'rider',
    isPresent: ({ rider }) => rider.balance.frequencyRadPerS > NEAR_USUAL * USUAL_FREQUENCY_RAD_PER_S,
    remove: (makings) => withBalance(makings, { frequencyRadPerS: USUAL_FREQUENCY_RAD_PER_S }),
  },
  {
    name: "the rider's tremor",
    family: 'rider',
    isPresent: ({ rider }) => rider.balance.tremorNm > NEAR_USUAL * usualTremorNm(rider),
    remove: (makings) => withBalance(makings, { tremorNm: usualTremorNm(makings.rider) }),
  },
  {
    name: 'grip',
    family: 'road',
    isPresent: always,
    remove: (makings) => withRoad(makings, (piece) => ({ ...piece, gripRatio: NO_SLIP_RATIO })),
  },
  {
    name: 'rough road',
    family: 'road',
    isPresent: ({ scenario }) => scenario.road.some(({ roughness }) => roughness !== undefined),
    remove: (makings) => withRoad(makings, ({ roughness: _smooth, ...piece }) => piece),
  },
  {
    name: "the tyre's own frequency",
    family: 'road',
    isPresent: keepsBouncing,
    remove: (makings) => ({ ...makings, board: withoutBounce(makings.board, makings.rider) }),
  },
  {
    name: 'bumps and steps',
    family: 'road',
    isPartOfTheRide: true,
    isPresent: ({ scenario }) =>
      scenario.road.some(({ bumpHeightM, stepUpM }) => bumpHeightM !== 0 || stepUpM !== 0),
    remove: (makings) => withRoad(makings, (piece) => ({ ...piece, bumpHeightM: 0, stepUpM: 0 })),
  },
  {
    name: 'slope',
    family: 'road',
    isPartOfTheRide: true,
    isPresent: ({ scenario }) => scenario.road.some(({ gradePercent }) => gradePercent !== 0),
    remove: (makings) => withRoad(makings, (piece) => ({ ...piece, gradePercent: 0 })),
  },
];
