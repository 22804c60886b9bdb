/**
 * What does the picture of a trace show of one run? The panels of run-view, the rider's lean and the road under
 * the wheel besides, and which row of the tape lies under the cursor.
 */
import type { Plant } from '../model/plant.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import type { Road } from '../scenario/road.js';
import { rangeOf } from './extremes.js';
import type { PlotLine } from './plot.js';
import type { SpeedUnit } from './quantities.js';
import { measuredSpan, recorded, runPanels } from './run-view.js';
import type { RunView } from './run-view.js';
import { heightScale, leanScale } from './scale.js';
import type { Scale } from './scale.js';
import { roadHeightsM } from './trace-road.js';
import { leanSentence, roadSentence } from './trace-sentences.js';

/** What of a rig can be seen from the side, m. */
export type RigShape = Pick<
  Plant,
  'wheelRadiusM' | 'ankleAboveAxleM' | 'reachM' | 'tipBelowAxleM' | 'legLengthM' | 'halfStanceM'
>;

/** The bare road: heights [m], evenly spaced from its origin on. */
export type RoadGrid = Pick<Road, 'originM' | 'spacingM' | 'bareHeightM'>;

/**
 * One run to be looked into. The settled band lies about `finalPitchRad`, which is null where the measured
 * window was cut short.
 */
export interface TraceView extends RunView {
  rig: RigShape;
  road: RoadGrid;
  finalPitchRad: number | null;
}

/** A run to be looked into without its rig and its road. */
export type BandedView = Omit<TraceView, 'rig' | 'road'>;

/** One panel of a trace: its sentence, its scale, its lines in the scale's unit. */
export interface TracePanel {
  name: 'pitch' | 'lean' | 'current' | 'speed' | 'road';
  sentence: string;
  scale: Scale;
  lines: readonly PlotLine[];
}

/** The row of the tape nearest to a time [s], the first or the last for a time off the tape; 0 for an empty tape. */
export function rowAt({ tape }: Pick<TraceView, 'tape'>, timeS: number): number {
  const startS = tape.columns.timeS[0] ?? 0;
  const row = Math.round((timeS - startS) / tape.tickS);
  return Math.max(0, Math.min(tape.length - 1, Number.isFinite(row) ? row : 0));
}

/** The two edges of the settled band over the measured window [deg]; none where there is no final pitch. */
export function bandLines(view: BandedView): PlotLine[] {
  const measured = measuredSpan(view);
  if (measured === null || view.finalPitchRad === null) return [];
  const timeS = [measured.fromS, measured.toS];
  return [1, -1].map((side) => {
    const edgeDeg = ((view.finalPitchRad ?? 0) + side * view.facts.bandRad) * DEG_PER_RAD;
    return { timeS, values: [edgeDeg, edgeDeg], line: 'dashed', style: 'dim' };
  });
}

function leanPanel(view: TraceView): TracePanel {
  const { tape, firstRow, endRow } = view;
  const leanRad = recorded(tape, 'leanRad');
  const values = leanRad.map((rad) => rad * DEG_PER_RAD);
  return {
    name: 'lean',
    sentence: leanSentence(leanRad.subarray(firstRow, endRow)),
    scale: leanScale(rangeOf(values)),
    lines: [{ timeS: recorded(tape, 'timeS'), values, line: 'solid', style: 'accent' }],
  };
}

function roadPanel(view: TraceView): TracePanel {
  const values = roadHeightsM(view.road, recorded(view.tape, 'positionM'));
  return {
    name: 'road',
    sentence: roadSentence(values.subarray(view.firstRow, view.endRow)),
    scale: heightScale(rangeOf(values)),
    lines: [{ timeS: recorded(view.tape, 'timeS'), values, line: 'solid', style: null }],
  };
}

/** Pitch with its set-point and settled band, lean, current under its ceilings, speed, and the road. */
export function tracePanels(view: TraceView, speedUnit: SpeedUnit): TracePanel[] {
  const [pitch, current, speed] = runPanels(view, speedUnit);
  return [
    { ...pitch, lines: [...bandLines(view), ...pitch.lines] },
    leanPanel(view),
    current,
    speed,
    roadPanel(view),
  ];
}

/** One sentence for each panel, in the order in which they stand. */
export function traceSentences(view: TraceView, speedUnit: SpeedUnit): { name: string; sentence: string }[] {
  return tracePanels(view, speedUnit).map(({ name, sentence }) => ({ name, sentence }));
}
