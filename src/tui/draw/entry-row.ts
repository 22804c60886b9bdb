/**
 * The line that is being typed, with the keys that end it, and above it what there is to be told meanwhile: neither hides the
 * other.
 */
import { FELT_KEYS } from '../../quantity/feel-words.js';
import { textWidth } from '../../show/fit-text.js';
import { endingWords } from '../bench/shortlist-exports.js';
import type { BenchState, Entry } from '../bench/state.js';
import { keyLine, type NamedKey } from './key-line.js';
import { atBothEnds, endOf, say, sayInOne } from './say.js';

/** What is asked for: in full, and where there is less room. */
const PROMPTS: Readonly<Record<Entry['purpose'], readonly [string, string]>> = {
  filter: ['show profiles with', 'show profiles with'],
  number: ['number', 'number'],
  range: ['number', 'number'],
  export: ['write the table to (.csv, .json, .txt)', 'write table to'],
  save: ['name of the new profile', 'name'],
  keep: ['keep it on the shortlist as', 'keep as'],
  note: ['note', 'note'],
  felt: ['felt, from 1 not at all to 5 very', 'felt'],
  carry: ['write to', 'write to'],
};

/** Columns between the text and the keys. */
const GAP = 2;

/** Most rows of what is told above the line. */
const MOST_NOTICE = 2;

/** A prompt with as much of the end of the text as fits behind it; a text that is only offered stands out. */
function typedText(prompt: string, { text, isOffered }: Entry, { options, size }: BenchState) {
  const start = `${prompt}: `;
  const shown = endOf(text, Math.max(4, size.columns - textWidth(start) - 1));
  const paint = (row: string) =>
    isOffered && row.startsWith(start + shown)
      ? start + options.paint.inverse(shown) + row.slice(start.length + shown.length)
      : row;
  return { plain: `${start}${shown}_`, paint };
}

/** The line that is being typed; its prompt is the full one where that leaves room for the keys of the line. */
export function entryRow(state: BenchState, entry: Entry, keys: readonly NamedKey[]): string {
  const { options, size } = state;
  const width = size.columns;
  const inOrder = keys.map((key) => ({ ...key, isKept: false }));
  const own = keyLine(
    inOrder.filter(({ isOwn }) => isOwn),
    Infinity,
  );
  const [full, short] = PROMPTS[entry.purpose];
  const inFull = typedText(full, entry, state);
  const isRoomy = textWidth(inFull.plain) + GAP + textWidth(own) <= width;
  const { plain, paint } = isRoomy ? inFull : typedText(short, entry, state);
  const shown = keyLine(inOrder, width - textWidth(plain) - GAP);
  return paint(shown === '' ? sayInOne(plain, width, options) : atBothEnds(plain, shown, { width, options }));
}

/** What may be typed, in words, where that is not said by what is asked for; empty elsewhere. */
function hintText(state: BenchState): string {
  const purpose = state.entry?.purpose;
  if (purpose === 'felt') return `such as twitchy 4, loose 2; words: ${FELT_KEYS.join(', ')}`;
  return purpose === 'carry' ? endingWords(state) : '';
}

/**
 * What is told while a line is being typed, or else what may be typed, in rows above it; none where the line at the bottom is free
 * to tell it.
 */
export function noticeRows(state: BenchState): string[] {
  const { entry, options, size } = state;
  if (entry === null) return [];
  const hint = hintText(state);
  const notice = state.notice ?? (hint === '' ? null : { text: hint, isFault: false });
  if (notice === null) return [];
  const lines = say(`${notice.isFault ? '! ' : ''}${notice.text}`, size.columns, options);
  const rest = lines.slice(MOST_NOTICE - 1).join(' ');
  const shown = [
    ...lines.slice(0, MOST_NOTICE - 1),
    ...(rest === '' ? [] : [sayInOne(rest, size.columns, options)]),
  ];
  return shown.map(notice.isFault ? options.paint.bad : options.paint.accent);
}
