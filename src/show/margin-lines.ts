/**
 * All that `margins` prints: the table, what it says in plain words, and the picture of one ride's loop.
 */
import { wrapped } from './fit-text.js';
import { GLYPHS } from './glyphs.js';
import { marginPlot } from './margin-plot.js';
import { guidanceSentences, smallestSentences } from './margin-sentences.js';
import { stateSentences } from './margin-states.js';
import { marginTables, type MarginOptions } from './margin-table.js';
import { trialSentences } from './margin-trials.js';
import { heldPoints, seenPoints, type MarginView, type SeenPoint } from './margin-view.js';
import { plainText } from './plain-text.js';
import { writable } from './plot-frame.js';
import { CAUTION } from './cautions.js';

const LEGEND =
  "Gain is the whole loop's, from pitch to motor torque. Each margin is to be spent alone; together: gain and phase at once. " +
  'Deck, rider, tyre, travel: who has the energy of a motion. Stiffness: how the motor answers a swinging deck. Foot: ' +
  "acceleration of the board for a foot's torque that swings at 1 Hz, how late it comes or how far ahead, and up to " +
  'which frequency it does.';

/** The lines, none wider than the width. */
export function marginLines(view: MarginView, options: MarginOptions): string[] {
  const { width, symbols, paint, speedUnit } = options;
  const written = (text: string) => plainText(writable(inSet(text, symbols === 'ascii'), GLYPHS[symbols]));
  const say = (text: string) => wrapped(written(text), width);
  const shown = pictured(view);
  const told = [
    ...stateSentences(view, speedUnit),
    ...smallestSentences(view, speedUnit),
    ...guidanceSentences(view, speedUnit),
    ...trialSentences(view, speedUnit),
  ];
  const { profile, board, rider, chargePercent } = view;
  return [
    ...say(`Margins of ${profile} on ${board} under ${rider}, pack at ${chargePercent} %`).map(paint.bold),
    '',
    ...marginTables(view.points, options),
    '',
    ...say(LEGEND).map(paint.dim),
    '',
    ...told.flatMap(say),
    '',
    ...(shown === undefined ? [] : [...marginPlot(shown, options), '']),
    ...say(CAUTION).map(paint.dim),
  ];
}

/** The ride whose loop is drawn: the last moving one that holds, or else the last of them. */
function pictured({ points }: MarginView): SeenPoint | undefined {
  const held = heldPoints(points);
  return held.findLast(({ speedKmPerH }) => speedKmPerH > 0) ?? held.at(-1) ?? seenPoints(points).at(-1);
}

/** Letters without their marks where the symbol set asks for ASCII. */
function inSet(text: string, ascii: boolean): string {
  return ascii ? text.normalize('NFD').replaceAll(/\p{M}/gu, '') : text;
}
