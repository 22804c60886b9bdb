/**
 * Which numbers of machine, person or ride can be moved where no numbers in a profile help, and how?
 */
import { SURFACE_VALUES } from '../scenario/surface.js';
import { bentLegsNPerM } from './bounce.js';
import {
  withBalance,
  withController,
  withMotor,
  withPace,
  withPack,
  withRoad,
  withScenario,
  withStance,
  type Makings,
} from './makings.js';
import { USUAL_DELAY_S, USUAL_FREQUENCY_RAD_PER_S, usualTremorNm } from './rig-causes.js';

/**
 * How a number is moved: `read` finds it, `enough` is a size that surely helps if anything does, steps lead from there back to
 * what is now, and `change` sets it, where it is not better already.
 */
export interface Lever {
  unit: string;
  /** Which way helps. */
  better: 'more' | 'less';
  read: (makings: Makings) => number;
  enough: (now: number, makings: Makings) => number;
  step: (now: number) => number;
  change: (makings: Makings, size: number) => Makings;
}

const one = () => 1;
/** In so many steps from nothing to what is now. */
const SHARES = 20;
const share = (now: number) => now / SHARES;
/** Amperes beyond a ceiling up to which more is tried. */
const AMPLE_A = 200;
const ample = (nowA: number) => nowA + AMPLE_A;
const nothing = () => 0;

const askedSpeeds = ({ scenario }: Makings) =>
  [scenario.start.speedKmPerH, ...scenario.speeds.map(({ speedKmPerH }) => speedKmPerH)].map(Math.abs);
/** A speed that is hardly one, km/h, and the most by which a slower ride may last longer. */
const CRAWL_KM_PER_H = 3;
const LONGEST_RATIO = 3;

const atMost = (speedKmPerH: number, most: number) =>
  Math.sign(speedKmPerH) * Math.min(Math.abs(speedKmPerH), most);

function slower(makings: Makings, mostKmPerH: number): Makings {
  const { scenario } = makings;
  const ratio = Math.max(1, Math.max(...askedSpeeds(makings)) / mostKmPerH);
  return withScenario(makings, {
    durationS: scenario.durationS * Math.min(LONGEST_RATIO, ratio),
    start: { ...scenario.start, speedKmPerH: atMost(scenario.start.speedKmPerH, mostKmPerH) },
    speeds: scenario.speeds.map((point) => ({
      ...point,
      speedKmPerH: atMost(point.speedKmPerH, mostKmPerH),
    })),
  });
}

const gripOf = ({ gripRatio, surface }: Makings['scenario']['road'][number]) =>
  gripRatio ?? SURFACE_VALUES[surface].gripRatio;

/** Every lever. */
export const LEVERS = {
  'cells in series': {
    unit: '',
    better: 'more',
    read: ({ board }) => board.pack.seriesCells,
    enough: (now) => 2 * now,
    step: one,
    change: (makings, seriesCells) => withPack(makings, { seriesCells }),
  },
  'state of charge': {
    unit: '%',
    better: 'more',
    read: ({ scenario }) => scenario.chargePercent,
    enough: () => 100,
    step: one,
    change: (makings, chargePercent) => withScenario(makings, { chargePercent }),
  },
  'drive ceiling': {
    unit: 'A',
    better: 'more',
    read: ({ board }) => board.motor.driveCurrentA,
    enough: ample,
    step: one,
    change: (makings, driveCurrentA) => withMotor(makings, { driveCurrentA }),
  },
  'brake ceiling': {
    unit: 'A',
    better: 'more',
    read: ({ board }) => board.motor.brakeCurrentA,
    enough: ample,
    step: one,
    change: (makings, brakeCurrentA) => withMotor(makings, { brakeCurrentA }),
  },
  'current out of the pack': {
    unit: 'A',
    better: 'more',
    read: ({ board }) => board.pack.dischargeCurrentA,
    enough: ample,
    step: one,
    change: (makings, dischargeCurrentA) => withPack(makings, { dischargeCurrentA }),
  },
  'current into the pack': {
    unit: 'A',
    better: 'more',
    read: ({ board }) => board.pack.chargeCurrentA,
    enough: ample,
    step: one,
    change: (makings, chargeCurrentA) => withPack(makings, { chargeCurrentA }),
  },
  'ticks of delay': {
    unit: '',
    better: 'less',
    read: ({ board }) => board.controller.delayTicks,
    enough: nothing,
    step: one,
    change: (makings, delayTicks) => withController(makings, { delayTicks }),
  },
  'gyro noise': {
    unit: 'deg/s',
    better: 'less',
    read: ({ board }) => board.controller.gyroNoiseDegPerS,
    enough: nothing,
    step: share,
    change: (makings, gyroNoiseDegPerS) => withController(makings, { gyroNoiseDegPerS }),
  },
  'accelerometer noise': {
    unit: 'm/s2',
    better: 'less',
    read: ({ board }) => board.controller.accelerometerNoiseMPerS2,
    enough: nothing,
    step: share,
    change: (makings, accelerometerNoiseMPerS2) => withController(makings, { accelerometerNoiseMPerS2 }),
  },
  "the rider's delay": {
    unit: 's',
    better: 'less',
    read: ({ rider }) => rider.balance.delayS,
    enough: () => USUAL_DELAY_S,
    step: () => 0.005,
    change: (makings, delayS) =>
      withBalance(makings, { delayS: Math.min(delayS, makings.rider.balance.delayS) }),
  },
  'balance frequency': {
    unit: 'rad/s',
    better: 'less',
    read: ({ rider }) => rider.balance.frequencyRadPerS,
    enough: () => USUAL_FREQUENCY_RAD_PER_S,
    step: () => 0.05,
    change: (makings, frequencyRadPerS) =>
      withBalance(makings, {
        frequencyRadPerS: Math.min(frequencyRadPerS, makings.rider.balance.frequencyRadPerS),
      }),
  },
  tremor: {
    unit: 'Nm',
    better: 'less',
    read: ({ rider }) => rider.balance.tremorNm,
    enough: (_, { rider }) => usualTremorNm(rider),
    step: share,
    change: (makings, tremorNm) =>
      withBalance(makings, { tremorNm: Math.min(tremorNm, makings.rider.balance.tremorNm) }),
  },
  'stiffness of the legs': {
    unit: 'N/m',
    better: 'less',
    read: ({ rider }) => rider.stance.legStiffnessNPerM,
    enough: (_, { rider }) => bentLegsNPerM(rider),
    step: () => 500,
    change: (makings, stiffness) => {
      const { legStiffnessNPerM } = makings.rider.stance;
      return withStance(makings, { legStiffnessNPerM: Math.min(stiffness, legStiffnessNPerM) });
    },
  },
  grip: {
    unit: '',
    better: 'more',
    read: ({ scenario }) => Math.min(...scenario.road.map(gripOf)),
    enough: () => 1,
    step: () => 0.02,
    change: (makings, gripRatio) =>
      withRoad(makings, (piece) => (gripOf(piece) < gripRatio ? { ...piece, gripRatio } : piece)),
  },
  speed: {
    unit: 'km/h',
    better: 'less',
    read: (makings) => Math.max(...askedSpeeds(makings)),
    enough: () => CRAWL_KM_PER_H,
    step: one,
    change: slower,
  },
  haste: {
    unit: 'm/s2',
    better: 'less',
    read: ({ rider: { pace } }) => Math.max(pace.driveMPerS2, pace.brakeMPerS2),
    enough: () => 0.2,
    step: () => 0.05,
    change: (makings, most) => {
      const { driveMPerS2, brakeMPerS2 } = makings.rider.pace;
      return withPace(makings, {
        driveMPerS2: Math.min(most, driveMPerS2),
        brakeMPerS2: Math.min(most, brakeMPerS2),
      });
    },
  },
} as const satisfies Record<string, Lever>;

/** The name of a lever. */
export type LeverName = keyof typeof LEVERS;
