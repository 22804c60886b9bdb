/**
 * Which lines lie over one another in a comparison? Pitch, current, speed and lean of every profile, each with the
 * profile's letter and colour, on scales that hold all runs from end to end.
 */
import type { Parting } from '../measure/parting.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import type { TapeColumn } from '../simulate/tape.js';
import { signAt, type ComparedRun } from './compare-run.js';
import { rangeOf } from './extremes.js';
import type { PlotMark, TimeSpan } from './plot-frame.js';
import type { PlotLine } from './plot.js';
import { speedIn, type SpeedUnit } from './quantities.js';
import { measuredSpan, recorded, tapeSpan } from './run-view.js';
import { currentScale, leanScale, pitchScale, speedScale, type Scale } from './scale.js';

/** Panels of a comparison, the most telling first. */
export const COMPARE_PANELS = ['pitch', 'current', 'speed', 'lean'] as const;

/** One panel: its fixed scale and one line a profile, the restless ones first so that the calm ones lie on top. */
export interface ComparePanel {
  name: (typeof COMPARE_PANELS)[number];
  scale: Scale;
  lines: PlotLine[];
}

/** Moments of one event that lie this share of the time apart at most are drawn as one. */
const ONE_MOMENT_SHARE = 0.01;

/** Least and greatest value of some lines. */
interface Range {
  lowest: number;
  highest: number;
}

/** The panels, in the order of COMPARE_PANELS. */
export function comparePanels(runs: readonly ComparedRun[], speedUnit: SpeedUnit): ComparePanel[] {
  const degrees = (rad: number) => rad * DEG_PER_RAD;
  const panel = (
    name: ComparePanel['name'],
    from: { column: TapeColumn; convert: (value: number) => number },
    scaleOf: (range: Range) => Scale,
  ): ComparePanel => {
    const lines = runs.map(({ view }, index): PlotLine => {
      const { letter, style } = signAt(index);
      const values = recorded(view.tape, from.column).map(from.convert);
      return { timeS: recorded(view.tape, 'timeS'), values, line: 'solid', style, letter };
    });
    const ranges = lines.map(({ values }) => rangeOf(values));
    const lowest = Math.min(...ranges.map((range) => range.lowest));
    const highest = Math.max(...ranges.map((range) => range.highest));
    return { name, scale: scaleOf({ lowest, highest }), lines: restlessFirst(lines) };
  };
  const current = { column: 'currentA', convert: Number } as const;
  const speed = {
    column: 'speedMPerS',
    convert: (value: number) => speedIn(value, speedUnit),
  } as const;
  return [
    panel('pitch', { column: 'pitchRad', convert: degrees }, sided(pitchScale)),
    panel('current', current, currentScale),
    panel('speed', speed, (range) => speedScale(range, speedUnit)),
    panel('lean', { column: 'leanRad', convert: degrees }, sided(leanScale)),
  ];
}

/** Lines by how far their values move up and down in all, the most first. */
function restlessFirst(lines: readonly PlotLine[]): PlotLine[] {
  const moved = lines.map((line) => ({ line, distance: distanceOf(line.values) }));
  return moved.toSorted((a, b) => b.distance - a.distance).map(({ line }) => line);
}

function distanceOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let index = 1; index < values.length; index += 1) {
    sum += Math.abs((values[index] ?? 0) - (values[index - 1] ?? 0));
  }
  return sum;
}

/**
 * A scale that reaches as far on each side of zero as the lines do, by the rungs of a scale with zero in its middle: the
 * few rows that there are go to where the lines differ.
 */
function sided(scaleOf: (range: Range) => Scale): (range: Range) => Scale {
  return ({ lowest, highest }) => {
    const above = scaleOf({ lowest: 0, highest });
    const below = scaleOf({ lowest, highest: 0 });
    const inner = [
      ...above.ticks.filter(({ value }) => value > 0 && value < above.high),
      ...below.ticks.filter(({ value }) => value < 0 && value > below.low),
    ];
    // Zero goes before the ends where a few rows cannot hold all labels.
    const zero = above.ticks.filter(({ value }) => value === 0);
    const ends = [...above.ticks, ...below.ticks].filter(
      ({ value }) => value === above.high || value === below.low,
    );
    const seen = new Map([...zero, ...ends, ...inner].map((tick) => [tick.value, tick]));
    const ticks = [...seen.values()];
    return { low: below.low, high: above.high, ticks };
  };
}

/** The stretch of time over all tapes; null where nothing was recorded. */
export function compareSpan(runs: readonly ComparedRun[]): TimeSpan | null {
  return spanOver(runs.map(({ view }) => tapeSpan(view.tape)));
}

/** The measured stretch over all runs; null where nothing was measured. */
export function compareWindow(runs: readonly ComparedRun[]): TimeSpan | null {
  return spanOver(runs.map(({ view }) => measuredSpan(view)));
}

function spanOver(spans: readonly (TimeSpan | null)[]): TimeSpan | null {
  const known = spans.filter((span) => span !== null);
  if (known.length === 0) return null;
  return {
    fromS: Math.min(...known.map(({ fromS }) => fromS)),
    toS: Math.max(...known.map(({ toS }) => toS)),
  };
}

/**
 * Marks of the parting, of falls and of events, in this order. An event that comes at nearly one moment in all runs has
 * one mark, else one with each profile's letter; the start needs none.
 */
export function compareMarks(runs: readonly ComparedRun[], parting: Parting | null): PlotMark[] {
  const span = compareSpan(runs);
  if (span === null) return [];
  const falls = runs.flatMap(({ view }, index): PlotMark[] => {
    const { kind, atS } = view.outcome;
    const name = `${signAt(index).letter} ${kind}`;
    return kind === 'upright' ? [] : [{ name, timeS: Math.min(atS, tapeSpan(view.tape)?.toS ?? 0) }];
  });
  return [
    ...partingMarks(parting),
    ...falls,
    ...eventMarks(runs, (span.toS - span.fromS) * ONE_MOMENT_SHARE),
  ];
}

/** The upright at which two of the runs part; runs that are apart from the start need none. */
function partingMarks(parting: Parting | null): PlotMark[] {
  if (parting === null || parting.row === 0) return [];
  const letters = parting.between.map((index) => signAt(index).letter);
  return [{ name: `${letters.join(' ')} part`, timeS: parting.timeS }];
}

function eventMarks(runs: readonly ComparedRun[], oneMomentS: number): PlotMark[] {
  const names = new Set(runs.flatMap(({ view }) => view.marks.map(({ name }) => name)));
  return [...names].flatMap((name): PlotMark[] => {
    const met = runs.flatMap(({ view }, index) => {
      const mark = view.marks.find((candidate) => candidate.name === name && candidate.timeS > 0);
      return mark === undefined ? [] : [{ letter: signAt(index).letter, timeS: mark.timeS }];
    });
    const times = met.map(({ timeS }) => timeS);
    if (met.length === 0) return [];
    const isOne = Math.max(...times) - Math.min(...times) <= oneMomentS;
    if (isOne) return [{ name, timeS: Math.min(...times) }];
    return met.map(({ letter, timeS }) => ({ name: `${name} ${letter}`, timeS }));
  });
}
