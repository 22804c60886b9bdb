/**
 * The JSON of a kept profile that went through a controller sheet: what to type, and what the simulation made of just that.
 */
import { CAUTIONS } from '../show/cautions.js';
import { entrySentences, verdictSentence } from '../show/sheet-sentences.js';
import type { SheetView } from '../show/sheet-view.js';
import { programVersion } from '../store/places.js';

/**
 * The report. A row has `typed` as it is typed, null for nothing, `proven` and `asTyped` in the unit of the profile, null for a number
 * that is left out; a refused sheet has no rows.
 */
export function throughSheetReport(view: SheetView) {
  const { sheet, onto } = view;
  return {
    version: programVersion(),
    name: view.name,
    sheet: view.sheetName,
    loopRateHz: sheet.loopRateHz,
    currentLimitAIfGiven: sheet.currentLimitA ?? null,
    counts: sheet.counts,
    refused: view.refused,
    deserves: view.deserves,
    numbers: view.numbers,
    typedHash: view.typedHash,
    rows: view.refused ? [] : onto.entries.map(rowReport),
    unplaced: onto.unplaced,
    runs: view.runs,
    asProven: view.proven,
    asTyped: view.typed,
    scoreRatio: view.scoreRatio,
    newFalls: view.newFalls,
    worst: view.worst,
    eachChangeAlone: view.alone,
    provenLoopRateHz: view.provenLoopRateHz,
    proofIsNotAsKept: view.notAsKept,
    sentences: [...(view.refused ? [] : [verdictSentence(view)]), ...CAUTIONS],
  };
}

function rowReport(entry: SheetView['onto']['entries'][number]) {
  const { row, ours, back, exact, text, rounded, limited, signContradicts } = entry;
  return {
    label: row.label,
    quantity: row.quantity,
    unit: row.unit,
    scale: row.scale,
    typed: text === '' ? null : text,
    beforeRounding: exact,
    proven: ours,
    // No limit has no number in JSON.
    asTyped: back !== null && Number.isFinite(back) ? back : null,
    rounded,
    limited,
    signContradicts,
    says: entrySentences(entry),
  };
}
