/**
 * Which number of the rig, the road or the profile does a cause speak of? Its value, and the number that it is held against,
 * such as that of the reference.
 */
import type { ProfileFile } from '../quantity/profile-file.js';
import { SURFACE_VALUES } from '../scenario/surface.js';
import { bounceHz, trainHz } from './bounce.js';
import type { Makings } from './makings.js';
import { USUAL_DELAY_S, USUAL_FREQUENCY_RAD_PER_S, usualTremorNm } from './rig-causes.js';

/** A number with the name that it goes by. */
interface NamedNumber {
  name: string;
  value: number;
  unit: string;
}

/** The number of a cause, and beside it the one that it is held against, where there is one. */
export interface CauseNumber extends NamedNumber {
  beside: NamedNumber | null;
}

type Read = (makings: Makings) => number | undefined;

interface Source {
  name: string;
  unit: string;
  read: Read;
  /** The number that it is held against. */
  beside?: { name: string; read: (makings: Makings, reference: ProfileFile) => number | undefined };
}

const ofProfile = (
  name: string,
  unit: string,
  read: (profile: ProfileFile) => number | undefined,
): Source => ({
  name,
  unit,
  read: ({ profile }) => read(profile),
  beside: { name: 'the reference set has', read: (_, reference) => read(reference) },
});

const RATE = ofProfile('rate gain', 'A/(deg/s)', ({ gains }) => gains.rateAPerDegPerS);
const PROPORTIONAL = ofProfile('proportional gain', 'A/deg', ({ gains }) => gains.proportionalAPerDeg);

const leastGrip: Read = ({ scenario }) =>
  Math.min(...scenario.road.map(({ gripRatio, surface }) => gripRatio ?? SURFACE_VALUES[surface].gripRatio));

const SOURCES: Readonly<Record<string, Source>> = {
  'too little rate gain': RATE,
  'too much rate gain': RATE,
  'too little proportional gain': PROPORTIONAL,
  'too much proportional gain': PROPORTIONAL,
  'integral wind-up': ofProfile('integral gain', 'A/(deg s)', ({ gains }) => gains.integralAPerDegS),
  'filter lag': ofProfile('gyro low-pass', 'Hz', ({ shaping }) => shaping.gyroLowPassHz),
  'accelerometer pull': ofProfile('blend time', 's', ({ shaping }) => shaping.blendTimeS),
  'slew limit': ofProfile('slew limit', 'A/s', ({ shaping }) => shaping.slewLimitAPerS),
  'progressive stiffness': ofProfile(
    'progressive stiffness',
    '1/deg',
    ({ shaping }) => shaping.progressiveStiffnessPerDeg,
  ),
  "the profile's own ceilings": {
    name: 'drive ceiling',
    unit: 'A',
    read: ({ profile, board }) => profile.shaping.driveCeilingA ?? board.motor.driveCurrentA,
    beside: {
      name: 'brake ceiling',
      read: ({ profile, board }) => profile.shaping.brakeCeilingA ?? board.motor.brakeCurrentA,
    },
  },
  'load feed-forward': {
    name: 'share of the load',
    unit: '',
    read: ({ profile }) => profile.shaping.loadFeedForward?.currentShare,
    beside: {
      name: 'nose up, degrees per ampere',
      read: ({ profile }) => profile.shaping.loadFeedForward?.noseUpDegPerA,
    },
  },
  'headroom lift': {
    name: 'begins below % of headroom',
    unit: '',
    read: ({ profile }) => profile.shaping.headroomLift?.belowPercent,
    beside: { name: 'rises by up to deg', read: ({ profile }) => profile.shaping.headroomLift?.upToDeg },
  },
  trim: ofProfile('trim, nose up', 'deg', ({ shaping }) => shaping.restTrimNoseUpDeg),
  'loop delay': {
    name: 'delay and lag of the loop',
    unit: 'ms',
    read: ({ board: { controller, motor } }) =>
      (1000 * controller.delayTicks) / controller.loopRateHz + motor.currentLagMs,
  },
  'noise of the gyro': {
    name: 'gyro noise',
    unit: 'deg/s',
    read: ({ board }) => board.controller.gyroNoiseDegPerS,
  },
  'noise of the accelerometer': {
    name: 'accelerometer noise',
    unit: 'm/s2',
    read: ({ board }) => board.controller.accelerometerNoiseMPerS2,
  },
  'current ceiling': {
    name: 'drive ceiling',
    unit: 'A',
    read: ({ board }) => board.motor.driveCurrentA,
    beside: { name: 'brake ceiling', read: ({ board }) => board.motor.brakeCurrentA },
  },
  'voltage ceiling': { name: 'cells in series', unit: '', read: ({ board }) => board.pack.seriesCells },
  'pack ceiling': {
    name: 'the pack gives',
    unit: 'A',
    read: ({ board }) => board.pack.dischargeCurrentA,
    beside: { name: 'takes', read: ({ board }) => board.pack.chargeCurrentA },
  },
  'low pack': { name: 'state of charge', unit: '%', read: ({ scenario }) => scenario.chargePercent },
  "the rider's delay": {
    name: "the rider's delay",
    unit: 's',
    read: ({ rider }) => rider.balance.delayS,
    beside: { name: 'usual is', read: () => USUAL_DELAY_S },
  },
  "the rider's stiffness": {
    name: 'balance frequency',
    unit: 'rad/s',
    read: ({ rider }) => rider.balance.frequencyRadPerS,
    beside: { name: 'usual is', read: () => USUAL_FREQUENCY_RAD_PER_S },
  },
  "the rider's tremor": {
    name: 'tremor',
    unit: 'Nm',
    read: ({ rider }) => rider.balance.tremorNm,
    beside: { name: 'usual is', read: ({ rider }) => usualTremorNm(rider) },
  },
  slope: {
    name: 'steepest',
    unit: '%',
    read: ({ scenario }) => Math.max(...scenario.road.map(({ gradePercent }) => Math.abs(gradePercent))),
  },
  grip: { name: 'least grip', unit: '', read: leastGrip },
  "the tyre's own frequency": {
    name: 'bounce on tyre and legs',
    unit: 'Hz',
    read: ({ board, rider }) => bounceHz(board, rider),
    beside: { name: 'the bumps come at', read: (makings) => trainHz(makings) ?? undefined },
  },
};

/** The number that a cause speaks of, in these makings; null where it speaks of none. */
export function causeNumber(cause: string, makings: Makings, reference: ProfileFile): CauseNumber | null {
  const source = SOURCES[cause];
  const value = source?.read(makings);
  if (source === undefined || value === undefined) return null;
  const { name, unit, beside } = source;
  const other = beside?.read(makings, reference);
  return {
    name,
    value,
    unit,
    beside: beside === undefined || other === undefined ? null : { name: beside.name, value: other, unit },
  };
}
