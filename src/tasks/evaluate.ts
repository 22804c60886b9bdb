/**
 * One cell after another: prepares a trial when it is first needed, runs a profile in it, measures. Used by the
 * main thread and by workers alike, so that where a cell is computed can't change its numbers.
 */
import { marksOf, windowOf, type EventMark } from '../measure/marks.js';
import { measureRun, type Metrics } from '../measure/metrics.js';
import type { CellResult } from '../measure/profile-result.js';
import type { MeasureWindow } from '../measure/window.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { Road } from '../scenario/road.js';
import type { Outcome } from '../simulate/outcome.js';
import { stepsFor } from '../simulate/fixed-step.js';
import { run, type RunOptions, type Solver } from '../simulate/run.js';
import { TAPE_COLUMNS, type Tape } from '../simulate/tape.js';
import { prepareTrial, type Trial } from '../simulate/trial.js';
import type { PlannedTrial } from './plan.js';

/** A run with what was measured on it. */
export interface MeasuredRun {
  outcome: Outcome;
  tape: Tape;
  marks: EventMark[];
  window: MeasureWindow;
  metrics: Metrics;
}

/** A run to be looked at: with the road that it went over. */
export interface RunOnRoad extends MeasuredRun {
  road: Pick<Road, 'originM' | 'spacingM' | 'bareHeightM'>;
}

/** Trials that one thread keeps ready at a time; each holds about a megabyte of road, script and noise. */
export const TRIALS_KEPT = 96;

/** Runs a profile in a trial and measures it. */
export function measureProfile(trial: Trial, profile: ProfileFile, options: RunOptions): MeasuredRun {
  const { outcome, tape } = run(trial, profile, options);
  const marks = marksOf(trial.scenario, tape, trial.plant.wheelRadiusM);
  const window = windowOf(trial.scenario, marks, trial.tickS);
  return { outcome, tape, marks, window, metrics: measureRun(tape, window, outcome) };
}

/** How a cell is integrated; `stepsRatio` times as many fixed steps a tick as usual, 1 unless given. */
export interface CellSolver {
  solver: Solver;
  stepsRatio?: number;
}

/** Computes cells and runs one after another. */
export interface Evaluator {
  /** The cell of a profile in a trial. */
  cell: (profile: ProfileFile, planned: PlannedTrial, how: CellSolver) => CellResult;
  /** The whole run of a profile in a trial; its tape is its own. */
  run: (profile: ProfileFile, planned: PlannedTrial, solver: Solver) => RunOnRoad;
}

/** An evaluator with its own tape and its own ready trials. */
export function createEvaluator(): Evaluator {
  const ready = new Map<string, Trial>();
  let tape: Tape | undefined;
  const trialOf = ({ circumstances }: PlannedTrial): Trial => {
    const content = JSON.stringify(circumstances);
    const kept = ready.get(content);
    if (kept !== undefined) return kept;
    const oldest = ready.keys().next();
    if (ready.size >= TRIALS_KEPT && !oldest.done) ready.delete(oldest.value);
    const trial = prepareTrial(circumstances);
    ready.set(content, trial);
    return trial;
  };
  return {
    cell: (profile, planned, { solver, stepsRatio = 1 }) => {
      const trial = trialOf(planned);
      const stepsPerTick = stepsRatio * stepsFor(trial.plant, trial.tickS);
      const measured = measureProfile(trial, profile, { solver, stepsPerTick, ...(tape && { tape }) });
      tape = measured.tape;
      const { outcome, metrics } = measured;
      return { ...planned.key, outcome, eventReached: metrics.measuredS > 0, metrics };
    },
    run: (profile, planned, solver) => {
      const trial = trialOf(planned);
      const measured = measureProfile(trial, profile, { solver });
      const { originM, spacingM, bareHeightM } = trial.road;
      return { ...measured, tape: trimmed(measured.tape), road: { originM, spacingM, bareHeightM } };
    },
  };
}

/** A tape without the room that its run did not need. */
function trimmed({ tickS, length, columns }: Tape): Tape {
  const own = Object.fromEntries(TAPE_COLUMNS.map((name) => [name, columns[name].slice(0, length)]));
  return { tickS, length, columns: own as Tape['columns'] };
}
