/**
 * The ranked table: one row a profile with a strip of one sign a scenario, where each is worst, and which one to try
 * first and why not the others.
 */
import {
  rowFigures,
  standingOf,
  type ProfileResult,
  type RankedCell,
  type Standing,
} from '../measure/profile-result.js';
import type { Weights } from '../measure/scales.js';
import type { Paint, StyleName } from './colour.js';
import { wrapped } from './fit-text.js';
import { plainText } from './plain-text.js';
import { numberText } from './quantities.js';
import { table, type TableCell } from './table.js';
import { cellPhrase } from './worst-sentences.js';

/** A ranking to be shown; `scenarios` in the order of the strip. */
export interface RankView {
  board: string;
  riders: readonly string[];
  seedCount: number;
  scenarios: readonly string[];
  weights: Weights;
  profiles: readonly ProfileResult[];
}

/** How it is to be shown. */
export interface RankTableOptions {
  width: number;
  ascii: boolean;
  paint: Paint;
}

const SIGNS: Readonly<Record<Standing, { sign: string; ascii: string; style: StyleName }>> = {
  composed: { sign: '●', ascii: 'o', style: 'ok' },
  marginal: { sign: '◐', ascii: '!', style: 'warn' },
  failed: { sign: '✗', ascii: 'x', style: 'bad' },
};

const CAUTION =
  'Simulated with the numbers given: it proves nothing about the machine. Ride a new profile first with low ceilings, ' +
  'helmet, wrist and knee protection, on open private ground, with someone nearby.';

const COLUMNS = [
  { header: '#', align: 'right' },
  { header: 'profile', shrinks: true, leastWidth: 8 },
  { header: 'each scenario' },
  { header: 'falls', align: 'right' },
  { header: 'score', align: 'right' },
  { header: 'overshoot', align: 'right' },
  { header: 'settling', align: 'right' },
  { header: 'cut', align: 'right' },
] as const;

/** The table and what there is to say about it, as lines no wider than the width. */
export function rankLines(view: RankView, options: RankTableOptions): string[] {
  const { paint, width } = options;
  const rows = view.profiles.map((profile, index) => rowOf(view, profile, { index, ascii: options.ascii }));
  const say = (text: string) => wrapped(plainText(text), width);
  return [
    ...say(titleOf(view)).map(paint.bold),
    '',
    ...table({ columns: COLUMNS, rows, paint, maxWidth: width }),
    '',
    ...say(legend(view, options)).map(paint.dim),
    '',
    ...adviceLines(view, options),
  ];
}

function titleOf({ board, riders, seedCount, scenarios }: RankView): string {
  const many = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`;
  const people = riders.length === 1 ? `rider ${riders[0]!}` : `riders ${riders.join(', ')}`;
  return `Board ${board}, ${people}: ${many(scenarios.length, 'scenario')}, ${many(seedCount, 'seed')}`;
}

function rowOf(
  view: RankView,
  profile: ProfileResult,
  { index, ascii }: { index: number; ascii: boolean },
): TableCell[] {
  const figures = rowFigures(profile.cells);
  const strip = view.scenarios.map((scenario) => {
    const {
      sign,
      ascii: plain,
      style,
    } = SIGNS[standingOf(profile.cells.filter((cell) => cell.scenario === scenario))];
    return { text: ascii ? plain : sign, style };
  });
  return [
    String(index + 1),
    profile.name,
    strip,
    `${profile.failures}/${profile.cells.length}`,
    numberText(profile.score, 'ratio'),
    figures.overshootPercent === null ? '-' : `${figures.overshootPercent.toFixed(0)} %`,
    settlingCell(figures.settlingTimeS, figures.notSettledCount),
    figures.saturationShare === null ? '-' : `${numberText(100 * figures.saturationShare, 'percent')} %`,
  ];
}

/** A mean that holds runs which had not settled is a bound from below. */
function settlingCell(settlingTimeS: number | null, notSettledCount: number): string {
  if (settlingTimeS === null) return '-';
  return `${notSettledCount > 0 ? '> ' : ''}${numberText(settlingTimeS, 'meanTimeS')} s`;
}

function legend({ scenarios }: RankView, { ascii }: RankTableOptions): string {
  const signs = (Object.keys(SIGNS) as Standing[]).map(
    (standing) => `${ascii ? SIGNS[standing].ascii : SIGNS[standing].sign} ${standing}`,
  );
  return (
    `${signs.join(', ')}; scenarios from the left: ${scenarios.join(', ')}. Less score is better, falls count first. ` +
    'Overshoot (for a disturbance: rebound), settling time and the share of ticks cut by a ceiling are means over ' +
    'the runs that ended upright; > marks a mean with runs that had not settled.'
  );
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
