/**
 * How did pitch move before a change and after it? One panel with both lines over one another, each with its letter.
 */
import { DEG_PER_RAD } from '../quantity/units.js';
import { signAt } from './compare-run.js';
import { rangeOf } from './extremes.js';
import { gutterFor, type PlotFrame } from './plot-frame.js';
import { plotPanel, type PlotLine } from './plot.js';
import { outcomeText } from './run-sentences.js';
import { pitchText } from './quantities.js';
import { measuredSpan, recorded, runMarks, type RunView } from './run-view.js';
import { pitchScale } from './scale.js';
import { timeAxisRows } from './time-axis.js';

/** The pitch of two runs over a stretch of time: `height` rows, none wider than `width`; the first goes by A, the second by B. */
export function overlaidPitch(
  views: readonly [RunView, RunView],
  { height, ...options }: Pick<PlotFrame, 'width' | 'symbols' | 'paint' | 'span'> & { height: number },
): string[] {
  const lines = views.map(({ tape }, index): PlotLine => {
    const values = recorded(tape, 'pitchRad').map((rad) => rad * DEG_PER_RAD);
    return { timeS: recorded(tape, 'timeS'), values, line: 'solid', ...signAt(index) };
  });
  const ranges = lines.map(({ values }) => rangeOf(values));
  const scale = pitchScale({
    lowest: Math.min(...ranges.map(({ lowest }) => lowest)),
    highest: Math.max(...ranges.map(({ highest }) => highest)),
  });
  const gutterWidth = gutterFor(
    scale.ticks.map(({ text }) => text),
    options,
  );
  const [before] = views;
  const frame = { ...options, gutterWidth, marks: runMarks(before), window: measuredSpan(before) };
  const axis = timeAxisRows(frame);
  const rowCount = height - axis.length;
  return rowCount < 1
    ? []
    : [...plotPanel({ scale, lines, rowCount, tightLabels: rowCount < 4 }, frame), ...axis];
}

/** The overlaid picture in a sentence: how each of the two ended, and how far it tilted. */
export function overlaySentence([before, after]: readonly [RunView, RunView]): string {
  const said = ({ outcome, facts }: RunView) =>
    `${outcome.kind === 'upright' ? 'upright' : outcomeText(outcome)}${facts.isMeasured ? `, largest tilt ${pitchText(facts.peakPitchRad)}` : ''}`;
  return `A before: ${said(before)}; B after: ${said(after)}.`;
}
