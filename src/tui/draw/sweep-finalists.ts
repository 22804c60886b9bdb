/**
 * The finalists of a sweep: their table, and what there is to know of the one under the cursor.
 */
import { CAUTION } from '../../show/cautions.js';
import {
  bestSentences,
  lookedSentences,
  tableSentences,
  warningSentences,
} from '../../show/sweep-sentences.js';
import { finalistTable } from '../../show/sweep-table.js';
import { aboutSentences, numbersSentences } from '../../show/sweep-words.js';
import type { BenchState } from '../bench/state.js';
import { currentCandidate, finalView } from '../bench/sweep-items.js';
import { candidateText } from '../bench/sweep-read-out.js';
import { inSight, say, type Area } from './say.js';

/** Fewest rows with what was looked through. */
const WITH_LOOKED = 26;

/** Sentences at the end, on checks and on what is left to find, that are said only where there is room. */
const FOR_ROOM = 2;

/** Rows that the table has however much is to be said. */
const LEAST_TABLE = 7;

/** The table of finalists with what is to be said of the one under the cursor. */
export function finalistViewRows(state: BenchState, { width, height }: Area): string[] {
  const outcome = state.sweep.run?.outcome;
  if (!outcome) return [];
  const { options } = state;
  const { paint } = options;
  const view = finalView(outcome);
  const saying = (texts: readonly string[]) => texts.flatMap((text) => say(text, width, options));
  const { finalists } = view;
  if (finalists.length === 0) {
    return saying([
      ...lookedSentences(view),
      ...bestSentences(view),
      'Tab shows the ranges; o there takes those.',
    ]);
  }
  const { rows, room: seen } = finalistTable(view, { ...options, width: width - 2 });
  const lookedAt = height < WITH_LOOKED ? [] : saying(lookedSentences(view).slice(1)).map(paint.dim);
  const warning = saying(warningSentences(view)).map(paint.bad);
  const looked = lookedAt.length === 0 ? warning : [...lookedAt, ...warning, ''];
  const abouts = finalists.map((finalist) => [
    ...numbersSentences(view, finalist, seen.numbers.count),
    ...aboutSentences(view, finalist),
  ]);
  const here = currentCandidate(state)?.name;
  const at = finalists.findIndex(({ result }) => result.name === here);
  // The table stands still while the cursor moves: it leaves room for the longest that has to be said.
  const longest = Math.max(...abouts.map((texts) => saying(texts.slice(0, -FOR_ROOM)).length));
  const fewest = Math.min(LEAST_TABLE, Math.floor(height / 2));
  const most = Math.max(fewest, height - looked.length - 1 - longest);
  const shown = around(rows, at, { options, height: most });
  const room = height - looked.length - shown.length - 1;
  const about = whole(
    (abouts[at] ?? [candidateText(state)]).map((text) => saying([text])),
    room,
  );
  const legend = saying([...tableSentences(seen, options.symbols === 'ascii'), CAUTION]).map(paint.dim);
  const body = [...looked, ...shown, '', ...about];
  return body.length + 1 + legend.length <= height ? [...body, '', ...legend] : body;
}

/** Paragraphs as far as there is room for the whole of one; of the first as much as there is. */
function whole(paragraphs: readonly (readonly string[])[], height: number): string[] {
  const rows: string[] = [];
  for (const paragraph of paragraphs) {
    if (rows.length > 0 && rows.length + paragraph.length > height) break;
    rows.push(...paragraph);
  }
  return rows;
}

/** The head of the table, and the rows around one of them. */
function around(
  [header, ...rows]: readonly string[],
  at: number,
  { options: { symbols, paint }, height }: { options: BenchState['options']; height: number },
): string[] {
  const marked = rows.map((row, index) => {
    const sign = index === at ? (symbols === 'ascii' ? '>' : '▸') : ' ';
    return `${paint.accent(sign)} ${row}`;
  });
  return [`  ${header}`, ...inSight(marked, Math.max(0, at), height - 1)];
}
