/**
 * The ranked table: one row a profile with a strip of one sign a scenario, where each is worst, and which one to try
 * first and why not the others.
 */
import type { ProfileResult, RankedCell } from '../measure/profile-result.js';
import { orderRows, RANK_ORDER, type RowColumn, type RowOrder } from '../measure/row-order.js';
import type { Weights } from '../measure/scales.js';
import { CAUTION } from './cautions.js';
import type { Paint } from './colour.js';
import { wrapped } from './fit-text.js';
import { plainText } from './plain-text.js';
import { figureTexts, standingLegend, stripPieces } from './rank-row.js';
import { table, type TableCell, type TableColumn } from './table.js';
import { cellPhrase } from './worst-sentences.js';

/**
 * A ranking to be shown: `scenarios` in the order of the strip, `profiles` in the order of their rank, `order` that
 * of the rows (left out: by rank).
 */
export interface RankView {
  board: string;
  riders: readonly string[];
  seedCount: number;
  scenarios: readonly string[];
  weights: Weights;
  profiles: readonly ProfileResult[];
  order?: RowOrder;
}

/** How it is to be shown. */
export interface RankTableOptions {
  width: number;
  ascii: boolean;
  paint: Paint;
}

const COLUMNS: readonly (TableColumn & { by: RowColumn | null })[] = [
  { header: '#', by: 'rank', align: 'right' },
  { header: 'profile', by: 'profile', shrinks: true, leastWidth: 8 },
  { header: 'each scenario', by: null },
  { header: 'falls', by: 'falls', align: 'right' },
  { header: 'score', by: 'score', align: 'right' },
  { header: 'overshoot', by: 'overshoot', align: 'right' },
  { header: 'settling', by: 'settling', align: 'right' },
  { header: 'cut', by: 'cut', align: 'right' },
];

/** The sign beside a sorted column's name: up where values grow downwards, from the least at the top. */
export function orderSign({ reversed }: RowOrder, ascii: boolean): string {
  if (ascii) return reversed ? 'v' : '^';
  return reversed ? '▾' : '▴';
}

/** The table and what there is to say about it, as lines no wider than the width. */
export function rankLines(view: RankView, options: RankTableOptions): string[] {
  const { paint, width, ascii } = options;
  const order = view.order ?? RANK_ORDER;
  const rows = orderRows(view.profiles, order).map((profile) => rowOf(view, profile, ascii));
  const say = (text: string) => wrapped(plainText(text), width);
  return [
    ...say(titleOf(view)).map(paint.bold),
    '',
    ...table({ columns: columnsFor(order, ascii), rows, paint, maxWidth: width }),
    '',
    ...say(legend(view, options)).map(paint.dim),
    '',
    ...adviceLines(view, options),
  ];
}

function isByRank({ by, reversed }: RowOrder): boolean {
  return by === RANK_ORDER.by && reversed === RANK_ORDER.reversed;
}

function columnsFor(order: RowOrder, ascii: boolean): TableColumn[] {
  return COLUMNS.map(({ by, ...column }) => {
    const isSorted = by === order.by && !isByRank(order);
    return isSorted ? { ...column, header: `${column.header} ${orderSign(order, ascii)}` } : column;
  });
}

function titleOf({ board, riders, seedCount, scenarios }: RankView): string {
  const many = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`;
  const people = riders.length === 1 ? `rider ${riders[0]!}` : `riders ${riders.join(', ')}`;
  return `Board ${board}, ${people}: ${many(scenarios.length, 'scenario')}, ${many(seedCount, 'seed')}`;
}

function rowOf(view: RankView, profile: ProfileResult, ascii: boolean): TableCell[] {
  const { falls, score, overshoot, settling, cut } = figureTexts(profile);
  const rank = String(view.profiles.indexOf(profile) + 1);
  const strip = stripPieces(profile, view.scenarios, ascii);
  return [rank, profile.name, strip, falls, score, overshoot, settling, cut];
}

function legend({ scenarios, order = RANK_ORDER }: RankView, { ascii }: RankTableOptions): string {
  const sorted = isByRank(order) ? '' : ` Rows by ${order.by}, ${startOf(order)} first; # is the rank.`;
  return (
    `${standingLegend(ascii)}; scenarios from the left: ${scenarios.join(', ')}. Less score is better, falls count first. ` +
    'Overshoot (for a disturbance: rebound), settling time and the share of ticks cut by a ceiling are means over ' +
    `the runs that ended upright; > marks a mean with runs that had not settled.${sorted}`
  );
}

/** What stands at the top of rows in this order. */
function startOf({ by, reversed }: RowOrder): string {
  if (by === 'profile') return reversed ? 'z' : 'a';
  if (by === 'rank') return reversed ? 'worst' : 'best';
  return reversed ? 'most' : 'least';
}

function adviceLines(view: RankView, options: RankTableOptions): string[] {
  const { paint, width } = options;
  const say = (text: string) => wrapped(plainText(text), width);
  const [best, ...others] = view.profiles;
  if (best === undefined) return [];
  const told = (cell: RankedCell) => {
    const who = view.riders.length > 1 ? ` with rider ${cell.rider}` : '';
    return `${cell.scenario}${who}: ${cellPhrase(cell, view.weights)}`;
  };
  const fate = ({ worst, cells }: ProfileResult) => {
    const [dearest] = cells.filter(({ failed }) => !failed).toSorted((a, b) => b.cost - a.cost);
    return worst.failed && dearest ? `${told(worst)}; upright but worst in ${told(dearest)}` : told(worst);
  };
  const falls = ({ failures, cells }: ProfileResult) =>
    failures === 0 ? `upright in all ${cells.length} runs` : `falls in ${failures} of ${cells.length} runs`;
  const first =
    best.failures < best.cells.length
      ? say(
          `Try first: ${best.name}, ${falls(best)}. ${best.summary.trim()} Its weakest run is ${fate(best)}.`,
        )
      : say(`Try none of these: every one falls in every run. ${best.name} is worst in ${fate(best)}.`);
  return [
    ...first.map((line, index) => (index === 0 ? paint.bold(line) : line)),
    ...(others.length === 0 ? [] : ['', 'Why not the others, each at its worst:']),
    ...others.flatMap((profile) => say(`  ${profile.name}: ${falls(profile)}; ${fate(profile)}`)),
    '',
    ...say(CAUTION).map(paint.dim),
  ];
}
