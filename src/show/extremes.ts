/**
 * What is the least and the greatest value in each column of a plot? A column covers many samples; its
 * whole range is drawn, so that no peak is lost, and straight lines between samples join the columns.
 */

/** A sampled line: times [s], rising, and values in any unit. */
export interface SampledLine {
  timeS: ArrayLike<number>;
  values: ArrayLike<number>;
}

/** The stretch of time [s] that a plot shows, and its columns. */
export interface ColumnSpan {
  fromS: number;
  toS: number;
  columnCount: number;
}

/** Least and greatest value of each column; a column without one has +Infinity and -Infinity. */
export interface Extremes {
  lowest: Float64Array;
  highest: Float64Array;
}

function extend(found: Extremes, column: number, value: number): void {
  if (value < (found.lowest[column] ?? 0)) found.lowest[column] = value;
  if (value > (found.highest[column] ?? 0)) found.highest[column] = value;
}

/** The range of the straight line from one sample to the next in each column that it passes. */
function joinSamples(found: Extremes, from: readonly [number, number], to: readonly [number, number]): void {
  const columnCount = found.lowest.length;
  const [startAt, startValue] = from;
  const [endAt, endValue] = to;
  const last = Math.min(columnCount - 1, Math.floor(endAt));
  for (let column = Math.max(0, Math.floor(startAt)); column <= last; column += 1) {
    for (const edge of [Math.max(startAt, column), Math.min(endAt, column + 1)]) {
      const share = endAt > startAt ? (edge - startAt) / (endAt - startAt) : 1;
      extend(found, column, startValue + (endValue - startValue) * share);
    }
  }
}

/** Least and greatest value of a line in each column; samples that are no finite number leave a gap. */
export function columnExtremes(line: SampledLine, span: ColumnSpan): Extremes {
  const { fromS, toS, columnCount } = span;
  const found = {
    lowest: new Float64Array(columnCount).fill(Infinity),
    highest: new Float64Array(columnCount).fill(-Infinity),
  };
  const columnsPerS = columnCount / (toS > fromS ? toS - fromS : 1);
  let previous: readonly [number, number] | null = null;
  for (let index = 0; index < line.timeS.length; index += 1) {
    const at = ((line.timeS[index] ?? NaN) - fromS) * columnsPerS;
    const value = line.values[index] ?? NaN;
    if (!Number.isFinite(at) || !Number.isFinite(value)) {
      previous = null;
      continue;
    }
    if (at >= 0 && at <= columnCount) extend(found, Math.min(columnCount - 1, Math.floor(at)), value);
    if (previous !== null && at >= 0 && previous[0] <= columnCount) joinSamples(found, previous, [at, value]);
    previous = [at, value];
  }
  return found;
}

/** Least and greatest finite value of a list, with `start` among them. */
export function rangeOf(values: ArrayLike<number>, start = 0): { lowest: number; highest: number } {
  let lowest = start;
  let highest = start;
  for (let index = 0; index < values.length; index += 1) {
    const value = values[index] ?? NaN;
    if (!Number.isFinite(value)) continue;
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return { lowest, highest };
}

/**
 * The indexes of at most `most` samples (six or more) that keep the first, the last and every peak:
 * the least and the greatest of each of equal stretches, in order. Samples that are no finite
 * number are left out.
 */
export function decimated(line: SampledLine, most: number): number[] {
  const finite: number[] = [];
  for (let index = 0; index < line.timeS.length; index += 1) {
    if (Number.isFinite(line.timeS[index]) && Number.isFinite(line.values[index])) finite.push(index);
  }
  if (finite.length <= most) return finite;
  const stretchCount = Math.floor((most - 2) / 2);
  const kept = new Set([finite[0] ?? 0, finite.at(-1) ?? 0]);
  for (let stretch = 0; stretch < stretchCount; stretch += 1) {
    const start = Math.floor((stretch * finite.length) / stretchCount);
    const end = Math.floor(((stretch + 1) * finite.length) / stretchCount);
    let least = finite[start] ?? 0;
    let greatest = least;
    for (const index of finite.slice(start, end)) {
      if ((line.values[index] ?? 0) < (line.values[least] ?? 0)) least = index;
      if ((line.values[index] ?? 0) > (line.values[greatest] ?? 0)) greatest = index;
    }
    kept.add(least).add(greatest);
  }
  return [...kept].sort((a, b) => a - b);
}
