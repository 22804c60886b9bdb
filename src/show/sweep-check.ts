/**
 * How far can the numbers of finalists be believed? How they come out when they are computed otherwise, and what follows where that
 * is not the same.
 */
import type { CheckView } from './check-line.js';
import { listed } from './margin-view.js';
import type { FinalistView, SweepView } from './sweep-view.js';
import { plainNumber } from './why-sentences.js';

/** Names that are told one by one where there are many. */
const NAMED = 3;

/** The first of many names, and how many others there are. */
export function fewOf(names: readonly string[]): string[] {
  const others = names.length - NAMED;
  return others > 1 ? [...names.slice(0, NAMED), `${others} others`] : [...names];
}

/** What came of running the finalists again with half the step and with odex. */
export function checkSentences({ finalists }: Pick<SweepView, 'finalists'>): string[] {
  const ways = [
    { name: 'half the step', ...together(finalists, 'halfStep') },
    { name: 'odex', ...together(finalists, 'reference') },
  ].filter(({ runs }) => runs > 0);
  const doubted = finalists.filter(({ halfStep, reference }) => !halfStep.agrees || !reference.agrees);
  const who = finalists.length === 1 ? 'it comes' : 'all come';
  const [first, second] = ways.map((way) => `${way.name} (${runsText(way.runs)}) ${cameOut(way, who)}`);
  if (first === undefined) return [];
  return [
    `Run again with ${first}${second === undefined ? '' : `; with ${second}`}.${warning(doubted, finalists)}`,
  ];
}

interface Way {
  runs: number;
  disagree: string[];
  largest: CheckView['largestDifference'];
}

/** The checks of all of one kind taken together. */
function together(finalists: readonly FinalistView[], key: 'halfStep' | 'reference'): Way {
  const checks = finalists.map((finalist) => finalist[key]);
  const [largest = null] = checks
    .flatMap(({ largestDifference }) => largestDifference ?? [])
    .toSorted((a, b) => b.scaledDifference - a.scaledDifference);
  return {
    runs: checks.reduce((sum, { cellsChecked }) => sum + cellsChecked, 0),
    disagree: finalists.filter((finalist) => !finalist[key].agrees).map(({ result }) => result.name),
    largest,
  };
}

const runsText = (count: number) => (count === 1 ? '1 run' : `${count} runs`);

function cameOut({ disagree, largest }: Way, who: string): string {
  if (disagree.length === 0) {
    const percent = plainNumber(100 * (largest?.scaledDifference ?? 0));
    return `${who} out the same, within ${Number(percent) < 0.01 ? '0.01' : percent} % of each scale of the score`;
  }
  const verb = disagree.length === 1 ? 'comes' : 'come';
  return `${listed(fewOf(disagree))} ${verb} out OTHERWISE${largest === null ? '' : `, most of all ${differenceText(largest)}`}`;
}

function differenceText({
  profile,
  cell,
  metric,
  unit,
  quick,
  reference,
}: NonNullable<Way['largest']>): string {
  const [scenario, rider] = cell.split('/');
  const where = rider === undefined ? cell : `${scenario} with ${rider}`;
  return `${metric} of ${profile} in ${where}: ${shown(quick)} against ${shown(reference)} ${unit}`.trimEnd();
}

function shown(value: number | string | null): string {
  if (value === null) return 'none';
  return typeof value === 'string' ? value : plainNumber(value);
}

/** What follows for those who do not come out the same. */
function warning(doubted: readonly FinalistView[], finalists: readonly FinalistView[]): string {
  if (doubted.length === 0) return '';
  const others = doubted.length < finalists.length ? ': rather take one of the others' : '';
  return doubted.length === 1
    ? ` The score of such a one hangs on how finely it is computed${others}.`
    : ` The scores of these hang on how finely they are computed${others}.`;
}
