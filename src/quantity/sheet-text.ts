/**
 * What is typed for a number? With just the digits or the step that the sheet allows, inside its limits, never with an exponent.
 */
import type { SheetRow } from './sheet-file.js';

/** A number as it is typed, and what typing did to it. */
export interface TypedNumber {
  text: string;
  value: number;
  rounded: boolean;
  limited: boolean;
}

/** Figures where the sheet states neither decimals nor step: as many as a single-precision float holds (IEEE 754, 24 bits). */
const FIGURES = 7;

/** Beside this part of a number only the last bits of the reckoning differ. */
const NOTHING_RATIO = 1e-12;

type Grid = Pick<SheetRow, 'decimals' | 'step' | 'least' | 'greatest'>;

/** The number as the row takes it. */
export function typedNumber(row: Grid, exact: number): TypedNumber {
  const { least = -Infinity, greatest = Infinity } = row;
  const free = onGrid(row, exact, Math.round);
  const isFree = Number(free) >= least && Number(free) <= greatest;
  const text = isFree ? free : atLimit(row, Number(free) < least ? least : greatest);
  const value = Number(text);
  const rounded = Math.abs(Number(free) - exact) > NOTHING_RATIO * Math.abs(exact);
  return { text, value, rounded, limited: !isFree };
}

/** The text of the number that is nearest to a limit inside of it; of the limit itself where no step lies between the two. */
function atLimit(row: Grid, limit: number): string {
  const { least = -Infinity, greatest = Infinity } = row;
  const inwards = onGrid(row, limit, limit === least ? Math.ceil : Math.floor);
  return Number(inwards) >= least && Number(inwards) <= greatest ? inwards : plain(limit);
}

function onGrid({ decimals, step }: Grid, exact: number, toWhole: (value: number) => number): string {
  const size = step ?? (decimals === undefined ? undefined : 10 ** -decimals);
  if (size === undefined) return plain(Number(exact.toPrecision(FIGURES)));
  const count = exact / size;
  // A limit that is a multiple of the step is not to fall to the one before by the last bit.
  const nearest = Math.round(count);
  const isWhole = Math.abs(count - nearest) <= NOTHING_RATIO * Math.abs(count);
  return withoutMinusZero(
    ((isWhole ? nearest : toWhole(count)) * size).toFixed(decimals ?? digitsAfterPoint(size)),
  );
}

/** Digits after the point of a number as it is written. */
function digitsAfterPoint(value: number): number {
  const [digits = '', exponent = '0'] = String(value).split('e');
  const own = digits.split('.')[1]?.length ?? 0;
  return Math.max(0, own - Number(exponent));
}

/** A number as it is, without an exponent. */
function plain(value: number): string {
  return withoutMinusZero(value.toFixed(Math.min(100, digitsAfterPoint(value))));
}

function withoutMinusZero(text: string): string {
  return /^-[0.]+$/.test(text) ? text.slice(1) : text;
}
