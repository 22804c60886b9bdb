/** Writes one row of the tape: the plant at this tick, and what controller and rider have just decided. */
import { LOWER, UPPER } from '../control/ceilings.js';
import { ESTIMATED_PITCH } from '../control/estimator.js';
import { ASKED, BINDING, HEADROOM, REQUESTED, SET_POINT } from '../control/law.js';
import { CHARGE, MOTOR_CURRENT, PACK_CURRENT, PACK_VOLTAGE } from '../model/battery.js';
import * as at from '../model/state.js';
import type { Moment } from './moment.js';
import type { Tape } from './tape.js';
import type { Trial } from './trial.js';

/** Appends the row of `moment.tick` to the tape, which must have room for it. */
export function recordRow(trial: Trial, moment: Moment, tape: Tape): void {
  const { columns } = tape;
  const { state, rates, controller, pack, ceilings, tick } = moment;
  columns.timeS[tick] = tick * trial.tickS;
  columns.pitchRad[tick] = state[at.PITCH]!;
  columns.pitchRateRadPerS[tick] = state[at.PITCH + at.RATE]!;
  columns.leanRad[tick] = state[at.LEAN]!;
  columns.leanRateRadPerS[tick] = state[at.LEAN + at.RATE]!;
  columns.legLengthM[tick] = state[at.LEG]!;
  columns.positionM[tick] = state[at.X]!;
  columns.axleHeightM[tick] = state[at.Z]!;
  columns.speedMPerS[tick] = state[at.X + at.RATE]!;
  columns.wheelRateRadPerS[tick] = state[at.WHEEL + at.RATE]!;
  columns.estimatedPitchRad[tick] = moment.estimator[ESTIMATED_PITCH]!;
  columns.setPointRad[tick] = controller[SET_POINT]!;
  columns.askedCurrentA[tick] = controller[ASKED]!;
  columns.requestedCurrentA[tick] = controller[REQUESTED]!;
  columns.currentA[tick] = moment.motion[MOTOR_CURRENT]!;
  columns.upperCeilingA[tick] = ceilings[UPPER]!;
  columns.lowerCeilingA[tick] = ceilings[LOWER]!;
  columns.bindingCeiling[tick] = controller[BINDING]!;
  columns.headroomShare[tick] = controller[HEADROOM]!;
  columns.packV[tick] = pack[PACK_VOLTAGE]!;
  columns.packCurrentA[tick] = pack[PACK_CURRENT]!;
  columns.chargeShare[tick] = pack[CHARGE]!;
  columns.riderTorqueNm[tick] = rates[at.FOOT_TORQUE]!;
  columns.riderTorqueLimitNm[tick] = rates[at.FOOT_TORQUE_LIMIT]!;
  columns.feetAccelerationMPerS2[tick] = rates[at.FEET_ACCELERATION]!;
  columns.wheelLoadN[tick] = rates[at.WHEEL_LOAD]!;
  columns.treadForceN[tick] = rates[at.TREAD_FORCE]!;
  tape.length = tick + 1;
}
