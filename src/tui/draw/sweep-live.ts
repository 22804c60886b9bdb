/**
 * A sweep while it runs: stage, rate and runs, a bar, and the best so far with their numbers.
 */
import { GLYPHS } from '../../show/glyphs.js';
import { columnRooms, firstThatFits, type ColumnRoom } from '../../show/fitting-table.js';
import { numberCells, numberColumns } from '../../show/sweep-table.js';
import { baseText } from '../../show/sweep-words.js';
import { table, type TableCell, type TableColumn, type TableSpec } from '../../show/table.js';
import { scoreText } from '../../show/why-sentences.js';
import type { BenchState } from '../bench/state.js';
import { currentCandidate } from '../bench/sweep-items.js';
import { keptText, progressText } from '../bench/sweep-words.js';
import type { BestSoFar, SweepRunState } from '../bench/sweep-state.js';
import { trialsOf } from '../../tasks/plan.js';
import { candidateText } from '../bench/sweep-read-out.js';
import { inSight, say, type Area } from './say.js';

/** Fewest rows with a bar, and with what is under the cursor. */
const WITH_BAR = 10;
const WITH_READ_OUT = 16;

/** The live view. */
export function liveRows(state: BenchState, { width, height }: Area): string[] {
  const { run } = state.sweep;
  if (run === null) return [];
  const { options } = state;
  const { paint } = options;
  const head = say(progressText(run), width, options).map(paint.bold);
  const bar =
    height < WITH_BAR
      ? []
      : [
          barOf(state, run, Math.min(width, 60)),
          ...say(keptText(state, run), width, options).map(paint.dim),
          ...(run.base === null ? [] : say(baseSentence(run, run.base), width, options)),
          '',
        ];
  const read = height < WITH_READ_OUT ? [] : ['', ...say(candidateText(state), width, options)];
  const room = height - head.length - bar.length - read.length;
  if (run.best.length === 0)
    return [
      ...head,
      ...bar,
      ...say('The best so far stand here once the first cells have been run.', width, options),
    ];
  const here = currentCandidate(state);
  const at = run.best.findIndex(({ result }) => result.name === here?.name);
  const [header, ...rows] = bestTable(state, run, { width, at });
  return [...head, ...bar, header!, ...inSight(rows, Math.max(0, at), Math.max(1, room - 1)), ...read];
}

const baseSentence = ({ plan }: SweepRunState, base: NonNullable<SweepRunState['base']>) =>
  `${baseText(base, trialsOf(plan.cells).length)}.`;

function barOf({ options }: BenchState, { progress }: SweepRunState, width: number): string {
  const ascii = options.symbols === 'ascii';
  const [full, empty] = ascii ? ['#', '.'] : ['█', '·'];
  const share = progress === null ? 0 : progress.done / Math.max(1, progress.all);
  const count = Math.round(share * width);
  return options.paint.accent(full.repeat(count)) + options.paint.dim(empty.repeat(width - count));
}

function bestTable(
  { options }: BenchState,
  { best, plan }: SweepRunState,
  { width, at }: { width: number; at: number },
): string[] {
  const { paint, symbols } = options;
  const columns = (numbers: ColumnRoom): TableColumn[] => [
    { header: '', align: 'left' },
    { header: '#', align: 'right' },
    { header: 'name', align: 'left' },
    ...numberColumns(plan.ranges, numbers),
    { header: 'falls', align: 'right' },
    { header: 'score', align: 'right' },
    { header: 'cells', align: 'right' },
  ];
  const row =
    (numbers: ColumnRoom) =>
    (one: BestSoFar, index: number): TableCell[] => [
      [{ text: index === at ? (symbols === 'ascii' ? '>' : '▸') : ' ', style: 'accent' }],
      String(index + 1),
      [{ text: one.result.name, style: index === at ? 'bold' : null }],
      ...numberCells(one.values, numbers),
      String(one.result.failures),
      scoreText(one.result.score),
      String(one.result.cells.length),
    ];
  const specs = columnRooms(plan.ranges.length).map((numbers): TableSpec => {
    const rows = best.map(row(numbers));
    return { columns: columns(numbers), rows, paint, maxWidth: width, ellipsis: GLYPHS[symbols].ellipsis };
  });
  return table(specs[firstThatFits(specs, width)]!);
}
