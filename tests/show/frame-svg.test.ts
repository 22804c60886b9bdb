import { describe, expect, it } from 'vitest';
import { createPaint, OKABE_ITO, STYLE_COLOURS } from '../../src/show/colour.js';
import { frameSvg } from '../../src/show/frame-svg.js';
import { runPlot, RUN_PLOT_SIZE } from '../../src/show/run-plot.js';
import { lookRuns } from '../../src/show/sgr.js';
import { sampleView } from './sample-run.js';
import { readXml } from './well-formed.js';

const about = { title: 'a table' };
const COLOURED = ['ok', 'warn', 'bad', 'accent', 'lineA', 'lineB', 'lineC', 'lineD'] as const;

describe('reading colour escapes back', () => {
  it.each(['16', '256', 'truecolor'] as const)('knows every style that paint writes in %s', (mode) => {
    const paint = createPaint(mode);
    const line = `a${paint.bold(`b${paint.warn('c')}`)}${paint.dim(paint.accent('d'))}e`;
    const plain = { colour: null, bold: false, dim: false, inverse: false };
    expect(lookRuns(line)).toEqual([
      { text: 'a', look: plain },
      { text: 'b', look: { ...plain, bold: true } },
      { text: 'c', look: { ...plain, bold: true, colour: OKABE_ITO.orange } },
      { text: 'd', look: { ...plain, colour: OKABE_ITO.skyBlue, dim: true } },
      { text: 'e', look: plain },
    ]);
  });

  it.each(['256', 'truecolor'] as const)('reads the colours of a light background back in %s', (mode) => {
    const paint = createPaint(mode, 'light');
    for (const style of COLOURED) {
      expect(lookRuns(paint[style]('x'))[0]?.look.colour).toBe(STYLE_COLOURS.light[style].hex);
    }
  });

  it('knows a run with exchanged colours, and where it ends', () => {
    const paint = createPaint('16');
    const read = lookRuns(`a${paint.inverse(`b${paint.lineD('c')}`)}d`);
    expect(read.map(({ text, look }) => [text, look.inverse, look.colour])).toEqual([
      ['a', false, null],
      ['b', true, null],
      ['c', true, OKABE_ITO.reddishPurple],
      ['d', false, null],
    ]);
  });

  it('leaves out every other escape', () => {
    const text = lookRuns('\u001b[2J\u001b[38;5;7mx\u001b[38;2;300;0;0my\u001b[0m\u001b]0;z\u0007').map(
      (run) => run.text,
    );
    expect(text.join('')).toBe('xy');
    expect(lookRuns('\u001b[1mx\u001b[my').at(-1)).toEqual({
      text: 'y',
      look: { colour: null, bold: false, dim: false, inverse: false },
    });
  });
});

describe('the picture of a terminal', () => {
  it('puts every word at its column and row', () => {
    const words = readXml(frameSvg(['ab  道 <c>', '', '   d'], about)).filter(({ name }) => name === 'text');
    const placed = words.map(({ text, attributes }) => [
      text,
      Number(attributes['x']),
      Number(attributes['y']),
    ]);
    const [left, top] = [18, 18 + 13.5];
    expect(placed).toEqual([
      ['ab', left, top],
      ['道', Number((left + 4 * 8.4).toFixed(1)), top],
      ['<c>', Number((left + 7 * 8.4).toFixed(1)), top],
      ['d', Number((left + 3 * 8.4).toFixed(1)), top + 2 * 18],
    ]);
    expect(words[2]?.attributes['textLength']).toBe('25.2');
  });

  it('draws braille and half blocks as shapes', () => {
    const read = readXml(frameSvg(['⡀█'], about));
    const paths = read.filter(({ name }) => name === 'path').map(({ attributes }) => attributes['d']);
    // The lowest left dot of a cell of 8.4 x 18: a quarter across, seven eighths down.
    expect(paths).toEqual(['M20.1,33.8h.01', 'M26.4,18h8.4v18h-8.4z']);
    expect(read.some(({ name }) => name === 'text')).toBe(false);
  });

  it('fills the cells of an inverse run and writes on them in the colour of the ground', () => {
    const paint = createPaint('truecolor');
    const read = readXml(frameSvg([`ab${paint.inverse(paint.warn(' c⡀ '))}`], about));
    const [ground, cells, ...others] = read.filter(({ name }) => name === 'rect');
    expect(others).toEqual([]);
    expect(cells?.attributes).toMatchObject({
      x: (18 + 2 * 8.4).toFixed(1),
      y: '18',
      width: '33.6',
      height: '18',
      fill: OKABE_ITO.orange,
    });
    const colour = ground?.attributes['fill'];
    expect(read.find(({ text }) => text === 'c')?.attributes['fill']).toBe(colour);
    expect(read.find(({ name }) => name === 'path')?.attributes['stroke']).toBe(colour);
    expect(read.find(({ text }) => text === 'ab')?.attributes['fill']).toBeUndefined();
  });

  it('is as wide as its widest row, or as asked', () => {
    const width = (svg: string) => Number(readXml(svg)[0]?.attributes['width']);
    expect(width(frameSvg(['1234567890', '1'], about))).toBe(84 + 36);
    expect(width(frameSvg(['1'], { ...about, columnCount: 10 }))).toBe(84 + 36);
  });

  it('carries the colours of a painted run and says what it shows', () => {
    const rows = runPlot(sampleView(), {
      ...RUN_PLOT_SIZE,
      symbols: 'braille',
      paint: createPaint('truecolor'),
      speedUnit: 'km/h',
    });
    const read = readXml(frameSvg(rows, { title: 'A <run> & more' }));
    expect(read[1]).toMatchObject({ name: 'title', text: 'A <run> & more' });
    const marks = read.filter(({ text }) => text === '✓' || text === 'vv');
    expect(marks.map(({ attributes }) => attributes['fill'])).toEqual([
      OKABE_ITO.bluishGreen,
      OKABE_ITO.orange,
    ]);
    const dots = read.filter(
      ({ name, attributes }) => name === 'path' && attributes['stroke'] === OKABE_ITO.skyBlue,
    );
    expect(dots).toHaveLength(1);
    expect(read.find(({ text }) => text === 'Pitch')?.attributes['font-weight']).toBe('700');
  });
});
