/**
 * The quick integrator: the classical Runge-Kutta method (order 4), a whole number of steps to a tick, so that
 * no step ever straddles a moment where the inputs jump. Allocates nothing after it was made.
 */
import { MOTOR_CURRENT } from '../model/battery.js';
import { derive } from '../model/derive.js';
import { lagDecay } from '../model/motor.js';
import type { Plant } from '../model/plant.js';
import { DERIVE_SIZE, MOTOR_TORQUE, STATE_SIZE } from '../model/state.js';
import type { Road } from '../scenario/road.js';
import type { Moment } from './moment.js';

/** Carries the plant over one tick with its inputs held, but for the motor current, which follows its request. */
export interface Integrator {
  /** Moves `moment.state` to the next tick; returns why it could not, or undefined. */
  advance(moment: Moment): string | undefined;
}

/** Largest step times rate that is taken: the method is stable up to 2.78 (J. C. Butcher, Numerical Methods for ODEs). */
const STABLE_RATIO = 1.5;

/** Fewest steps a tick [s] that keep the method stable for the stiffest spring and damper of a rig. */
export function stepsFor(plant: Plant, tickS: number): number {
  const boardPerKg = 1 / (plant.wheelMassKg + plant.deckMassKg) + 1 / plant.riderMassKg;
  const deckArm = Math.hypot(plant.deckForwardM, plant.deckAboveAxleM);
  const deckAtAxlePerKg = 1 / plant.deckMassKg + (deckArm * deckArm) / plant.deckInertiaKgM2;
  const axlePerKg = 1 / (plant.wheelMassKg + 1 / deckAtAxlePerKg);
  const fastest = Math.max(
    rateOf(plant.verticalStiffnessNPerM, plant.verticalDampingNSPerM, axlePerKg),
    rateOf(
      plant.treadStiffnessNPerM,
      plant.treadDampingNSPerM,
      axlePerKg + (plant.wheelRadiusM * plant.wheelRadiusM) / plant.wheelInertiaKgM2,
    ),
    rateOf(plant.legStiffnessNPerM, plant.legDampingNSPerM, boardPerKg),
    rateOf(
      plant.passiveStiffnessNmPerRad,
      plant.passiveDampingNmSPerRad,
      1 / plant.riderInertiaKgM2 + 1 / plant.deckInertiaKgM2,
    ),
  );
  return Math.max(1, Math.ceil((fastest * tickS) / STABLE_RATIO));
}

/** Magnitude [1/s] of the faster root of s^2 + c s / m + k / m, from the inverse of the mass or inertia. */
function rateOf(stiffness: number, damping: number, perMass: number): number {
  const half = (damping * perMass) / 2;
  const square = stiffness * perMass;
  return half * half > square ? half + Math.sqrt(half * half - square) : Math.sqrt(square);
}

/** The fixed-step integrator for a rig on a road. */
export function fixedStep(
  plant: Plant,
  road: Road,
  { tickS, stepsPerTick }: { tickS: number; stepsPerTick: number },
): Integrator {
  const stepS = tickS / stepsPerTick;
  const stage = new Float64Array(STATE_SIZE);
  const slopes = [0, 1, 2, 3].map(() => new Float64Array(DERIVE_SIZE)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const [k1, k2, k3, k4] = slopes;
  const torqueConstant = plant.motor.torqueConstantNmPerA;
  const decays = Float64Array.from({ length: 2 * stepsPerTick + 1 }, (_, half) =>
    lagDecay((half * stepS) / 2, plant.motor.lagS),
  );
  // With no lag the current jumps at the tick itself, so the first stage sees it already gone.
  if (plant.motor.lagS <= 0) decays[0] = 0;

  const torques = new Float64Array(decays.length);

  return {
    advance({ state, inputs, motion, followed }) {
      // Local to the tick: the loops below need not fetch and multiply them again for every state.
      const halfS = 0.5 * stepS;
      const sixthS = stepS / 6;
      const request = followed[0]!;
      const gap = motion[MOTOR_CURRENT]! - request;
      for (let half = 0; half < torques.length; half++) {
        torques[half] = torqueConstant * (request + gap * decays[half]!);
      }
      for (let step = 0; step < stepsPerTick; step++) {
        inputs[MOTOR_TORQUE] = torques[2 * step]!;
        derive(plant, road, inputs, state, k1);
        for (let i = 0; i < STATE_SIZE; i++) stage[i] = state[i]! + halfS * k1[i]!;
        inputs[MOTOR_TORQUE] = torques[2 * step + 1]!;
        derive(plant, road, inputs, stage, k2);
        for (let i = 0; i < STATE_SIZE; i++) stage[i] = state[i]! + halfS * k2[i]!;
        derive(plant, road, inputs, stage, k3);
        for (let i = 0; i < STATE_SIZE; i++) stage[i] = state[i]! + stepS * k3[i]!;
        inputs[MOTOR_TORQUE] = torques[2 * step + 2]!;
        derive(plant, road, inputs, stage, k4);
        for (let i = 0; i < STATE_SIZE; i++) {
          state[i]! += sixthS * (k1[i]! + 2 * (k2[i]! + k3[i]!) + k4[i]!);
        }
      }
      return undefined;
    },
  };
}
