/**
 * A measured run as the pictures of it want it: its title, its marks and the facts that the sentences speak of.
 */
import type { ScenarioFile } from '../quantity/scenario-file.js';
import type { RunView } from '../show/run-view.js';
import { CEILINGS } from '../simulate/tape.js';
import type { MeasuredRun } from './evaluate.js';
import type { RankPlan } from './plan.js';
import { peakFacts } from './run-once.js';

/** Who ran where, by name. */
export interface RunNames {
  profile: string;
  scenario: string;
  board: string;
  rider: string;
}

/** The names of the first of everything in a plan. */
export function namesIn({ profiles, scenarios, board, riders }: RankPlan): RunNames {
  return {
    profile: profiles[0]!.name,
    scenario: scenarios[0]!.name,
    board: board.name,
    rider: riders[0]!.name,
  };
}

/** The view of a run. */
export function viewOf(run: MeasuredRun & { scenario: ScenarioFile }, names: RunNames): RunView {
  const { tape, window, marks, outcome, metrics } = run;
  const shares = metrics.saturationByCeiling;
  const [mostBinding = 'none'] = CEILINGS.filter((ceiling) => ceiling !== 'none').toSorted(
    (a, b) => shares[b] - shares[a],
  );
  return {
    title: `${names.profile} in ${names.scenario}, ${names.board} under ${names.rider}`,
    tape,
    firstRow: window.firstRow,
    endRow: window.endRow,
    marks,
    outcome,
    facts: {
      isMeasured: metrics.measuredS > 0,
      ...peakFacts(run),
      bandRad: window.bandRad,
      settlingTimeS: metrics.kind === 'ride' ? undefined : metrics.settlingTimeS,
      peakCurrentA: metrics.peakCurrentA,
      saturationShare: metrics.saturationShare,
      bindingCeiling: mostBinding,
      leastHeadroomShare: metrics.leastHeadroomShare ?? 0,
    },
  };
}
