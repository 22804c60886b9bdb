/**
 * `export NAME --sheet SHEET`: what to type into the controller of the sheet, simulated as it is typed.
 */
import type { Problem } from '../quantity/problem.js';
import { sheetLines } from '../show/sheet-lines.js';
import type { WhyOptions } from '../show/why-lines.js';
import { refusalSentence, verdictSentence } from '../show/sheet-sentences.js';
import type { SheetView } from '../show/sheet-view.js';
import type { Places } from '../store/places.js';
import { exportThroughSheet } from '../tasks/through-sheet.js';
import { throughSheetReport } from '../tasks/through-sheet-report.js';
import { EXIT } from './exit-codes.js';
import { tellFailedCell } from './failed-cell.js';
import { printRemark, tellProblems } from './output.js';
import { createProgress } from './progress.js';
import { threadsOfMachine } from './run-arguments.js';

/** A kept profile and the sheet that it goes through, by name or path; threads to compute with; what already speaks against it. */
export interface SheetAsked {
  name: string;
  sheet: string;
  threads?: number | undefined;
  json?: true | undefined;
  faults: readonly Problem[];
}

/** What is to be printed or written, and in a sentence whether it still deserves its rank. */
export interface SheetMade {
  text: string;
  verdict: string;
}

/**
 * The text to print or write, null where there is none to be written: every problem was told, or the sheet was refused, which was
 * told as well. Ends the program with 1 where the profile no longer deserves its rank.
 */
export async function sheetText(
  places: Places,
  { name, threads = threadsOfMachine(), json, ...asked }: SheetAsked,
  look: WhyOptions,
): Promise<SheetMade | null> {
  const progress = createProgress(process.stderr);
  try {
    const onProgress = (done: number, all: number) => progress.note(`${done}/${all} runs`);
    const result = await exportThroughSheet(places, { ...asked, name, threads, onProgress });
    progress.clear();
    if (result.ok) return json ? jsonOf(result.value) : textOf(result.value, look);
    tellProblems(result.faults);
    return null;
  } catch (error) {
    progress.clear();
    tellFailedCell(error, { profiles: [{ name }] });
    return null;
  }
}

function textOf(view: SheetView, look: WhyOptions): SheetMade | null {
  const lines = sheetLines(view, look);
  if (!view.deserves) process.exitCode = EXIT.requirementNotMet;
  if (!view.refused) return { text: `${lines.join('\n')}\n`, verdict: verdictSentence(view) };
  printRemark(lines);
  return null;
}

/** Of a refused sheet too: there the JSON holds no rows. */
function jsonOf(view: SheetView): SheetMade {
  if (!view.deserves) process.exitCode = EXIT.requirementNotMet;
  const verdict = view.refused ? refusalSentence(view) : verdictSentence(view);
  return { text: `${JSON.stringify(throughSheetReport(view), null, 2)}\n`, verdict };
}
