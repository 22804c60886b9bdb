/**
 * How do board and rider look from the side at one moment? Drawn to scale, forward to the right: the road, the
 * wheel with a spoke that turns, the deck tilted by its pitch, the rider leaning; dotted, what level and
 * upright would be.
 */
import { gridRow, paintedLine } from './cell-grid.js';
import type { Piece } from './cell-grid.js';
import type { Paint } from './colour.js';
import { textWidth } from './fit-text.js';
import { GLYPHS } from './glyphs.js';
import type { Glyphs, SymbolSet } from './glyphs.js';
import type { SpeedUnit } from './quantities.js';
import {
  cellOf,
  createCanvas,
  dotSizeM,
  drawCircle,
  drawPath,
  drawStraight,
  drawWord,
} from './side-view-canvas.js';
import type { Canvas, Stroke } from './side-view-canvas.js';
import { figureOf, headTopM } from './side-view-figure.js';
import type { Figure } from './side-view-figure.js';
import { roadHeightM, roadSlopeRatio } from './trace-road.js';
import { sideSentence } from './trace-sentences.js';
import type { TraceView } from './trace-view.js';

/** How the view from the side is to be drawn; width and height in columns and rows, the scale's row among them. */
export interface SideViewOptions {
  width: number;
  height: number;
  symbols: SymbolSet;
  paint: Paint;
}

/** Rows from which on the whole rider is drawn; below, up to his centre of mass. */
const WHOLE_RIDER_ROWS = 15;

/** Road that is seen under the wheel, and air over the rider, m. */
const BELOW_M = 0.13;
const ABOVE_M = 0.06;

/** Radius of the body that stands for a rider drawn up to his centre of mass, m. */
const BODY_RADIUS_M = 0.11;

/** Half the width of a rider's trunk, m. */
const HALF_TRUNK_M = 0.07;

const PLAIN: Stroke = { line: 'solid', style: null };
const DECK: Stroke = { line: 'solid', style: 'accent' };
const RIDER: Stroke = { line: 'solid', style: 'bold' };
const GUIDE: Stroke = { line: 'dotted', style: 'dim' };

function figureAt({ tape, rig }: TraceView, row: number): Figure {
  const value = (column: keyof typeof tape.columns) => tape.columns[column][row] ?? NaN;
  return figureOf(rig, {
    positionM: value('positionM'),
    axleHeightM: value('axleHeightM'),
    pitchRad: value('pitchRad'),
    leanRad: value('leanRad'),
    legLengthM: value('legLengthM'),
  });
}

/** The bare road across the canvas. */
function drawRoad(canvas: Canvas, view: TraceView): void {
  const { widthM } = dotSizeM(canvas);
  const count = canvas.grid.columnCount * canvas.grid.glyphs.dotsWide;
  const points = Array.from({ length: count }, (_, index) => {
    const x = canvas.leftM + (index + 0.5) * widthM;
    return { x, z: roadHeightM(view.road, x) };
  });
  drawPath(canvas, points, PLAIN);
}

/** Level through the axle as far as `reachM` each way, and upright over the ankles. */
function drawGuides(canvas: Canvas, figure: Figure, reachM: number): void {
  const { axle, ankles } = figure;
  const level = [-1, 1].map((side) => ({ x: axle.x + side * reachM, z: axle.z }));
  drawPath(canvas, level, GUIDE);
  drawStraight(canvas, [ankles, { x: ankles.x, z: canvas.topM }], GUIDE);
}

function drawRider(canvas: Canvas, figure: Figure, whole: boolean): void {
  const { centre, shoulders, head } = figure;
  drawPath(canvas, [figure.rearFoot, centre, figure.frontFoot], RIDER);
  if (!whole) {
    drawCircle(canvas, { centre, radiusM: BODY_RADIUS_M }, RIDER);
    return;
  }
  const lengthM = Math.hypot(shoulders.x - centre.x, shoulders.z - centre.z);
  const across = {
    x: ((shoulders.z - centre.z) / lengthM) * HALF_TRUNK_M,
    z: (-(shoulders.x - centre.x) / lengthM) * HALF_TRUNK_M,
  };
  const [left, right] = [-1, 1].map((side) => ({
    x: shoulders.x + side * across.x,
    z: shoulders.z + side * across.z,
  }));
  if (left !== undefined && right !== undefined) drawPath(canvas, [centre, left, right, centre], RIDER);
  drawCircle(canvas, { centre: head, radiusM: figure.headRadiusM }, RIDER);
}

function drawBoard(canvas: Canvas, figure: Figure): void {
  drawCircle(canvas, { centre: figure.axle, radiusM: figure.wheelRadiusM }, PLAIN);
  drawStraight(canvas, [figure.axle, figure.spoke], PLAIN);
  drawStraight(canvas, [figure.tail, figure.nose], DECK);
}

/** The names of the deck's ends, beyond its tips. */
function drawNames(canvas: Canvas, figure: Figure): void {
  const nose = cellOf(canvas, figure.nose);
  const tail = cellOf(canvas, figure.tail);
  drawWord(canvas, { ...nose, column: nose.column + 2 }, 'nose');
  drawWord(canvas, { ...tail, column: tail.column - 5 }, 'tail');
}

/** A canvas with the wheel in its middle that holds the rider. */
function canvasFor(
  view: TraceView,
  figure: Figure,
  options: SideViewOptions,
): { canvas: Canvas; whole: boolean } {
  const { rig } = view;
  const rowCount = Math.max(1, options.height - 1);
  const whole = rowCount >= WHOLE_RIDER_ROWS;
  const bodyM = whole ? headTopM(rig) : rig.legLengthM + BODY_RADIUS_M;
  const belowM = rig.wheelRadiusM + BELOW_M;
  const size = { columnCount: Math.max(1, options.width), rowCount };
  const canvas = createCanvas(GLYPHS[options.symbols], size, {
    widthM: 2 * (rig.reachM + 0.05),
    heightM: belowM + rig.ankleAboveAxleM + bodyM + ABOVE_M,
    belowM,
    middle: figure.axle,
  });
  return { canvas, whole };
}

const BAR_LENGTHS_M = [1, 0.5, 0.2, 0.1] as const;

/** A bar with its length in metres on the left, the way forward on the right; as much of it as fits. */
function scaleRow(canvas: Canvas, glyphs: Glyphs, options: SideViewOptions): string {
  const { width, paint } = options;
  const lengthM = BAR_LENGTHS_M.find((metres) => metres / canvas.cellWidthM <= width / 3) ?? 0.1;
  const cells = Math.max(2, Math.round(lengthM / canvas.cellWidthM));
  const bar = `${glyphs.barStart}${glyphs.line.repeat(cells - 2)}${glyphs.barEnd} ${lengthM} m`;
  const forward = `forward ${glyphs.forward}`;
  const space = width - textWidth(bar) - textWidth(forward);
  if (space >= 1) return paint.dim(bar + ' '.repeat(space) + forward);
  return textWidth(forward) <= width ? paint.dim(forward) : '';
}

/** Board and rider at a row of the tape: `height` rows, none wider than `width`; none for a row that is not on it. */
export function sideView(view: TraceView, row: number, options: SideViewOptions): string[] {
  if (!(row >= 0 && row < view.tape.length) || options.height < 2 || options.width < 1) return [];
  const glyphs = GLYPHS[options.symbols];
  const figure = figureAt(view, row);
  const { canvas, whole } = canvasFor(view, figure, options);
  if (Number.isFinite(canvas.leftM + canvas.topM)) {
    drawRoad(canvas, view);
    drawBoard(canvas, figure);
    drawRider(canvas, figure, whole);
    drawNames(canvas, figure);
    drawGuides(canvas, figure, whole ? view.rig.reachM : 0);
  }
  const rows = Array.from({ length: canvas.grid.rowCount }, (_, index): Piece[] =>
    gridRow(canvas.grid, index),
  );
  return [...rows.map((pieces) => paintedLine(pieces, options.paint)), scaleRow(canvas, glyphs, options)];
}

/** One sentence about board and rider at a row of the tape. */
export function sideViewSentence(view: TraceView, row: number, speedUnit: SpeedUnit): string {
  const { columns, length } = view.tape;
  if (!(row >= 0 && row < length)) return 'Nothing was recorded.';
  const facts = {
    pitchRad: columns.pitchRad[row] ?? NaN,
    leanRad: columns.leanRad[row] ?? NaN,
    speedMPerS: columns.speedMPerS[row] ?? NaN,
    slopeRatio: roadSlopeRatio(view.road, columns.positionM[row] ?? NaN, view.rig.wheelRadiusM),
  };
  return sideSentence(facts, speedUnit);
}
