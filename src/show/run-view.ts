/**
 * What is there to see in one run? The view that run-plot draws in a terminal and run-svg in a
 * picture: three panels with their lines in shown units, their fixed scales and the ceilings that
 * cut the request.
 */
import { DEG_PER_RAD } from '../quantity/units.js';
import type { Outcome } from '../simulate/outcome.js';
import { CEILINGS } from '../simulate/tape.js';
import type { Ceiling, Tape, TapeColumn } from '../simulate/tape.js';
import { rangeOf } from './extremes.js';
import type { PlotMark, TimeSpan } from './plot-frame.js';
import type { PlotLine } from './plot.js';
import { speedIn } from './quantities.js';
import type { SpeedUnit } from './quantities.js';
import { currentSentence, pitchSentence, speedSentence } from './run-sentences.js';
import type { RunFacts } from './run-sentences.js';
import { currentScale, pitchScale, speedScale } from './scale.js';
import type { Scale } from './scale.js';

/** One run to be shown: rows `firstRow` up to but without `endRow` of the tape were measured. */
export interface RunView {
  title: string;
  tape: Tape;
  firstRow: number;
  endRow: number;
  marks: readonly PlotMark[];
  outcome: Outcome;
  facts: RunFacts;
  /** What the scales of pitch and current hold besides the run itself, so that several runs share them. */
  scaleRanges?: { pitchDeg?: Range; currentA?: Range };
}

/** From the lowest to the highest of some values. */
export interface Range {
  lowest: number;
  highest: number;
}

/** One panel of a run: its sentence, its scale, its lines in the scale's unit. */
export interface RunPanel {
  name: 'pitch' | 'current' | 'speed';
  sentence: string;
  scale: Scale;
  lines: (PlotLine & { name: string })[];
}

/** The valid rows of one column. */
export function recorded(tape: Tape, column: TapeColumn): Float64Array {
  return tape.columns[column].subarray(0, tape.length);
}

/** The stretch of time on the tape; null for an empty tape. */
export function tapeSpan(tape: Tape): TimeSpan | null {
  const timeS = recorded(tape, 'timeS');
  const fromS = timeS[0];
  const toS = timeS.at(-1);
  return fromS === undefined || toS === undefined ? null : { fromS, toS };
}

/** The measured stretch of time; null where no row was measured. */
export function measuredSpan(view: RunView): TimeSpan | null {
  const timeS = recorded(view.tape, 'timeS').subarray(view.firstRow, view.endRow);
  const fromS = timeS[0];
  const toS = timeS.at(-1);
  return fromS === undefined || toS === undefined ? null : { fromS, toS };
}

/**
 * The marks of a run, and where it ended if it did not end upright; that lies on the tape at the
 * latest.
 */
export function runMarks(view: RunView): PlotMark[] {
  const { kind, atS } = view.outcome;
  const span = tapeSpan(view.tape);
  if (kind === 'upright' || span === null) return [...view.marks];
  return [...view.marks, { name: kind, timeS: Math.min(atS, span.toS) }];
}

/** The ceiling that cut the request at a row; null where none did. */
export function ceilingAt(tape: Tape, row: number): Exclude<Ceiling, 'none'> | null {
  const code = tape.columns.bindingCeiling[row] ?? 0;
  const ceiling = CEILINGS[code];
  if (ceiling === undefined) throw new Error(`no ceiling has the code ${code}`);
  return ceiling === 'none' ? null : ceiling;
}

/** The ceilings that cut a request anywhere on the tape, in the order of their codes. */
export function ceilingsMet(tape: Tape): Exclude<Ceiling, 'none'>[] {
  const met = new Set<Ceiling>();
  for (let row = 0; row < tape.length; row += 1) {
    const ceiling = ceilingAt(tape, row);
    if (ceiling !== null) met.add(ceiling);
  }
  return CEILINGS.filter((ceiling) => ceiling !== 'none' && met.has(ceiling)) as Exclude<Ceiling, 'none'>[];
}

/** The range over several lines, zero among it, and what else a scale is to hold. */
function rangeOver(lines: readonly PlotLine[], others: readonly Range[] = []): Range {
  const ranges = [...lines.map((line) => rangeOf(line.values)), ...others];
  return {
    lowest: Math.min(...ranges.map(({ lowest }) => lowest)),
    highest: Math.max(...ranges.map(({ highest }) => highest)),
  };
}

/** The lines of each panel, in shown units; later ones lie on top. */
function runLines(tape: Tape, speedUnit: SpeedUnit): Record<RunPanel['name'], RunPanel['lines']> {
  const timeS = recorded(tape, 'timeS');
  const drawn = (name: string, column: TapeColumn, convert = (value: number) => value) => ({
    name,
    timeS,
    values: recorded(tape, column).map(convert),
  });
  const degrees = (rad: number) => rad * DEG_PER_RAD;
  const dotted = { line: 'dotted', style: 'dim' } as const;
  const solid = { line: 'solid', style: 'accent' } as const;
  return {
    pitch: [
      { ...drawn('set-point', 'setPointRad', degrees), ...dotted },
      { ...drawn('pitch', 'pitchRad', degrees), ...solid },
    ],
    current: [
      { ...drawn('upper ceiling', 'upperCeilingA'), ...dotted },
      { ...drawn('lower ceiling', 'lowerCeilingA'), ...dotted },
      { ...drawn('current', 'currentA'), ...solid },
    ],
    speed: [{ ...drawn('speed', 'speedMPerS', (value) => speedIn(value, speedUnit)), ...solid }],
  };
}

/** Pitch, current under its ceilings, and speed. */
export function runPanels(view: RunView, speedUnit: SpeedUnit): [RunPanel, RunPanel, RunPanel] {
  const { pitch, current, speed } = runLines(view.tape, speedUnit);
  const { pitchDeg, currentA } = view.scaleRanges ?? {};
  const besides = (range: Range | undefined) => (range === undefined ? [] : [range]);
  const measuredSpeed = recorded(view.tape, 'speedMPerS').subarray(view.firstRow, view.endRow);
  return [
    {
      name: 'pitch',
      sentence: pitchSentence(view.facts, view.outcome),
      scale: pitchScale(rangeOver(pitch, besides(pitchDeg))),
      lines: pitch,
    },
    {
      name: 'current',
      sentence: currentSentence(view.facts),
      scale: currentScale(rangeOver(current, besides(currentA))),
      lines: current,
    },
    {
      name: 'speed',
      sentence: speedSentence(measuredSpeed, speedUnit),
      scale: speedScale(rangeOver(speed), speedUnit),
      lines: speed,
    },
  ];
}
