/**
 * The rider's two delayed loops. Inside, he keeps his body at a lean; outside, he chooses the lean that
 * brings him to the speed he wants. He senses lean, lean rate and speed `delay` seconds late.
 *
 *   tau = -m_t r a_f - K (phi_d - phi_ref) - D (phi_d' - phi_ref') + tremor + script
 *   K = (m g L + J w_r^2) / A,  D = 2 zeta w_r J / A,  A = 1 + m L / (r m_eff),  J = I_r + m L^2
 *   phi_ref = (1 + kappa) atan(a_f / g) + phi_trim,  kappa = m_t r / (m L)
 *
 *   phi_trim' = (1 + kappa) / g  e_v / (T_v T_i), held while the wish for acceleration is clamped, unless that would
 *   unwind it or the wish has got through and the speed still moves the wrong way: who leans back for a while and
 *   still speeds up leans back more.
 *
 * Delays of 0.1 to 0.2 s and stiffness a little above m g h: R. J. Peterka, J. Neurophysiology 88 (2002) 1097.
 */
import type { Plant } from '../model/plant.js';
import type { RiderFile } from '../quantity/rider-file.js';
import { GRAVITY_M_PER_S2 } from '../quantity/units.js';

/** Where the asked acceleration, smoothed [m/s2], lives in a rider's memory. */
export const SMOOTH_ACCELERATION = 0;
/** Its rate, m/s3. */
export const SMOOTH_ACCELERATION_RATE = 1;
/** Lasting lean against a lasting load, rad. */
export const LEAN_TRIM = 2;
/** Tremor, Nm. */
export const TREMOR = 3;
/** Torque the rider puts out until the next tick, on his own body, Nm. */
export const ACTIVE_TORQUE = 4;
/** Speed sensed at the tick before, m/s. */
export const LAST_SPEED = 5;
/** Length of a rider's memory. */
export const RIDER_SIZE = 6;

/** Where lean [rad] lives in what a rider senses. */
export const SENSED_LEAN = 0;
/** Lean rate, rad/s. */
export const SENSED_LEAN_RATE = 1;
/** Speed, m/s. */
export const SENSED_SPEED = 2;
/** Speed he wants, m/s. */
export const WANTED_SPEED = 3;
/** Scripted torque on the own body, Nm. */
export const SCRIPTED_TORQUE = 4;
/** One number from the normal distribution, for the tremor. */
export const RESTLESSNESS = 5;
/** Length of what a rider senses. */
export const SENSED_SIZE = 6;

const TREMOR_TIME_S = 0.15;
/** Share of the clamped wish that must have got through to the body before the rider insists on it. */
const PATIENCE_RATIO = 0.9;
const LEAN_TRIM_LIMIT_RAD = 0.25;

/** Constants of one rider on one board at one tick. */
export type RiderLaw = ReturnType<typeof riderLaw>;

/** The feedback of a rider who stands on a rig; gains come from the body, so that a heavy and a light rider are equally skilled. */
export function riderLaw(rider: RiderFile, plant: Plant, tickS: number) {
  const { riderMassKg: m, legLengthM: L, riderInertiaKgM2, wheelRadiusM: r, totalMassKg } = plant;
  const { balance, pace } = rider;
  const J = riderInertiaKgM2 + m * L * L;
  const effectiveMassKg = totalMassKg + plant.wheelInertiaKgM2 / (r * r);
  const A = 1 + (m * L) / (r * effectiveMassKg);
  const w = balance.frequencyRadPerS;
  const tremorKeepRatio = Math.exp(-tickS / TREMOR_TIME_S);
  return {
    tickS,
    delayTicks: balance.delayS / tickS,
    stiffnessNmPerRad: (m * GRAVITY_M_PER_S2 * L + J * w * w) / A,
    dampingNmSPerRad: (2 * balance.dampingRatio * w * J) / A,
    thrustNmPerMPerS2: totalMassKg * r,
    leanGainRatio: 1 + (totalMassKg * r) / (m * L),
    driveMPerS2: pace.driveMPerS2,
    brakeMPerS2: pace.brakeMPerS2,
    speedTimeS: pace.speedTimeS,
    trimRatePerM: (1 + (totalMassKg * r) / (m * L)) / (GRAVITY_M_PER_S2 * pace.speedTimeS * pace.trimTimeS),
    smoothingRadPerS: pace.smoothingRadPerS,
    smoothingKeepRatio: Math.exp(-pace.smoothingRadPerS * tickS),
    tremorKeepRatio,
    tremorKickNm: balance.tremorNm * Math.sqrt(1 - tremorKeepRatio * tremorKeepRatio),
  };
}

/** One tick: leaves in `memory` the torque for the tick to come, then moves the rider's mind on to its end. */
export function riderStep(law: RiderLaw, sensed: Float64Array, memory: Float64Array): void {
  const speedError = sensed[WANTED_SPEED]! - sensed[SENSED_SPEED]!;
  const wished = speedError / law.speedTimeS;
  const asked = Math.max(-law.brakeMPerS2, Math.min(law.driveMPerS2, wished));
  const trim = memory[LEAN_TRIM]!;
  const smooth = memory[SMOOTH_ACCELERATION]!;
  const insisting = smooth * asked > PATIENCE_RATIO * asked * asked;
  const straying = insisting && wished * (sensed[SENSED_SPEED]! - memory[LAST_SPEED]!) < 0;
  memory[LAST_SPEED] = sensed[SENSED_SPEED]!;
  const held = asked !== wished && wished * trim >= 0 && !straying;
  const trimDrift = held ? 0 : law.trimRatePerM * (straying ? asked * law.speedTimeS : speedError);
  const trimNext = Math.max(
    -LEAN_TRIM_LIMIT_RAD,
    Math.min(LEAN_TRIM_LIMIT_RAD, trim + trimDrift * law.tickS),
  );
  const trimRate = (trimNext - trim) / law.tickS;
  const smoothRate = memory[SMOOTH_ACCELERATION_RATE]!;
  const inG = smooth / GRAVITY_M_PER_S2;
  const lean = law.leanGainRatio * Math.atan(inG) + trim;
  const leanRate = (law.leanGainRatio * smoothRate) / (GRAVITY_M_PER_S2 * (1 + inG * inG)) + trimRate;

  memory[TREMOR] = law.tremorKeepRatio * memory[TREMOR]! + law.tremorKickNm * sensed[RESTLESSNESS]!;
  memory[ACTIVE_TORQUE] =
    -law.thrustNmPerMPerS2 * smooth -
    law.stiffnessNmPerRad * (sensed[SENSED_LEAN]! - lean) -
    law.dampingNmSPerRad * (sensed[SENSED_LEAN_RATE]! - leanRate) +
    memory[TREMOR] +
    sensed[SCRIPTED_TORQUE]!;

  memory[LEAN_TRIM] = trimNext;
  // Critically damped second-order smoothing, solved exactly over the tick for a wish that is held.
  const gap = smooth - asked;
  const pull = smoothRate + law.smoothingRadPerS * gap;
  memory[SMOOTH_ACCELERATION] = asked + law.smoothingKeepRatio * (gap + pull * law.tickS);
  memory[SMOOTH_ACCELERATION_RATE] =
    law.smoothingKeepRatio * (smoothRate - law.smoothingRadPerS * pull * law.tickS);
}
