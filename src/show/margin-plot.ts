/**
 * The pitch loop over frequency: its gain in decibels with the places where it may be lost, and below it the sensitivity. A
 * sentence above each panel; the axis is logarithmic.
 */
import { hasMargins } from '../linear/growth.js';
import type { RideReport } from '../linear/ride-report.js';
import { paintedLine, type Piece } from './cell-grid.js';
import { wrapped } from './fit-text.js';
import { GLYPHS } from './glyphs.js';
import type { MarginOptions } from './margin-table.js';
import {
  degreesText,
  factorText,
  hzText,
  pointName,
  radPerSText,
  stateOf,
  type SeenPoint,
} from './margin-view.js';
import {
  columnOf,
  glyphsOf,
  gutterFor,
  gutterPieces,
  plotColumns,
  writable,
  type PlotFrame,
  type PlotMark,
} from './plot-frame.js';
import { plotPanel, type PlotLine } from './plot.js';
import type { Scale, ScaleTick } from './scale.js';
import { markNameRows } from './time-axis.js';

/** Decibels of the gain that are shown, and their labels. */
const LEAST_DB = -40;
const MOST_DB_LADDER = [20, 40, 60, 80];
const SENSITIVITY_LADDER = [2, 4, 8, 16, 32, 64];
/** Rows of the gain and of the sensitivity. */
const PANEL_ROWS = { lineA: 11, lineB: 7 } as const;
/** Stands in place of the sensitivity of a loop that does not hold. */
const LOST = 'The loop does not hold here: it has no sensitivity, and what is marked is the way back.';
/** Frequencies with a label, Hz. */
const LABELLED_HZ = [0.1, 1, 10, 100, 1000];

const decibels = (factor: number) => 20 * Math.log10(factor);
const radPerSAsLogHz = (radPerS: number) => Math.log10(radPerS / (2 * Math.PI));

/** The picture of one ride's loop. */
export function marginPlot(point: SeenPoint, options: MarginOptions): string[] {
  const { report } = point;
  const { gain, sensitivity } = report.curve;
  const scales = { gain: gainScale(report), sensitivity: sensitivityScale(report) };
  const frame = frameOf(report, [...scales.gain.ticks, ...scales.sensitivity.ticks], options);
  const say = (text: string) => wrapped(writable(text, GLYPHS[options.symbols]), options.width);
  return [
    ...say(gainSentence(report, pointName(point, options.speedUnit))),
    ...markNameRows(frame),
    ...panelOf({ scale: scales.gain, values: gain.map(decibels), level: 0, style: 'lineA' }, report, frame),
    ...(hasMargins(stateOf(point))
      ? [
          ...say(sensitivitySentence(report)),
          ...panelOf(
            { scale: scales.sensitivity, values: sensitivity, level: 1, style: 'lineB' },
            report,
            frame,
          ),
        ]
      : say(LOST)),
    ...frequencyAxisRows(frame),
  ];
}

/** What both panels share; the logarithm of the frequency [Hz] stands in for the time. */
function frameOf(report: RideReport, ticks: readonly ScaleTick[], options: MarginOptions): PlotFrame {
  const { width, symbols, paint } = options;
  const { frequencyHz } = report.curve;
  const gutterWidth = gutterFor(
    ticks.map(({ text }) => text),
    { width, symbols },
  );
  const span = { fromS: Math.log10(frequencyHz[0]!), toS: Math.log10(frequencyHz.at(-1)!) };
  return { symbols, paint, width, gutterWidth, span, marks: marksOf(report), window: null };
}

/** A curve over frequency, and the level that it is read against. */
interface CurvePanel {
  scale: Scale;
  values: readonly number[];
  level: number;
  style: 'lineA' | 'lineB';
}

function panelOf(
  { scale, values, level, style }: CurvePanel,
  { curve }: RideReport,
  frame: PlotFrame,
): string[] {
  const { fromS, toS } = frame.span;
  const lines: PlotLine[] = [
    { timeS: [fromS, toS], values: [level, level], line: 'dotted', style: 'dim' },
    { timeS: curve.frequencyHz.map(Math.log10), values, line: 'solid', style },
  ];
  return plotPanel({ scale, lines, rowCount: PANEL_ROWS[style] }, frame);
}

function gainSentence({ margins: { phaseRad, gainUp, gainDown } }: RideReport, name: string): string {
  const parts = [
    ...(phaseRad.radPerS === null
      ? ['never passes 0 dB']
      : [
          `passes 0 dB at ${radPerSText(phaseRad.radPerS)} with ${degreesText(phaseRad.value)} of phase to -1`,
        ]),
    ...[gainUp, gainDown].flatMap(({ value, radPerS }) =>
      radPerS === null
        ? []
        : [`turned right round at ${radPerSText(radPerS)}, ${factorText(value)} away from 0 dB`],
    ),
  ];
  return `Loop gain, ${name}: ${parts.join('; ')}.`;
}

function sensitivitySentence({ margins: { sensitivityPeak }, curve }: RideReport): string {
  const peak = sensitivityPeak.value.toFixed(2);
  const { frequencyHz, sensitivity } = curve;
  const end = sensitivity.findIndex((value) => value >= 0.5);
  const calm = end < 1 ? '' : `; up to ${hzText(frequencyHz[end]!)} the loop halves it or better`;
  return (
    `Sensitivity: a disturbance at ${radPerSText(sensitivityPeak.radPerS ?? 0)} comes out ${peak} times as large, ` +
    `the most${calm}.`
  );
}

/** Where the loop is nearest to being lost, by name; what stands at one place is named once. */
function marksOf({ margins }: RideReport): PlotMark[] {
  const places = [
    { name: 'phase', radPerS: margins.phaseRad.radPerS },
    { name: 'delay', radPerS: margins.delayS.radPerS },
    { name: 'gain up', radPerS: margins.gainUp.radPerS },
    { name: 'gain down', radPerS: margins.gainDown.radPerS },
  ];
  const marks: PlotMark[] = [];
  for (const { name, radPerS } of places) {
    if (radPerS === null) continue;
    const timeS = radPerSAsLogHz(radPerS);
    const there = marks.find((mark) => mark.timeS === timeS);
    if (there === undefined) marks.push({ name, timeS });
    else there.name += `, ${name}`;
  }
  return marks;
}

function gainScale({ curve }: RideReport): Scale {
  const most = decibels(Math.max(...curve.gain));
  const high = MOST_DB_LADDER.find((rung) => rung >= most) ?? MOST_DB_LADDER.at(-1)!;
  const values = Array.from({ length: (high - LEAST_DB) / 20 + 1 }, (_, index) => LEAST_DB + 20 * index);
  const ticks = [0, high, LEAST_DB, ...values].map((value) => ({ value, text: `${value} dB` }));
  return { low: LEAST_DB, high, ticks };
}

function sensitivityScale({ margins }: RideReport): Scale {
  const most = margins.sensitivityPeak.value;
  const high = SENSITIVITY_LADDER.find((rung) => rung >= most) ?? SENSITIVITY_LADDER.at(-1)!;
  const ticks = [...new Set([1, high, 0, high / 2])].map((value) => ({ value, text: `${value}` }));
  return { low: 0, high, ticks };
}

/** Two rows: the axis with a tick at each labelled frequency, then the frequencies. */
function frequencyAxisRows(frame: PlotFrame): string[] {
  const glyphs = glyphsOf(frame);
  const columns = plotColumns(frame);
  const places = LABELLED_HZ.map((frequencyHz) => ({
    text: `${frequencyHz}`,
    column: columnOf(Math.log10(frequencyHz), frame),
  })).filter(({ column }) => column >= 0 && column < columns);
  const ticks = new Set(places.map(({ column }) => column));
  const line: Piece[] = Array.from({ length: columns }, (_, column) => ({
    text: ticks.has(column) ? glyphs.tick : glyphs.line,
    style: 'dim',
  }));
  const offset = frame.gutterWidth + 2;
  let numbers = '';
  places.forEach(({ text, column }, index) => {
    const label = index === places.length - 1 ? `${text} Hz` : text;
    const start = Math.min(column, columns - label.length);
    if (offset + start > numbers.length) numbers = numbers.padEnd(offset + start) + label;
  });
  return [paintedLine([...gutterPieces('', glyphs.corner, frame), ...line], frame.paint), numbers];
}
