/**
 * The equations of motion of wheel, deck and rider, with no small-angle assumption.
 *
 * Unit vectors: u(a) = (sin a, cos a) up along a body leaning by a, e(a) = (cos a, -sin a) forward.
 * The rider hangs on the deck by the leg force F along u(phi), a shear force S along e(phi) and the
 * foot torque tau_c. F is known; S is linear in the acceleration of the ankle line,
 *
 *   S = mu (a_ankle . e(phi) + 2 l' phi' + l tau_c / I_r - G . e(phi) / m),   mu = m I_r / (I_r + m l^2)
 *
 * with G the weight and the horizontal forces on the rider. Put into the balance of wheel and deck this
 * leaves a symmetric 3 x 3 system in x'', z'', theta''; wheel, lean and leg follow one by one.
 *
 *   symbol   field                 unit       symbol    field                    unit
 *   a, b     deckForward, -Above   m          tau       inputs[MOTOR_TORQUE]     Nm, on the wheel
 *   hf       ankleAboveAxle        m          tau_c     out[FOOT_TORQUE]         Nm, on the rider
 *   m, I_r   rider mass, inertia   kg, kg m2  N, T      wheel load, tread force  N
 *   m_d, I_d deck mass, inertia    kg, kg m2  theta     pitch, nose down > 0     rad
 *   L, l     leg at rest, now      m          phi       lean, forward > 0        rad
 */
import { GRAVITY_M_PER_S2 } from '../quantity/units.js';
import type { Ground } from './ground.js';
import type { Plant } from './plant.js';
import * as at from './state.js';
import { tyreForces } from './tyre.js';

/** Spin at which rolling resistance has reached three quarters of its value, rad/s: the width of its tanh. */
export const ROLLING_WIDTH_RAD_PER_S = 0.5;

/**
 * Fills `out` (DERIVE_SIZE) with the time derivative of `state` (STATE_SIZE) under `inputs` (INPUT_SIZE), and with
 * forces behind it; SI units throughout.
 */
export function derive(
  plant: Plant,
  ground: Ground,
  inputs: Float64Array,
  state: Float64Array,
  out: Float64Array,
): void {
  tyreForces(plant, ground, inputs, state, out);
  const wheelLoad = out[at.WHEEL_LOAD]!;
  const treadForce = out[at.TREAD_FORCE]!;
  const slope = out[at.ROAD_SLOPE]!;
  const g = GRAVITY_M_PER_S2;
  const {
    deckMassKg: md,
    riderMassKg: m,
    ankleAboveAxleM: hf,
    riderInertiaKgM2: Ir,
    deckForwardM: a,
    deckAboveAxleM: b,
  } = plant;
  const theta = state[at.PITCH]!;
  const phi = state[at.LEAN]!;
  const leg = state[at.LEG]!;
  const xRate = state[at.X + at.RATE]!;
  const wheelRate = state[at.WHEEL + at.RATE]!;
  const thetaRate = state[at.PITCH + at.RATE]!;
  const phiRate = state[at.LEAN + at.RATE]!;
  const legRate = state[at.LEG + at.RATE]!;
  const ct = Math.cos(theta);
  const st = Math.sin(theta);
  const cp = Math.cos(phi);
  const sp = Math.sin(phi);

  // Legs, feet, air and shove.
  const legForce = Math.max(
    0,
    plant.legStiffnessNPerM * (plant.legLengthM - leg) - plant.legDampingNSPerM * legRate + m * g,
  );
  const footTorqueLimit = legForce * plant.halfStanceM;
  const footTorque = Math.max(
    -footTorqueLimit,
    Math.min(
      footTorqueLimit,
      inputs[at.RIDER_TORQUE]! -
        plant.passiveStiffnessNmPerRad * (phi - theta) -
        plant.passiveDampingNmSPerRad * (phiRate - thetaRate),
    ),
  );
  const riderSpeed = xRate + hf * thetaRate * ct + legRate * sp + leg * phiRate * cp;
  const push = inputs[at.SHOVE]! - plant.halfDragAreaKgPerM * riderSpeed * Math.abs(riderSpeed);

  // Rider's shear force is mu (x'' cp - z'' sp + hf theta'' cd + shear0).
  const cd = ct * cp + st * sp;
  const sd = sp * ct - cp * st;
  const mu = (m * Ir) / (Ir + m * leg * leg);
  const ankleTurn = hf * thetaRate * thetaRate;
  const shear0 = ankleTurn * sd + 2 * legRate * phiRate + (leg * footTorque) / Ir - (push * cp) / m - g * sp;

  // Wheel and deck: symmetric system in x'', z'', theta''.
  const mass = plant.wheelMassKg + md;
  const d1x = b * ct - a * st;
  const d1z = -a * ct - b * st;
  const deckTurn = md * thetaRate * thetaRate;
  const arm = mu * hf * cd;
  const m11 = mass + mu * cp * cp;
  const m12 = -mu * cp * sp;
  const m22 = mass + mu * sp * sp;
  const m13 = md * d1x + arm * cp;
  const m23 = md * d1z - arm * sp;
  const m33 = plant.deckInertiaKgM2 + md * (a * a + b * b) + arm * hf * cd;
  const perRoad = 1 / Math.sqrt(1 + slope * slope);
  const f1 = (treadForce - slope * wheelLoad) * perRoad - deckTurn * d1z - legForce * sp - mu * shear0 * cp;
  const f2 =
    (wheelLoad + slope * treadForce) * perRoad - mass * g + deckTurn * d1x - legForce * cp + mu * shear0 * sp;
  const f3 = -inputs[at.MOTOR_TORQUE]! - footTorque - md * g * d1z - hf * legForce * sd - arm * shear0;
  const l21 = m12 / m11;
  const l31 = m13 / m11;
  const n22 = m22 - l21 * m12;
  const n23 = m23 - l21 * m13;
  const l32 = n23 / n22;
  const g2 = f2 - l21 * f1;
  const thetaAcc = (f3 - l31 * f1 - l32 * g2) / (m33 - l31 * m13 - l32 * n23);
  const zAcc = (g2 - n23 * thetaAcc) / n22;
  const xAcc = (f1 - m12 * zAcc - m13 * thetaAcc) / m11;

  // Rider from the shear, wheel from its own torques.
  const shear = mu * (xAcc * cp - zAcc * sp + hf * thetaAcc * cd + shear0);
  // Written out, because the number that a function returns may be boxed; from 20 widths on tanh is 1 to the last bit.
  const spin = wheelRate / ROLLING_WIDTH_RAD_PER_S;
  const rollingSense = spin > 20 ? 1 : spin < -20 ? -1 : Math.tanh(spin);
  const rolling = plant.wheelRadiusM * inputs[at.ROLLING]! * wheelLoad * rollingSense;
  out[at.X] = xRate;
  out[at.Z] = state[at.Z + at.RATE]!;
  out[at.WHEEL] = wheelRate;
  out[at.PITCH] = thetaRate;
  out[at.LEAN] = phiRate;
  out[at.LEG] = legRate;
  out[at.X + at.RATE] = xAcc;
  out[at.Z + at.RATE] = zAcc;
  out[at.WHEEL + at.RATE] =
    (inputs[at.MOTOR_TORQUE]! - plant.wheelRadiusM * treadForce - rolling) / plant.wheelInertiaKgM2;
  out[at.PITCH + at.RATE] = thetaAcc;
  out[at.LEAN + at.RATE] = (footTorque - leg * shear) / Ir;
  out[at.LEG + at.RATE] =
    legForce / m +
    (push * sp) / m -
    g * cp -
    (xAcc * sp + zAcc * cp) -
    hf * thetaAcc * sd +
    ankleTurn * cd +
    leg * phiRate * phiRate;
  out[at.LEG_FORCE] = legForce;
  out[at.FOOT_TORQUE] = footTorque;
  out[at.FOOT_TORQUE_LIMIT] = footTorqueLimit;
  out[at.FEET_ACCELERATION] = zAcc - hf * (thetaAcc * st + thetaRate * thetaRate * ct);
}
