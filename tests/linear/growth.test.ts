/** Is a loop called lost where it is, and not where a rig only rolls to and fro about rest? */
import { describe, expect, it } from 'vitest';
import { doublingS, fateOf, hasMargins, loopStateOf } from '../../src/linear/growth.js';
import { loopView } from '../../src/linear/loop-view.js';
import { modesOf, type Mode } from '../../src/linear/modes.js';
import { steadyRide, type RidePoint } from '../../src/linear/steady-ride.js';
import * as at from '../../src/model/state.js';
import { runTicks } from '../../src/simulate/loop.js';
import { createTape } from '../../src/simulate/tape.js';
import { starterPlan } from '../starter-plan.js';

const mode = (changes: Partial<Mode>): Mode => ({
  growthPerS: -1,
  swingRadPerS: 0,
  frequencyHz: 0.1,
  dampingRatio: 1,
  shares: { deck: 0, rider: 0.05, tyre: 0, travel: 0.95 },
  ...changes,
});

describe('a motion', () => {
  it('that grows e-fold in a second doubles in 0.693 s', () => {
    expect(doublingS(mode({ growthPerS: 1 }))).toBeCloseTo(Math.LN2, 12);
    expect(doublingS(mode({}))).toBe(Infinity);
  });

  it.each([
    ['does not grow', mode({}), false, 'dies out'],
    [
      'doubles in more than 5 s',
      mode({ growthPerS: 0.13, shares: { deck: 1, rider: 0, tyre: 0, travel: 0 } }),
      false,
      'creeps',
    ],
    ['doubles in less', mode({ growthPerS: 0.15 }), false, 'grows'],
    ['is slow travel about rest', mode({ growthPerS: 1 }), true, 'rolls'],
    ['is quicker travel about rest', mode({ growthPerS: 1, frequencyHz: 0.26 }), true, 'grows'],
    [
      'is slow about rest but not travel alone',
      mode({ growthPerS: 1, shares: { deck: 0.2, rider: 0, tyre: 0, travel: 0.8 } }),
      true,
      'grows',
    ],
  ] as const)('that %s', (_what, motion, isStanding, fate) => {
    expect(fateOf(motion, isStanding)).toBe(fate);
  });

  it('that grows loses the loop whatever the others do', () => {
    expect(loopStateOf([mode({}), mode({ growthPerS: 0.1 }), mode({ growthPerS: 2 })], false)).toBe('lost');
    expect(loopStateOf([mode({}), mode({ growthPerS: 0.1 })], false)).toBe('creeps');
    expect(loopStateOf([mode({}), mode({ growthPerS: 0.1 }), mode({ growthPerS: 1 })], true)).toBe('rolls');
    expect(loopStateOf([mode({})], false)).toBe('holds');
    expect((['holds', 'rolls', 'creeps', 'lost'] as const).map(hasMargins)).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });
});

describe('what rolls about rest', () => {
  const { board, riders, profiles } = starterPlan();
  const point = (name: string, speedKmPerH: number): RidePoint => ({
    board: board.value,
    rider: riders[0]!.value,
    profile: profiles.find((profile) => profile.name === name)!.value,
    speedKmPerH,
    gradePercent: 0,
    chargePercent: 80,
  });

  it.each(['linen', 'wool', 'felt', 'gauze'])(
    'stays bounded in a simulation with %s, and is not there when rolling',
    (name) => {
      const modes = (speedKmPerH: number) => {
        const view = loopView(steadyRide(point(name, speedKmPerH)));
        return modesOf(view, { deckInertiaKgM2: 0.4, riderInertiaKgM2: 80, totalMassKg: 92 });
      };
      expect(loopStateOf(modes(0), true)).toBe('rolls');
      expect(loopStateOf(modes(2), false)).toBe('holds');
      const durationS = 60;
      const { plan, moment } = steadyRide(point(name, 0), durationS);
      moment.state[at.PITCH]! += 0.01;
      const untilTick = Math.round(durationS / plan.trial.tickS);
      const tape = createTape(untilTick + 1, plan.trial.tickS);
      expect(runTicks(plan, moment, { tape, untilTick })).toBeUndefined();
      const speeds = tape.columns.speedMPerS.subarray(untilTick / 2, untilTick).map(Math.abs);
      expect(Math.max(...speeds)).toBeGreaterThan(0.1);
      expect(Math.max(...speeds)).toBeLessThan(1.5);
    },
  );
});
