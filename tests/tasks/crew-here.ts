/**
 * A crew that works on the thread of the test, and counts: what a real one does, without threads.
 */
import { rideLook } from '../../src/linear/ride-report.js';
import type { Crew } from '../../src/tasks/crew.js';
import { createEvaluator } from '../../src/tasks/evaluate.js';

/** A crew with what it was asked for, in order: the summary of the profile and the trial or trials, or the speed of a ride. */
export interface CrewHere extends Crew {
  asked: { what: 'cells' | 'run' | 'ride'; summary: string; solver: string; trials: string[] }[];
}

/** Opens a crew of so many hands; before each piece of work it waits for `gate`. */
export function crewHere(size = 1, gate: () => Promise<void> = () => Promise.resolve()): CrewHere {
  const evaluator = createEvaluator();
  const asked: CrewHere['asked'] = [];
  const ask = async (what: 'cells' | 'run', { profile, trials, solver }: Parameters<Crew['cells']>[0]) => {
    const names = trials.map(({ key }) => `${key.scenario}/${key.seed}`);
    asked.push({ what, summary: profile.summary, solver, trials: names });
    await gate();
  };
  return {
    size,
    asked,
    cells: async (task) => {
      await ask('cells', task);
      return task.trials.map((trial) => evaluator.cell(task.profile, trial, task));
    },
    run: async (task) => {
      await ask('run', task);
      return evaluator.run(task.profile, task.trials[0]!, task.solver);
    },
    ride: async (point) => {
      const { profile, speedKmPerH } = point;
      asked.push({ what: 'ride', summary: profile.summary, solver: '', trials: [`${speedKmPerH} km/h`] });
      await gate();
      return rideLook(point);
    },
    close: async () => {},
  };
}
