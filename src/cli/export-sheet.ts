/**
 * `export NAME --sheet SHEET`: what to type into the controller of the sheet, simulated as it is typed.
 */
import type { Problem } from '../quantity/problem.js';
import { sheetLines } from '../show/sheet-lines.js';
import type { WhyOptions } from '../show/why-lines.js';
import type { SheetView } from '../show/sheet-view.js';
import { plainText } from '../show/plain-text.js';
import type { Places } from '../store/places.js';
import { WorkFailed } from '../tasks/share-out.js';
import { exportThroughSheet } from '../tasks/through-sheet.js';
import { EXIT } from './exit-codes.js';
import { printRemark, tellProblems } from './output.js';
import { createProgress } from './progress.js';
import { threadsOfMachine } from './run-arguments.js';

/** A kept profile and the sheet that it goes through, by name or path; threads to compute with; what already speaks against it. */
export interface SheetAsked {
  name: string;
  sheet: string;
  threads?: number | undefined;
  faults: readonly Problem[];
}

/**
 * The text to print or write, null where there is none to be written: every problem was told, or the sheet was refused, which was
 * told as well. Ends the program with 1 where the profile no longer deserves its rank.
 */
export async function sheetText(
  places: Places,
  { name, threads = threadsOfMachine(), ...asked }: SheetAsked,
  look: WhyOptions,
): Promise<string | null> {
  const progress = createProgress(process.stderr);
  try {
    const onProgress = (done: number, all: number) => progress.note(`${done}/${all} runs`);
    const result = await exportThroughSheet(places, { ...asked, name, threads, onProgress });
    progress.clear();
    if (result.ok) return textOf(result.value, look);
    tellProblems(result.faults);
    return null;
  } catch (error) {
    progress.clear();
    if (!(error instanceof WorkFailed)) throw error;
    printRemark([
      plainText(`a run of ${name} could not be computed: ${error.message}; no fault of your files`),
    ]);
    process.exitCode = EXIT.requirementNotMet;
    return null;
  }
}

function textOf(view: SheetView, look: WhyOptions): string | null {
  const lines = sheetLines(view, look);
  if (!view.deserves) process.exitCode = EXIT.requirementNotMet;
  if (!view.refused) return `${lines.join('\n')}\n`;
  printRemark(lines);
  return null;
}
