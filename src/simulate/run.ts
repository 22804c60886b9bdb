/**
 * One run: a profile in a trial, from the start to the end of the scenario or to a fall. Same trial, profile and
 * solver give the same bytes.
 */
import { controlLaw } from '../control/law.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { fixedStep, stepsFor, type Integrator } from './fixed-step.js';
import { loopPlan, runTicks, tickOnce } from './loop.js';
import type { Outcome } from './outcome.js';
import { referenceStep } from './reference.js';
import { startMoment } from './start.js';
import { createTape, type Tape } from './tape.js';
import type { Trial } from './trial.js';

/** Ways to integrate: the quick fixed step, or odex as the reference. */
export const SOLVERS = ['fixed', 'reference'] as const;

/** One of the ways to integrate. */
export type Solver = (typeof SOLVERS)[number];

/** How a run is to be made. */
export interface RunOptions {
  solver: Solver;
  /** Steps of the fixed-step integrator in a tick; as few as are stable unless given, 1 for most boards. */
  stepsPerTick?: number;
  /** A tape to write over, so that many runs need no new memory; it grows a new one when too short. */
  tape?: Tape;
}

/** What a run leaves: how it ended and its tape. */
export interface Run {
  outcome: Outcome;
  tape: Tape;
}

/** Runs a profile in a trial. */
export function run(trial: Trial, profile: ProfileFile, options: RunOptions): Run {
  const law = controlLaw(profile, trial.board);
  const { tickCount } = trial.script;
  const tape = roomyTape(options.tape, tickCount + 1, trial.tickS);
  const plan = loopPlan(trial, law, integratorFor(trial, options));
  const moment = startMoment(trial, law);
  const fall = runTicks(plan, moment, { tape, untilTick: tickCount });
  if (fall === undefined) tickOnce(plan, moment, tape);
  return { outcome: fall ?? { kind: 'upright', atS: tickCount * trial.tickS }, tape };
}

/** The integrator that the options ask for. */
export function integratorFor(
  { plant, road, tickS }: Trial,
  { solver, stepsPerTick = stepsFor(plant, tickS) }: RunOptions,
): Integrator {
  return solver === 'reference'
    ? referenceStep(plant, road, { tickS })
    : fixedStep(plant, road, { tickS, stepsPerTick });
}

function roomyTape(tape: Tape | undefined, rows: number, tickS: number): Tape {
  if (tape === undefined || tape.columns.timeS.length < rows) return createTape(rows, tickS);
  tape.tickS = tickS;
  tape.length = 0;
  return tape;
}
