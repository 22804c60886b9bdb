/**
 * Which values of a controller sheet must agree with one another? Units with what they measure, labels and quantities with those of
 * other rows, limits with each other.
 */
import type { Complaint } from './problem.js';
import { figures, isGiven, listAt, numberAt, textAt } from './raw-value.js';
import { quoted } from './received.js';
import { SHEET_QUANTITIES } from './sheet-quantities.js';
import { needsLimit, SHEET_UNITS, UNITS_OF } from './sheet-units.js';
import { typedNumber } from './sheet-text.js';
import { suggestion } from './suggestion.js';

/** Complaints about values of a controller sheet that do not agree with one another. */
export function crossCheckSheet(raw: unknown): Complaint[] {
  const hasLimit = isGiven(raw, ['currentLimitA']);
  const rows = listAt(raw, ['rows']);
  return [
    ...rows.flatMap((row, index) => [
      ...unitOfRow(row, ['rows', index, 'unit']),
      ...limitOfRow(row, { hasLimit, path: ['rows', index, 'unit'] }),
      ...roundingOfRow(row, ['rows', index]),
      ...rangeOfRow(row, ['rows', index]),
    ]),
    ...repeated(rows, {
      key: 'quantity',
      what: 'each number of the profile in one row',
      fold: (text) => text,
    }),
    ...repeated(rows, {
      key: 'label',
      what: 'every label once, whatever its capitals',
      fold: (text) => text.trim().toLowerCase(),
    }),
  ];
}

function unitOfRow(row: unknown, path: readonly PropertyKey[]): Complaint[] {
  const key = textAt(row, ['quantity']);
  const unit = textAt(row, ['unit']);
  if (key === undefined || unit === undefined || !Object.hasOwn(SHEET_QUANTITIES, key)) return [];
  const { dimension } = SHEET_QUANTITIES[key]!;
  const fitting = Object.keys(UNITS_OF[dimension]);
  if (fitting.includes(unit)) return [];
  const complaint = {
    path,
    expected: `a unit of ${dimension} for ${key}: ${fitting.join(', ')}`,
    received: SHEET_UNITS.includes(unit)
      ? `${quoted(unit)}, which measures something else`
      : `the unknown unit ${quoted(unit)}`,
  };
  const near = suggestion(unit, fitting);
  return [near === undefined ? complaint : { ...complaint, suggestion: near }];
}

function limitOfRow(
  row: unknown,
  { hasLimit, path }: { hasLimit: boolean; path: readonly PropertyKey[] },
): Complaint[] {
  const unit = textAt(row, ['unit']);
  if (unit === undefined || hasLimit || !SHEET_UNITS.includes(unit) || !needsLimit(unit)) return [];
  const expected = 'currentLimitA at the top of the sheet, in A, for a unit that counts in parts of it';
  return [{ path, expected, received: `${quoted(unit)} without currentLimitA` }];
}

function roundingOfRow(row: unknown, path: readonly PropertyKey[]): Complaint[] {
  if (!isGiven(row, ['decimals']) || !isGiven(row, ['step'])) return [];
  const expected = 'decimals or step, or neither';
  return [{ path: [...path, 'step'], expected, received: 'both' }];
}

function rangeOfRow(row: unknown, path: readonly PropertyKey[]): Complaint[] {
  const [least, greatest, none] = ['least', 'greatest', 'whenLeftOut'].map((key) => numberAt(row, [key]));
  const complaints: Complaint[] = [];
  if (least !== undefined && greatest !== undefined && least >= greatest) {
    complaints.push({
      path: [...path, 'greatest'],
      expected: `a number above least, ${figures(least)}`,
      received: figures(greatest),
    });
  } else if (none !== undefined && (none < (least ?? -Infinity) || none > (greatest ?? Infinity))) {
    const from = least === undefined ? '' : ` from ${figures(least)}`;
    const to = greatest === undefined ? '' : ` to ${figures(greatest)}`;
    const expected = `a number that the controller takes,${from}${to}`;
    complaints.push({ path: [...path, 'whenLeftOut'], expected, received: figures(none) });
  } else {
    complaints.push(...gridOfNone(row, [...path, 'whenLeftOut']));
  }
  return complaints;
}

/** What means none to the controller is typed as it is: it has to be a number that can be typed. */
function gridOfNone(row: unknown, path: readonly PropertyKey[]): Complaint[] {
  const [none, decimals, step] = ['whenLeftOut', 'decimals', 'step'].map((key) => numberAt(row, [key]));
  if (none === undefined || !Number.isFinite(none) || (decimals === undefined) === (step === undefined))
    return [];
  // What is no grid is told where it stands.
  if (decimals !== undefined && !(Number.isInteger(decimals) && decimals >= 0 && decimals <= 9)) return [];
  if (step !== undefined && !(step >= 1e-9 && step <= 1e9)) return [];
  const { rounded, text } = typedNumber({ decimals, step }, none);
  if (!rounded) return [];
  const grid = step === undefined ? `with ${decimals} decimals` : `in steps of ${figures(step)}`;
  return [
    { path, expected: `a number ${grid}, as the row takes it, such as ${text}`, received: figures(none) },
  ];
}

function repeated(
  rows: readonly unknown[],
  { key, what, fold }: { key: string; what: string; fold: (text: string) => string },
): Complaint[] {
  const firstOf = new Map<string, number>();
  return rows.flatMap((row, index): Complaint[] => {
    const text = textAt(row, [key]);
    if (text === undefined) return [];
    const first = firstOf.get(fold(text));
    if (first === undefined) {
      firstOf.set(fold(text), index);
      return [];
    }
    return [
      {
        path: ['rows', index, key],
        expected: what,
        received: `${quoted(text)} again, as in row ${first + 1} of the sheet`,
      },
    ];
  });
}
