/**
 * Is the picture of a ride card well-formed, inside of A6 whatever stands on it, and readable without colours?
 */
import { describe, expect, it } from 'vitest';
import type { KeptFile } from '../../src/quantity/kept-file.js';
import { CARD_SIZE, cardSvg, LETTER_RATIO, type CardSvgOptions } from '../../src/show/card-svg.js';
import { CAUTIONS } from '../../src/show/cautions.js';
import { textWidth } from '../../src/show/fit-text.js';
import { BAREST, FULL_PROFILE, keptExample, LONG_NAME, LONGEST } from './kept-example.js';
import { readXml, type ReadElement } from './well-formed.js';

const EXAMPLE = keptExample({ note: 'fast <b>&amp; "loose"</b>' });
const QR = { size: 45, path: 'M4 4h7v7h-7z' };

interface Box {
  text: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** What a text covers if its letters are as wide as is counted with; heights of capitals and of what hangs below (ours). */
function boxOf({ attributes, text }: ReadElement): Box {
  const size = Number(attributes['font-size']);
  const width = textWidth(text) * size * LETTER_RATIO;
  const x = Number(attributes.x);
  const before = { end: width, middle: width / 2 }[attributes['text-anchor'] ?? ''] ?? 0;
  const y = Number(attributes.y);
  return { text, left: x - before, right: x - before + width, top: y - 0.8 * size, bottom: y + 0.22 * size };
}

const textsOf = (svg: string) =>
  readXml(svg)
    .filter(({ name }) => name === 'text')
    .map(boxOf);

const CASES: [string, string, KeptFile, CardSvgOptions][] = [
  ['an example', 'denim-2', EXAMPLE, { qr: QR }],
  ['one without a code', 'denim-2', EXAMPLE, {}],
  ['one of which nothing is known', 'x', BAREST, { qr: QR }],
  ['one with every number', 'x', keptExample({ profile: FULL_PROFILE }), { qr: QR, cutMarks: true }],
  ['the longest', LONG_NAME, LONGEST, { qr: QR, cutMarks: true }],
  ['the longest without a code', LONG_NAME, LONGEST, { qr: null }],
];

describe.each(CASES)('the picture of a ride card: %s', (_, name, kept, options) => {
  const svg = cardSvg(name, kept, options);
  const texts = textsOf(svg);

  it('is A6 in millimetres', () => {
    expect(readXml(svg)[0]).toMatchObject({
      name: 'svg',
      attributes: { width: '105mm', height: '148mm', viewBox: '0 0 1050 1480' },
    });
  });

  it('has no text beyond its margins', () => {
    const { width, height, margin } = CARD_SIZE;
    expect(texts.length).toBeGreaterThan(15);
    const outside = texts.filter(
      ({ left, right, top, bottom }) =>
        !(
          left >= margin - 1e-6 &&
          right <= width - margin + 1e-6 &&
          top >= 40 &&
          bottom <= height - margin + 6
        ),
    );
    expect(outside).toEqual([]);
  });

  it('has no text over another', () => {
    const pairs = texts.flatMap((one, index) => texts.slice(index + 1).map((other) => [one, other] as const));
    const over = pairs.filter(
      ([one, other]) =>
        one.left < other.right - 1 &&
        other.left < one.right - 1 &&
        one.top < other.bottom - 1 &&
        other.top < one.bottom - 1,
    );
    expect(over).toEqual([]);
  });

  it('has its name, its hash, every number and the cautions', () => {
    const all = texts.map(({ text }) => text);
    expect(all).toContain(name);
    expect(all).toContain(`numbers ${kept.numbers}`);
    for (const value of Object.values(kept.profile.gains)) expect(all).toContain(String(value));
    expect(all.join(' ').replaceAll(/\s+/g, ' ')).toContain(CAUTIONS.at(-1));
  });

  it('is black on white, with greys at most', () => {
    const colours = [...svg.matchAll(/(?:fill|stroke)="(#[0-9a-f]{6}|[a-z]+)"/g)].map(([, colour]) => colour);
    expect([...new Set(colours)].toSorted()).toEqual(
      ['#000000', '#444444', '#ffffff', 'none'].filter((colour) => colours.includes(colour)),
    );
    expect(svg).not.toMatch(/<script|<style|href|url\(/);
  });
});

describe('the picture of a ride card', () => {
  it('shows what a rider wrote as it was written', () => {
    expect(textsOf(cardSvg('x', EXAMPLE)).map(({ text }) => text)).toContain('fast <b>&amp; "loose"</b>');
  });

  it('has the code inside of its margins, and marks to cut along only where asked', () => {
    const paths = (options: CardSvgOptions) =>
      readXml(cardSvg('x', EXAMPLE, options)).filter(({ name }) => name === 'path');
    const [code] = paths({ qr: QR }).filter(({ attributes }) => attributes.transform);
    expect(code!.attributes.d).toBe(QR.path);
    const [x, y, scale] = code!.attributes.transform!.match(/[\d.]+/g)!.map(Number);
    expect(x! + QR.size * scale!).toBeCloseTo(CARD_SIZE.width - CARD_SIZE.margin, 1);
    expect(y).toBe(CARD_SIZE.margin);
    // A module of the largest code of a profile, 53 with its light border, is no smaller than 0.4 mm.
    expect((QR.size * scale!) / 10 / 53).toBeGreaterThan(0.4);
    expect(paths({ cutMarks: true })).toHaveLength(paths({}).length + 1);
  });

  it('fills a box by the share of runs that fall, and has none where nothing was tried', () => {
    const boxes = (kept: KeptFile) =>
      readXml(cardSvg('x', kept)).filter(
        ({ name, attributes }) => name === 'rect' && attributes.width === '22',
      );
    const heights = (kept: KeptFile) => boxes(kept).map(({ attributes }) => Number(attributes.height));
    expect(boxes(BAREST)).toEqual([]);
    const slips = EXAMPLE.slips.filter(
      ({ key, slip }) => key === 'rateAPerDegPerS' && slip === 'a tenth of it',
    );
    expect(heights(keptExample({ slips }))).toEqual([22, 12.6]);
    const none = slips.map((slip) => ({ ...slip, failures: 0, moreFailures: 0 }));
    expect(heights(keptExample({ slips: none }))).toEqual([22]);
  });
});
