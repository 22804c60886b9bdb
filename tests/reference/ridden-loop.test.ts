/**
 * Whole rides of the sampled loop, noise off, against ride.py: the equations of equations.py, SciPy's DOP853 at 1e-12
 * between ticks, and controller, pack, rider and road written once more from the contract (`cases.json` in, `rides.json`
 * out).
 *
 * Pitch is held to 1e-8 rad and speed to 1e-8 m/s with the reference solver on every ride, off the kerb too; the fixed
 * step, which ranks, to 1e-6 rad on smooth roads and to 1e-4 rad where its steps straddle a kink.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { boardSchema } from '../../src/quantity/board-file.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import { riderSchema } from '../../src/quantity/rider-file.js';
import { scenarioSchema } from '../../src/quantity/scenario-file.js';
import { run, type Run } from '../../src/simulate/run.js';
import { CEILINGS, TAPE_COLUMNS, type TapeColumn } from '../../src/simulate/tape.js';
import { prepareTrial, type Trial } from '../../src/simulate/trial.js';

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'));

interface Ride {
  name: string;
  end: string;
  ticks: number;
  leastWheelLoadN: number;
  longestInTheAirS: number;
  ticksShearBroughtBack: number;
  ticksCut: Record<string, number>;
  rows: number[][];
}

const { cases } = read('cases.json') as {
  cases: {
    name: string;
    what: string;
    board: unknown;
    rider: unknown;
    profile: unknown;
    scenario: unknown;
  }[];
};
const { rides, columns } = read('rides.json') as { rides: Ride[]; columns: string[] };

/** Largest differences allowed with the reference solver, in the unit of the column, and with the fixed step where the road is smooth. */
const MOST: Partial<Record<TapeColumn, readonly [reference: number, fixed: number]>> = {
  timeS: [1e-12, 1e-12],
  pitchRad: [1e-8, 1e-6],
  pitchRateRadPerS: [1e-7, 5e-5],
  leanRad: [1e-8, 1e-6],
  legLengthM: [1e-8, 2e-7],
  positionM: [1e-8, 2e-5],
  axleHeightM: [1e-8, 1e-6],
  speedMPerS: [1e-8, 2e-5],
  currentA: [1e-5, 5e-3],
  requestedCurrentA: [1e-5, 5e-3],
  estimatedPitchRad: [1e-8, 1e-6],
  setPointRad: [1e-8, 1e-6],
  bindingCeiling: [0, 0],
  wheelLoadN: [1e-3, 1e-2],
  packV: [1e-6, 1e-3],
  chargeShare: [1e-10, 1e-8],
};

/**
 * Rides on which the fixed step gets this many times as much: off the kerb its steps straddle the moments where the
 * wheel leaves and finds the road, over the bump the knots where the road's curvature jumps (order 1 to 2 there).
 */
const BROKEN_ROAD: Record<string, number> = { kerb: 100, 'every-shaping': 50 };

const SHARED = TAPE_COLUMNS.filter((column) => columns.includes(column));

function trialOf({ board, rider, scenario }: (typeof cases)[number]): Trial {
  return prepareTrial({
    board: boardSchema.parse(board),
    rider: riderSchema.parse(rider),
    scenario: scenarioSchema.parse(scenario),
    seed: 1,
    noiseRatio: 0,
  });
}

/** Largest difference of a tape column from the rows of a ride. */
function differenceOf({ tape }: Run, ride: Ride, column: TapeColumn): number {
  const place = columns.indexOf(column);
  let most = 0;
  for (const row of ride.rows) {
    const tick = Math.round(row[0]! / tape.tickS);
    most = Math.max(most, Math.abs(tape.columns[column][tick]! - row[place]!));
  }
  return most;
}

describe.each(cases.map((one) => [one.name, one] as const))('%s', (name, one) => {
  const ride = rides.find((candidate) => candidate.name === name)!;
  const trial = trialOf(one);
  const profile = profileSchema.parse(one.profile);
  const exact = run(trial, profile, { solver: 'reference' });
  const quick = run(trial, profile, { solver: 'fixed' });

  it('ends as the witness says', () => {
    expect(exact.outcome.kind).toBe(ride.end);
    expect(exact.tape.length).toBe(ride.ticks + 1);
  });

  it('has every column of the witness but the integral, which no tape holds', () => {
    expect(columns.filter((column) => !SHARED.some((shared) => shared === column))).toEqual(['integralA']);
  });

  it.each(SHARED)('keeps to the witness: %s', (column) => {
    const [reference, fixed] = MOST[column]!;
    expect(differenceOf(exact, ride, column)).toBeLessThanOrEqual(reference);
    expect(differenceOf(quick, ride, column)).toBeLessThanOrEqual(fixed * (BROKEN_ROAD[name] ?? 1));
  });

  it('is cut by the same ceilings in as many ticks', () => {
    const cut = exact.tape.columns.bindingCeiling.subarray(0, ride.ticks);
    for (const [code, ceiling] of CEILINGS.entries()) {
      if (code > 0)
        expect(cut.filter((value) => value === code).length, ceiling).toBe(ride.ticksCut[ceiling]);
    }
  });
});

describe('the rides', () => {
  const ridden = (name: string) => rides.find((ride) => ride.name === name)!;

  it('have no case without a ride, and no ride without a case', () => {
    expect(rides.map((ride) => ride.name)).toEqual(cases.map((one) => one.name));
  });

  it('meet different physics: the air, grip used up, every ceiling', () => {
    expect(ridden('kerb').leastWheelLoadN).toBe(0);
    expect(ridden('kerb').longestInTheAirS).toBeGreaterThan(0.04);
    expect(ridden('shove-and-shift').ticksShearBroughtBack).toBeGreaterThan(100);
    expect(ridden('voltage-ceiling').ticksCut['voltage']).toBeGreaterThan(500);
    expect(ridden('pack-ceilings').ticksCut['pack out']).toBeGreaterThan(500);
    expect(ridden('pack-ceilings').ticksCut['pack in']).toBeGreaterThan(100);
    expect(ridden('every-shaping').ticksCut['drive']).toBeGreaterThan(10);
    expect(ridden('every-shaping').ticksCut['brake']).toBeGreaterThan(10);
  });
});
