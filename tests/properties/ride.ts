/**
 * A run that a test can look into: an integrator that tells what it held and where it got to, tick by tick.
 */
import { controlLaw } from '../../src/control/law.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import type { Integrator } from '../../src/simulate/fixed-step.js';
import { loopPlan, runTicks } from '../../src/simulate/loop.js';
import type { Moment } from '../../src/simulate/moment.js';
import type { Outcome } from '../../src/simulate/outcome.js';
import { integratorFor, type Solver } from '../../src/simulate/run.js';
import { startMoment } from '../../src/simulate/start.js';
import { createTape, type Tape } from '../../src/simulate/tape.js';
import type { Trial } from '../../src/simulate/trial.js';

/** What a ride calls around every tick's motion: `moment` holds the state and what is held for the tick. */
export interface Watch {
  before?(moment: Moment): void;
  after?(moment: Moment): void;
}

/** A run that has come to its end, or to a tick. */
export interface Ride {
  moment: Moment;
  tape: Tape;
  outcome: Outcome | undefined;
}

function watched(integrator: Integrator, watch: Watch): Integrator {
  return {
    advance(moment) {
      watch.before?.(moment);
      const stopped = integrator.advance(moment);
      watch.after?.(moment);
      return stopped;
    },
  };
}

/** Rides from the start to a tick (to the end when left out), or on from a moment. */
export function ride(
  trial: Trial,
  profile: ProfileFile,
  {
    solver = 'fixed',
    untilTick = trial.script.tickCount,
    from,
    watch = {},
  }: { solver?: Solver; untilTick?: number; from?: Moment; watch?: Watch } = {},
): Ride {
  const law = controlLaw(profile, trial.board);
  const integrator = watched(integratorFor(trial, { solver }), watch);
  const moment = from ?? startMoment(trial, law);
  const tape = createTape(trial.script.tickCount + 1, trial.tickS);
  const plan = loopPlan(trial, law, integrator);
  const outcome = runTicks(plan, moment, { tape, untilTick: Math.min(untilTick, trial.script.tickCount) });
  return { moment, tape, outcome };
}
