/**
 * One scale for all profiles in a trial, so that a loose one does not look as calm as a tight one: it holds the pitch of every
 * profile that stays up there. A fall reaches beyond it and has a scale of its own.
 */
import { DEG_PER_RAD } from '../../quantity/units.js';
import type { Range } from '../../show/run-view.js';
import type { Look } from '../../tasks/looks.js';
import type { BenchState } from '../bench/state.js';

/** The run of a look with the scales of its trial. */
export function onSharedScale(look: Look, pitchDeg: Range): Look['view'] {
  return { ...look.view, scaleRanges: { ...look.view.scaleRanges, pitchDeg } };
}

/** The pitch [deg, nose down positive] that profiles reach in the trial of a look without failing there. */
export function pitchInTrial({ rows }: Pick<BenchState, 'rows'>, { wish }: Look): Range {
  const { scenario, rider, chargePercent, seed } = wish.trial.key;
  const range = { lowest: 0, highest: 0 };
  for (const { result } of rows) {
    const cell = result?.cells.find(
      (other) =>
        other.scenario === scenario &&
        other.rider === rider &&
        other.chargePercent === chargePercent &&
        other.seed === seed,
    );
    if (cell === undefined || cell.failed) continue;
    range.lowest = Math.min(range.lowest, -cell.metrics.peakNoseUpRad * DEG_PER_RAD);
    range.highest = Math.max(range.highest, cell.metrics.peakNoseDownRad * DEG_PER_RAD);
  }
  return range;
}
