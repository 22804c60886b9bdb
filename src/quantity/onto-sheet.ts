/**
 * What is to be typed into the controller? A profile through a sheet, row by row, with what rounding and limits changed, what has no
 * place there, and the numbers that the controller will act on.
 */
import { groundOf, readBack, unitLaw, withPlainNumbers, type NumberChange } from './off-sheet.js';
import { PROFILE_FIELDS, readField } from './profile-fields.js';
import type { ProfileFile } from './profile-file.js';
import type { SheetFile, SheetRow } from './sheet-file.js';
import { sheetQuantity, type Absence } from './sheet-quantities.js';
import { takenSign, typedSign } from './sheet-signs.js';
import { typedNumber } from './sheet-text.js';

/**
 * A row of a sheet filled in. `ours` is the number of the profile, null where it leaves it out; `exact` what that is in the
 * controller's unit, scale and sign; `text` what is typed, empty for nothing; `back` what of ours that is, null for none.
 */
export interface SheetEntry {
  row: SheetRow;
  ours: number | null;
  exact: number | null;
  text: string;
  back: number | null;
  rounded: boolean;
  limited: boolean;
  /** The sign that the row asks for is not the one that the sheet's way of counting asks for. */
  signContradicts: boolean;
}

/** A number of the profile that no row takes. */
export interface Unplaced {
  key: string;
  value: number;
  absence: Absence;
}

/** A profile through a sheet; `actedOn` is what the controller makes of it: what is typed, and nothing of what is not. */
export interface OntoSheet {
  entries: SheetEntry[];
  unplaced: Unplaced[];
  actedOn: ProfileFile;
}

/** Takes a profile through a sheet. */
export function ontoSheet(sheet: SheetFile, profile: ProfileFile): OntoSheet {
  const entries = sheet.rows.map((row) => entryOf(sheet, row, numberAt(profile, row.quantity)));
  const typed = withPlainNumbers(profile, entries.map(changeOf));
  const placed = new Set(sheet.rows.map(({ quantity }) => quantity));
  const unplaced = unplacedOf(profile, placed);
  return { entries, unplaced, actedOn: withPlainNumbers(typed, unplaced.flatMap(changeWithout)) };
}

function numberAt(profile: ProfileFile, key: string): number | null {
  const field = PROFILE_FIELDS.find((one) => one.key === key)!;
  return readField(profile, field) ?? null;
}

function entryOf(sheet: SheetFile, row: SheetRow, ours: number | null): SheetEntry {
  if (ours === null) {
    const text = row.whenLeftOut === undefined ? '' : leftOutText(row, row.whenLeftOut);
    const changed = { rounded: false, limited: false, signContradicts: false };
    return { row, ours, exact: null, text, back: null, ...changed };
  }
  const exact = typedSign(sheet, row) * row.scale * unitLaw(row).to(ours, groundOf(sheet));
  const { text, value, rounded, limited } = typedNumber(row, exact);
  const isChanged = rounded || limited;
  const signContradicts = ours !== 0 && typedSign(sheet, row) !== takenSign(sheet, row);
  // What nothing changed comes back as it was, not by the last bits of the way there and back.
  const back = isChanged || signContradicts ? readBack(sheet, row, value) : ours;
  return { row, ours, exact, text, back, rounded, limited, signContradicts };
}

function leftOutText(row: SheetRow, value: number): string {
  return typedNumber(row, value).text;
}

/** What a row that is typed changes in the profile. */
export function changeOf({ row, back }: SheetEntry): NumberChange {
  return { key: row.quantity, value: back };
}

/** What it changes that the controller has no place for a number; nothing where nobody knows. */
export function changeWithout({ key, absence }: Unplaced): NumberChange[] {
  if (absence === 'unknown') return [];
  return [{ key, value: absence === 'zero' ? 0 : absence === 'no limit' ? Infinity : null }];
}

/** Numbers that do nothing where another one is off or has no place. */
const ONLY_WITH: Readonly<Record<string, readonly string[]>> = {
  integralLimitA: ['integralAPerDegS'],
  filterTimeS: ['currentShare', 'noseUpDegPerA'],
  belowPercent: ['upToDeg'],
  rateDegPerS: ['upToDeg'],
};

function unplacedOf(profile: ProfileFile, placed: ReadonlySet<string>): Unplaced[] {
  const isOn = (key: string) => (numberAt(profile, key) ?? 0) !== 0;
  return PROFILE_FIELDS.flatMap(({ key }): Unplaced[] => {
    const value = numberAt(profile, key);
    const others = ONLY_WITH[key];
    const matters = others === undefined || others.some((other) => placed.has(other) && isOn(other));
    if (placed.has(key) || value === null || !isOn(key) || !matters) return [];
    return [{ key, value, absence: sheetQuantity(key).absence }];
  });
}
