/**
 * All that `sweep` prints: what was looked through, the finalists, and what is to be said of them.
 */
import { CAUTION } from './cautions.js';
import { bestSentences, lookedSentences, tableSentences } from './sweep-sentences.js';
import { finalistRows } from './sweep-table.js';
import type { SweepView } from './sweep-view.js';
import { writer, type WhyOptions } from './why-lines.js';

/** The lines, none wider than the width. */
export function sweepLines(view: SweepView, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  return [
    ...lookedSentences(view).flatMap((text) => say(text)),
    '',
    ...(view.finalists.length === 0
      ? []
      : [
          ...finalistRows(view, options),
          '',
          ...tableSentences(options.symbols === 'ascii').flatMap((text) => say(text).map(paint.dim)),
          '',
        ]),
    ...bestSentences(view).flatMap((text) => say(text)),
    '',
    ...say(CAUTION).map(paint.dim),
  ];
}
