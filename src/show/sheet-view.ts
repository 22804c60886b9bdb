/**
 * What is shown of a kept profile that was taken through a controller sheet: what to type, and what the simulation made of just
 * that.
 */
import type { OntoSheet } from '../quantity/onto-sheet.js';
import type { SheetFile } from '../quantity/sheet-file.js';

/** Up to this times the proven score nobody asks which change costs it, and a change that costs no more is not told (ours). */
export const COSTLY_SCORE_RATIO = 1.02;

/** Falls and score over the same runs. */
export interface SheetFigures {
  failures: number;
  score: number;
}

/** A run that falls with what is typed and stayed upright as proven. */
export interface NewFall {
  scenario: string;
  rider: string;
  chargePercent: number;
  seed: number;
  ending: string;
  atS: number;
}

/** What one change alone does: `key` is that of the number, or of the sheet: `loopRateHz`, `currentLimitA`; runs that newly fall, and score over that as proven. */
export interface ChangeAlone {
  key: string;
  newFalls: number;
  scoreRatio: number;
}

/**
 * A kept profile through a sheet. `numbers` and `typedHash` are short hashes of the proven numbers and of what is typed; `alone` is
 * empty where nothing costs anything to speak of; `notAsKept` says that the proof itself came out otherwise this time.
 */
export interface SheetView {
  name: string;
  sheetName: string;
  sheet: SheetFile;
  onto: OntoSheet;
  numbers: string;
  typedHash: string;
  runs: number;
  proven: SheetFigures;
  typed: SheetFigures;
  scoreRatio: number;
  newFalls: readonly NewFall[];
  /** The dearest run with what is typed, in words. */
  worst: string;
  alone: readonly ChangeAlone[];
  provenLoopRateHz: number;
  /** The controller's current limit is below the board's. */
  hasLowerLimit: boolean;
  notAsKept: 'other scenarios' | 'other figures' | null;
  /** The sheet contradicts its own way of counting, and with that more runs fall. */
  refused: boolean;
  deserves: boolean;
}
