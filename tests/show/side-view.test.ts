import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { GLYPHS, SYMBOL_SETS } from '../../src/show/glyphs.js';
import type { SymbolSet } from '../../src/show/glyphs.js';
import { createCanvas, dotOf, dotSizeM, drawCircle, drawStraight } from '../../src/show/side-view-canvas.js';
import type { Canvas } from '../../src/show/side-view-canvas.js';
import { figureOf, headTopM } from '../../src/show/side-view-figure.js';
import type { Point, Posture } from '../../src/show/side-view-figure.js';
import { sideView, sideViewSentence } from '../../src/show/side-view.js';
import { SAMPLE_RIG, sampleTrace } from './sample-trace.js';

const level: Posture = { positionM: 2, axleHeightM: 0.15, pitchRad: 0, leanRad: 0, legLengthM: 1 };
const tilted: Posture = { ...level, pitchRad: Math.PI / 6, leanRad: Math.PI / 6 };

function expectPoint(found: Point, x: number, z: number): void {
  expect(found.x).toBeCloseTo(x, 8);
  expect(found.z).toBeCloseTo(z, 8);
}

describe('the figure of a rig', () => {
  it('stands upright on level ground', () => {
    const figure = figureOf(SAMPLE_RIG, level);
    expectPoint(figure.axle, 2, 0.15);
    expectPoint(figure.nose, 2.4, 0.12);
    expectPoint(figure.tail, 1.6, 0.12);
    expectPoint(figure.frontFoot, 2.2, 0.2);
    expectPoint(figure.rearFoot, 1.8, 0.2);
    expectPoint(figure.ankles, 2, 0.2);
    expectPoint(figure.centre, 2, 1.2);
    expect(figure.head.x).toBeCloseTo(2, 12);
    expect(figure.head.z).toBeGreaterThan(figure.shoulders.z);
  });

  it('turns nose down and leans forward, both by 30 degrees', () => {
    // e = (0.8660254, -0.5), u = (0.5, 0.8660254): nose = axle + 0.4 e - 0.03 u, ankles = axle + 0.05 u.
    const figure = figureOf(SAMPLE_RIG, tilted);
    expectPoint(figure.nose, 2.3314101615, -0.0759807621);
    expectPoint(figure.tail, 1.6385898385, 0.3240192379);
    expectPoint(figure.ankles, 2.025, 0.1933012702);
    expectPoint(figure.frontFoot, 2.1982050808, 0.0933012702);
    expectPoint(figure.centre, 2.525, 1.059326674);
  });

  it('keeps leg and body apart when the legs bend', () => {
    const upright = figureOf(SAMPLE_RIG, level);
    const bent = figureOf(SAMPLE_RIG, { ...level, legLengthM: 0.9 });
    expectPoint(bent.centre, 2, 1.1);
    expect(bent.head.z - bent.centre.z).toBeCloseTo(upright.head.z - upright.centre.z, 12);
  });

  it('gives a rider of 1.75 m his stature', () => {
    // Centre of mass 0.521 H over the ankles, ankles 0.039 H over the ground (D. A. Winter, from memory).
    expect(headTopM({ ...SAMPLE_RIG, legLengthM: 0.521 * 1.75 })).toBeCloseTo((1 - 0.039) * 1.75, 8);
  });

  it('turns its spoke forward with the distance rolled', () => {
    const quarter = figureOf(SAMPLE_RIG, { ...level, positionM: (0.15 * Math.PI) / 2 });
    expectPoint(quarter.spoke, quarter.axle.x + 0.15, 0.15);
    const half = figureOf(SAMPLE_RIG, { ...level, positionM: 0.15 * Math.PI });
    expectPoint(half.spoke, half.axle.x, 0);
  });
});

/** The columns and rows of dots that are set, first and last. */
function extent({ grid }: Canvas): { columns: [number, number]; rows: [number, number] } {
  const { dotsWide, dotsHigh } = grid.glyphs;
  const columns: number[] = [];
  const rows: number[] = [];
  grid.cells.forEach(({ solidDots }, index) => {
    for (let bit = 0; bit < dotsWide * dotsHigh; bit += 1) {
      if ((solidDots & (1 << bit)) === 0) continue;
      columns.push((index % grid.columnCount) * dotsWide + Math.floor(bit / dotsHigh));
      rows.push(Math.floor(index / grid.columnCount) * dotsHigh + (bit % dotsHigh));
    }
  });
  return {
    columns: [Math.min(...columns), Math.max(...columns)],
    rows: [Math.min(...rows), Math.max(...rows)],
  };
}

function canvasOf(symbols: SymbolSet): Canvas {
  return createCanvas(
    GLYPHS[symbols],
    { columnCount: 60, rowCount: 30 },
    { widthM: 1, heightM: 2, belowM: 0.5, middle: { x: 7, z: 3 } },
  );
}

describe('the canvas', () => {
  it.each(SYMBOL_SETS)(
    'has dots of the shape that %s gives them, a cell twice as high as wide',
    (symbols) => {
      const { widthM, heightM } = dotSizeM(canvasOf(symbols));
      const shape = { braille: 1, block: 1, ascii: 2 / 3 }[symbols];
      expect(heightM / widthM).toBeCloseTo(shape, 12);
    },
  );

  it.each(SYMBOL_SETS)('draws a wheel as wide as high, to scale, in %s', (symbols) => {
    for (const radiusM of [0.12, 0.14, 0.165, 0.4]) {
      const canvas = canvasOf(symbols);
      drawCircle(canvas, { centre: { x: 7, z: 3 }, radiusM }, { line: 'solid', style: null });
      const { widthM, heightM } = dotSizeM(canvas);
      const { columns, rows } = extent(canvas);
      const wideM = (columns[1] - columns[0]) * widthM;
      const highM = (rows[1] - rows[0]) * heightM;
      expect(Math.abs(wideM - 2 * radiusM)).toBeLessThanOrEqual(widthM);
      expect(Math.abs(highM - 2 * radiusM)).toBeLessThanOrEqual(heightM);
      expect(columns[0] + columns[1]).toBe(2 * dotOf(canvas, { x: 7, z: 3 }).dotColumn);
      expect(rows[0] + rows[1]).toBe(2 * dotOf(canvas, { x: 7, z: 3 }).dotRow);
    }
  });

  it.each(SYMBOL_SETS)('has one scale for both directions in %s', (symbols) => {
    const canvas = canvasOf(symbols);
    drawStraight(
      canvas,
      [
        { x: 6.9, z: 3 },
        { x: 7.3, z: 3.4 },
      ],
      { line: 'solid', style: null },
    );
    const { widthM, heightM } = dotSizeM(canvas);
    const { columns, rows } = extent(canvas);
    expect(Math.abs((columns[1] - columns[0]) * widthM - 0.4)).toBeLessThanOrEqual(widthM);
    expect(Math.abs((rows[1] - rows[0]) * heightM - 0.4)).toBeLessThanOrEqual(heightM);
  });

  it('holds the field that it is asked for, forward to the right and up to the top', () => {
    const canvas = canvasOf('braille');
    const middle = dotOf(canvas, { x: 7, z: 3 });
    expect(dotOf(canvas, { x: 7.2, z: 3 }).dotColumn).toBeGreaterThan(middle.dotColumn);
    expect(dotOf(canvas, { x: 7, z: 3.2 }).dotRow).toBeLessThan(middle.dotRow);
    expect(dotOf(canvas, { x: 7, z: 2.55 }).dotRow).toBeLessThan(30 * 4);
    expect(dotOf(canvas, { x: 7, z: 4.4 }).dotRow).toBeGreaterThanOrEqual(0);
  });

  it('leaves alone what is no number', () => {
    const canvas = canvasOf('braille');
    drawStraight(
      canvas,
      [
        { x: NaN, z: 3 },
        { x: 7, z: 3 },
      ],
      { line: 'solid', style: null },
    );
    drawCircle(canvas, { centre: { x: NaN, z: 3 }, radiusM: 0.1 }, { line: 'solid', style: null });
    expect(canvas.grid.cells.every(({ solidDots }) => solidDots === 0)).toBe(true);
  });
});

/** The sample trace with one posture at its row 2000, where the road is level. */
function postured(changes: Partial<Posture>) {
  const view = sampleTrace();
  const { columns } = view.tape;
  const at = { ...level, positionM: 10, axleHeightM: 0.1, ...changes };
  for (const name of ['positionM', 'axleHeightM', 'pitchRad', 'leanRad', 'legLengthM'] as const)
    columns[name][2000] = at[name];
  return view;
}

function drawn(changes: Partial<Posture>, size = { width: 44, height: 20 }, symbols: SymbolSet = 'braille') {
  return sideView(postured(changes), 2000, { ...size, symbols, paint: createPaint('none') });
}

const rowOf = (rows: readonly string[], word: string) => rows.findIndex((row) => row.includes(word));

describe('the view from the side', () => {
  it('shows the rider upright over a level board', () => {
    expect(drawn({}, { width: 30, height: 12 })).toEqual(UPRIGHT);
  });

  it('turns the nose down on the right', () => {
    const down = drawn({ pitchRad: Math.PI / 9 });
    expect(rowOf(down, 'nose')).toBeGreaterThan(rowOf(down, 'tail'));
    const up = drawn({ pitchRad: -Math.PI / 9 });
    expect(rowOf(up, 'nose')).toBeLessThan(rowOf(up, 'tail'));
    const line = down.find((row) => row.includes('nose')) ?? '';
    expect(line.indexOf('nose')).toBeGreaterThan(22);
  });

  it('leans the rider forward to the right', () => {
    const headAt = (rows: readonly string[]) => {
      const top = rows.find((row) => /[\u2801-\u28ff]{2}/.test(row)) ?? '';
      return top.search(/[\u2801-\u28ff]{2}/);
    };
    // The head is 1.7 m over the ankles: 0.2 rad carry it 0.34 m, and a cell is under 0.07 m wide.
    expect(headAt(drawn({ leanRad: 0.2 }))).toBeGreaterThan(headAt(drawn({})) + 3);
    expect(headAt(drawn({ leanRad: -0.2 }))).toBeLessThan(headAt(drawn({})) - 3);
  });

  it('says which way is forward, and how long half a metre is', () => {
    expect(drawn({}).at(-1)).toMatch(/^├─+┤ 0\.5 m +forward →$/);
    expect(drawn({}, undefined, 'ascii').at(-1)).toMatch(/^\|-+\| 0\.5 m +forward ->$/);
  });

  it.each(SYMBOL_SETS)('fits any room in %s', (symbols) => {
    for (const width of [1, 5, 12, 28, 44, 70]) {
      for (const height of [2, 3, 9, 11, 20, 40]) {
        for (const pitchRad of [0, 1.2, -3]) {
          const rows = drawn({ pitchRad, leanRad: 2 * pitchRad }, { width, height }, symbols);
          expect(rows).toHaveLength(height);
          for (const row of rows) expect(textWidth(row)).toBeLessThanOrEqual(width);
          if (symbols === 'ascii') expect(rows.join('')).toMatch(/^[\x20-\x7e]*$/);
        }
      }
    }
  });

  it('draws nothing for numbers that are none, and has no rows off the tape', () => {
    expect(drawn({ positionM: NaN, pitchRad: NaN }).slice(0, -1).join('')).toBe('');
    expect(
      sideView(sampleTrace(), 99999, { width: 30, height: 9, symbols: 'ascii', paint: createPaint('none') }),
    ).toEqual([]);
  });

  it('is told in one sentence', () => {
    const rad = Math.PI / 180;
    const view = postured({ pitchRad: 3.1 * rad, leanRad: 2 * rad });
    view.tape.columns.speedMPerS[2000] = 12.3 / 3.6;
    const said = 'Board nose down 3.1°, rider forward 2.0° at 12.3 km/h';
    expect(sideViewSentence(view, 2000, 'km/h')).toBe(`${said} on level road.`);
    const climb = { ...view.road, bareHeightM: view.road.bareHeightM.map((_, index) => 0.04 * index * 0.01) };
    expect(sideViewSentence({ ...view, road: climb }, 2000, 'km/h')).toBe(`${said} up a slope of 4.0 %.`);
    const drop = { ...climb, bareHeightM: climb.bareHeightM.map((height) => -height) };
    expect(sideViewSentence({ ...view, road: drop }, 2000, 'mph')).toContain(
      'at 7.6 mph down a slope of 4.0 %.',
    );
    expect(sideViewSentence(view, -1, 'km/h')).toBe('Nothing was recorded.');
  });
});

const UPRIGHT = [
  '             ⢠⠔⠒⢤',
  '             ⠸⣄⣇⡼',
  '              ⢸⢸',
  '              ⡇⠅⡇',
  '             ⢰⠁⠅⢱',
  '             ⡜ ⠅⠘⡄',
  '            ⢀⠇ ⠅ ⢇',
  '            ⢸ ⣀⣀⡀⢸',
  '    tail    ⠇⡎ ⡀⠈⡆⠇    nose',
  '⣀⣀⣀⣀⣀⣀⣀⣀⣀⣉⣉⣉⣉⣫⣋⣉⣩⣋⣉⣉⣉⣁⣀⣀⣀⣀⣀⣀⣀⣀',
  '',
  '├─────┤ 0.5 m        forward →',
];
