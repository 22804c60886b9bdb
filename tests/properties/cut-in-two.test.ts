/**
 * Is everything that a run remembers in its moment? A run that is cut at any tick, its moment copied, and taken up
 * again by a loop and an integrator of their own gives the same bytes as one that was never cut. No outside source.
 */
import fc from 'fast-check';
import { describe } from 'vitest';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import type { Moment } from '../../src/simulate/moment.js';
import type { Solver } from '../../src/simulate/run.js';
import { TAPE_COLUMNS, type Tape } from '../../src/simulate/tape.js';
import { prepareTrial, type Circumstances } from '../../src/simulate/trial.js';
import { share } from './drawn-numbers.js';
import { profiles } from './drawn-rig.js';
import { anyRoad, circumstancesIn, scenariosOn } from './drawn-scenario.js';
import { holds } from './properties.js';
import { ride } from './ride.js';

const bytes = (numbers: Float64Array) => Buffer.from(numbers.buffer, numbers.byteOffset, numbers.byteLength);

function expectSameRows(whole: Tape, part: Tape, [from, to]: readonly [number, number]): void {
  for (const column of TAPE_COLUMNS) {
    const [one, other] = [whole.columns[column].subarray(from, to), part.columns[column].subarray(from, to)];
    if (!bytes(one).equals(bytes(other))) throw new Error(`${column} differs in rows ${from} to ${to}`);
  }
}

function expectSameMoment(one: Moment, other: Moment): void {
  for (const key of Object.keys(one) as (keyof Moment)[]) {
    const [here, there] = [one[key], other[key]];
    const same =
      typeof here === 'number' ? Object.is(here, there) : bytes(here).equals(bytes(there as Float64Array));
    if (!same) throw new Error(`${key} differs at the end`);
  }
}

interface Cut {
  solver: Solver;
  /** Ticks that the whole run has at most. */
  ticks: number;
  /** Where it is cut, as a share of the ticks that it lived. */
  at: number;
}

/** Runs once whole and once in two parts, with circumstances and profile prepared anew for the second part. */
function expectNoSeam(circumstances: Circumstances, profile: ProfileFile, { solver, ticks, at }: Cut): void {
  const trial = prepareTrial(circumstances);
  const whole = ride(trial, profile, { solver, untilTick: ticks });
  const cutTick = Math.round(at * whole.moment.tick);
  const first = ride(trial, profile, { solver, untilTick: cutTick });
  if (first.moment.tick !== cutTick) throw new Error(`stopped at ${first.moment.tick}, not at ${cutTick}`);
  expectSameRows(whole.tape, first.tape, [0, cutTick]);

  const again = prepareTrial(structuredClone(circumstances));
  const from = structuredClone(first.moment);
  const second = ride(again, structuredClone(profile), { solver, untilTick: whole.moment.tick, from });
  expectSameRows(whole.tape, second.tape, [cutTick, whole.tape.length]);
  expectSameMoment(whole.moment, second.moment);
  const ended = cutTick < whole.moment.tick ? second.outcome : first.outcome;
  if (ended?.kind !== whole.outcome?.kind)
    throw new Error(`ended ${ended?.kind}, not ${whole.outcome?.kind}`);
}

describe('a run cut in two', () => {
  const drawn = circumstancesIn(scenariosOn(anyRoad));

  holds(
    'at any tick goes on to the same bytes with the fixed step',
    fc.property(drawn, profiles, share, (circumstances, profile, at) => {
      expectNoSeam(circumstances, profile, { solver: 'fixed', ticks: Infinity, at });
    }),
  );

  holds(
    'at any of its first ticks goes on to the same bytes with the reference solver',
    fc.property(drawn, profiles, share, (circumstances, profile, at) => {
      expectNoSeam(circumstances, profile, { solver: 'reference', ticks: 16, at });
    }),
  );
});
