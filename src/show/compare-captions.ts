/**
 * What does each panel of a comparison say in one sentence? The number of every profile that the panel is looked at
 * for: the largest of the measured rows, as in the table, and the speed in which the run ends.
 */
import { rangeOf } from './extremes.js';
import type { COMPARE_PANELS } from './compare-panels.js';
import { signAt, type ComparedRun } from './compare-run.js';
import { currentText, leanText, pitchText, speedText, type SpeedUnit } from './quantities.js';
import { recorded, type RunView } from './run-view.js';

/** The sentences of the panels, by name. */
export function compareCaptions(
  runs: readonly ComparedRun[],
  speedUnit: SpeedUnit,
): Record<(typeof COMPARE_PANELS)[number], string> {
  const each = (text: (view: RunView) => string) =>
    runs.map(({ view }, index) => `${text(view)} (${signAt(index).letter})`).join(', ');
  return {
    pitch: `Pitch reaches ${each(({ facts }) => pitchText(facts.peakPitchRad))}.`,
    current: `Current reaches ${each(({ facts }) => currentText(facts.peakCurrentA))}.`,
    speed: `Speed ends at ${each((view) => speedText(recorded(view.tape, 'speedMPerS').at(-1) ?? NaN, speedUnit))}.`,
    lean: `Lean reaches ${each((view) => leanText(furthestLeanRad(view)))}.`,
  };
}

function furthestLeanRad({ tape, firstRow, endRow }: RunView): number {
  const { lowest, highest } = rangeOf(recorded(tape, 'leanRad').subarray(firstRow, endRow));
  return -lowest > highest ? lowest : highest;
}
