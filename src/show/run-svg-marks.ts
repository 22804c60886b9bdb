/**
 * What stands around the panels of a run's picture? Events with their names, the measured window,
 * the time axis, and a legend of the kinds of line.
 */
import { plainText } from './plain-text.js';
import type { PlotMark, TimeSpan } from './plot-frame.js';
import { xOf } from './run-svg-panel.js';
import type { PanelBox } from './run-svg-panel.js';
import { timeTicks } from './scale.js';
import { svgNumber, svgText } from './svg-text.js';

/** Height of a row with names of events [px]. */
export const NAME_ROW_HEIGHT = 16;

/** Rough width of a character of an event's name [px]; names are only kept from touching with it. */
const NAME_CHARACTER = 7;

/** A mark with the row of its name; the name ends at the mark where it would not fit right of it. */
interface PlacedMark {
  mark: PlotMark;
  x: number;
  row: number;
  endsAtMark: boolean;
}

/** Places the names of the marks in as few rows as keep them apart. */
function placedMarks(marks: readonly PlotMark[], box: PanelBox): PlacedMark[] {
  const ends: number[] = [];
  const { fromS, toS } = box.span;
  const seen = marks.filter(({ timeS }) => timeS >= fromS && timeS <= toS);
  return seen
    .sort((a, b) => a.timeS - b.timeS)
    .map((mark) => {
      const x = xOf(mark.timeS, box);
      const width = plainText(mark.name).length * NAME_CHARACTER;
      const endsAtMark = x + width > box.left + box.width;
      const left = endsAtMark ? x - width : x;
      const free = ends.findIndex((end) => left > end + NAME_CHARACTER);
      const row = free === -1 ? ends.length : free;
      ends[row] = left + width;
      return { mark, x, row, endsAtMark };
    });
}

/** Rows that the names of the marks need. */
export function nameRowCount(marks: readonly PlotMark[], box: PanelBox): number {
  return Math.max(0, ...placedMarks(marks, box).map(({ row }) => row + 1));
}

/** The names of the marks above the box; the first row stands lowest. */
export function markNames(marks: readonly PlotMark[], box: PanelBox): string[] {
  return placedMarks(marks, box).map(({ mark, x, row, endsAtMark }) => {
    const kind = endsAtMark ? 'event-name end' : 'event-name';
    const y = svgNumber(box.top - 6 - row * NAME_ROW_HEIGHT);
    return `<text class="${kind}" x="${svgNumber(x)}" y="${y}">${svgText(mark.name)}</text>`;
  });
}

/** The dotted uprights of the marks through one box. */
export function markLines(marks: readonly PlotMark[], box: PanelBox): string[] {
  return placedMarks(marks, box).map(
    ({ x }) => `<path class="event" d="M${svgNumber(x)},${svgNumber(box.top)}v${svgNumber(box.height)}"/>`,
  );
}

/** The shade of the measured window in one box. */
export function windowShade(window: TimeSpan | null, box: PanelBox): string[] {
  if (window === null) return [];
  const from = xOf(window.fromS, box);
  const width = svgNumber(Math.max(1, xOf(window.toS, box) - from));
  const place = `x="${svgNumber(from)}" y="${svgNumber(box.top)}"`;
  return [`<rect class="window" ${place} width="${width}" height="${svgNumber(box.height)}"/>`];
}

/** Ticks and times [s] under the last box. */
export function timeAxis(box: PanelBox): string[] {
  const bottom = box.top + box.height;
  const ticks = timeTicks(box.span.fromS, box.span.toS, 10);
  return ticks.flatMap((timeS, index) => {
    const x = svgNumber(xOf(timeS, box));
    const number = String(timeS);
    const text = index === ticks.length - 1 ? `${number} s` : number;
    return [
      `<path class="box" d="M${x},${svgNumber(bottom)}v5"/>`,
      `<text class="tick middle" x="${x}" y="${svgNumber(bottom + 19)}">${svgText(text)}</text>`,
    ];
  });
}

/** A sample of each kind of line with its name, in one row whose middle is `y`. */
export function legend(left: number, y: number, hasMarks: boolean): string[] {
  const kinds = [
    { kind: 'line', text: 'pitch, current, speed' },
    { kind: 'set-point', text: 'set-point' },
    { kind: 'ceiling', text: 'ceilings' },
    ...(hasMarks ? [{ kind: 'event', text: 'event' }] : []),
    { kind: 'window', text: 'measured' },
  ];
  let x = left;
  return kinds.flatMap(({ kind, text }) => {
    const start = x;
    x += 34 + 7 * text.length + 24;
    const sample =
      kind === 'window'
        ? `<rect class="window" x="${svgNumber(start)}" y="${svgNumber(y - 7)}" width="26" height="14"/>`
        : `<path class="${kind}" d="M${svgNumber(start)},${svgNumber(y)}h26"/>`;
    return [
      sample,
      `<text class="quiet" x="${svgNumber(start + 34)}" y="${svgNumber(y + 4)}">${svgText(text)}</text>`,
    ];
  });
}
