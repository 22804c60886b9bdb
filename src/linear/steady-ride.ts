/**
 * Where is the rig looked at? Standing or cruising steadily on a grade, in the balance in which a run starts, with nothing
 * left to chance.
 */
import { controlLaw } from '../control/law.js';
import type { BoardFile } from '../quantity/board-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import { scenarioSchema } from '../quantity/scenario-file.js';
import { M_PER_S_PER_KM_PER_H } from '../quantity/units.js';
import { fixedStep, stepsFor } from '../simulate/fixed-step.js';
import { loopPlan, type LoopPlan } from '../simulate/loop.js';
import type { Moment } from '../simulate/moment.js';
import { startMoment } from '../simulate/start.js';
import { prepareTrial } from '../simulate/trial.js';

/** A rig under a profile, and the steady ride about which it is linearised. */
export interface RidePoint {
  board: BoardFile;
  rider: RiderFile;
  profile: ProfileFile;
  speedKmPerH: number;
  gradePercent: number;
  chargePercent: number;
}

/** A steady ride: the plan of its loop, and the moment that repeats itself from tick to tick. */
export interface SteadyRide {
  plan: LoopPlan;
  moment: Moment;
}

/** Road beyond what is ridden, m. */
const SPARE_M = 5;

/** The steady ride at a point, with road and script for so long [s]; one tick alone needs the least. */
export function steadyRide({ board, rider, profile, ...where }: RidePoint, durationS = 1): SteadyRide {
  const lengthM = SPARE_M + 1.5 * durationS * where.speedKmPerH * M_PER_S_PER_KM_PER_H;
  const scenario = scenarioSchema.parse({
    summary: 'A steady ride.',
    durationS,
    chargePercent: where.chargePercent,
    start: { speedKmPerH: where.speedKmPerH },
    road: [{ lengthM, gradePercent: where.gradePercent }],
    speeds: [{ atS: 0, speedKmPerH: where.speedKmPerH }],
    measure: { as: 'ride', bandDeg: 1 },
  });
  const trial = prepareTrial({ board, rider, scenario, seed: 1, noiseRatio: 0 });
  const law = controlLaw(profile, board);
  const { plant, road, tickS } = trial;
  const integrator = fixedStep(plant, road, { tickS, stepsPerTick: stepsFor(plant, tickS) });
  return { plan: loopPlan(trial, law, integrator), moment: startMoment(trial, law) };
}
