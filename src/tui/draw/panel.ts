/**
 * The panel of the Rank screen: what there is to say of the row under the cursor, and its worst moment as a small plot.
 */
import { peakRow } from '../../measure/moments.js';
import type { ProfileResult, RankedCell } from '../../measure/profile-result.js';
import { beside } from '../../show/beside.js';
import { verdictMark } from '../../show/colour.js';
import { padded, textWidth } from '../../show/fit-text.js';
import type { TimeSpan } from '../../show/plot-frame.js';
import { problemLine } from '../../show/problems.js';
import { numberText } from '../../show/quantities.js';
import { standingLegend, stripPieces } from '../../show/rank-row.js';
import { CAUTION } from '../../show/cautions.js';
import { pitchSentence } from '../../show/run-sentences.js';
import { smallTrace } from '../../show/trace-small.js';
import { cellPhrase } from '../../show/worst-sentences.js';
import type { Look } from '../../tasks/looks.js';
import type { ReferenceCheck } from '../../tasks/reference-check.js';
import { problemOfProfile } from '../bench/faulty-files.js';
import { changesOf } from '../bench/gains-acts.js';
import { currentCell, currentRow, type ShownRow } from '../bench/rows.js';
import type { BenchState } from '../bench/state.js';
import { factsOf } from './row-facts.js';
import { inSight, say, sayInOne, type Area } from './say.js';
import { onSharedScale, pitchInTrial } from './shared-scale.js';
import { fittedColumns } from './table-columns.js';

/** Stretch of time shown before and after the worst moment, s. */
const BEFORE_S = 0.8;
const AFTER_S = 1.6;

/** Rows of the plot with its sentence: fewest, usual in one column, most. */
const PLOT_LEAST = 7;
const PLOT_ROWS = 18;
const PLOT_MOST = 24;

/** Fewest rows of a panel in one column: text, plot, scenarios. */
const TALL = 40;

/** Most scenarios that are named where a profile falls. */
const MOST_NAMED = 4;

/** Fewest columns in which text and plot stand side by side. */
const SIDE_BY_SIDE = 72;

/** `1st`, `2nd`, `3rd`, `11th`. */
export function ordinal(place: number): string {
  const teen = place % 100 >= 11 && place % 100 <= 13;
  const ending = teen ? 'th' : (['th', 'st', 'nd', 'rd'][place % 10] ?? 'th');
  return `${place}${ending}`;
}

/** Where a run is at its worst, in one sentence. */
function cellSentence(state: BenchState, cell: RankedCell): string {
  const { setup } = state.choices;
  const riderCount = state.work?.plan.riders.length ?? 0;
  const who = riderCount > 1 ? ` under ${cell.rider}` : '';
  const pack = setup.charges.length > 1 ? ` at ${cell.chargePercent} %` : '';
  const chance = state.options.seeds.length > 1 ? `, seed ${cell.seed}` : '';
  const start = state.rank.column === null ? 'Weakest in ' : 'In ';
  return `${start}${cell.scenario}${who}${pack}${chance}: ${cellPhrase(cell, state.options.weights)}.`;
}

/** How a changed profile has moved: `In its file 3rd with score 0.44; now 1st with 0.38`. */
function movedSentence({ unedited, rank, result }: ShownRow): string {
  if (unedited === null || rank === null || result === null) return '';
  const score = ({ score: value }: { score: number }) => numberText(value, 'ratio');
  return `In its file ${ordinal(unedited.rank)} with score ${score(unedited.result)}; now ${ordinal(rank)} with ${score(result)}.`;
}

/** Where a profile falls: `falls in 2 of 15 runs, in hill-up and shove`. */
function fallsText(state: BenchState, result: ProfileResult): string {
  const { failures, cells } = result;
  if (failures === 0) return `upright in all ${cells.length} runs`;
  if (failures === cells.length) return `falls in all ${cells.length} runs`;
  const names = (state.work?.plan.scenarios ?? [])
    .map(({ name }) => name)
    .filter((name) => factsOf(result).dearest.get(name)?.failed);
  const more = names.length - MOST_NAMED;
  const named = more > 0 ? [...names.slice(0, MOST_NAMED), `${more} more`] : names;
  const [last = ''] = named.slice(-1);
  const where = named.length > 1 ? `${named.slice(0, -1).join(', ')} and ${last}` : last;
  return `falls in ${failures} of ${cells.length} runs, in ${where}`;
}

/** Where a row stands: its place, whether it is the one to begin with, and where it falls. */
function standsText(state: BenchState, row: ShownRow, result: ProfileResult): string {
  const { rows } = state;
  const falls = fallsText(state, result);
  if (rows.some((other) => other.result === null)) return `${ordinal(row.rank ?? 0)} so far: ${falls}`;
  const place = `${ordinal(row.rank ?? 0)} of ${rows.length}`;
  if (row.rank !== 1) return `${place}: ${falls}`;
  return result.failures < result.cells.length
    ? `${place}, the one to try first: ${falls}`
    : `${place}, but try none of these: every one falls in every run`;
}

/** Signs that the table has now, in words. */
function legendText({ options, choices, rows, shelf }: BenchState): string {
  const ascii = options.symbols === 'ascii';
  const odex = rows.some(({ check }) => check !== null) ? `, ${verdictMark('ok', ascii)} odex agrees` : '';
  const changed = choices.edits.length > 0 ? ', ~ changed here' : '';
  const faulty = rows.some(({ name }) => problemOfProfile(shelf, name) !== null) ? ', ! faulty file' : '';
  return `${standingLegend(ascii)}${odex}${changed}${faulty}.`;
}

/** What is wrong with the file of a row, and what is ranked in its place. */
function faultText({ shelf }: BenchState, name: string): string {
  const problem = problemOfProfile(shelf, name);
  if (problem === null) return '';
  return `! its file has a problem: ${problemLine({ ...problem, file: '' })}; the last good version is ranked`;
}

/** The means of a row, where the table has no room for them. */
function meansText(state: BenchState, result: ProfileResult): string {
  if (fittedColumns(state, state.size.columns).some(({ name }) => name === 'cut')) return '';
  const { overshoot, settling, cut } = factsOf(result).figures;
  return `Means: overshoot ${overshoot}, settling ${settling}, ${cut} of the ticks cut.`;
}

/** Everything there is to say of a row, in lines; the most important first. */
function textRows(state: BenchState, row: ShownRow, width: number): string[] {
  const { options, work } = state;
  const { result, rank } = row;
  const line = (text: string) => (text === '' ? [] : say(text, width, options));
  const fault = line(faultText(state, row.name)).map(options.paint.bad);
  const summary = work?.plan.profiles.find(({ name }) => name === row.name)?.value.summary.trim() ?? '';
  const cell = currentCell(state, row);
  if (result === null || rank === null || cell === null) {
    return [...line(`${row.name}: its runs are being computed.`), ...fault, ...line(summary)];
  }
  const disagrees = row.check?.agrees === false ? ` ${differenceText(row.check)}` : '';
  const changes = changesOf(state, row.name);
  return [
    ...line(`${row.name} is ${standsText(state, row, result)}.${disagrees}`).map(options.paint.bold),
    ...fault,
    ...line(cellSentence(state, cell)),
    ...line(movedSentence(row)),
    ...line(changes === '' ? '' : `Changed here: ${changes}.`),
    ...line(summary),
    ...line(meansText(state, result)).map(options.paint.dim),
    ...line(legendText(state)).map(options.paint.dim),
  ];
}

/** The stretch of time about the worst moment of a run. */
export function worstSpan({ tape, window }: Look): TimeSpan {
  const endS = (tape.length - 1) * tape.tickS;
  const peakS = peakRow(tape, window) * tape.tickS;
  const fromS = Math.max(0, Math.min(peakS - BEFORE_S, endS - BEFORE_S - AFTER_S));
  return { fromS, toS: Math.min(endS, fromS + BEFORE_S + AFTER_S) };
}

/** In what the quick solver and odex differ on the worst run of a row. */
function differenceText({ largestDifference: largest }: ReferenceCheck): string {
  const start = 'The quick solver DISAGREES with odex on its worst run';
  if (largest === null) return `${start}.`;
  const number = (value: number | string | null) =>
    typeof value === 'number' ? value.toPrecision(4) : (value ?? 'none');
  const unit = largest.unit === '' ? '' : ` ${largest.unit}`;
  return `${start}: ${largest.metric} ${number(largest.quick)} against ${number(largest.reference)}${unit}.`;
}

/** The worst moment as a small plot under its sentence; nothing where it does not fit or is not there. */
function plotRows(state: BenchState, { width, height }: Area): string[] {
  const [look] = state.looks;
  if (look === null || look === undefined || look.tape.length < 2 || height < 6 || width < 30) return [];
  const { options } = state;
  const sentence = say(pitchSentence(look.view.facts, look.outcome), width, options).slice(0, 2);
  const plot = smallTrace(onSharedScale(look, pitchInTrial(state, look)), {
    width,
    height: height - sentence.length,
    symbols: options.symbols,
    paint: options.paint,
    span: worstSpan(look),
  });
  return [...sentence, ...plot];
}

/**
 * Scenarios of the strip with their signs and what was worst there, one a line: all of them in the order of the strip, or, where
 * not all fit, the worst ones or those around the one under the cursor.
 */
function scenarioRows(state: BenchState, { result }: ShownRow, { width, height }: Area): string[] {
  const { options, work, rank } = state;
  if (result === null || work === null || height < 1) return [];
  const ascii = options.symbols === 'ascii';
  const { dearest } = factsOf(result);
  const names = work.plan.scenarios.map(({ name }) => name);
  const cost = (name: string) => dearest.get(name)?.cost ?? 0;
  const seen =
    rank.column === null && names.length > height
      ? names.toSorted((a, b) => cost(b) - cost(a)).slice(0, height)
      : inSight(names, rank.column ?? 0, height);
  const widest = Math.min(Math.floor(width / 2), Math.max(...seen.map(textWidth)));
  return stripPieces(result, seen, ascii).map(({ text, style }, index) => {
    const name = seen[index]!;
    const cell = dearest.get(name);
    const phrase = cell === undefined ? '' : cellPhrase(cell, options.weights);
    const start = padded(sayInOne(name, widest, options), widest);
    const line = sayInOne(`${start}  ${phrase}`, width - 2, options);
    const mark = style === null ? text : options.paint[style](text);
    const isHere = rank.column !== null && name === names[rank.column];
    return `${mark} ${isHere ? options.paint.inverse(line) : line}`;
  });
}

/** Text, and below it the scenarios as far as there is room. */
function textAndScenarios(state: BenchState, row: ShownRow, { width, height }: Area): string[] {
  const text = textRows(state, row, width);
  const list = scenarioRows(state, row, { width, height: height - text.length - 1 });
  return list.length === 0 ? text : [...text, '', ...list];
}

/** The panel in one tall column: text, plot, every scenario, and what a simulation is worth. */
function tallRows(state: BenchState, row: ShownRow, { width, height }: Area): string[] {
  const text = textRows(state, row, width);
  const plot = plotRows(state, { width, height: PLOT_ROWS });
  const list = scenarioRows(state, row, { width, height: height - text.length - plot.length - 2 });
  const caution = say(CAUTION, width, state.options).map(state.options.paint.dim);
  return [...text, '', ...plot, '', ...list, '', ...caution];
}

/** The panel in at most as many rows as the area has. */
export function panelRows(state: BenchState, area: Area): string[] {
  const { width, height } = area;
  const row = currentRow(state);
  if (row === undefined) return [];
  if (height >= TALL) return tallRows(state, row, area).slice(0, height);
  if (width >= SIDE_BY_SIDE) {
    const leftWidth = Math.floor(width * 0.45);
    const left = textAndScenarios(state, row, { width: leftWidth, height }).slice(0, height);
    const right = plotRows(state, { width: width - leftWidth - 2, height: Math.min(height, PLOT_MOST) });
    return beside(left, right, { leftWidth, gap: 2 }).slice(0, height);
  }
  const text = textRows(state, row, width);
  const plotHeight = height - text.length - 1;
  const plot = plotHeight >= PLOT_LEAST ? ['', ...plotRows(state, { width, height: plotHeight })] : [];
  return [...text, ...plot].slice(0, height);
}
