/**
 * What is to be ranked, as data that can be sent to a worker: one board, some riders, profiles and scenarios,
 * pack states and seeds. A trial is one scenario x rider x pack state x seed; a cell is one profile in one trial.
 */
import type { Weights } from '../measure/scales.js';
import type { BoardFile } from '../quantity/board-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import type { ScenarioFile } from '../quantity/scenario-file.js';
import type { Circumstances } from '../simulate/trial.js';
import type { Solver } from '../simulate/run.js';

/** A checked file under its name. */
export interface Named<T> {
  name: string;
  value: T;
}

/** Everything that a ranking depends on. */
export interface RankPlan {
  board: Named<BoardFile>;
  riders: Named<RiderFile>[];
  profiles: Named<ProfileFile>[];
  scenarios: Named<ScenarioFile>[];
  /** States of charge in place of the scenario's own, %; null leaves it. */
  charges: (number | null)[];
  seeds: number[];
  solver: Solver;
  weights: Weights;
}

/** One trial of a plan by the names of what meets in it. */
export interface TrialKey {
  scenario: string;
  rider: string;
  chargePercent: number;
  seed: number;
}

/** A trial of a plan: its key, and what to prepare it from. */
export interface PlannedTrial {
  key: TrialKey;
  circumstances: Circumstances;
}

/**
 * The trials of a plan in a fixed order: scenario by scenario, then rider, pack state and seed. A state of charge that a scenario
 * meets twice, as its own and as one that is stated, counts once.
 */
export function trialsOf({ board, riders, scenarios, charges, seeds }: RankPlan): PlannedTrial[] {
  return scenarios.flatMap((scenario) => {
    const met = [...new Set(charges.map((charge) => charge ?? scenario.value.chargePercent))];
    return riders.flatMap((rider) =>
      met.flatMap((chargePercent) =>
        seeds.map((seed) => ({
          key: { scenario: scenario.name, rider: rider.name, chargePercent, seed },
          circumstances: {
            board: board.value,
            rider: rider.value,
            scenario: { ...scenario.value, chargePercent },
            seed,
          },
        })),
      ),
    );
  });
}
