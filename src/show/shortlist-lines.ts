/**
 * All that is known of one kept profile: its numbers, what it was proven in and what came out, how far it holds out, which slips are
 * dangerous, and what was felt beside what was promised.
 */
import type { KeptFile } from '../quantity/kept-file.js';
import { CAUTION } from './cautions.js';
import { feltSentences, promisedText } from './felt-words.js';
import { GLYPHS } from './glyphs.js';
import { ceilingRows, gainRows, limitSentences, marginSentencesOf, type KeptRow } from './kept-sentences.js';
import { slipSentences } from './kept-slips.js';
import { listed } from './margin-view.js';
import { numberText, NOT_SETTLED } from './quantities.js';
import type { ShownKept } from './shortlist-table.js';
import { table } from './table.js';
import { writer, type WhyOptions } from './why-lines.js';

/** Numbers of which the worst slip is told. */
const TOLD_SLIPS = 5;

/** The lines, none wider than the width. */
export function keptLines({ name, value }: ShownKept, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const section = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', ...say(title).map(paint.bold), ...lines];
  const points = (sentences: readonly string[]) => sentences.flatMap((text) => point(text, options));
  return [
    ...headLines(name, value, options),
    ...section('Numbers', rowLines(gainRows(value), options)),
    ...section('Ceilings', rowLines(ceilingRows(value), options)),
    ...section('Proven in', points(provenSentences(value))),
    ...section('What came out', points(figureSentences(value))),
    ...section('Margins', points(marginSentencesOf(value))),
    ...section('How far it holds out, in the simulation', points(limitSentences(value))),
    ...section('Where it is weakest', points(value.weakest.map(({ says }) => says))),
    ...section('Dangerous to get wrong', points(slipSentences(value, TOLD_SLIPS))),
    ...section('Felt', points(rideSentences(value))),
    '',
    ...say(CAUTION).map(paint.dim),
  ];
}

function headLines(
  name: string,
  { origin, note, profile, numbers }: KeptFile,
  options: WhyOptions,
): string[] {
  const { say, paint } = writer(options);
  const [day = '', time = ''] = origin.on.split('T');
  return [
    ...say(`${name}: numbers ${numbers}`).map(paint.bold),
    ...say(
      `Kept from ${origin.from} on ${day} at ${time.slice(0, 5)} UTC, by underfoot ${origin.underfoot}, scales ${origin.scales}.`,
    ),
    ...say(profile.summary),
    ...(note === '' ? [] : note.split('\n').flatMap((line) => say(`Note: ${line}`))),
  ];
}

/** A sentence as a point of a list. */
function point(text: string, options: WhyOptions): string[] {
  const { say } = writer(options);
  // A unit of two words stays together.
  const whole = say(text.replaceAll(' N s', ' N\u00a0s'), '  ').map((line) => line.replaceAll('\u00a0', ' '));
  return whole.map((line, index) => (index === 0 ? `- ${line.slice(2)}` : line));
}

function rowLines(rows: readonly KeptRow[], { width, symbols, paint }: WhyOptions): string[] {
  return table({
    columns: [
      { header: 'number' },
      { header: 'value', align: 'right' },
      { header: 'unit' },
      { header: 'which is', shrinks: true },
    ],
    rows: rows.map(({ label, value, unit, says }) => [label, value, unit, says]),
    paint,
    maxWidth: width,
    ellipsis: GLYPHS[symbols].ellipsis,
  });
}

function provenSentences({ rig, cells }: KeptFile): string[] {
  const { scenarios, chargesPercent, seeds, count } = cells;
  const people = rig.riders.map(({ name, rider }) => `${name} (${rider.body.massKg} kg)`);
  const charges = chargesPercent.map((charge) =>
    charge === null ? "each scenario's own charge" : `${charge} %`,
  );
  return [
    `Board ${rig.boardName}, under ${listed(people)}.`,
    `${count} runs: scenarios ${scenarios.join(', ')}; pack at ${listed(charges)}; ${seeds.length === 1 ? 'seed' : 'seeds'} ${listed(seeds.map(String))}.`,
  ];
}

function figureSentences({ figures, cells }: KeptFile): string[] {
  const { failures, score, overshootPercent, settlingTimeS, notSettled, saturationPercent, notFor } = figures;
  const fell =
    failures === 0 ? `None of ${cells.count} runs fell` : `${failures} of ${cells.count} runs fell`;
  const means = [
    overshootPercent === null ? null : `overshoot or rebound ${overshootPercent.toFixed(0)} %`,
    settlingTimeS === null
      ? NOT_SETTLED
      : `settling ${notSettled > 0 ? 'more than ' : ''}${numberText(settlingTimeS, 'meanTimeS')} s`,
    saturationPercent === null
      ? null
      : `request cut in ${numberText(saturationPercent, 'percent')} % of ticks`,
  ].filter((text) => text !== null);
  return [
    `${fell}; score ${numberText(score, 'ratio')}, less is better.`,
    `On the mean: ${means.join(', ')}.`,
    ...(notSettled > 0 ? [`${notSettled} of ${cells.count} runs did not settle in their time.`] : []),
    ...(notFor.length > 0 ? [`Not for ${listed(notFor)}, who fell in some run.`] : []),
  ];
}

function rideSentences(kept: KeptFile): string[] {
  const { feel, rides } = kept;
  const told = rides.map(({ on, note, felt }) => {
    const ratings = Object.entries(felt).map(([word, rating]) => `${word} ${rating}`);
    return [
      `${on}: ${ratings.join(', ') || 'not rated'}.`,
      ...(note === '' ? [] : [note.replaceAll('\n', ' ')]),
    ].join(' ');
  });
  const ridden =
    rides.length === 0 ? [`Promised under ${feel.rider}: ${promisedText(feel)}. Not ridden yet.`] : told;
  return [...ridden, ...feltSentences(kept)];
}
