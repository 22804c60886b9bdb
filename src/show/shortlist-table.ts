/**
 * Which profiles are kept, and how do they stand? A row each: what was proven, what was promised, what was felt.
 */
import type { KeptFile } from '../quantity/kept-file.js';
import { truncated } from './fit-text.js';
import { feltMeans, ratingText } from './felt-words.js';
import { GLYPHS } from './glyphs.js';
import { plainText } from './plain-text.js';
import { numberText } from './quantities.js';
import { table, type TableColumn } from './table.js';
import { writer, type WhyOptions } from './why-lines.js';

/** A kept profile under its name. */
export interface ShownKept {
  name: string;
  value: KeptFile;
}

/** From so many columns on everything has a column of its own; below, the origin and the note stand under the table. */
const WIDE = 110;

interface Column extends TableColumn {
  text: (kept: ShownKept) => string;
  wide?: true;
}

const COLUMNS: readonly Column[] = [
  { header: 'name', shrinks: true, leastWidth: 8, text: ({ name }) => name },
  { header: 'from', shrinks: true, leastWidth: 8, wide: true, text: ({ value }) => value.origin.from },
  { header: 'kept on', align: 'left', text: ({ value }) => value.origin.on.slice(0, 10) },
  { header: 'board', shrinks: true, leastWidth: 8, wide: true, text: ({ value }) => value.rig.boardName },
  {
    header: 'falls',
    align: 'right',
    text: ({ value: { figures, cells } }) => `${figures.failures}/${cells.count}`,
  },
  { header: 'score', align: 'right', text: ({ value }) => numberText(value.figures.score, 'ratio') },
  { header: 'margin', align: 'right', text: ({ value }) => marginText(value) },
  {
    header: 'promised',
    shrinks: true,
    leastWidth: 8,
    text: ({ value }) => value.feel.words.join(', ') || '-',
  },
  { header: 'felt', align: 'left', shrinks: true, leastWidth: 8, text: ({ value }) => feltText(value) },
  { header: 'rides', align: 'right', text: ({ value }) => String(value.rides.length) },
  { header: 'note', shrinks: true, leastWidth: 8, wide: true, text: ({ value }) => value.note },
];

function marginText({ margins }: KeptFile): string {
  if (margins === null) return '-';
  return margins.disk.value === null ? 'no end' : numberText(margins.disk.value, 'ratio');
}

function feltText({ rides }: KeptFile): string {
  return (
    feltMeans(rides)
      .map(({ word, mean }) => `${word} ${ratingText(mean)}`)
      .join(', ') || '-'
  );
}

/** The lines of the list, none wider than the width. */
export function shortlistLines(kept: readonly ShownKept[], options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const { width, symbols } = options;
  const { ellipsis } = GLYPHS[symbols];
  if (kept.length === 0)
    return say('Nothing is kept yet. To keep a profile: underfoot shortlist add PROFILE');
  const isWide = width >= WIDE;
  const columns = COLUMNS.filter(({ wide }) => isWide || wide !== true);
  const plain = (text: string) => plainText(text);
  const rows = kept.map((one) => columns.map(({ text }) => plain(text(one))));
  const under = isWide ? [] : kept.map((one) => truncated(plain(underText(one)), width, ellipsis));
  const legend =
    'falls: of all runs it was proven in. score: less is better. margin: the least disk margin of its steady rides, 0 is lost. felt: mean of the ratings, 1 to 5.';
  return [
    ...table({ columns, rows, paint, maxWidth: width, ellipsis }),
    '',
    ...(under.length === 0 ? [] : [...under, '']),
    ...say(legend).map(paint.dim),
  ];
}

function underText({ name, value: { origin, rig, note } }: ShownKept): string {
  return `${name}: ${origin.from} on ${rig.boardName}${note === '' ? '' : `. ${note}`}`;
}
