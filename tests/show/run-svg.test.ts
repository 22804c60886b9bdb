import { describe, expect, it } from 'vitest';
import { OKABE_ITO } from '../../src/show/colour.js';
import { MOST_POINTS } from '../../src/show/run-svg-panel.js';
import { runSvg } from '../../src/show/run-svg.js';
import { createTape } from '../../src/simulate/tape.js';
import { sampleTape, sampleView } from './sample-run.js';
import { readXml } from './well-formed.js';

const view = sampleView();
const svg = runSvg(view, { speedUnit: 'km/h' });
const elements = readXml(svg);
const ofClass = (name: string) => elements.filter(({ attributes }) => attributes['class'] === name);
const texts = elements.filter(({ name }) => name === 'text').map(({ text }) => text);

/** The points of a path of straight lines. */
function points(d = ''): [number, number][] {
  return d
    .slice(1)
    .split(' ')
    .map((pair) => pair.split(',').map(Number) as [number, number]);
}

describe('the picture of a run', () => {
  it('is one SVG with title, description, sentences and units', () => {
    expect(elements[0]?.name).toBe('svg');
    expect(elements[0]?.attributes['xmlns']).toBe('http://www.w3.org/2000/svg');
    expect(elements.find(({ name }) => name === 'title')?.text).toBe(
      'Long Meadow over the kerb drop: upright to the end at 6.00 s',
    );
    expect(elements.find(({ name }) => name === 'desc')?.text).toContain('Pitch peaks nose down 3.3°');
    for (const wanted of [
      'nose down 4°',
      'nose up 4°',
      '-80 A',
      '20 km/h',
      '6 s',
      'kerb',
      'cut by voltage',
    ]) {
      expect(texts).toContain(wanted);
    }
  });

  it('needs nothing from outside and runs nothing', () => {
    expect(svg).not.toMatch(/<script|<image|<foreignObject|href|url\(|@import|on[a-z]+=/);
    expect(svg.replace('http://www.w3.org/2000/svg', '')).not.toContain('http');
  });

  it('tells its lines apart by dashes as well as by colour', () => {
    const style = elements.find(({ name }) => name === 'style')?.text ?? '';
    const dashes = ['line', 'ceiling', 'set-point', 'event'].map(
      (kind) => new RegExp(`\\.${kind}\\{[^}]*stroke-dasharray:([\\d ]+)`).exec(style)?.[1] ?? 'none',
    );
    expect(new Set(dashes).size).toBe(4);
    expect(ofClass('line').length + ofClass('ceiling').length + ofClass('set-point').length).toBe(6 + 3);
    expect(style).toContain('prefers-color-scheme:dark');
  });

  it('has lines that stand out from the paper, light and dark', () => {
    // WCAG 2.1, success criterion 1.4.11: graphics need a contrast of 3:1; relative luminance as defined there.
    const luminance = (hex: string) => {
      const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
        const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const contrast = (a: string, b: string) => {
      const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
      return (high + 0.05) / (low + 0.05);
    };
    const style = elements.find(({ name }) => name === 'style')?.text ?? '';
    const [light = '', dark = ''] = style.split('@media');
    const colour = (part: string, kind: string, property: string) =>
      new RegExp(`\\.${kind}\\{[^}]*?${property}:(#[0-9a-f]{6})`).exec(part)?.[1] ?? '';
    for (const part of [light, dark]) {
      const paper = colour(part, 'paper', 'fill');
      for (const kind of ['line', 'ceiling', 'set-point']) {
        const line = colour(part, kind, 'stroke');
        expect(Object.values(OKABE_ITO)).toContain(line);
        expect(contrast(line, paper)).toBeGreaterThan(3);
      }
      expect(contrast(colour(part, 'cut', 'fill'), paper)).toBeGreaterThan(3);
    }
  });

  it('shades the measured window from the event on', () => {
    const [shade] = ofClass('window');
    const box = ofClass('box').find(({ name }) => name === 'rect')?.attributes ?? {};
    const left = Number(box['x']);
    const width = Number(box['width']);
    // Measured from 1 s to 6 s of 6 s.
    expect(Number(shade?.attributes['x'])).toBeCloseTo(left + width / 6, 0);
    expect(Number(shade?.attributes['width'])).toBeCloseTo((5 * width) / 6, 0);
  });

  it('thins its lines but keeps a peak of a single tick', () => {
    const tape = sampleTape(60);
    tape.columns.pitchRad[20_000] = (7 * Math.PI) / 180;
    const long = readXml(runSvg({ ...view, tape, endRow: tape.length }, { speedUnit: 'km/h' }));
    const box = long.find(({ attributes }) => attributes['class'] === 'box')?.attributes ?? {};
    const lines = long.filter(({ attributes }) => attributes['class'] === 'line');
    for (const line of lines) expect(points(line.attributes['d']).length).toBeLessThanOrEqual(MOST_POINTS);
    const highest = points(lines[0]?.attributes['d']).sort((a, b) => a[1] - b[1])[0] ?? [NaN, NaN];
    // Scale from 8 deg nose down above to 8 deg nose up below; 25 s of 60 s.
    expect(highest[1]).toBeCloseTo(Number(box['y']) + Number(box['height']) / 16, 1);
    expect(highest[0]).toBeCloseTo(Number(box['x']) + (Number(box['width']) * 25) / 60, 1);
  });

  it('escapes what others wrote', () => {
    const nasty = '<b>"A" & \'B\'</b>\u001b[31m\u0000\ufffe\ud800 ]]>';
    const named = { ...view, title: nasty, marks: [{ name: nasty, timeS: 2 }] };
    const facts = { ...view.facts, eventName: nasty };
    const read = readXml(runSvg({ ...named, facts }, { speedUnit: 'km/h' }));
    const clean = '<b>"A" & \'B\'</b> ]]>';
    expect(read.filter(({ text }) => text === clean)).toHaveLength(2);
    expect(read.some(({ name }) => name === 'b')).toBe(false);
  });

  it('draws an empty tape and a fall', () => {
    const empty = { ...view, tape: createTape(4, 0.001), firstRow: 0, endRow: 0 };
    expect(readXml(runSvg(empty, { speedUnit: 'mph' })).map(({ text }) => text)).toContain(
      'Nothing was recorded.',
    );
    const fallen = { ...view, outcome: { kind: 'tail strike' as const, atS: 6 } };
    const read = readXml(runSvg(fallen, { speedUnit: 'mph' }));
    expect(
      read.some(({ attributes, text }) => attributes['class'] === 'event-name end' && text === 'tail strike'),
    ).toBe(true);
    expect(runSvg(fallen, { speedUnit: 'mph' })).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the check for well-formed XML', () => {
  it.each([
    '<a>',
    '<a></b>',
    '<a b="1" b="2"/>',
    '<a>&</a>',
    '<a>&nope;</a>',
    '<a/><b/>',
    '<a b=1/>',
    'x<a/>',
    '<a>\u0001</a>',
  ])('refuses %j', (source) => {
    expect(() => readXml(source)).toThrow();
  });
});
