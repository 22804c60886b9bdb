/**
 * The list of the Shortlist screen: a row for each profile that is kept, then for each that is being proven; with more columns as
 * there is more room, and with note and ratings of the one under the cursor below it.
 */
import { feltMeans, promisedText, ratingText } from '../../show/felt-words.js';
import { GLYPHS } from '../../show/glyphs.js';
import { numberText } from '../../show/quantities.js';
import { table, type TableCell, type TableColumn } from '../../show/table.js';
import type { KeptFile } from '../../quantity/kept-file.js';
import { currentShortlistRow, shortlistRowsOf, type ShortlistRow } from '../bench/shortlist-items.js';
import { stageWords } from '../bench/shortlist-words.js';
import type { BenchOptions, BenchState } from '../bench/state.js';
import { inSight, say, sayInOne, type Area } from './say.js';

/** A column behind the name, shown from so many columns of the list on. */
interface KeptColumn extends TableColumn {
  from: number;
  text: (kept: KeptFile) => string;
}

const COLUMNS: readonly KeptColumn[] = [
  {
    header: 'falls',
    align: 'right',
    from: 0,
    text: ({ figures, cells }) => `${figures.failures}/${cells.count}`,
  },
  { header: 'score', align: 'right', from: 0, text: ({ figures }) => numberText(figures.score, 'ratio') },
  { header: 'promised', align: 'left', shrinks: true, from: 70, text: ({ feel }) => promisedText(feel) },
  { header: 'felt', align: 'left', shrinks: true, from: 44, text: feltText },
  { header: 'rides', align: 'right', from: 56, text: ({ rides }) => String(rides.length) },
  { header: 'kept on', align: 'left', from: 76, text: ({ origin }) => origin.on.slice(0, 10) },
  { header: 'board', align: 'left', shrinks: true, from: 90, text: ({ rig }) => rig.boardName },
];

function feltText({ rides }: KeptFile): string {
  const means = feltMeans(rides).map(({ word, mean }) => `${word} ${ratingText(mean)}`);
  return means.join(', ') || '-';
}

const marker = ({ symbols }: BenchOptions, isHere: boolean) =>
  isHere ? (symbols === 'ascii' ? '>' : '▸') : ' ';

/** The list, in at most as many rows as the area has; with the words of its rider where `withWords` says so. */
export function keptListRows(
  state: BenchState,
  { width, height }: Area,
  { withWords }: { withWords: boolean },
): string[] {
  const rows = shortlistRowsOf(state);
  const here = currentShortlistRow(state, rows);
  const at = here === undefined ? 0 : rows.indexOf(here);
  const kept = rows.filter((row) => row.kind === 'kept');
  const [header = '', ...keptLines] = keptTable(state, kept, { width, at });
  const waiting = rows.flatMap((row, index) =>
    row.kind === 'keeping' ? [waitingLine(state, row, { width, isHere: index === at })] : [],
  );
  const shown = inSight([...keptLines, ...waiting], at, Math.max(1, height - 1));
  const list = [kept.length === 0 ? state.options.paint.bold('  name') : header, ...shown];
  const words = withWords && here?.kind === 'kept' ? wordsOf(state, here.kept.value, width) : [];
  return list.length + words.length <= height ? [...list, ...words] : list;
}

function keptTable(
  { options }: BenchState,
  rows: readonly Extract<ShortlistRow, { kind: 'kept' }>[],
  { width, at }: { width: number; at: number },
): string[] {
  const columns = COLUMNS.filter(({ from }) => width >= from);
  const { paint, symbols } = options;
  return table({
    columns: [
      { header: '', align: 'left' },
      { header: 'name', align: 'left', shrinks: true, leastWidth: 8 },
      ...columns,
    ],
    rows: rows.map(({ name, kept, problem }, index): TableCell[] => [
      [{ text: marker(options, index === at), style: 'accent' }],
      [
        { text: name, style: index === at ? 'bold' : null },
        { text: problem === null ? '' : ' !', style: 'bad' },
      ],
      ...columns.map(({ text }) => sayInOne(text(kept.value), width, options)),
    ]),
    paint,
    maxWidth: width,
    ellipsis: GLYPHS[symbols].ellipsis,
  });
}

function waitingLine(
  { options }: BenchState,
  { name, keeping, isFirst }: Extract<ShortlistRow, { kind: 'keeping' }>,
  { width, isHere }: { width: number; isHere: boolean },
): string {
  const line = sayInOne(
    `${marker(options, isHere)}  ${name}: ${stageWords(keeping, isFirst)}`,
    width,
    options,
  );
  return isHere ? options.paint.bold(line) : options.paint.dim(line);
}

/** What its rider says of it, and where it is from. */
function wordsOf({ options }: BenchState, { origin, rig, note, rides }: KeptFile, width: number): string[] {
  const last = rides.at(-1);
  const texts = [
    `From ${origin.from} on ${rig.boardName}, ${origin.on.slice(0, 10)}.`,
    note === '' ? 'No note yet: n writes one.' : `Note: ${note}`,
    last === undefined ? 'Not ridden yet: f rates a ride.' : `Felt: ${feltText({ rides } as KeptFile)}.`,
  ];
  return ['', ...texts.flatMap((text) => say(text, width, options)).map(options.paint.dim)];
}
