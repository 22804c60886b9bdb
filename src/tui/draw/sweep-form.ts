/**
 * The form of a sweep: the swept numbers with the ends of their ranges and the bounds that a profile has, how many candidates, and in
 * what they will be run.
 */
import type { CellStyle } from '../../show/cell-grid.js';
import { GLYPHS } from '../../show/glyphs.js';
import { listed } from '../../show/margin-view.js';
import { table, type TableCell } from '../../show/table.js';
import { MOST_CANDIDATES } from '../../tasks/sweep-select.js';
import type { BenchState } from '../bench/state.js';
import {
  candidateCount,
  cellCount,
  fieldOf,
  formView,
  gridFault,
  pointBounds,
  type FormRow,
  type FormView,
} from '../bench/sweep-form.js';
import { beginningOff } from '../bench/sweep-form-acts.js';
import type { RangeEnd } from '../bench/sweep-state.js';
import { inSight, say, type Area } from './say.js';

/** Fewest rows with what the form is about above it, and with what there is to know below it. */
const WITH_HEAD = 10;
const WITH_FOOT = 14;

/** The form. */
export function sweepFormRows(state: BenchState, { width, height }: Area): string[] {
  const view = formView(state);
  if (view === null) return [];
  const { options } = state;
  const head = height < WITH_HEAD ? [] : [...say(aboutText(view), width, options), ''];
  const says = say(rowSays(view), width, options).slice(0, 2);
  const foot =
    height < WITH_FOOT ? [] : ['', ...footTexts(state, view).flatMap((text) => say(text, width, options))];
  const [header, ...rows] = formTable(state, view, width);
  const room = Math.max(1, height - head.length - says.length - 2);
  const shown = inSight(rows, view.row, Math.min(room, rows.length));
  return [
    ...head,
    header!,
    ...shown,
    '',
    ...says.map(options.paint.bold),
    ...foot.map(options.paint.dim),
  ].slice(0, height);
}

function aboutText({ base, isPlain, isGrid }: FormView): string {
  const how = isGrid ? 'on a grid that is even in their ratio' : 'evenly spread in their ratio';
  return `Candidates have numbers between these ends, ${how}; all else is as ${isPlain ? 'the plain profile for the rig' : base.name} has it.`;
}

/** What the row under the cursor is about; what is wrong with a grid comes first. */
function rowSays(view: FormView): string {
  const { field, base, row, ranges, rowKind, isGrid, isExhaustive, points } = view;
  if (field !== null) {
    const value = valueIn(base.value, ranges[row]!.path);
    const now = value === undefined ? 'leaves it out' : `has ${`${value} ${field.unit}`.trimEnd()}`;
    return `${field.says}. ${base.name} ${now}.`;
  }
  const fault = gridFault(view);
  if (fault !== null) return `${fault}.`;
  if (rowKind === 'cells')
    return isExhaustive
      ? 'Every candidate is run in every cell: nobody is dropped on the way.'
      : 'A race drops the worse ones after a few cells, so that most runs are of the good ones.';
  if (rowKind === 'layout')
    return isGrid
      ? 'A plain grid: evenly spaced points of every number, each with each, and no search from the best of them.'
      : 'A spread: no two candidates share a number, and the search goes on downhill from the best of them.';
  return isGrid
    ? `How many points along each number; ${points} over ${ranges.length} ${ranges.length === 1 ? 'number' : 'numbers'} are ${candidateCount(view)} candidates.`
    : `How many candidates are spread over the ranges, from 1 to ${MOST_CANDIDATES}.`;
}

function valueIn(profile: object, path: readonly string[]): unknown {
  return path.reduce<unknown>((part, key) => (part as Record<string, unknown> | undefined)?.[key], profile);
}

function formTable(state: BenchState, view: FormView, width: number): string[] {
  const { options, sweep } = state;
  const ascii = options.symbols === 'ascii';
  const marker = (row: number): TableCell => [
    { text: row === view.row ? (ascii ? '>' : '▸') : ' ', style: 'accent' },
  ];
  const end = (row: number, which: RangeEnd, value: number): TableCell => {
    const isHere = row === view.row && sweep.form.end === which;
    return isHere ? [{ text: `[${value}]`, style: 'inverse' as CellStyle }] : `${value} `;
  };
  const rows = view.ranges.map((range, row): TableCell[] => {
    const { key, min, max } = fieldOf(range);
    return [
      marker(row),
      key,
      end(row, 'min', range.min),
      end(row, 'max', range.max),
      range.unit,
      `${min} to ${max}`,
    ];
  });
  return table({
    columns: [
      { header: '', align: 'left' },
      { header: 'number', align: 'left', shrinks: true, leastWidth: 10 },
      { header: 'least ', align: 'right' },
      { header: 'greatest ', align: 'right' },
      { header: 'unit', align: 'left', shrinks: true, leastWidth: 4 },
      { header: 'a profile may have', align: 'left', shrinks: true, leastWidth: 6 },
    ],
    rows: [...rows, ...otherRows(view, marker)],
    paint: options.paint,
    maxWidth: width,
    ellipsis: GLYPHS[options.symbols].ellipsis,
  });
}

/** The rows below the ranges: how many candidates, and two choices with what is chosen between brackets. */
function otherRows(view: FormView, marker: (row: number) => TableCell): TableCell[][] {
  const { isGrid, points, count, isExhaustive, ranges, rowKind } = view;
  const options = (kind: FormRow, texts: readonly [string, string], chosen: number): TableCell[] =>
    texts.map((text, index): TableCell => {
      if (index !== chosen) return [{ text: `${text} `, style: 'dim' }];
      return [{ text: `[${text}]`, style: rowKind === kind ? 'inverse' : 'bold' }];
    });
  const number = isGrid ? points : count;
  const amount: TableCell = rowKind === 'count' ? [{ text: `[${number}]`, style: 'inverse' }] : `${number} `;
  const { min, max } = isGrid ? pointBounds(view) : { min: 1, max: MOST_CANDIDATES };
  const first = ranges.length;
  return [
    [marker(first), isGrid ? 'points a number' : 'candidates', amount, '', '', `${min} to ${max}`],
    [marker(first + 1), 'laid out as', ...options('layout', ['spread', 'grid'], Number(isGrid)), '', ''],
    [
      marker(first + 2),
      'run in',
      ...options('cells', ['a race', 'every cell'], Number(isExhaustive)),
      '',
      '',
    ],
  ];
}

function footTexts(state: BenchState, view: FormView): string[] {
  const { riders, scenarios, charges, seeds } = view.plan;
  const cells = cellCount(view.plan);
  const names = riders.length <= 4 ? listed(riders.map(({ name }) => name)) : `${riders.length} riders`;
  const packs = charges.length === 1 ? 'one state of the pack' : `${charges.length} states of the pack`;
  const chance = seeds.length === 1 ? '' : `, ${seeds.length} seeds`;
  const roads = scenarios.length === 1 ? '1 scenario' : `${scenarios.length} scenarios`;
  const alone =
    riders.length === 1 || charges.length === 1
      ? ' What is found for one rider or one state of the pack need not hold for another: r and p on Rank choose more.'
      : '';
  const { run } = state.sweep;
  const off = beginningOff(state);
  const goes =
    run !== null && run.outcome === null && run.isRunning ? ' The one that runs now ends with that.' : '';
  return [
    `They are run in what Rank ranks on: ${roads}, ${names}, ${packs}${chance}: ${cells} ${cells === 1 ? 'cell' : 'cells'}. ${wayText(view, cells)}${alone}`,
    `${off === null ? `Enter begins.${goes}` : `Enter cannot begin: ${off}.`} Up and down go from row to row, left and right to the other end or choice; a digit begins another number.`,
  ];
}

/** What is done with the candidates. */
function wayText(view: FormView, cells: number): string {
  const runs = candidateCount(view) * cells;
  if (view.isExhaustive)
    return `Every one is run in every cell, ${runs} runs${view.isGrid ? '.' : ', and the search goes on downhill from the best.'}`;
  return view.isGrid
    ? 'A race drops the worse ones early.'
    : 'A race drops the worse ones early, and goes on downhill from the best.';
}
