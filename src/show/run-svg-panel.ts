/**
 * How is one panel of a run's picture drawn? A box with a scale, labels with units, the lines
 * thinned without losing a peak, and below the current a row for every ceiling that cut it.
 */
import type { Ceiling, Tape } from '../simulate/tape.js';
import { decimated } from './extremes.js';
import type { TimeSpan } from './plot-frame.js';
import { ceilingAt, recorded } from './run-view.js';
import type { RunPanel } from './run-view.js';
import { svgNumber, svgText } from './svg-text.js';

/** Where a panel lies in the picture [px], and the time it shows. */
export interface PanelBox {
  left: number;
  top: number;
  width: number;
  height: number;
  span: TimeSpan;
}

/** Most points that one line of a picture has. */
export const MOST_POINTS = 1200;

/** Space between a box and its rows of cuts [px]; the lowest label of the scale reaches into it. */
export const CUT_ROWS_GAP = 14;

/** Height of a row that shows where a ceiling cut the request [px]. */
export const CUT_ROW_HEIGHT = 14;

const LINE_CLASSES: Readonly<Record<string, string>> = {
  'set-point': 'set-point',
  'upper ceiling': 'ceiling',
  'lower ceiling': 'ceiling',
};

/** The place of a moment [px]. */
export function xOf(timeS: number, box: PanelBox): number {
  const { fromS, toS } = box.span;
  return box.left + ((timeS - fromS) / (toS > fromS ? toS - fromS : 1)) * box.width;
}

/** The height of a value [px], kept inside the box. */
function yOf(value: number, panel: RunPanel, box: PanelBox): number {
  const { low, high } = panel.scale;
  const share = Math.min(1, Math.max(0, (high - value) / (high - low)));
  return box.top + share * box.height;
}

/** One line of a panel as a path. */
function linePath(line: RunPanel['lines'][number], panel: RunPanel, box: PanelBox): string {
  const points = decimated(line, MOST_POINTS).map((index) => {
    const x = svgNumber(xOf(line.timeS[index] ?? 0, box));
    return `${x},${svgNumber(yOf(line.values[index] ?? 0, panel, box))}`;
  });
  if (points.length === 0) return '';
  const kind = LINE_CLASSES[line.name] ?? 'line';
  return `<path class="${kind}" d="M${points.join(' ')}"><title>${svgText(line.name)}</title></path>`;
}

/** The lines of the scale and their labels. */
function scaleMarks(panel: RunPanel, box: PanelBox): string[] {
  const right = svgNumber(box.left + box.width);
  return panel.scale.ticks.flatMap(({ value, text }) => {
    const y = yOf(value, panel, box);
    const level = svgNumber(y);
    return [
      `<path class="${value === 0 ? 'zero' : 'grid'}" d="M${svgNumber(box.left)},${level} H${right}"/>`,
      `<text class="tick end" x="${svgNumber(box.left - 8)}" y="${svgNumber(y + 4)}">${svgText(text)}</text>`,
    ];
  });
}

/** The box of a panel with scale and lines. */
export function panelSvg(panel: RunPanel, box: PanelBox): string[] {
  const { left, top, width, height } = box;
  const [x, y, wide, high] = [left, top, width, height].map(svgNumber);
  const lines = panel.lines.map((line) => linePath(line, panel, box)).filter((path) => path !== '');
  return [
    ...scaleMarks(panel, box),
    `<rect class="box" x="${x}" y="${y}" width="${wide}" height="${high}"/>`,
    ...lines,
  ];
}

/**
 * The stretches of pixels in which one ceiling cut the request, first pixel and the one after the
 * last.
 */
function cutStretches(tape: Tape, ceiling: Ceiling, box: PanelBox): [number, number][] {
  const timeS = recorded(tape, 'timeS');
  const stretches: [number, number][] = [];
  timeS.forEach((time, row) => {
    if (ceilingAt(tape, row) !== ceiling) return;
    const pixel = Math.min(Math.floor(xOf(time, box)), box.left + box.width - 1);
    const last = stretches.at(-1);
    if (last !== undefined && pixel <= last[1]) last[1] = pixel + 1;
    else stretches.push([pixel, pixel + 1]);
  });
  return stretches;
}

/** One row for each ceiling that cut the request, from `box.top + box.height` down, with its name. */
export function cutRows(tape: Tape, ceilings: readonly Ceiling[], box: PanelBox): string[] {
  return ceilings.flatMap((ceiling, index) => {
    const top = box.top + box.height + CUT_ROWS_GAP + index * CUT_ROW_HEIGHT;
    const d = cutStretches(tape, ceiling, box)
      .map(([from, to]) => `M${svgNumber(from)},${svgNumber(top)}H${svgNumber(to)}v8H${svgNumber(from)}z`)
      .join('');
    const label = `<text class="tick end" x="${svgNumber(box.left - 8)}" y="${svgNumber(top + 8)}">`;
    return [`${label}cut by ${svgText(ceiling)}</text>`, `<path class="cut" d="${d}"/>`];
  });
}
