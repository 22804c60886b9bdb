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
import { cellCount, fieldOf, formView, type FormView } from '../bench/sweep-form.js';
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
  const says = say(fieldSays(view), width, options).slice(0, 2);
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

function aboutText({ base }: FormView): string {
  return `Candidates have numbers between these ends, evenly spread in their ratio; all else is as ${base.name} has it.`;
}

function fieldSays({ field, base, row, ranges }: FormView): string {
  if (field === null) return `How many candidates are spread over the ranges, from 1 to ${MOST_CANDIDATES}.`;
  const { section, value } = { section: field.says, value: valueIn(base.value, ranges[row]!.path) };
  const now = value === undefined ? 'leaves it out' : `has ${`${value} ${field.unit}`.trimEnd()}`;
  return `${section}. ${base.name} ${now}.`;
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
  const isOnCount = view.row === view.ranges.length;
  const count: TableCell = isOnCount ? [{ text: `[${view.count}]`, style: 'inverse' }] : `${view.count} `;
  return table({
    columns: [
      { header: '', align: 'left' },
      { header: 'number', align: 'left', shrinks: true, leastWidth: 10 },
      { header: 'least ', align: 'right' },
      { header: 'greatest ', align: 'right' },
      { header: 'unit', align: 'left', shrinks: true, leastWidth: 4 },
      { header: 'a profile may have', align: 'left', shrinks: true, leastWidth: 6 },
    ],
    rows: [...rows, [marker(view.ranges.length), 'candidates', count, '', '', `1 to ${MOST_CANDIDATES}`]],
    paint: options.paint,
    maxWidth: width,
    ellipsis: GLYPHS[options.symbols].ellipsis,
  });
}

function footTexts(state: BenchState, { plan }: FormView): string[] {
  const { riders, scenarios, charges, seeds } = plan;
  const cells = cellCount(plan);
  const names = riders.length <= 4 ? listed(riders.map(({ name }) => name)) : `${riders.length} riders`;
  const packs = charges.length === 1 ? 'one state of the pack' : `${charges.length} states of the pack`;
  const chance = seeds.length === 1 ? '' : `, ${seeds.length} seeds`;
  const roads = scenarios.length === 1 ? '1 scenario' : `${scenarios.length} scenarios`;
  const alone =
    riders.length === 1 || charges.length === 1
      ? ' What is found for one rider or one state of the pack need not hold for another: r and p on Rank choose more.'
      : '';
  const { run } = state.sweep;
  const goes =
    run !== null && run.outcome === null && run.isRunning ? ' The one that runs now ends with that.' : '';
  return [
    `They are run in what Rank ranks on: ${roads}, ${names}, ${packs}${chance}: ${cells} cells. A race drops the worse ones ` +
      `early, and goes on downhill from the best.${alone}`,
    `Enter begins.${goes}`,
  ];
}
