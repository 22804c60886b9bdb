/**
 * Do the equations know which units their numbers are in? They must not: a rig in other units of mass, length, time and
 * current rides the same ride (E. Buckingham 1914; W. Froude for motions under gravity). Three laws, each to the last bit:
 *
 * - masses, inertias, stiffnesses, dampings and forces times s: the same motion at the same currents (torque constant,
 *   resistances and cell voltages times s, capacity and gains as they are);
 * - currents, gains and capacity times c, torque constant and voltages over c, resistances over c^2: the same torques;
 * - lengths over 4, times (and delays, filters, ticks) over 2, angles as they are: the same motion, smaller and quicker.
 *
 * Constants of the program with a dimension that do not scale, and how they are kept out of the third law: the spin
 * within which rolling resistance fades in (none is set), the time of the tremor (none), the spacing of the road's grid and
 * its run-up (the road is scaled as a whole), and the feet's clearance at which a rider counts as off (such an end is not
 * compared).
 */
import fc from 'fast-check';
import { describe } from 'vitest';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import type { ScenarioFile } from '../../src/quantity/scenario-file.js';
import type { Road } from '../../src/scenario/road.js';
import { run } from '../../src/simulate/run.js';
import { TAPE_COLUMNS, type TapeColumn } from '../../src/simulate/tape.js';
import { prepareTrial, type Circumstances, type Trial } from '../../src/simulate/trial.js';
import { factorOf, inUnits, type Doublings } from './dimensions.js';
import { profiles } from './drawn-rig.js';
import { anyRoad, circumstancesIn, scenariosOn } from './drawn-scenario.js';
import { holds } from './properties.js';

const UNIT_OF: Record<TapeColumn, string> = {
  timeS: 's',
  pitchRad: 'rad',
  pitchRateRadPerS: 'rad/s',
  leanRad: 'rad',
  leanRateRadPerS: 'rad/s',
  legLengthM: 'm',
  positionM: 'm',
  axleHeightM: 'm',
  speedMPerS: 'm/s',
  wheelRateRadPerS: 'rad/s',
  estimatedPitchRad: 'rad',
  setPointRad: 'rad',
  askedCurrentA: 'A',
  requestedCurrentA: 'A',
  currentA: 'A',
  upperCeilingA: 'A',
  lowerCeilingA: 'A',
  bindingCeiling: '',
  headroomShare: '',
  packV: 'V',
  packCurrentA: 'A',
  chargeShare: '',
  riderTorqueNm: 'Nm',
  riderTorqueLimitNm: 'Nm',
  feetAccelerationMPerS2: 'm/s2',
  wheelLoadN: 'N',
  treadForceN: 'N',
};

type Drawn = Circumstances & { noiseRatio: number };

/** The published curve of a cell is a constant of the program; a rig that is to be scaled states one. */
const CURVE = [
  { chargePercent: 0, cellV: 2.9 },
  { chargePercent: 100, cellV: 4.2 },
];

function withCurve({ board, ...rest }: Drawn): Drawn {
  const { openCircuit = CURVE } = board.pack;
  return { ...rest, board: { ...board, pack: { ...board.pack, openCircuit } } };
}

function circumstancesInUnits({ board, rider, scenario, ...rest }: Drawn, doublings: Doublings): Drawn {
  const inOthers = inUnits('rider', rider, doublings);
  const density = factorOf('kg', doublings) / factorOf('m', doublings) ** 3;
  return {
    ...rest,
    board: inUnits('board', board, doublings),
    rider: { ...inOthers, body: { ...inOthers.body, dragAreaM2: inOthers.body.dragAreaM2 * density } },
    scenario: inUnits('scenario', scenario, doublings),
  };
}

function roadInUnits(road: Road, doublings: Doublings): Road {
  const longer = (value: number) => value * factorOf('m', doublings);
  return {
    ...road,
    originM: longer(road.originM),
    spacingM: longer(road.spacingM),
    knots: road.knots.map(longer),
    bareHeightM: road.bareHeightM.map(longer),
    pieceStartM: road.pieceStartM.map(longer),
  };
}

/** Runs both and compares every number of both tapes, bit by bit, and how the runs ended. */
function expectSameRide(
  [trial, profile]: readonly [Trial, ProfileFile],
  [otherTrial, otherProfile]: readonly [Trial, ProfileFile],
  doublings: Doublings,
): void {
  const one = run(trial, profile, { solver: 'fixed' });
  const other = run(otherTrial, otherProfile, { solver: 'fixed' });
  const feet = doublings.length !== 0 && [one, other].some(({ outcome }) => outcome.kind === 'rider off');
  if (!feet && (one.outcome.kind !== other.outcome.kind || one.tape.length !== other.tape.length)) {
    throw new Error(`one ended with ${one.outcome.kind}, the other with ${other.outcome.kind}`);
  }
  const rows = Math.min(one.tape.length, other.tape.length);
  for (const column of TAPE_COLUMNS) {
    const factor = factorOf(UNIT_OF[column], doublings);
    const [here, there] = [one.tape.columns[column], other.tape.columns[column]];
    for (let row = 0; row < rows; row++) {
      if (here[row]! * factor !== there[row]!) {
        throw new Error(`${column} in row ${row}: ${here[row]! * factor} and ${there[row]!}`);
      }
    }
  }
}

const drawn = fc.tuple(circumstancesIn(scenariosOn(anyRoad)).map(withCurve), profiles);
const drawnShorter = fc.tuple(circumstancesIn(scenariosOn(anyRoad, 0.7)).map(withCurve), profiles);
const doubled = fc.integer({ min: -2, max: 2 });

function holdsInUnits(name: string, units: fc.Arbitrary<Doublings>): void {
  holds(
    name,
    fc.property(drawn, units, ([circumstances, profile], doublings) => {
      const other = circumstancesInUnits(circumstances, doublings);
      expectSameRide(
        [prepareTrial(circumstances), profile],
        [prepareTrial(other), inUnits('profile', profile, doublings)],
        doublings,
      );
    }),
  );
}

/** A scenario in which the wheel rolls without resistance. */
function rollingFreely({ road, ...rest }: ScenarioFile): ScenarioFile {
  return { ...rest, road: road.map((piece) => ({ ...piece, rollingResistanceRatio: 0 })) };
}

describe('the same rig in other units', () => {
  holdsInUnits(
    'rides the same ride with all masses, stiffnesses, dampings, forces and voltages times s',
    doubled.map((mass) => ({ mass, length: 0, current: 0 })),
  );

  holdsInUnits(
    'rides the same ride with all currents and gains times c, voltages over c and resistances over c squared',
    doubled.map((current) => ({ mass: 0, length: 0, current })),
  );

  holds(
    'rides the same ride with all lengths over 4 and times over 2, whatever its mass and currents',
    fc.property(
      drawnShorter,
      fc.record({ mass: doubled, length: fc.constant(-2), current: doubled }),
      ([wild, profile], doublings) => {
        const { rider } = wild;
        const circumstances = {
          ...wild,
          scenario: rollingFreely(wild.scenario),
          rider: { ...rider, balance: { ...rider.balance, tremorNm: 0 } },
        };
        const trial = prepareTrial(circumstances);
        const other = circumstancesInUnits(circumstances, doublings);
        // Its road is scaled from the first, so that the grid is too; a short one is built in the meantime.
        const short = { ...other.scenario, road: other.scenario.road.slice(0, 1) };
        const otherTrial = {
          ...prepareTrial({ ...other, scenario: short }),
          road: roadInUnits(trial.road, doublings),
        };
        expectSameRide([trial, profile], [otherTrial, inUnits('profile', profile, doublings)], doublings);
      },
    ),
  );
});
