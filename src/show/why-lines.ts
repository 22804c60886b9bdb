/**
 * All that `explain` prints: how the profile fares and feels, what is to blame and where that shows, and what was tried.
 */
import type { Paint } from './colour.js';
import { wrapped } from './fit-text.js';
import { GLYPHS, type SymbolSet } from './glyphs.js';
import { plainText } from './plain-text.js';
import { writable } from './plot-frame.js';
import { CAUTION } from './cautions.js';
import { feelSentences } from './why-feel.js';
import { remedySentences, verdictSentences } from './why-remedies.js';
import {
  blamelessSentences,
  findingSentences,
  explainCommand,
  runCommand,
  standingSentences,
  togetherSentences,
} from './why-sentences.js';
import type { WhyView } from './why-view.js';

/** How an explanation is to be shown. */
export interface WhyOptions {
  width: number;
  symbols: SymbolSet;
  paint: Paint;
}

/** Changes that are shown, and the first that helps; all are in the JSON. */
const SHOWN_REMEDIES = 5;

/** The lines, none wider than the width; what has not come yet is left out. */
export function whyLines(view: WhyView, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const { profile, board, riders } = view;
  const people = riders.length === 1 ? `rider ${riders[0]!}` : `riders ${riders.join(', ')}`;
  return [
    ...say(`Why ${profile} rides as it does: board ${board}, ${people}`).map(paint.bold),
    '',
    ...standingSentences(view).flatMap((text) => say(text)),
    ...(view.feel === null ? [] : ['', ...feelSentences(view.feel).flatMap((text) => say(text))]),
    '',
    ...findingLines(view, options),
    ...remedyLines(view, options),
    ...say(CAUTION).map(paint.dim),
  ];
}

/** The first finding alone, as soon as it is known: one line or a few. */
export function firstFindingLines(view: WhyView, options: WhyOptions): string[] {
  const { say } = writer(options);
  const [first] = view.findings;
  if (first === undefined) return blamelessSentences(view).flatMap((text) => say(text));
  return say(findingSentences(view, first).slice(0, 2).join(' '));
}

/** Wraps sentences to a width, in the symbols asked for. */
export function writer({ width, symbols, paint }: WhyOptions) {
  const inSet = (text: string) =>
    symbols === 'ascii' ? text.replaceAll('²', '2').normalize('NFD').replaceAll(/\p{M}/gu, '') : text;
  const written = (text: string) => plainText(writable(inSet(text), GLYPHS[symbols]));
  const say = (text: string, indent = '') =>
    wrapped(written(text), width - indent.length).map((line) => `${indent}${line}`);
  return { say, paint };
}

function findingLines(view: WhyView, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const { findings } = view;
  if (findings.length === 0) return [...blamelessSentences(view).flatMap((text) => say(text)), ''];
  const paragraphs = findings.flatMap((evidence, index) => {
    const [first, ...others] = findingSentences(view, evidence);
    return [
      ...say(`${index + 1}. ${first!}`).map(paint.bold),
      ...say(others.join(' '), '   '),
      ...say(`See it again: ${runCommand(view, evidence.cell)}`, '   ').map(paint.dim),
      '',
    ];
  });
  const together = togetherSentences(view).flatMap((text) => say(text));
  return together.length === 0 ? paragraphs : [...paragraphs, ...together, ''];
}

function remedyLines({ tried, findings, asked }: WhyView, options: WhyOptions): string[] {
  if (tried === null) return [];
  const { say, paint } = writer(options);
  const { remedies } = tried;
  const best = remedies.findIndex(({ helps }) => helps);
  const shown = remedies.map((_, index) => index).filter((index) => index < SHOWN_REMEDIES || index === best);
  const paragraphs = shown.flatMap((index) => {
    const remedy = remedies[index]!;
    const [first, ...others] = remedySentences(remedy);
    const style = remedy.effect.newlyFailed.length > 0 ? paint.warn : (line: string) => line;
    return [...say(`${index + 1}) ${first!}`).map(style), ...say(others.join(' '), '   ')];
  });
  const command = explainCommand(asked, ['--apply', String(best + 1), '--save-as', 'NAME']);
  return [
    ...verdictSentences(tried, findings).flatMap((text) => say(text)),
    ...paragraphs,
    ...(best === -1
      ? []
      : say(`To keep change ${best + 1} as a profile of yours: ${command}`).map(paint.dim)),
    '',
  ];
}
