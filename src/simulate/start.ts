/**
 * How a run begins: rolling steadily at the scenario's speed on the road's first slope, with tyre, tread, legs,
 * motor, controller and rider already in balance, so that what follows is the scenario's doing and not the start's.
 * A start pitch in the scenario turns the deck alone; then nothing is in balance and that is the question.
 */
import { findCeilings } from '../control/ceilings.js';
import {
  findHeadroom,
  findLiftGoal,
  INTEGRAL,
  LIFT,
  LIFT_GOAL,
  LOAD,
  REQUESTED,
  SET_POINT,
  settledPitch,
  type ControlLaw,
} from '../control/law.js';
import { ESTIMATED_PITCH } from '../control/estimator.js';
import { ACTIVE_TORQUE, LAST_SPEED, LEAN_TRIM } from '../control/rider-feedback.js';
import { CHARGE, MOTOR_CURRENT, MOTOR_SPEED, updatePack } from '../model/battery.js';
import { ROLLING_WIDTH_RAD_PER_S } from '../model/derive.js';
import { readGround } from '../model/ground.js';
import type { Plant } from '../model/plant.js';
import * as at from '../model/state.js';
import { GRAVITY_M_PER_S2, M_PER_S_PER_KM_PER_H, RAD_PER_DEG } from '../quantity/units.js';
import { createMoment, type Moment } from './moment.js';
import type { Trial } from './trial.js';

/** The first moment of a run. */
export function startMoment(trial: Trial, law: ControlLaw): Moment {
  const { scenario, plant } = trial;
  const moment = createMoment(law.delayTicks, trial.riderLaw.delayTicks);
  const speedMPerS = scenario.start.speedKmPerH * M_PER_S_PER_KM_PER_H;
  moment.inputs[at.GRIP] = trial.road.gripRatio[0]!;
  moment.inputs[at.ROLLING] = trial.road.rollingResistanceRatio[0]!;
  const rolling = rollSteadily(trial, speedMPerS, moment);
  const currentA = rolling.motorTorqueNm / plant.motor.torqueConstantNmPerA;
  moment.motion[MOTOR_CURRENT] = currentA;
  moment.motion[MOTOR_SPEED] = moment.state[at.WHEEL + at.RATE]!;
  moment.inputs[at.MOTOR_TORQUE] = rolling.motorTorqueNm;
  moment.pack[CHARGE] = scenario.chargePercent / 100;
  updatePack(plant, moment.motion, moment.pack);
  findCeilings(law.ceilings, plant, moment);
  moment.controller[REQUESTED] = currentA;
  findHeadroom(moment.ceilings, moment.controller);
  findLiftGoal(law, moment.controller);
  const liftRad = moment.controller[LIFT_GOAL]!;
  const settled = settledPitch(law, currentA);
  const given = scenario.start.noseUpDeg;
  const pitchRad = given === undefined ? settled.pitchRad - liftRad : -given * RAD_PER_DEG;
  placeDeckAndRider(trial, { pitchRad, ...rolling }, moment);

  moment.requests.fill(currentA);
  moment.followed[0] = currentA;
  moment.controller[INTEGRAL] = settled.integralA;
  moment.controller[LOAD] = currentA;
  moment.controller[LIFT] = liftRad;
  moment.controller[SET_POINT] = law.restTrimRad + law.loadSetPointRadPerA * currentA - liftRad;
  moment.estimator[ESTIMATED_PITCH] = pitchRad;
  moment.pastLean.fill(moment.state[at.LEAN]!);
  moment.pastSpeed.fill(speedMPerS);
  moment.rider[LAST_SPEED] = speedMPerS;
  return moment;
}

interface SteadyRolling {
  motorTorqueNm: number;
  /** Horizontal force of the air on the rider, N. */
  airN: number;
}

/** Puts axle, wheel and tread of the state into steady rolling; forces of weight, slope, rolling resistance and air in balance. */
function rollSteadily(
  { plant, road }: Trial,
  speedMPerS: number,
  { state, inputs, rates }: Moment,
): SteadyRolling {
  readGround(road, 0, rates);
  const slope = rates[at.ROAD_SLOPE]!;
  const s = Math.sqrt(1 + slope * slope);
  const weightN = plant.totalMassKg * GRAVITY_M_PER_S2;
  const airN = -plant.halfDragAreaKgPerM * speedMPerS * Math.abs(speedMPerS);
  const treadN = (weightN * slope - airN) / s;
  const loadN = (weightN + airN * slope) / s;
  const wheelRate = (speedMPerS * s) / plant.wheelRadiusM;
  const rollingNm =
    inputs[at.ROLLING]! * loadN * plant.wheelRadiusM * Math.tanh(wheelRate / ROLLING_WIDTH_RAD_PER_S);
  state[at.Z] = rates[at.ROAD_HEIGHT]! + plant.wheelRadiusM - (s * loadN) / plant.verticalStiffnessNPerM;
  state[at.X + at.RATE] = speedMPerS;
  state[at.Z + at.RATE] = speedMPerS * slope;
  state[at.WHEEL + at.RATE] = wheelRate;
  state[at.TREAD] = treadN / plant.treadStiffnessNPerM;
  return { motorTorqueNm: treadN * plant.wheelRadiusM + rollingNm, airN };
}

/** Torque of the rider on his body that keeps a deck at rest at a pitch against the motor's reaction, Nm. */
function footTorqueAt(
  plant: Plant,
  { pitchRad, motorTorqueNm, airN }: SteadyRolling & { pitchRad: number },
): number {
  const { deckForwardM: a, deckAboveAxleM: b, ankleAboveAxleM: hf } = plant;
  const deckNm = plant.deckMassKg * GRAVITY_M_PER_S2 * (a * Math.cos(pitchRad) + b * Math.sin(pitchRad));
  const riderNm =
    hf * (airN * Math.cos(pitchRad) + plant.riderMassKg * GRAVITY_M_PER_S2 * Math.sin(pitchRad));
  return deckNm + riderNm - motorTorqueNm;
}

function placeDeckAndRider(trial: Trial, steady: SteadyRolling & { pitchRad: number }, moment: Moment): void {
  const { plant } = trial;
  const { state, rider, inputs } = moment;
  const balanced = trial.scenario.start.noseUpDeg === undefined;
  const weightN = plant.riderMassKg * GRAVITY_M_PER_S2;
  const footTorqueNm = balanced ? footTorqueAt(plant, steady) : 0;
  let leanRad = 0;
  let legM = plant.legLengthM;
  for (let pass = 0; pass < 40; pass++) {
    const legN = weightN * Math.cos(leanRad) - steady.airN * Math.sin(leanRad);
    legM = plant.legLengthM - (legN - weightN) / plant.legStiffnessNPerM;
    const sine = -(footTorqueNm / legM + steady.airN * Math.cos(leanRad)) / weightN;
    leanRad = balanced ? Math.asin(Math.max(-1, Math.min(1, sine))) : 0;
  }
  state[at.PITCH] = steady.pitchRad;
  state[at.LEAN] = leanRad;
  state[at.LEG] = legM;
  if (!balanced) return;
  const activeNm = footTorqueNm + plant.passiveStiffnessNmPerRad * (leanRad - steady.pitchRad);
  rider[LEAN_TRIM] = leanRad + activeNm / trial.riderLaw.stiffnessNmPerRad;
  rider[ACTIVE_TORQUE] = activeNm;
  inputs[at.RIDER_TORQUE] = activeNm;
}
