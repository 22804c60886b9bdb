/**
 * What do the tables of a sweep tell, in words? The best while it runs, and the finalists: how each fares, where it is weakest, how
 * near its cliff is, who should not ride it.
 */
import { rangeName } from './sweep-table.js';
import { bestSentences, lookedSentences, warningSentences } from './sweep-sentences.js';
import type { FinalistView, SlipView, SweepView } from './sweep-view.js';
import { listed } from './margin-view.js';
import { cellName, plainNumber, plainQuantity, scoreText } from './why-sentences.js';
import { cellPhrase } from './worst-sentences.js';
import type { ProfileResult } from '../measure/profile-result.js';
import type { Range } from '../sweep/range.js';

/** A text: sections with a space between them, each of paragraphs. */
export type Sections = readonly (readonly string[])[];

/** Numbers of a candidate with their units: `proportional 20 A/deg, rate 1.2 A/(deg/s)`. */
export function numbersText(ranges: readonly Range[], values: readonly number[]): string {
  return ranges
    .map((range, index) => `${rangeName(range)} ${plainQuantity(values[index]!, range.unit)}`)
    .join(', ');
}

/** The numbers of a finalist where its table has no room for all of them; none where it has. */
export function numbersSentences(
  { ranges }: Pick<SweepView, 'ranges'>,
  finalist: Pick<FinalistView, 'values' | 'result'> | undefined,
  shownCount: number,
): string[] {
  if (finalist === undefined || shownCount >= ranges.length) return [];
  return [`${finalist.result.name} has ${numbersText(ranges, finalist.values)}.`];
}

/** "1 cell", "8 cells". */
export function cellsText(count: number): string {
  return count === 1 ? '1 cell' : `${count} cells`;
}

/** How the profile from which all begin does, as far as its cells were run. */
export function baseText({ name, failures, cells, score }: ProfileResult, cellCount: number): string {
  const over =
    cells.length === cellCount ? cellsText(cellCount) : `${cells.length} of ${cellsText(cellCount)}`;
  return `${name}, from which all begin, over ${over}: falls ${failures}, score ${scoreText(score)}`;
}

/** The best so far, one paragraph each. */
export function bestSoFarWords(
  ranges: readonly Range[],
  best: readonly { values: readonly number[]; result: ProfileResult }[],
): string[] {
  return best.map(({ values, result: { name, failures, cells, score } }, index) => {
    const falls = `falls in ${failures} of ${cellsText(cells.length)}, score ${scoreText(score)}`;
    return `${index + 1}. ${name} with ${numbersText(ranges, values)}: ${falls}.`;
  });
}

/** All that the finalists' table tells: the one at a place in their order first, null for none, then every one. */
export function finalistWords(view: SweepView, at: number | null): Sections {
  const { finalists } = view;
  const looked = [...lookedSentences(view), ...warningSentences(view)];
  if (finalists.length === 0) return [looked, bestSentences(view)];
  const here = at === null ? undefined : finalists[at];
  return [
    looked,
    ...(here === undefined ? [] : [aboutSentences(view, here)]),
    [
      'The finalists, best first:',
      ...finalists.map((finalist, index) => finalistText(view, finalist, index)),
    ],
  ];
}

/** What is to be known of one finalist, with how near its cliff is. */
export function aboutSentences(view: SweepView, finalist: FinalistView): string[] {
  const [gain, weak, ...others] = bestSentences({ ...view, finalists: [finalist] });
  const cliff = nearestCliff(view, finalist);
  return [gain!, weak!, ...(cliff === null ? [] : [`Nearest cliff: ${cliff}.`]), ...others];
}

const NO_CLIFF = 'no cliff within a tenth, a digit or a slipped point of any number';

function finalistText(view: SweepView, finalist: FinalistView, index: number): string {
  const { result, values, interval, isOnFront, leastDisk, feel, notFor } = finalist;
  const { name, failures, cells, score, worst } = result;
  const cliff = nearestCliff(view, finalist);
  const { low, high } = interval;
  const standing = [
    `falls in ${failures} of ${cellsText(cells.length)}`,
    `score ${scoreText(score)}`,
    low === high ? `rank ${low}` : `rank ${low} to ${high}`,
    ...(isOnFront ? ['on the front'] : []),
  ];
  return `${[
    `${index + 1}. ${name} with ${numbersText(view.ranges, values)}: ${standing.join(', ')}`,
    `weakest in ${cellName(worst)}: ${cellPhrase(worst, view.weights)}`,
    ...(leastDisk === null
      ? []
      : [
          `smallest disk margin ${leastDisk.margin.toFixed(2)}, under ${leastDisk.rider} at ${leastDisk.speedKmPerH} km/h`,
        ]),
    ...(failures === cells.length ? [] : [cliff === null ? NO_CLIFF : `nearest cliff: ${cliff}`]),
    `feels ${listed(feel.words)} under ${feel.rider}`,
    notFor.length === 0 ? 'nobody falls with it' : `not for ${listed(notFor)}`,
  ].join('; ')}.`;
}

/** The smallest slip of a number with which it falls more often; null where there is none. */
function nearestCliff({ ranges }: SweepView, { values, slips }: FinalistView): string | null {
  const [nearest] = slips
    .filter(({ moreFailures }) => moreFailures > 0)
    .toSorted((a, b) => slipSize(a, values) - slipSize(b, values));
  if (nearest === undefined) return null;
  const { range, slip, moreFailures } = nearest;
  const off = plainQuantity(nearest.values[range]!, ranges[range]!.unit);
  const falls = `${moreFailures} more ${moreFailures === 1 ? 'fall' : 'falls'}`;
  return `${rangeName(ranges[range]!)} ${off} in place of ${plainNumber(values[range]!)} (${slip}), ${falls}`;
}

/** How far a slip leads away, as a ratio; another sign leads farthest. */
function slipSize({ range, values }: SlipView, own: readonly number[]): number {
  const ratio = values[range]! / own[range]!;
  return ratio > 0 ? Math.abs(Math.log(ratio)) : Infinity;
}
