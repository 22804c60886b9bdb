/**
 * What is to be said of a sweep? What was looked through, what the table means, what is dangerous about the best, how far its numbers
 * can be believed, and what is left to find.
 */
import { standingLegend } from './rank-row.js';
import { grouped, listed } from './margin-view.js';
import { rangeName, type TableRoom } from './sweep-table.js';
import { byFailuresAndScore } from '../measure/score.js';
import { checkSentences, fewOf } from './sweep-check.js';
import type { FinalistView, SlipView, SweepView } from './sweep-view.js';
import { cellName, plainNumber, scoreText } from './why-sentences.js';
import { cellPhrase } from './worst-sentences.js';

/** What was looked through. */
export function lookedSentences(view: SweepView): string[] {
  const { board, riders, scenarios, cellCount, runs, ranges } = view;
  const between = ranges.map((range) =>
    `${rangeName(range)} ${plainNumber(range.min)} to ${plainNumber(range.max)} ${range.unit}`.trim(),
  );
  const roads = scenarios.length === 1 ? scenarios[0]! : counted(scenarios.length, 'scenario');
  return [
    `Board ${board}, riders ${listed(riders)}; ${roads}, ${counted(cellCount, 'cell')}: each scenario with each rider and state of ` +
      'the pack.',
    `${spreadText(view)} ${listed(between)}${fateText(view)}. ${counted(runs, 'run')} in all.`,
  ];
}

const counted = (count: number, what: string) => `${count} ${what}${count === 1 ? '' : 's'}`;

/** How many were spread over the ranges. */
function spreadText({ counts, isGrid }: SweepView): string {
  const spread = counted(counts.spread, 'candidate');
  return isGrid ? `${spread} on a grid over` : `${spread} spread over`;
}

/** How many came on the way downhill, and what became of all. */
function fateText({ counts, isExhaustive }: SweepView): string {
  const { tried, spread, hopeless, dropped, inEveryCell } = counts;
  const found = tried - spread;
  const more = found > 0 ? `, and ${found} more on the way downhill from the best` : '';
  const fates = [
    ...(hopeless === 0
      ? []
      : [`${hopeless} could not hold the board up by the linear view and were not run`]),
    ...(dropped === 0 || isExhaustive ? [] : [`${dropped} were dropped on the way`]),
    ...(inEveryCell === 0 ? [] : [`${inEveryCell} were run in every cell`]),
  ];
  return `${more}${fates.length === 0 ? '' : `: ${listed(fates)}`}`;
}

/** What has to be said before the table: that nobody stays up in every cell; none where somebody does, or nobody is left. */
export function warningSentences({ finalists }: Pick<SweepView, 'finalists'>): string[] {
  const [first] = finalists;
  if (first === undefined || first.result.failures === 0) return [];
  return isLost(first)
    ? [
        'All of them fall in every cell, so that their order means nothing: rather than gains, look at the board, the riders and ' +
          'the scenarios.',
      ]
    : ['Nobody stays up in every cell: look at who falls where, before one of them is taken any further.'];
}

const isLost = ({ result: { failures, cells } }: FinalistView) => failures === cells.length;

/** What the columns and signs mean that a table shows. */
export function tableSentences({ groups, strip }: TableRoom, ascii: boolean): string[] {
  return [
    [
      ...(strip ? [standingLegend(ascii)] : []),
      'rank: where it stands in nine of ten orders when other cells are drawn',
      'disk: the smallest disk margin of the pitch loop under any rider, 0 where it is about to ring',
      ...(groups ? ['comfort, reserve, agility: their share of the cost, less is better'] : []),
      `${ascii ? '*' : '◆'} on the front: nobody is better in one of comfort, reserve and agility without being worse in another`,
    ].join('; ') + '.',
  ];
}

/** What is to be known of the best one; what it gains over the profile from which all begin comes first. */
export function bestSentences(view: SweepView): string[] {
  const [first] = view.finalists;
  if (first === undefined) return nobodySentences(view);
  return [
    gainSentence(view, first),
    ...weakSentences(view, first),
    ...feelSentences(view),
    ...notForSentences(first),
    ...(isLost(first) ? [] : slipSentences(view, first)),
    ...checkSentences(view),
    ...(isLost(first) ? [] : leftSentences(view)),
  ];
}

/** What the best, or one of them, is beside the profile from which all begin. */
function gainSentence({ base }: SweepView, { result }: FinalistView): string {
  const isBetter = byFailuresAndScore(result, base) < 0;
  const verdict = isBetter ? '' : `: it is no better than ${base.name}`;
  return `${result.name} ${standingText(result)}; ${base.name}, from which all begin, ${standingText(base)}${verdict}.`;
}

/** Falls and score: `stays up in all 8 cells, score 0.56`. */
function standingText({ failures, cells, score }: SweepView['base']): string {
  const all = ['', 'its one cell', 'both cells'][cells.length] ?? `all ${cells.length} cells`;
  const falls =
    failures === cells.length ? `falls in ${all}` : `falls in ${failures} of ${cells.length} cells`;
  return `${failures === 0 ? `stays up in ${all}` : falls}, score ${scoreText(score)}`;
}

/** What there is to say where nobody is left. */
function nobodySentences({ base, counts }: SweepView): string[] {
  const isHopeless = counts.hopeless === counts.tried;
  const why = isHopeless
    ? 'No candidate can hold the board up by the linear view'
    : 'Nobody holds the board up';
  const next =
    base.failures === base.cells.length
      ? 'Rather than gains, look at the board, the riders and the scenarios'
      : 'Look between other ends, such as suit board and riders';
  return [`${why}; ${base.name}, from which all begin, ${standingText(base)}. ${next}.`];
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
  const { rider } = finalists[0]!.feel;
  const groups = grouped(finalists, ({ feel }) => listed(feel.words));
  const [[words]] = groups as [[string, FinalistView[]]];
  if (finalists.length === 1) return [`Under ${rider} it feels ${words}.`];
  if (groups.length === 1) return [`Under ${rider} all ${finalists.length} feel ${words}.`];
  const told = groups.map(
    ([feel, alike]) => `${feel} (${listed(fewOf(alike.map(({ result }) => result.name)))})`,
  );
  return [`Under ${rider} they feel ${told.join('; ')}.`];
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

/** The least gain that a score shows. */
const SHOWN_GAIN = 0.005;

function leftSentences({ left }: SweepView): string[] {
  const { draws, chanceOfBetter, gainIfBetter, gainOfSearch } = left;
  const by =
    gainIfBetter === null || gainIfBetter < SHOWN_GAIN ? '' : `, by about ${scoreText(gainIfBetter)}`;
  const further =
    gainOfSearch === null || gainOfSearch < SHOWN_GAIN
      ? ''
      : ` Going on downhill would bring about ${scoreText(gainOfSearch)} more in all.`;
  return [
    `Left to find, it is believed: one more candidate drawn like the ${draws} would be better than all of them with a chance of ` +
      `1 in ${Math.round(1 / chanceOfBetter)}${by}.${further}`,
  ];
}
