/**
 * A kept profile through a controller sheet as lines: two columns ready to type, footnotes below them, whether it still deserves its
 * rank, and how to check what was typed.
 */
import { groundOf, unitLaw } from '../quantity/off-sheet.js';
import type { SheetEntry } from '../quantity/onto-sheet.js';
import type { SheetFile } from '../quantity/sheet-file.js';
import { takenSign } from '../quantity/sheet-signs.js';
import { CAUTIONS } from './cautions.js';
import { padded, textWidth } from './fit-text.js';
import { numberLabel } from './kept-sentences.js';
import { plainText } from './plain-text.js';
import {
  absenceSentences,
  aloneSentences,
  entrySentences,
  fallSentences,
  fewDigits,
  isHardlyRounded,
  keptSentences,
  oursText,
  refusalSentence,
  signSentences,
  verdictSentence,
} from './sheet-sentences.js';
import type { SheetView } from './sheet-view.js';
import { writer, type WhyOptions } from './why-lines.js';

const HARDLY = 'Rounded, by less than 0.1 %.';

/** The lines, none wider than the width but for a label and a value that are. Of a refused sheet there is nothing to type. */
export function sheetLines(view: SheetView, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const all = (texts: readonly string[]) => texts.flatMap((text) => say(text));
  const head = say(`${view.name} through the controller sheet ${view.sheetName}`).map(paint.bold);
  const cautions = all(CAUTIONS).map(paint.dim);
  if (view.refused) {
    const why = [refusalSentence(view), ...signSentences(view), ...keptSentences(view)];
    return [...head, '', ...all(why), ...all(aloneSentences(view)), '', ...cautions];
  }
  const verdict = say(verdictSentence(view)).map(view.deserves ? paint.ok : paint.bad);
  const beside = [
    ...fallSentences(view),
    ...aloneSentences(view),
    ...absenceSentences(view),
    ...signSentences(view),
    ...keptSentences(view),
  ];
  return [
    ...head,
    ...say(view.sheet.summary).map(paint.dim),
    '',
    ...verdict,
    ...all(beside),
    '',
    ...cautions,
    '',
    ...typingLines(view, options),
    '',
    ...checkLines(view, options),
    '',
    ...say(
      `Next, once all of it is as it should be: underfoot plan ${view.name} leads from the stand to the first ride.`,
    ),
    ...say(`Numbers as proven ${view.numbers}, as typed ${view.typedHash}.`),
  ];
}

/** The two columns, and what is to be known of them. */
function typingLines({ onto, sheetName, deserves }: SheetView, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const typed = onto.entries.filter(({ text }) => text !== '');
  const notes = new Map<string, number>();
  const rows = typed.map((entry) => {
    const texts = [...entrySentences(entry), ...(isHardlyRounded(entry) ? [HARDLY] : [])];
    const marks = texts.map((text) => numberOf(text, notes)).toSorted((a, b) => a - b);
    return { label: labelled(plainText(entry.row.label), marks), value: entry.text };
  });
  const labelWidth = Math.max(...rows.map(({ label }) => textWidth(label)), 0);
  const valueWidth = Math.max(...rows.map(({ value }) => textWidth(value)), 0);
  const without = onto.entries.filter(({ text }) => text === '').map(({ row }) => row.label);
  return [
    ...say(
      deserves
        ? `To type, in the order of ${sheetName}:`
        : `What it would be to type, in the order of ${sheetName}; not to be ridden like this:`,
    ).map(paint.bold),
    '',
    ...rows.map(
      ({ label, value }) => `  ${padded(label, labelWidth)}  ${padded(value, valueWidth, 'right')}`,
    ),
    ...(notes.size + without.length === 0 ? [] : ['']),
    ...[...notes].flatMap(([text, number]) => say(`[${number}] ${text}`)),
    ...(without.length === 0
      ? []
      : say(`Nothing to type, as the profile has none of it; see that it is off: ${without.join(', ')}.`)),
  ];
}

/** The number of a footnote; the same words share one. */
function numberOf(text: string, notes: Map<string, number>): number {
  const known = notes.get(text);
  if (known !== undefined) return known;
  notes.set(text, notes.size + 1);
  return notes.size;
}

function labelled(label: string, marks: readonly number[]): string {
  return marks.length === 0 ? label : `${label} [${marks.join(', ')}]`;
}

/** How to see that what was typed has arrived, and that the controller counts as the sheet says. */
function checkLines({ onto, sheet }: SheetView, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const typed = onto.entries.filter(({ text }) => text !== '');
  return [
    ...say('To check, once all is typed: read every number back from the controller.').map(paint.bold),
    '',
    ...typed.flatMap((entry) => say(checkText(sheet, entry), '  ')),
    '',
    ...say(signCheck(sheet)),
  ];
}

function checkText(sheet: SheetFile, { row, text, back }: SheetEntry): string {
  if (back === null) return `${row.label} ${text}: no ${numberLabel(row.quantity)}`;
  const law = unitLaw(row);
  const is = `${oursText(row.quantity, back)}, ${numberLabel(row.quantity)}`;
  const sign = takenSign(sheet, row);
  if (law.factor !== null) {
    const times = sign / (row.scale * law.factor(groundOf(sheet)));
    return `${row.label} ${text}: times ${fewDigits(times)} is ${is}`;
  }
  const scaled = sign * row.scale === 1 ? '' : `typed over ${fewDigits(sign * row.scale)}, `;
  return `${row.label} ${text}: ${scaled}${law.backInWords}, dt = 1/${sheet.loopRateHz} s: ${is}`;
}

function signCheck({ counts }: SheetFile): string {
  const { pitch, current } = counts;
  const shown = pitch === 'nose down' ? 'grow' : 'fall';
  return (
    `On the stand, wheel off the ground, with the lowest ceilings: tilt the nose down. The pitch that the controller shows must ` +
    `${shown}, the current must go to ${current === 'forward' ? 'plus' : 'minus'}, and the wheel must turn forward, to get under ` +
    `the nose. If one of them does not, switch off and mend the sheet before anything else.`
  );
}
