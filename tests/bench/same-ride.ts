/**
 * One ride for several programs: made by our own loop, as a text file of numbers for the program in C, and as a case
 * for the witness in Python. Noise is off, for the witness knows none.
 */
import { controlLaw, type ControlLaw } from '../../src/control/law.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import { loopPlan, runTicks, tickOnce } from '../../src/simulate/loop.js';
import type { Moment } from '../../src/simulate/moment.js';
import { integratorFor, type Solver } from '../../src/simulate/run.js';
import { startMoment } from '../../src/simulate/start.js';
import { createTape, type Tape } from '../../src/simulate/tape.js';
import { prepareTrial, type Circumstances, type Trial } from '../../src/simulate/trial.js';

/** A ride that everybody is to make, and the tape that ours is written to. */
export interface SameRide {
  title: string;
  trial: Trial;
  profile: ProfileFile;
  law: ControlLaw;
  tape: Tape;
}

/** The ride of a profile in some circumstances, but for their noise. */
export function sameRide(title: string, circumstances: Circumstances, profile: ProfileFile): SameRide {
  const trial = prepareTrial({ ...circumstances, noiseRatio: 0 });
  const law = controlLaw(profile, trial.board);
  return { title, trial, profile, law, tape: createTape(trial.script.tickCount + 1, trial.tickS) };
}

/** Rides with our own loop, as `run` does; the moment at the end. */
export function rideOurs({ trial, law, tape }: SameRide, solver: Solver): Moment {
  const plan = loopPlan(trial, law, integratorFor(trial, { solver, stepsPerTick: 1 }));
  const moment = startMoment(trial, law);
  const { tickCount } = trial.script;
  const fall = runTicks(plan, moment, { tape, untilTick: tickCount });
  if (fall === undefined) tickOnce(plan, moment, tape);
  return moment;
}

/** A tree of numbers, as plant, road and law are. */
interface Tree {
  readonly [name: string]: number | ArrayLike<number> | Tree;
}

/** Everything that the ride depends on: a line for each number or list, with its name, its count and its values. */
export function numbersOf({ trial, law }: SameRide): string {
  const { plant, riderLaw, road, script, scenario } = trial;
  const { state, inputs, motion, pack, estimator, controller, rider, ...rest } = startMoment(trial, law);
  const { requests, pastLean, pastLeanRate, pastSpeed } = rest;
  const start = { state, inputs, motion, pack, estimator, controller, rider };
  return [
    ...linesOf('plant', plant),
    ...linesOf('rider', riderLaw),
    ...linesOf('law', { ...law, estimator: { ...law.estimator }, ceilings: { ...law.ceilings } }),
    ...linesOf('road', { ...road }),
    ...linesOf('script', { ...script }),
    ...linesOf('start', { ...start, requests, pastLean, pastLeanRate, pastSpeed }),
    ...linesOf('', { takesOver: scenario.start.takesOver ? 1 : 0 }),
  ].join('\n');
}

function linesOf(path: string, tree: Tree): string[] {
  return Object.entries(tree).flatMap(([key, value]) => {
    const name = path === '' ? key : `${path}.${key}`;
    if (typeof value === 'number') return [`${name} 1 ${value}`];
    return isList(value) ? [`${name} ${value.length} ${Array.from(value).join(' ')}`] : linesOf(name, value);
  });
}

function isList(value: ArrayLike<number> | Tree): value is ArrayLike<number> {
  return ArrayBuffer.isView(value);
}

/** The ride as a case of tests/reference/cases.json, with every default filled in. */
export function caseOf({ title, trial, profile }: SameRide): object {
  const { board, rider, scenario, plant, road } = trial;
  const openCircuit = Array.from(plant.pack.cellOpenCircuitV, (cellV, chargePercent) => ({
    chargePercent,
    cellV,
  }));
  return {
    name: title,
    board: {
      ...board,
      motor: { ...board.motor, torqueConstantNmPerA: plant.motor.torqueConstantNmPerA },
      pack: { ...board.pack, openCircuit },
    },
    rider: {
      ...rider,
      body: {
        ...rider.body,
        centreAboveAnkleM: plant.legLengthM,
        inertiaKgM2: plant.riderInertiaKgM2,
      },
    },
    profile,
    scenario: {
      ...scenario,
      road: scenario.road.map((piece, index) => ({
        ...piece,
        gripRatio: road.gripRatio[index],
        rollingResistanceRatio: road.rollingResistanceRatio[index],
      })),
    },
  };
}
