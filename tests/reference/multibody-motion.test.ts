/**
 * Do two seconds of flying and swinging go the same way in MuJoCo and with the project's reference integrator? Where a
 * leg goes slack or a foot lifts the accelerations have a kink, which Runge-Kutta steps of any order pass with an error
 * of h^2: the ticks about it are cut finer.
 */
import { describe, expect, it } from 'vitest';
import { derive } from '../../src/model/derive.js';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import { referenceStep } from '../../src/simulate/reference.js';
import { momentWith, planeRoad } from '../rigs.js';
import { letGo } from '../simulate/motions.js';
import { MOTIONS, type Motion } from './flights-and-swings.js';
import { multibodyOf, startEngine, type Multibody, type Time } from './multibody.js';

const TIME = { tickS: 1 / 800, forS: 2 };
const STEPS_PER_TICK = 4;
const STEPS_PER_KINKED_TICK = 512;
const COORDINATES = 2 * at.RATE;

/** Classical Runge-Kutta steps (Butcher, Numerical Methods for Ordinary Differential Equations, from memory). */
function walk(
  body: Multibody,
  start: ArrayLike<number>,
  { inputs, time }: { inputs: Float64Array; time: Time },
) {
  const rates = (y: Float64Array) => [...y.subarray(at.RATE), ...body.accelerate(y, inputs).accelerations];
  const moved = (y: Float64Array, by: number, along: number[]) =>
    y.map((value, index) => value + by * along[index]!);
  let y = Float64Array.from(start).subarray(0, COORDINATES);
  const states = [y];
  for (const steps of time.stepsOfTicks) {
    const h = time.tickS / steps;
    for (let step = 0; step < steps; step++) {
      const k1 = rates(y);
      const k2 = rates(moved(y, h / 2, k1));
      const k3 = rates(moved(y, h / 2, k2));
      const k4 = rates(moved(y, h, k3));
      const mean = k1.map((value, index) => (value + 2 * k2[index]! + 2 * k3[index]! + k4[index]!) / 6);
      y = moved(y, h, mean);
    }
    states.push(y);
  }
  return states;
}

interface Limits {
  slack: boolean;
  footLight: boolean;
}

function limitsOf(plant: Plant, inputs: Float64Array, state: Float64Array): Limits {
  const out = new Float64Array(at.DERIVE_SIZE);
  derive(plant, planeRoad(0), inputs, state, out);
  const slack = out[at.LEG_FORCE] === 0;
  return { slack, footLight: !slack && Math.abs(out[at.FOOT_TORQUE]!) === out[at.FOOT_TORQUE_LIMIT] };
}

/** Steps for each tick: many from the tick before a limit is met or left to the tick after. */
function stepsOf(limits: Limits[]): number[] {
  const kinked = limits.map(({ slack, footLight }, tick) => {
    const after = limits[tick + 1];
    return after !== undefined && (after.slack !== slack || after.footLight !== footLight);
  });
  return limits
    .slice(1)
    .map((_, tick) =>
      kinked[tick - 1] || kinked[tick] || kinked[tick + 1] ? STEPS_PER_KINKED_TICK : STEPS_PER_TICK,
    );
}

const engine = await startEngine();

/** A motion as both have it, tick by tick; the engine may be told of another rig. */
function both({ plant, start, axle, steps }: Motion, told: Plant = plant) {
  const ours = letGo(referenceStep(plant, planeRoad(0), TIME), start, TIME);
  const { inputs } = momentWith(start.state, start.inputs);
  inputs[at.MOTOR_TORQUE] = plant.motor.torqueConstantNmPerA * (start.currentA ?? 0);
  const limits = ours.map((state) => limitsOf(plant, inputs, state));
  const time = { tickS: TIME.tickS, stepsOfTicks: stepsOf(limits) };
  const body = multibodyOf(engine, told, axle);
  const theirs =
    steps === 'ours' ? walk(body, ours[0]!, { inputs, time }) : body.step(ours[0]!, inputs, time);
  body.release();
  return { ours, theirs, limits };
}

/** Largest difference at any tick in each of coordinates and rates; axle positions count from where they began. */
function gaps({ ours, theirs }: { ours: Float64Array[]; theirs: Float64Array[] }): number[] {
  const from = (states: Float64Array[], place: number) =>
    place === at.X || place === at.Z ? states[0]![place]! : 0;
  return Array.from({ length: COORDINATES }, (_, place) =>
    Math.max(
      ...ours.map((mine, tick) =>
        Math.abs(mine[place]! - from(ours, place) - (theirs[tick]![place]! - from(theirs, place))),
      ),
    ),
  );
}

const RUNS = Object.entries(MOTIONS).map(([name, motion]) => ({ name, motion, ...both(motion) }));

describe('two seconds as a general multibody engine has them', () => {
  for (const run of RUNS) {
    it(`agree to 1e-6 m, rad, m/s and rad/s in every coordinate: ${run.name}`, () => {
      for (const worst of gaps(run)) expect(worst).toBeLessThan(1e-6);
      const [first, last] = [run.ours[0]!, run.ours.at(-1)!];
      expect(Math.abs(last[at.PITCH]! - first[at.PITCH]!)).toBeGreaterThan(0.15);
    });
  }

  it('meet the limits of legs and feet only where the steps know them', () => {
    for (const { motion, limits } of RUNS) {
      const slack = limits.some((limit) => limit.slack);
      const footLight = limits.some((limit) => limit.footLight);
      const heldByAnkles = motion.plant.passiveStiffnessNmPerRad > 0;
      expect({ slack, footLight }).toEqual({
        slack: motion.steps === 'ours' || !heldByAnkles,
        footLight: motion.steps === 'ours',
      });
    }
  });

  it('contradict when the engine is told of a deck a thousandth harder to turn', () => {
    for (const { motion } of RUNS.filter(({ motion: { steps } }) => steps === 'its own')) {
      const deckInertiaKgM2 = 1.001 * motion.plant.deckInertiaKgM2;
      const told = { ...motion.plant, deckInertiaKgM2 };
      expect(Math.max(...gaps(both(motion, told)))).toBeGreaterThan(1e-4);
    }
  });
});
