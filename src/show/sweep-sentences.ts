/**
 * What is to be said of a sweep? What was looked through, what the table means, what is dangerous about the best, how far its numbers
 * can be believed, and what is left to find.
 */
import { standingLegend } from './rank-row.js';
import { grouped, listed } from './margin-view.js';
import { rangeName } from './sweep-table.js';
import type { FinalistView, SlipView, SweepView } from './sweep-view.js';
import { cellName, plainNumber, scoreText } from './why-sentences.js';
import { cellPhrase } from './worst-sentences.js';

/** What was looked through. */
export function lookedSentences(view: SweepView): string[] {
  const { board, riders, scenarios, cellCount, counts, runs, ranges, isExhaustive } = view;
  const between = ranges.map((range) =>
    `${rangeName(range)} ${plainNumber(range.min)} to ${plainNumber(range.max)} ${range.unit}`.trim(),
  );
  const hopeless =
    counts.hopeless === 0
      ? ''
      : ` ${counts.hopeless} could not hold the board up by the linear view and were not run;`;
  const race = isExhaustive
    ? ` ${counts.inEveryCell} were run in every cell.`
    : ` ${counts.dropped} were dropped on the way, ${counts.inEveryCell} were run in every cell.`;
  return [
    `Board ${board}, riders ${listed(riders)}; ${scenarios.length} scenarios, ${cellCount} cells.`,
    `${counts.tried} candidates with ${listed(between)}:${hopeless}${race} ${runs} runs in all.`,
  ];
}

/** What the columns and signs mean. */
export function tableSentences(ascii: boolean): string[] {
  return [
    `${standingLegend(ascii)}; rank: where it stands in nine of ten orders when other cells are drawn; disk: the smallest ` +
      'disk margin of the pitch loop under any rider; comfort, reserve, agility: their share of the cost, less is better; ' +
      `${ascii ? '*' : '◆'} nobody is better in one of the three without being worse in another.`,
  ];
}

/** What is to be known of the best one. */
export function bestSentences(view: SweepView): string[] {
  const [first] = view.finalists;
  if (first === undefined) return ['Nobody holds the board up.'];
  return [
    ...weakSentences(view, first),
    ...feelSentences(view),
    ...notForSentences(first),
    ...slipSentences(view, first),
    ...checkSentences(view),
    ...leftSentences(view),
  ];
}

function weakSentences({ weights }: SweepView, { result, leastDisk }: FinalistView): string[] {
  const { worst, name } = result;
  const disk =
    leastDisk === null
      ? ''
      : ` Its smallest disk margin is ${leastDisk.margin.toFixed(2)}, under ${leastDisk.rider} at ${leastDisk.speedKmPerH} km/h.`;
  return [`${name} is weakest in ${cellName(worst)}: ${cellPhrase(worst, weights)}.${disk}`];
}

/** How the best feel, those that feel alike together. */
function feelSentences({ finalists }: SweepView): string[] {
  const told = grouped(finalists, ({ feel }) => listed(feel.words)).map(
    ([words, alike]) => `${words} (${listed(alike.map(({ result }) => result.name))})`,
  );
  return [`Under ${finalists[0]!.feel.rider} they feel ${told.join('; ')}.`];
}

function notForSentences({ result, notFor }: FinalistView): string[] {
  if (notFor.length === 0) return [];
  const falls = notFor.map((rider) => {
    const own = result.cells.filter((cell) => cell.rider === rider && cell.failed);
    return `${rider} (${own.length === 1 ? cellWithoutRider(own[0]!) : `${own.length} falls`})`;
  });
  return [`Not for ${listed(falls)}.`];
}

const cellWithoutRider = ({ scenario, chargePercent }: { scenario: string; chargePercent: number }) =>
  `falls in ${scenario} with the pack at ${chargePercent} %`;

/** A slip is dangerous that makes more cells fall, and costly that raises the score by half. */
const COSTLY_RATIO = 1.5;

function slipSentences({ ranges }: SweepView, { result, slips }: FinalistView): string[] {
  const text = ({ range, slip, values, moreFailures, scoreRatio }: SlipView) => {
    const what = `${rangeName(ranges[range]!)} ${plainNumber(values[range]!)} (${slip})`;
    return moreFailures > 0
      ? `${what}: ${moreFailures} more ${moreFailures === 1 ? 'fall' : 'falls'}`
      : `${what}: ${plainNumber(scoreRatio)} times the score`;
  };
  const deadly = slips.filter(({ moreFailures }) => moreFailures > 0);
  const costly = slips.filter(
    ({ moreFailures, scoreRatio }) => moreFailures <= 0 && scoreRatio > COSTLY_RATIO,
  );
  if (deadly.length + costly.length === 0) {
    return [
      `No number of ${result.name} is dangerous to get a little wrong: a tenth off, a digit off, a slipped point were tried.`,
    ];
  }
  return [
    ...(deadly.length === 0 ? [] : [`Dangerous to get wrong: ${deadly.map(text).join('; ')}.`]),
    ...(costly.length === 0 ? [] : [`Costly to get wrong: ${costly.map(text).join('; ')}.`]),
  ];
}

function checkSentences({ finalists }: SweepView): string[] {
  const worst = (key: 'halfStep' | 'reference') => {
    const checks = finalists.map((finalist) => finalist[key]);
    const cells = checks.reduce((sum, { cellsChecked }) => sum + cellsChecked, 0);
    const largest = checks
      .flatMap(({ largestDifference }) => largestDifference ?? [])
      .reduce<number>((most, { scaledDifference }) => Math.max(most, scaledDifference), 0);
    const disagree = finalists.filter((finalist) => !finalist[key].agrees).map(({ result }) => result.name);
    return { cells, largest, disagree };
  };
  const text = (name: string, { cells, largest, disagree }: ReturnType<typeof worst>) => {
    const size = Number.isFinite(largest)
      ? `${(100 * largest).toPrecision(2)} % of a scale`
      : 'another outcome';
    const verdict = disagree.length === 0 ? 'agree' : `DISAGREE for ${listed(disagree)}`;
    return `with ${name} ${cells} runs of the finalists ${verdict} (largest difference ${size})`;
  };
  return [`Run again ${text('half the step', worst('halfStep'))}, ${text('odex', worst('reference'))}.`];
}

function leftSentences({ left }: SweepView): string[] {
  const { draws, chanceOfBetter, gainIfBetter, gainOfSearch } = left;
  const gain = gainIfBetter === null ? '' : `, by about ${scoreText(gainIfBetter)}`;
  const further =
    gainOfSearch === null
      ? ''
      : ` Going on downhill would bring about ${scoreText(gainOfSearch)} more in all.`;
  return [
    `Left to find, it is believed: one more candidate drawn like the ${draws} would be better than all of them with a chance of ` +
      `1 in ${Math.round(1 / chanceOfBetter)}${gain}.${further}`,
  ];
}
