/**
 * The panel of the Rank screen: what there is to say of the row under the cursor, and its worst moment as a small plot.
 */
import { peakRow } from '../../measure/moments.js';
import type { RankedCell } from '../../measure/profile-result.js';
import { beside } from '../../show/beside.js';
import { padded, textWidth } from '../../show/fit-text.js';
import type { TimeSpan } from '../../show/plot-frame.js';
import { numberText } from '../../show/quantities.js';
import { figureTexts, standingLegend, stripPieces } from '../../show/rank-row.js';
import { pitchSentence } from '../../show/run-sentences.js';
import { smallTrace } from '../../show/trace-small.js';
import { cellPhrase } from '../../show/worst-sentences.js';
import type { Look } from '../../tasks/looks.js';
import { changesOf } from '../bench/gains-acts.js';
import { currentCell, currentRow, type ShownRow } from '../bench/rows.js';
import type { BenchState } from '../bench/state.js';
import { say, sayInOne, type Area } from './say.js';

/** Stretch of time shown before and after the worst moment, s. */
const BEFORE_S = 0.8;
const AFTER_S = 1.6;

/** Most rows of the plot with its sentence, and fewest of a panel that stands in one column: text, plot, scenarios. */
const PLOT_ROWS = 18;
const TALL = 40;

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
  const who = setup.riders.length > 1 ? ` under ${cell.rider}` : '';
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

/** Everything there is to say of a row, in lines; the most important first. */
function textRows(state: BenchState, row: ShownRow, width: number): string[] {
  const { options, work } = state;
  const { result, rank } = row;
  const line = (text: string) => (text === '' ? [] : say(text, width, options));
  const summary = work?.plan.profiles.find(({ name }) => name === row.name)?.value.summary.trim() ?? '';
  const cell = currentCell(state, row);
  if (result === null || rank === null || cell === null) {
    return [...line(`${row.name}: its runs are being computed.`), ...line(summary)];
  }
  const { falls, overshoot, settling, cut } = figureTexts(result);
  const stands =
    result.failures === 0 ? `upright in all ${result.cells.length} runs` : `falls in ${falls} runs`;
  const disagrees =
    row.check?.agrees === false ? ' The quick solver DISAGREES with odex on its worst run.' : '';
  const changes = changesOf(state, row.name);
  return [
    ...line(`${row.name} is ${ordinal(rank)}: ${stands}.${disagrees}`).map(options.paint.bold),
    ...line(cellSentence(state, cell)),
    ...line(movedSentence(row)),
    ...line(changes === '' ? '' : `Changed here: ${changes}.`),
    ...line(summary),
    ...line(`Means: overshoot ${overshoot}, settling ${settling}, ${cut} of the ticks cut.`).map(
      options.paint.dim,
    ),
    ...line(`${standingLegend(options.symbols === 'ascii')}; ~ changed here.`).map(options.paint.dim),
  ];
}

/** The stretch of time about the worst moment of a run. */
export function worstSpan({ tape, window }: Look): TimeSpan {
  const endS = (tape.length - 1) * tape.tickS;
  const peakS = peakRow(tape, window) * tape.tickS;
  const fromS = Math.max(0, Math.min(peakS - BEFORE_S, endS - BEFORE_S - AFTER_S));
  return { fromS, toS: Math.min(endS, fromS + BEFORE_S + AFTER_S) };
}

/** The worst moment as a small plot under its sentence; nothing where it does not fit or is not there. */
function plotRows(state: BenchState, { width, height }: Area): string[] {
  const [look] = state.looks;
  if (look === null || look === undefined || look.tape.length < 2 || height < 6 || width < 30) return [];
  const { options } = state;
  const sentence = say(pitchSentence(look.view.facts, look.outcome), width, options).slice(0, 2);
  const plot = smallTrace(look.view, {
    width,
    height: height - sentence.length,
    symbols: options.symbols,
    paint: options.paint,
    span: worstSpan(look),
  });
  return [...sentence, ...plot];
}

/** Every scenario of the strip with its sign and what was worst there, one a line; the one under the cursor marked. */
function scenarioRows(state: BenchState, { result }: ShownRow, width: number): string[] {
  const { options, work, rank } = state;
  if (result === null || work === null) return [];
  const ascii = options.symbols === 'ascii';
  const names = work.plan.scenarios.map(({ name }) => name);
  const widest = Math.max(...names.map(textWidth));
  return stripPieces(result, names, ascii).map(({ text, style }, index) => {
    const name = names[index]!;
    const [dearest] = result.cells
      .filter(({ scenario }) => scenario === name)
      .toSorted((a, b) => b.cost - a.cost);
    const phrase = dearest === undefined ? '' : cellPhrase(dearest, options.weights);
    const line = sayInOne(`${padded(name, widest)}  ${phrase}`, width - 2, options);
    const mark = style === null ? text : options.paint[style](text);
    return `${mark} ${rank.column === index ? options.paint.bold(line) : line}`;
  });
}

/** The panel in at most as many rows as the area has. */
export function panelRows(state: BenchState, { width, height }: Area): string[] {
  const row = currentRow(state);
  if (row === undefined) return [];
  const isTall = height >= TALL;
  if (width >= SIDE_BY_SIDE && !isTall) {
    const leftWidth = Math.floor(width * 0.45);
    const text = textRows(state, row, leftWidth);
    const left = [...text, '', ...scenarioRows(state, row, leftWidth)].slice(0, height);
    const right = plotRows(state, { width: width - leftWidth - 2, height: Math.min(height, PLOT_ROWS) });
    return beside(left, right, { leftWidth, gap: 2 }).slice(0, height);
  }
  const text = textRows(state, row, width);
  const plotHeight = isTall ? PLOT_ROWS : height - text.length - 1;
  const plot = plotHeight >= 7 ? ['', ...plotRows(state, { width, height: plotHeight })] : [];
  const list = isTall ? ['', ...scenarioRows(state, row, width)] : [];
  return [...text, ...plot, ...list].slice(0, height);
}
