/**
 * How far apart are the quick solver and the reference? The check of a ranking in one sentence.
 */
import type { Paint } from './colour.js';
import { wrapped } from './fit-text.js';
import { plainText } from './plain-text.js';

/** What a check of quick runs against the reference found. */
export interface CheckView {
  cellsChecked: number;
  agreementRatio: number;
  agrees: boolean;
  largestDifference: {
    profile: string;
    cell: string;
    metric: string;
    unit: string;
    quick: number | string | null;
    reference: number | string | null;
    scaledDifference: number;
  } | null;
}

/**
 * The sentence about a check, in lines; null stands for runs that were made with the reference itself, 'missing' for
 * quick runs that were not checked, or not yet.
 */
export function checkLine(
  check: CheckView | 'missing' | null,
  { width, ascii, paint }: { width: number; ascii: boolean; paint: Paint },
): string[] {
  if (check === null) return wrapped('All runs were made with the reference solver, odex.', width);
  if (check === 'missing') return wrapped('The quick solver was not checked against odex here.', width);
  const { cellsChecked, agrees, largestDifference: largest } = check;
  const style = agrees ? paint.ok : paint.bad;
  const mark = agrees ? (ascii ? '+' : '✓') : ascii ? 'x' : '✗';
  const verdict = agrees ? 'agrees with' : 'DISAGREES WITH';
  const runs =
    cellsChecked === 1
      ? 'the worst run'
      : `${agrees ? 'the' : 'at least one of the'} ${cellsChecked} worst runs`;
  const found =
    largest === null || largest.scaledDifference === 0
      ? 'no metric differs at all'
      : `largest difference: ${largest.metric} of ${largest.profile} in ${largest.cell}, ` +
        `${shown(largest.quick)} against ${shown(largest.reference)} ${largest.unit}`.trimEnd();
  const text = `${mark} The quick solver ${verdict} odex on ${runs}; ${found}.`;
  return wrapped(plainText(text), width).map((line, index) => (index === 0 ? style(line) : line));
}

function shown(value: number | string | null): string {
  if (value === null) return 'none';
  return typeof value === 'string' ? value : value.toPrecision(6);
}
