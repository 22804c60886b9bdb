/**
 * Where is a cause seen best? The cell that it costs most, the moment at which it shows there, and what becomes of the cell
 * without it.
 */
import { firstCutRow, peakRow } from '../measure/moments.js';
import type { ProfileResult, RankedCell } from '../measure/profile-result.js';
import type { MeasureWindow } from '../measure/window.js';
import { CEILINGS, type Ceiling, type Tape } from '../simulate/tape.js';
import { ONE_THING, type Finding } from './blame.js';
import type { CauseNumber } from './cause-number.js';

/** A row of a run: when, how fast, which way the nose. */
export interface Instant {
  timeS: number;
  speedMPerS: number;
  pitchRad: number;
}

/** What happened in a run: the largest pitch measured, and the first tick at which a ceiling cut, if any did. */
export interface Moment {
  peak: Instant;
  firstCut: (Instant & { ceiling: Ceiling }) | null;
}

/**
 * One finding with all that shows it; `causes` are two where one is only another name for the other. `cell` and `moment` are of the
 * profile itself, `without` is the same cell without the cause: under the reference where it was looked for there.
 */
export interface Evidence {
  finding: Finding;
  causes: string[];
  /** True where it was looked for under the reference profile, since the profile is to blame for more. */
  isUnderReference: boolean;
  number: CauseNumber | null;
  cell: RankedCell;
  without: RankedCell;
  moment: Moment;
}

/** The findings, those that are one thing told once. */
export function mergedFindings(findings: readonly Finding[]): { finding: Finding; causes: string[] }[] {
  const isOfThem = (cause: string) => ONE_THING.some((name) => name === cause);
  const both = findings.filter(({ cause }) => isOfThem(cause));
  return findings.flatMap((finding) => {
    if (both.length < 2 || !isOfThem(finding.cause)) return [{ finding, causes: [finding.cause] }];
    if (finding !== both[0]) return [];
    return [{ finding, causes: both.map(({ cause }) => cause) }];
  });
}

/**
 * The place of the cell that gains most from before to after, of those that count; both results hold the same cells, and one at
 * least counts.
 */
export function greatestRelief(
  before: ProfileResult,
  after: ProfileResult,
  counts: (index: number) => boolean = () => true,
): number {
  const relief = (index: number) => reliefOf({ cell: before.cells[index]!, without: after.cells[index]! });
  return before.cells
    .map((_, index) => index)
    .filter(counts)
    .reduce((most, index) => (relief(index) > relief(most) ? index : most));
}

function reliefOf({ cell, without }: { cell: RankedCell; without: RankedCell }): number {
  return cell.cost - without.cost;
}

/** What happened in a run. */
export function momentOf(tape: Tape, window: MeasureWindow): Moment {
  const { columns, tickS } = tape;
  const at = (row: number): Instant => ({
    timeS: row * tickS,
    speedMPerS: columns.speedMPerS[row] ?? 0,
    pitchRad: columns.pitchRad[row] ?? 0,
  });
  const cut = firstCutRow(tape);
  return {
    peak: at(peakRow(tape, window)),
    firstCut: cut === null ? null : { ...at(cut), ceiling: CEILINGS[columns.bindingCeiling[cut]!] ?? 'none' },
  };
}
