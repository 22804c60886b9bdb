/**
 * All that the linear view says of one steady ride, its margins tried in the simulation.
 */
import { NO_CEILING } from '../control/ceilings.js';
import { BINDING } from '../control/law.js';
import { DEG_PER_RAD, RAD_PER_DEG } from '../quantity/units.js';
import { tickOnce } from '../simulate/loop.js';
import { createTape } from '../simulate/tape.js';
import { angleOf, magnitude } from './complex.js';
import { confirmDelay, confirmGain, type Confirmation } from './confirm.js';
import { deckStiffnessNmPerRad, footPath, noiseInRequestA, type FootPath } from './feel-paths.js';
import { loopGain, loopView, sensitivity, type LoopView } from './loop-view.js';
import { allowedByDisk, marginsOf, type Margins } from './margins.js';
import { isStable, modesOf, type Mode } from './modes.js';
import { steadyRide, type RidePoint, type SteadyRide } from './steady-ride.js';

/** The loop gain and what it leaves of disturbances, frequency by frequency. */
export interface LoopCurve {
  frequencyHz: number[];
  gain: number[];
  phaseDeg: number[];
  sensitivity: number[];
}

/** What the linear view says of a ride at a look: all that margins and feel are told from. */
export interface RideLook {
  margins: Margins;
  modes: Mode[];
  deckStiffnessNmPerDeg: { at01Hz: number; at1Hz: number };
  /** Root mean square of the request that the gyro's noise makes, A. */
  gyroNoiseA: number;
}

/** All that the linear view says of a ride. */
export interface RideReport extends RideLook {
  /** Factors on the gain and the turn that may come together. */
  allowedByDisk: ReturnType<typeof allowedByDisk>;
  /** False where something grows by itself; margins then are those to a loop that holds. */
  isStable: boolean;
  footPath: FootPath;
  /** Margins tried in the simulation; null where there is none to try. */
  tried: { delay: Confirmation | null; gainUp: Confirmation | null; gainDown: Confirmation | null };
  curve: LoopCurve;
}

/** Lowest frequency that is looked at, Hz: slower is the rider's choice of speed. */
const LEAST_HZ = 0.05;
/** Points of the curve. */
const CURVE_COUNT = 160;
/** Share of the sampling's own limit up to which the loop is looked at. */
const TOP_SHARE = 0.98;

/** A ride with its loop, and what is seen of them at a look. */
interface Seen {
  view: LoopView;
  range: { fromRadPerS: number; toRadPerS: number };
  look: RideLook;
}

/** A look at a ride; null where a ceiling cuts it, so that there is nothing steady to look at. */
export function rideLook(point: RidePoint): RideLook | null {
  return seen(point)?.look ?? null;
}

/** The report of a ride; null where a ceiling cuts it. */
export function reportRide(point: RidePoint): RideReport | null {
  const found = seen(point);
  if (found === null) return null;
  const { view, range, look } = found;
  const { margins, modes } = look;
  return {
    ...look,
    allowedByDisk: allowedByDisk(margins.disk.value),
    isStable: isStable(modes),
    footPath: footPath(view),
    tried: {
      delay: confirmDelay(point, margins.delayS),
      gainUp: confirmGain(point, margins.gainUp),
      gainDown: confirmGain(point, margins.gainDown),
    },
    curve: curveOf(view, range),
  };
}

function seen(point: RidePoint): Seen | null {
  const ride = steadyRide(point);
  if (isCut(ride)) return null;
  const view = loopView(ride);
  const { plant } = ride.plan.trial;
  const range = { fromRadPerS: 2 * Math.PI * LEAST_HZ, toRadPerS: TOP_SHARE * view.nyquistRadPerS };
  const stiffness = (frequencyHz: number) =>
    deckStiffnessNmPerRad(view, plant.motor.torqueConstantNmPerA, frequencyHz) * RAD_PER_DEG;
  const look: RideLook = {
    margins: marginsOf((radPerS) => loopGain(view, radPerS, { rider: true }), range),
    modes: modesOf(view, {
      deckInertiaKgM2: plant.deckInertiaKgM2,
      riderInertiaKgM2: plant.riderInertiaKgM2 + plant.riderMassKg * plant.legLengthM ** 2,
      totalMassKg: plant.totalMassKg,
    }),
    deckStiffnessNmPerDeg: { at01Hz: stiffness(0.1), at1Hz: stiffness(1) },
    gyroNoiseA: noiseInRequestA(view, point.board.controller.gyroNoiseDegPerS * RAD_PER_DEG),
  };
  return { view, range, look };
}

/** True where a ceiling cuts the request that the steady ride needs. */
function isCut({ plan, moment }: SteadyRide): boolean {
  const copy = structuredClone(moment);
  tickOnce(plan, copy, createTape(2, plan.trial.tickS));
  return copy.controller[BINDING] !== NO_CEILING;
}

function curveOf(
  view: LoopView,
  { fromRadPerS, toRadPerS }: { fromRadPerS: number; toRadPerS: number },
): LoopCurve {
  const frequencies = Array.from(
    { length: CURVE_COUNT },
    (_, index) => fromRadPerS * (toRadPerS / fromRadPerS) ** (index / (CURVE_COUNT - 1)),
  );
  const loops = frequencies.map((radPerS) => loopGain(view, radPerS, { rider: true }));
  return {
    frequencyHz: frequencies.map((radPerS) => radPerS / (2 * Math.PI)),
    gain: loops.map(magnitude),
    phaseDeg: loops.map((loop) => angleOf(loop) * DEG_PER_RAD),
    sensitivity: loops.map((loop) => magnitude(sensitivity(loop))),
  };
}
