/**
 * All that `sweep` prints: what was looked through, the finalists, and what is to be said of them.
 */
import { CAUTION } from './cautions.js';
import { bestSentences, lookedSentences, tableSentences, warningSentences } from './sweep-sentences.js';
import { finalistTable } from './sweep-table.js';
import { numbersSentences } from './sweep-words.js';
import type { SweepView } from './sweep-view.js';
import { writer, type WhyOptions } from './why-lines.js';

/** The lines, none wider than the width. */
export function sweepLines(view: SweepView, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const { rows, room } = finalistTable(view, options);
  return [
    ...[...lookedSentences(view), ...warningSentences(view)].flatMap((text) => say(text)),
    '',
    ...(view.finalists.length === 0
      ? []
      : [
          ...rows,
          '',
          ...tableSentences(room, options.symbols === 'ascii').flatMap((text) => say(text).map(paint.dim)),
          '',
        ]),
    ...[...numbersSentences(view, view.finalists[0], room.numbers.count), ...bestSentences(view)].flatMap(
      (text) => say(text),
    ),
    '',
    ...say(CAUTION).map(paint.dim),
  ];
}
