/**
 * Boards, riders and profiles by chance: wide but plausible, valid by the schemas, with every part that has a default
 * sometimes left out. Ranges are ours; the usual values are those of tests/rigs.ts.
 */
import fc from 'fast-check';
import type { BoardFile } from '../../src/quantity/board-file.js';
import { checkValue } from '../../src/quantity/check.js';
import type { FileKind, FileOf } from '../../src/quantity/file-kind.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import type { RiderFile } from '../../src/quantity/rider-file.js';
import { around, section, whole } from './drawn-numbers.js';

/** The file that a raw value makes; a drawn value that is not valid is a fault of the drawing. */
export function valid<K extends FileKind>(kind: K, raw: unknown): FileOf[K] {
  const checked = checkValue(kind, raw);
  if (!checked.ok) throw new Error(`drew a bad ${kind}: ${JSON.stringify(checked.faults)}`);
  return checked.value;
}

const summary = fc.constant('drawn');

const wheel = fc.record({
  radiusM: around(0.1, 0.14, 0.2),
  massKg: around(2, 6, 12),
  inertiaKgM2: around(0.01, 0.055, 0.15),
});

const tyre = fc.record({
  verticalStiffnessNPerM: around(30_000, 70_000, 200_000),
  verticalDampingNSPerM: around(0, 350, 1500),
  longitudinalStiffnessNPerM: around(20_000, 60_000, 200_000),
  longitudinalDampingNSPerM: around(0, 300, 1500),
});

const deck = fc.record({
  massKg: around(3, 8, 20),
  inertiaKgM2: around(0.1, 0.42, 1.5),
  centreForwardM: around(-0.06, 0, 0.06),
  centreAboveAxleM: around(-0.08, -0.02, 0.06),
  ankleLineAboveAxleM: around(-0.06, 0.03, 0.15),
  reachM: around(0.25, 0.37, 0.5),
  tipBelowAxleM: around(-0.05, 0.02, 0.04),
});

const motorParts = {
  resistanceOhm: around(0.03, 0.1, 0.4),
  currentLagMs: around(0, 1.5, 8),
  driveCurrentA: around(20, 80, 200),
  brakeCurrentA: around(20, 80, 200),
};

const motor = fc.oneof(
  fc.record({ torqueConstantNmPerA: around(0.2, 0.62, 1.5), ...motorParts }),
  fc.record({ speedConstantRpmPerV: around(7, 15, 45), ...motorParts }),
);

const curve = fc
  .record({ low: around(2.4, 3, 3.4), high: around(3.9, 4.2, 4.4), bend: around(0.2, 0.5, 0.8) })
  .map(({ low, high, bend }) => [
    { chargePercent: 0, cellV: low },
    { chargePercent: 50, cellV: low + bend * (high - low) },
    { chargePercent: 100, cellV: high },
  ]);

const pack = section(
  {
    seriesCells: around(10, 15, 30).map(Math.round),
    parallelCells: whole(1, 4),
    cellResistanceMilliohm: around(3, 12, 40),
    cellCapacityAh: around(2, 5, 10),
    dischargeCurrentA: around(5, 40, 120),
    chargeCurrentA: around(0, 20, 60),
    openCircuit: curve,
  },
  'openCircuit',
);

const controller = fc.record({
  loopRateHz: around(250, 800, 1600),
  delayTicks: around(0, 1, 5).map(Math.round),
  modulationRatio: around(0.6, 0.95, 1.1),
  gyroNoiseDegPerS: around(0, 0.05, 0.5),
  accelerometerNoiseMPerS2: around(0, 0.3, 1.5),
});

/** A board. */
export const boards: fc.Arbitrary<BoardFile> = fc
  .record({ summary, wheel, tyre, deck, motor, pack, controller })
  .map((raw) => valid('board', raw));

const body = section(
  {
    massKg: around(35, 78, 130),
    statureM: around(1.4, 1.78, 2.05),
    centreAboveAnkleM: around(0.7, 0.95, 1.15),
    inertiaKgM2: around(5, 12, 25),
    dragAreaM2: around(0, 0.5, 1),
  },
  'centreAboveAnkleM',
  'inertiaKgM2',
);

const stance = fc.record({
  widthM: around(0.3, 0.5, 0.7),
  legStiffnessNPerM: around(6_000, 14_000, 60_000),
  legDampingNSPerM: around(200, 900, 4_000),
  passiveStiffnessNmPerRad: around(0, 60, 600),
  passiveDampingNmSPerRad: around(0, 8, 80),
});

const balance = fc.record({
  delayS: around(0, 0.14, 0.3),
  frequencyRadPerS: around(1, 2, 4),
  dampingRatio: around(0.4, 0.8, 1.4),
  tremorNm: around(0, 1, 8),
  leanLimitDeg: around(25, 40, 70),
});

const pace = fc.record({
  driveMPerS2: around(0.3, 0.8, 2.5),
  brakeMPerS2: around(0.3, 1.2, 3),
  speedTimeS: around(0.4, 1, 4),
  trimTimeS: around(1, 4, 20),
  smoothingRadPerS: around(1, 3, 10),
});

/** A rider. */
export const riders: fc.Arbitrary<RiderFile> = fc
  .record({ summary, body, stance, balance, pace })
  .map((raw) => valid('rider', raw));

const gains = fc.record({
  proportionalAPerDeg: around(0, 20, 60),
  rateAPerDegPerS: around(0, 1.2, 4),
  integralAPerDegS: around(0, 0, 60),
});

const shaping = section(
  {
    progressiveStiffnessPerDeg: around(0, 0, 0.3),
    integralLimitA: around(0, 20, 60),
    slewLimitAPerS: around(200, 4000, 50_000),
    driveCeilingA: around(5, 60, 200),
    brakeCeilingA: around(5, 60, 200),
    gyroLowPassHz: around(5, 60, 300),
    blendTimeS: around(0.1, 1, 10),
    restTrimNoseUpDeg: around(-4, 0, 4),
    engageRampS: around(0, 0, 1),
    loadFeedForward: fc.record({
      filterTimeS: around(0.1, 0.5, 3),
      currentShare: around(0, 0.2, 0.8),
      noseUpDegPerA: around(-0.1, 0, 0.1),
    }),
    headroomLift: fc.record({
      belowPercent: around(5, 30, 80),
      upToDeg: around(1, 5, 12),
      rateDegPerS: around(2, 15, 60),
    }),
  },
  'slewLimitAPerS',
  'driveCeilingA',
  'brakeCeilingA',
  'gyroLowPassHz',
  'loadFeedForward',
  'headroomLift',
);

/** A profile, with any of what it may shape. */
export const profiles: fc.Arbitrary<ProfileFile> = fc
  .record({ summary, gains, shaping })
  .map((raw) => valid('profile', raw));
