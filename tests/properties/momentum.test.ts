/**
 * Does a rig gain just the momentum that the world gives it? At every tick of any ride: the rate of momentum, both
 * ways, and of angular momentum about a fixed point, body by body, against the forces from outside: road, weight, air and
 * shove. Motor, feet and legs act within and must cancel. Newton and Euler, no other source.
 *
 * Tolerance: 1e-12 of the largest force (or torque) met in the ride, weight included; accelerations come from a 3 x 3
 * elimination, whose rounding is usually a hundred times less.
 */
import fc from 'fast-check';
import { describe } from 'vitest';
import { derive } from '../../src/model/derive.js';
import * as at from '../../src/model/state.js';
import { GRAVITY_M_PER_S2 } from '../../src/quantity/units.js';
import { prepareTrial, type Trial } from '../../src/simulate/trial.js';
import { bodiesOf } from './bodies.js';
import { profiles } from './drawn-rig.js';
import { anyRoad, circumstancesIn, scenariosOn } from './drawn-scenario.js';
import { outsidePush, roadForces } from './forces.js';
import { holds } from './properties.js';
import { ride } from './ride.js';

const TOLERANCE_RATIO = 1e-12;

/** Largest gap of a balance so far, and the largest force that entered it, the rig's weight at the least. */
class Ledger {
  gap = 0;

  constructor(private most: number) {}

  enter(gained: number, given: readonly number[]): void {
    const sum = given.reduce((total, one) => total + one, 0);
    this.gap = Math.max(this.gap, Math.abs(gained - sum));
    for (const one of given) this.most = Math.max(this.most, Math.abs(one));
  }

  close(name: string): void {
    if (!(this.gap <= TOLERANCE_RATIO * this.most)) {
      throw new Error(`${name}: off by ${this.gap} where the largest is ${this.most}`);
    }
  }
}

/** Fixed points about which angular momentum is taken, m: the origin, and one well off. */
const POINTS = [
  [0, 0],
  [-3, 2],
] as const;

interface Balances {
  forward: Ledger;
  up: Ledger;
  turning: Ledger;
}

function enterTick(
  { plant, road }: Trial,
  [inputs, state, rates]: readonly [Float64Array, Float64Array, Float64Array],
  { forward, up, turning }: Balances,
): void {
  const { wheel, deck, rider } = bodiesOf(plant, state, rates);
  const bodies = [wheel, deck, rider];
  const contact = roadForces(plant, road, inputs, state);
  const { shove, air } = outsidePush(plant, inputs, rider.xRate);
  const weights = bodies.map(({ massKg }) => -massKg * GRAVITY_M_PER_S2);
  const sum = (value: (body: (typeof bodies)[number]) => number) =>
    bodies.reduce((total, body) => total + value(body), 0);

  forward.enter(
    sum(({ massKg, xAcc }) => massKg * xAcc),
    [contact.x, shove, air],
  );
  up.enter(
    sum(({ massKg, zAcc }) => massKg * zAcc),
    [contact.z, ...weights],
  );
  // The road touches a radius below the axle, square to itself.
  const foot = {
    x: wheel.x + plant.wheelRadiusM * contact.along[1],
    z: wheel.z - plant.wheelRadiusM * contact.along[0],
  };
  for (const [x0, z0] of POINTS) {
    turning.enter(
      sum(
        ({ massKg, inertiaKgM2, x, z, xAcc, zAcc, spinAcc }) =>
          massKg * ((z - z0) * xAcc - (x - x0) * zAcc) + inertiaKgM2 * spinAcc,
      ),
      [
        (foot.z - z0) * contact.x,
        -(foot.x - x0) * contact.z,
        contact.rollingNm,
        (rider.z - z0) * (shove + air),
        ...bodies.map(({ x }, index) => -(x - x0) * weights[index]!),
      ],
    );
  }
}

describe('momentum', () => {
  holds(
    'momentum both ways and angular momentum about fixed points change by outside forces alone, at every tick',
    fc.property(circumstancesIn(scenariosOn(anyRoad)), profiles, (circumstances, profile) => {
      const trial = prepareTrial(circumstances);
      // Within the rig the whole weight is passed on, so balances round like it, however little comes from outside.
      const weight = trial.plant.totalMassKg * GRAVITY_M_PER_S2;
      const balances = {
        forward: new Ledger(weight),
        up: new Ledger(weight),
        turning: new Ledger(weight * trial.plant.legLengthM),
      };
      const rates = new Float64Array(at.DERIVE_SIZE);
      ride(trial, profile, {
        watch: {
          before({ inputs, state }) {
            derive(trial.plant, trial.road, inputs, state, rates);
            enterTick(trial, [inputs, state, rates], balances);
          },
        },
      });
      for (const [name, ledger] of Object.entries(balances)) ledger.close(name);
    }),
  );
});
