/**
 * Does energy come from nowhere or get lost? Motor, rider, shove, air, rolling resistance, dampers, sliding tread, legs
 * and feet at their limits are all at work (electricity.test.ts has the pack): all along any ride the rate of what is stored
 * equals the sum of the powers, and over ticks what was stored more equals the powers' time integral. First law of
 * thermodynamics, no other source.
 *
 * Tolerances, of the largest power met in the ride, one watt at the least: 1e-12 for rates (rounding of a 3 x 3
 * elimination; 1e-14 is usual), 1e-6 for energies over ticks (1e-10 is usual: the solver works to 1e-12 of each state).
 */
import fc from 'fast-check';
import { describe } from 'vitest';
import { derive } from '../../src/model/derive.js';
import { mechanicalEnergy } from '../../src/model/energy.js';
import { lagDecay } from '../../src/model/motor.js';
import { MOTOR_CURRENT } from '../../src/model/battery.js';
import type { Ground } from '../../src/model/ground.js';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import type { Moment } from '../../src/simulate/moment.js';
import { solveReference } from '../../src/simulate/reference.js';
import { prepareTrial, type Trial } from '../../src/simulate/trial.js';
import { share } from './drawn-numbers.js';
import { profiles } from './drawn-rig.js';
import { anyRoad, circumstancesIn, scenariosOn, straightRoad } from './drawn-scenario.js';
import {
  largestOf,
  powersOnRoad,
  powersWithTyre,
  storedRate,
  total,
  tyreEnergy,
  tyreRate,
  type Powers,
} from './powers.js';
import { holds } from './properties.js';
import { ride } from './ride.js';

const RATE_TOLERANCE_RATIO = 1e-12;
const ENERGY_TOLERANCE_RATIO = 1e-6;

/** A ride in which less than this is turned over counts as if it were this much. */
const LEAST_PEAK_W = 1;

/** Rates are looked at every so many ticks; an odd number, so that no pattern of the loop hides. */
const EVERY_TICKS = 3;

/** Largest power and largest gap of the balance of rates over a ride, W; both ways to draw the line on straight road. */
function balanceOfRates(trial: Trial, profile: ProfileFile, isStraight: boolean) {
  const { plant, road } = trial;
  const rates = new Float64Array(at.DERIVE_SIZE);
  let [gap, peak] = [0, LEAST_PEAK_W];
  ride(trial, profile, {
    watch: {
      before({ inputs, state, tick }) {
        if (tick % EVERY_TICKS !== 0) return;
        derive(plant, road, inputs, state, rates);
        const powers = powersOnRoad(plant, road, inputs, state);
        const stored = storedRate(plant, state, rates);
        gap = Math.max(gap, Math.abs(stored - total(powers)));
        peak = Math.max(peak, largestOf(powers));
        if (!isStraight) return;
        const inside = powersWithTyre(plant, road, inputs, state);
        const more = tyreRate(plant, road, inputs, { state, rates });
        gap = Math.max(gap, Math.abs(stored + more - total(inside)));
      },
    },
  });
  return { gap, peak };
}

function expectBalance({ gap, peak }: { gap: number; peak: number }, ratio: number, unit: string): void {
  if (!(gap <= ratio * peak)) throw new Error(`off by ${gap} ${unit} where the largest is ${peak}`);
}

describe('rate of stored energy', () => {
  holds(
    'equals the sum of powers with the road as an outside force, all along any road',
    fc.property(circumstancesIn(scenariosOn(anyRoad)), profiles, (circumstances, profile) => {
      expectBalance(balanceOfRates(prepareTrial(circumstances), profile, false), RATE_TOLERANCE_RATIO, 'W');
    }),
  );

  holds(
    'equals the sum of powers with tyre and tread inside, all along straight road',
    fc.property(circumstancesIn(scenariosOn(straightRoad)), profiles, (circumstances, profile) => {
      expectBalance(balanceOfRates(prepareTrial(circumstances), profile, true), RATE_TOLERANCE_RATIO, 'W');
    }),
  );
});

type Line = (plant: Plant, road: Ground, inputs: Float64Array, state: Float64Array) => Powers;

/**
 * A tick from a moment with everything held but the current: the state at its end, and behind it the work meanwhile, J,
 * which is integrated beside the state.
 */
function workOver({ plant, road, tickS }: Trial, moment: Moment, powers: Line): Float64Array {
  const inputs = moment.inputs.slice();
  const request = moment.followed[0]!;
  const gap = moment.motion[MOTOR_CURRENT]! - request;
  const { torqueConstantNmPerA, lagS } = plant.motor;
  const state = new Float64Array(at.STATE_SIZE);
  const rates = new Float64Array(at.DERIVE_SIZE);
  const slope = new Float64Array(at.STATE_SIZE + 1);
  const derivative = (timeS: number, y: number[]) => {
    for (let place = 0; place < at.STATE_SIZE; place++) state[place] = y[place]!;
    inputs[at.MOTOR_TORQUE] = torqueConstantNmPerA * (request + gap * lagDecay(timeS, lagS));
    derive(plant, road, inputs, state, rates);
    slope.set(rates.subarray(0, at.STATE_SIZE));
    slope[at.STATE_SIZE] = total(powers(plant, road, inputs, state));
    return slope;
  };
  const end = solveReference(derivative, [...moment.state, 0], { xEnd: tickS });
  if (end === undefined) throw new Error('the work did not converge');
  return Float64Array.from(end);
}

/** Ticks over which energy is followed with the reference solver, from any tick of a ride on. */
const TICKS = 4;

interface Followed {
  trial: Trial;
  profile: ProfileFile;
  from: number;
}

/**
 * Energy that came from nowhere over some ticks, and the largest power of the ride so far times their time, J. It is drawn
 * up along the motion beside which the work was integrated: where forces kink, as at every 5 mm of a road that curves,
 * the solver steps over the kink, and two solutions of one tick part by 1e-8 of a state and 1e-7 of the power.
 */
function balanceOfEnergy(
  { trial, profile, from }: Followed,
  powers: Line,
  energyOf: (state: Float64Array) => number,
): { gap: number; peak: number } {
  const { plant, road, tickS, script } = trial;
  const first = Math.floor(from * (script.tickCount - TICKS));
  let [peakW, gap, ticks] = [LEAST_PEAK_W, 0, 0];
  const look = ({ inputs, state }: Moment) => {
    peakW = Math.max(peakW, largestOf(powers(plant, road, inputs, state)));
  };
  const lead = ride(trial, profile, { untilTick: first, watch: { before: look } });
  if (lead.outcome !== undefined) return { gap: 0, peak: 0 };
  ride(trial, profile, {
    solver: 'reference',
    from: lead.moment,
    untilTick: first + TICKS,
    watch: {
      before(moment) {
        look(moment);
        const end = workOver(trial, moment, powers);
        gap += energyOf(end) - energyOf(moment.state) - end[at.STATE_SIZE]!;
        ticks++;
      },
    },
  });
  return { gap: Math.abs(gap), peak: peakW * ticks * tickS };
}

describe('stored energy', () => {
  holds(
    'grows by the time integral of the powers with the road as an outside force, over any ticks on any road',
    fc.property(circumstancesIn(scenariosOn(anyRoad)), profiles, share, (circumstances, profile, from) => {
      const trial = prepareTrial(circumstances);
      const { plant, road } = trial;
      const balance = balanceOfEnergy(
        { trial, profile, from },
        powersOnRoad,
        (state) => mechanicalEnergy(plant, road, state) - tyreEnergy(plant, road, state),
      );
      expectBalance(balance, ENERGY_TOLERANCE_RATIO, 'J');
    }),
  );

  holds(
    'grows by the time integral of the powers with tyre and tread inside, over any ticks on straight road',
    fc.property(
      circumstancesIn(scenariosOn(straightRoad)),
      profiles,
      share,
      (circumstances, profile, from) => {
        const trial = prepareTrial(circumstances);
        const balance = balanceOfEnergy({ trial, profile, from }, powersWithTyre, (state) =>
          mechanicalEnergy(trial.plant, trial.road, state),
        );
        expectBalance(balance, ENERGY_TOLERANCE_RATIO, 'J');
      },
    ),
  );

  holds(
    'stays between ticks, but for the tread, which lets go of what grip can not hold and takes nothing up',
    fc.property(circumstancesIn(scenariosOn(anyRoad)), profiles, (circumstances, profile) => {
      let after: Float64Array | undefined;
      ride(prepareTrial(circumstances), profile, {
        watch: {
          before({ state, tick }) {
            after?.forEach((value, place) => {
              const now = state[place]!;
              const stays = place === at.TREAD ? Math.abs(now) <= Math.abs(value) : now === value;
              if (!stays)
                throw new Error(`place ${place} of the state went from ${value} to ${now} at ${tick}`);
            });
          },
          after({ state }) {
            after = state.slice();
          },
        },
      });
    }),
  );
});
