/**
 * The two lists of Why: what is to blame with the cost that goes with it, and the changes with falls and score before and after.
 */
import type { Evidence } from '../../explain/evidence.js';
import type { Remedy } from '../../explain/remedy-effect.js';
import type { CellStyle } from '../../show/cell-grid.js';
import { GLYPHS } from '../../show/glyphs.js';
import { table, type TableCell } from '../../show/table.js';
import { editsText, termName } from '../../show/why-remedies.js';
import { capital, scoreText } from '../../show/why-sentences.js';
import type { WhyView } from '../../show/why-view.js';
import { causeWords } from '../../show/why-words.js';
import type { BenchState } from '../bench/state.js';
import { currentItem, isInUse } from '../bench/why-items.js';
import { inSight, sayInOne, type Area } from './say.js';

/** Fewest columns in which a change says what it makes worse. */
const WITH_WORSE = 60;

const cellOf = (text: string, style: CellStyle): TableCell => [{ text, style }];

const marker = ({ options }: BenchState, isHere: boolean): TableCell =>
  cellOf(isHere ? (options.symbols === 'ascii' ? '>' : '▸') : ' ', 'accent');

/** A list under its header, the rows about the cursor where not all fit; no header where there is one row. */
function listed(
  { options }: BenchState,
  { columns, rows, at }: { columns: Parameters<typeof table>[0]['columns']; rows: TableCell[][]; at: number },
  { width, height }: Area,
): string[] {
  if (rows.length === 0 || height < 1) return [];
  const { paint, symbols } = options;
  const lines = table({ columns, rows, paint, maxWidth: width, ellipsis: GLYPHS[symbols].ellipsis });
  const body = inSight(lines.slice(1), Math.max(0, at), Math.max(1, height - 1));
  return height < 2 ? body : [lines[0]!, ...body];
}

/** The findings. */
export function findingRows(state: BenchState, { findings }: WhyView, area: Area): string[] {
  const item = currentItem(state);
  const at = item?.kind === 'finding' ? item.index : -1;
  const rows = findings.map((evidence, index): TableCell[] => [
    marker(state, index === at),
    cellOf(
      sayInOne(`${index + 1}. ${titleOf(evidence)}`, area.width, state.options),
      index === at ? 'bold' : null,
    ),
    `${Math.round(100 * evidence.finding.share)} %`,
    String(evidence.finding.failuresCured),
  ]);
  const columns = [
    { header: '', align: 'left' as const },
    { header: 'to blame', align: 'left' as const, shrinks: true },
    { header: 'share', align: 'right' as const },
    { header: 'falls', align: 'right' as const },
  ];
  return listed(state, { columns, rows, at }, area);
}

function titleOf({ causes, finding, isUnderReference }: Evidence): string {
  const { title } = causeWords(causes[0]!);
  const rival = finding.rival === null ? '' : ' (not sure)';
  return `${title}${rival}${isUnderReference ? ', even under the reference' : ''}`;
}

/** The changes that were tried. */
export function remedyRows(state: BenchState, remedies: readonly Remedy[], area: Area): string[] {
  const item = currentItem(state);
  const at = item?.kind === 'remedy' ? item.index : -1;
  const isWide = area.width >= WITH_WORSE;
  const rows = remedies.map((remedy, index): TableCell[] => {
    const { failuresBefore, failuresAfter, scoreBefore, scoreAfter } = remedy.effect;
    const used = isInUse(state, remedy) ? 'made: ' : '';
    return [
      marker(state, index === at),
      cellOf(
        sayInOne(`${index + 1}) ${used}${capital(editsText(remedy.edits))}`, area.width, state.options),
        index === at ? 'bold' : null,
      ),
      ...(isWide ? [`${failuresBefore} to ${failuresAfter}`] : []),
      `${scoreText(scoreBefore)} to ${scoreText(scoreAfter)}`,
      ...(isWide ? [cellOf(worseText(remedy), worseStyle(remedy))] : []),
    ];
  });
  const columns = [
    { header: '', align: 'left' as const },
    { header: 'change', align: 'left' as const, shrinks: true },
    ...(isWide ? [{ header: 'falls', align: 'left' as const }] : []),
    { header: 'score', align: 'left' as const },
    ...(isWide ? [{ header: 'worse', align: 'left' as const, shrinks: true, leastWidth: 14 }] : []),
  ];
  return listed(state, { columns, rows, at }, area);
}

function worseText({ effect: { newlyFailed, worse } }: Remedy): string {
  if (newlyFailed.length > 0) return `makes ${newlyFailed.length} fall`;
  const [first] = worse;
  return first === undefined ? 'nothing' : termName(first.name);
}

const worseStyle = ({ effect: { newlyFailed } }: Remedy): CellStyle =>
  newlyFailed.length > 0 ? 'warn' : null;
