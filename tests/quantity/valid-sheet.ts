/** A controller sheet as a person would write it: the ground on which tests put one fault. Every call makes a new one. */
import { sheetSchema, type SheetFile } from '../../src/quantity/sheet-file.js';

/** A row with only what must be given. */
export interface RawRow {
  label: string;
  quantity: string;
  unit: string;
  [key: string]: unknown;
}

/** A sheet that takes the two gains that every profile has. */
export function validSheet(rows: readonly RawRow[] = usualRows()) {
  return {
    summary: 'A sheet for tests',
    loopRateHz: 500,
    counts: { pitch: 'nose down', current: 'forward' },
    rows: rows.map((row) => ({ ...row })),
  };
}

function usualRows(): RawRow[] {
  return [
    { label: 'Hold', quantity: 'proportionalAPerDeg', unit: 'A/deg' },
    { label: 'Calm', quantity: 'rateAPerDegPerS', unit: 'A/(deg/s)' },
  ];
}

/** A checked sheet with these rows; `parts` replace those of the usual one. */
export function sheetWith(rows: readonly RawRow[], parts: object = {}): SheetFile {
  return sheetSchema.parse({ ...validSheet(rows), ...parts });
}
