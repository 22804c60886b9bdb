/**
 * What is to be said of a kept profile that went through a controller sheet? Whether it still deserves its rank, what falls, which
 * change costs it, what has no place, and where the sheet contradicts itself.
 */
import { PROFILE_FIELDS } from '../quantity/profile-fields.js';
import type { SheetEntry, Unplaced } from '../quantity/onto-sheet.js';
import type { SheetFile } from '../quantity/sheet-file.js';
import { numberLabel } from './kept-sentences.js';
import { timeText } from './quantities.js';
import { COSTLY_SCORE_RATIO, type ChangeAlone, type NewFall, type SheetView } from './sheet-view.js';
import { cellPlace } from './worst-sentences.js';

/** Runs that newly fall and changes that are told one by one. */
const TOLD_FALLS = 4;
const TOLD_CHANGES = 4;

/** A number for people: five figures, without trailing zeros. */
export function fewDigits(value: number): string {
  return String(Number(value.toPrecision(5)));
}

/** A number of ours with its unit: `20 A/deg`; null is none. */
export function oursText(key: string, value: number | null): string {
  if (value === null) return 'none';
  const unit = PROFILE_FIELDS.find((field) => field.key === key)?.unit ?? '';
  return `${Number.isFinite(value) ? fewDigits(value) : 'no limit'} ${unit}`.trimEnd();
}

const runs = (count: number) => `${count} run${count === 1 ? '' : 's'}`;
const newlyFall = (count: number) => `${runs(count)} newly fall${count === 1 ? 's' : ''}`;
const falling = (count: number) => `${count} fall${count === 1 ? 's' : ''}`;

/** Whether it still deserves its rank, with the numbers that say so. */
export function verdictSentence(view: SheetView): string {
  const { proven, typed, newFalls, scoreRatio } = view;
  const figures =
    `Simulated in the same ${runs(view.runs)} as it was proven in: ${falling(typed.failures)} (${proven.failures} as proven), ` +
    `score ${typed.score.toFixed(3)} (${proven.score.toFixed(3)}), ${scoreRatio.toFixed(2)} times.`;
  if (view.deserves) return `Typed like this it still deserves its rank. ${figures}`;
  const why = newFalls.length > 0 ? newlyFall(newFalls.length) : 'it rides worse';
  return `Typed like this it does NOT deserve its rank: ${why}. ${figures}`;
}

/** The runs that newly fall, the soonest first, and the dearest one. */
export function fallSentences({ newFalls, worst, deserves }: SheetView): string[] {
  const told = newFalls.toSorted((a, b) => a.atS - b.atS).slice(0, TOLD_FALLS);
  const rest = newFalls.length - told.length;
  return [
    ...told.map((fall) => `Newly falls: ${fallText(fall)}.`),
    ...(rest > 0 ? [`And ${rest} more.`] : []),
    ...(deserves ? [`Its weakest run then is ${worst}.`] : []),
  ];
}

function fallText({ ending, atS, ...cell }: NewFall): string {
  const end = ending === 'upright' ? 'its event is not reached' : `${ending} after ${timeText(atS)}`;
  return `${cellPlace(cell)}: ${end}`;
}

/** Which change costs most, each by itself; nothing where it was not asked. */
export function aloneSentences({ alone, sheet, newFalls: all }: SheetView): string[] {
  if (alone.length === 0) return [];
  const told = alone.filter(({ newFalls, scoreRatio }) => newFalls > 0 || scoreRatio > COSTLY_SCORE_RATIO);
  const text = ({ key, newFalls, scoreRatio }: ChangeAlone) => {
    const effect = newFalls > 0 ? newlyFall(newFalls) : `${scoreRatio.toFixed(2)} times the score`;
    return `${changeLabel(sheet, key)}: ${effect}`;
  };
  const list = told.slice(0, TOLD_CHANGES).map(text).join('; ');
  const isTogether = all.length > 0 && alone.every(({ newFalls }) => newFalls === 0);
  return [
    ...(isTogether ? ['No change by itself makes a run fall: it is all of them together.'] : []),
    ...(told.length > 0 ? [`Each change by itself, the dearest first: ${list}.`] : []),
  ];
}

function changeLabel({ rows, loopRateHz, currentLimitA = 0 }: SheetFile, key: string): string {
  if (key === 'currentLimitA') return `the limit of ${currentLimitA} A`;
  if (key === 'loopRateHz') return `the loop rate of ${loopRateHz} Hz`;
  const label = rows.find(({ quantity }) => quantity === key)?.label;
  return label === undefined ? `no ${absentLabel(key)}` : `${label} (${numberLabel(key)})`;
}

/** What the controller has no place for, and where its loop rate or its limit is another than that it was proven with. */
export function absenceSentences({ onto, sheet, provenLoopRateHz, hasLowerLimit }: SheetView): string[] {
  const rate =
    provenLoopRateHz === sheet.loopRateHz
      ? []
      : [
          `Proven at a loop rate of ${provenLoopRateHz} Hz, as the board's file has it; the sheet says ${sheet.loopRateHz} Hz, which was simulated. See which is right.`,
        ];
  const { currentLimitA = 0 } = sheet;
  const limit = hasLowerLimit
    ? [`The controller's limit of ${currentLimitA} A is below the board's, and was simulated.`]
    : [];
  return [...onto.unplaced.map(absenceSentence), ...rate, ...limit];
}

/** Without its height there is no lift at all. */
function absentLabel(key: string): string {
  return key === 'upToDeg' ? 'headroom lift' : numberLabel(key);
}

function absenceSentence({ key, value, absence }: Unplaced): string {
  const what = `${absentLabel(key)} (${oursText(key, value)})`;
  const how = {
    zero: 'it was simulated without it',
    none: 'it was simulated without it',
    'no limit': 'it was simulated with no such limit',
    'no section': 'it was simulated with a nose that does not rise when headroom is short',
    unknown: 'it was simulated as proven: see that the controller has just this built in',
  }[absence];
  return `The controller gets no ${what}: ${how}.`;
}

/** That the proof itself came out otherwise than it was kept; nothing where it did not. */
export function keptSentences({ notAsKept, proven }: SheetView): string[] {
  if (notAsKept === null) return [];
  const why =
    notAsKept === 'other scenarios'
      ? 'The scenarios of this folder are not those that it was kept with'
      : 'The proof does not come out as it was kept: the program has changed since, or its figures';
  const now = `as proven ${proven.failures} runs fall now, score ${proven.score.toFixed(3)}`;
  return [`${why}: ${now}. Keep the profile anew before you ride it.`];
}

/** The rows whose sign contradicts the sheet's own way of counting; nothing where none does. */
export function signSentences({ onto, sheet }: SheetView): string[] {
  const against = onto.entries.filter(({ signContradicts }) => signContradicts);
  if (against.length === 0) return [];
  const { pitch, current, error } = sheet.counts;
  const labels = against.map(({ row }) => `${row.label} (${row.sign ?? ''})`).join(', ');
  return [
    `The sheet contradicts itself: it counts ${pitch} and ${current} as positive and takes ${error}, but asks for the other ` +
      `sign at ${labels}. See on the stand which of the two is right.`,
  ];
}

/** That it is refused, with when and how it falls. */
export function refusalSentence({ sheetName, newFalls, typed, proven, runs: all }: SheetView): string {
  const soonest = newFalls.toSorted((a, b) => a.atS - b.atS)[0];
  const first = soonest === undefined ? '' : ` The soonest: ${fallText(soonest)}.`;
  return (
    `Refused: with the signs of ${sheetName} it falls in ${typed.failures} of ${runs(all)} of the simulation ` +
    `(${proven.failures} as proven).${first}`
  );
}

/** What rounding, a limit or its sign did to a row, and what else is to be known of it; nothing where nothing is. */
export function entrySentences(entry: SheetEntry): string[] {
  const { row, ours, exact, text, back, rounded, limited, signContradicts } = entry;
  const is = `${oursText(row.quantity, back)}, the profile has ${oursText(row.quantity, ours)}`;
  return [
    ...(limited && exact !== null
      ? [`The controller takes no ${fewDigits(exact)}; ${text} is ${is}.`]
      : rounded && exact !== null && !isHardlyRounded(entry)
        ? [`Rounded from ${finer(exact, text)}: ${is}.`]
        : []),
    ...(signContradicts ? ['The other sign than the sheet counts by.'] : []),
    ...(ours === null && text !== '' ? ['The profile has none of it, and this is what means none.'] : []),
    ...(row.note === undefined ? [] : [row.note.trim()]),
  ];
}

/** A number with two digits more than it is typed with. */
function finer(exact: number, typed: string): string {
  const digits = typed.split('.')[1]?.length ?? 0;
  return String(Number(exact.toFixed(digits + 2)));
}

/** Roundings below this part of a number are told together (ours). */
const HARDLY_RATIO = 1e-3;

/** True for a row that is rounded by so little that it needs no words of its own. */
export function isHardlyRounded({ ours, back, rounded, limited }: SheetEntry): boolean {
  if (!rounded || limited || ours === null || back === null) return false;
  return Math.abs(back - ours) < HARDLY_RATIO * Math.abs(ours);
}
