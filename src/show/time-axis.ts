/**
 * What stands above and below the panels of a plot? Above, the names of the events; below, the time in
 * seconds, drawn heavy over the window that was measured.
 */
import { paintedLine } from './cell-grid.js';
import type { Piece } from './cell-grid.js';
import { padded, textWidth, truncated } from './fit-text.js';
import { plainText } from './plain-text.js';
import { columnInSight, columnOf, glyphsOf, gutterPieces, plotColumns } from './plot-frame.js';
import type { PlotFrame } from './plot-frame.js';
import { timeTicks } from './scale.js';

/** A text that claims the columns from `start`. */
interface Placed {
  start: number;
  text: string;
}

/** A row of texts that do not overlap, each at its column. */
function placedRow(texts: readonly Placed[], offset: number): string {
  let row = '';
  for (const { start, text } of texts) row = padded(row, offset + start) + text;
  return row.trimEnd();
}

/** Where a name of a mark goes: right of its upright, or left of it at the right edge. */
function nameAt(name: string, column: number, frame: PlotFrame): Placed {
  const columns = plotColumns(frame);
  const text = truncated(plainText(name), columns, glyphsOf(frame).ellipsis);
  return { start: Math.max(0, Math.min(column, columns - textWidth(text))), text };
}

/** One row, or two where they would collide, with the names of the marks over their uprights. */
export function markNameRows(frame: PlotFrame): string[] {
  const columns = plotColumns(frame);
  const seen = frame.marks
    .map((mark) => ({ name: mark.name, column: columnOf(mark.timeS, frame) }))
    .filter(({ column }) => column >= 0 && column < columns)
    .sort((a, b) => a.column - b.column);
  const rows: Placed[][] = [[], []];
  for (const { name, column } of seen) {
    const placed = nameAt(name, column, frame);
    const free = rows.find((row) => {
      const last = row.at(-1);
      return last === undefined || placed.start > last.start + textWidth(last.text);
    });
    free?.push(placed);
  }
  const used = rows.filter((row) => row.length > 0).toReversed();
  return used.map((row) => frame.paint.dim(placedRow(row, frame.gutterWidth + 2)));
}

/** The columns of the measured window, first and last, or null where it is not in sight. */
function windowColumns(frame: PlotFrame): [number, number] | null {
  if (frame.window === null) return null;
  const last = plotColumns(frame) - 1;
  const from = Math.max(0, columnOf(frame.window.fromS, frame));
  const to = Math.min(last, columnOf(frame.window.toS, frame));
  return from <= to ? [from, to] : null;
}

/**
 * The line of the axis: ticks, the measured window heavy and named where its name fits, and an arrow that
 * points up at the cursor.
 */
function axisLine(frame: PlotFrame, tickColumns: ReadonlySet<number>, cursor: number | null): Piece[] {
  const glyphs = glyphsOf(frame);
  const measured = windowColumns(frame);
  const characters = Array.from({ length: plotColumns(frame) }, (_, column) => {
    const heavy = measured !== null && column >= measured[0] && column <= measured[1];
    if (heavy) return tickColumns.has(column) ? glyphs.heavyTick : glyphs.heavyLine;
    return tickColumns.has(column) ? glyphs.tick : glyphs.line;
  });
  const name = ' measured ';
  const room = measured === null ? 0 : measured[1] - measured[0] + 1;
  if (measured !== null && room >= name.length + 6) {
    const start = measured[0] + Math.floor((room - name.length) / 2);
    characters.splice(start, name.length, ...name);
  }
  return characters.map((text, column) =>
    column === cursor ? { text: glyphs.above, style: 'bold' } : { text, style: 'dim' },
  );
}

/** Two rows: the line with its ticks and the cursor at a time [s], if there is one, then the times [s]. */
export function timeAxisRows(frame: PlotFrame, cursorS: number | null = null): string[] {
  const columns = plotColumns(frame);
  const { fromS, toS } = frame.span;
  const ticks = timeTicks(fromS, toS, Math.max(1, Math.floor(columns / 8)));
  const placed: Placed[] = [];
  ticks.forEach((timeS, index) => {
    const number = String(timeS);
    const text = index === ticks.length - 1 ? `${number} s` : number;
    const centred = columnOf(timeS, frame) - Math.floor((number.length - 1) / 2);
    const start = Math.max(-frame.gutterWidth, Math.min(centred, columns - text.length));
    const last = placed.at(-1);
    if (last === undefined || start > last.start + last.text.length) placed.push({ start, text });
  });
  const tickColumns = new Set(ticks.map((timeS) => columnOf(timeS, frame)));
  const cursor = cursorS === null ? null : columnInSight(cursorS, frame);
  const corner = gutterPieces('', glyphsOf(frame).corner, frame);
  const line = [...corner, ...axisLine(frame, tickColumns, cursor)];
  return [paintedLine(line, frame.paint), placedRow(placed, frame.gutterWidth + 2)];
}
