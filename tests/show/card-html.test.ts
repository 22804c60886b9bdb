/**
 * Is the page with ride cards whole in itself, and does it show what was written instead of obeying it?
 */
import { describe, expect, it } from 'vitest';
import { cardHtml } from '../../src/show/card-html.js';
import { cardSvg } from '../../src/show/card-svg.js';
import { cardText } from '../../src/show/card-text.js';
import { readCard } from '../../src/store/card-reading.js';
import { FULL_PROFILE, keptExample, LONG_NAME, LONGEST } from './kept-example.js';
import { readXml } from './well-formed.js';

const NOTE = `</pre></svg><script src="http://x.example">alert('1')</script> & "more" <!--`;
const CARDS = [
  { name: 'denim-2', kept: keptExample({ note: NOTE }), qr: { size: 45, path: 'M4 4h7v7h-7z' } },
  { name: 'full', kept: keptExample({ profile: FULL_PROFILE }) },
  { name: LONG_NAME, kept: LONGEST, qr: null },
];
const HTML = cardHtml(CARDS);

const unescaped = (text: string) =>
  text.replace(/&(lt|gt|quot|#39|amp);/g, (_, name: string) => {
    return { lt: '<', gt: '>', quot: '"', '#39': "'", amp: '&' }[name]!;
  });

/** The document as XML: without its doctype, and with the elements closed that HTML leaves open. */
const asXml = (html: string) =>
  html.replace(/^<!DOCTYPE html>\n/, '').replaceAll(/<meta([^>]*)>/g, '<meta$1/>');

describe('the page with ride cards', () => {
  it('is well-formed', () => {
    expect(HTML.startsWith('<!DOCTYPE html>\n<html lang="en">')).toBe(true);
    const names = readXml(asXml(HTML)).map(({ name }) => name);
    expect(names.filter((name) => name === 'article')).toHaveLength(CARDS.length);
    expect(names.filter((name) => name === 'svg')).toHaveLength(CARDS.length);
    expect(names).not.toContain('script');
  });

  it('has the picture of each card, with marks to cut along, and nothing between two', () => {
    for (const { name, kept, qr = null } of CARDS) {
      expect(HTML).toContain(cardSvg(name, kept, { qr, cutMarks: true }));
    }
    expect(HTML.match(/<\/article><article /g)).toHaveLength(CARDS.length - 1);
    expect(HTML).toContain('</article></main>');
    expect(HTML).toContain('<main class="cards"><article ');
  });

  it('has each card as text that is read back', () => {
    const texts = [...HTML.matchAll(/<pre>(.*?)<\/pre>/gs)].map(([, text]) => unescaped(text!));
    expect(texts).toEqual(CARDS.map(({ name, kept }) => cardText(name, kept)));
    expect(texts.map((text) => readCard(text, '').ok)).toEqual(CARDS.map(() => true));
  });

  it('takes nothing from anywhere else', () => {
    const elsewhere = HTML.replaceAll('http://www.w3.org/2000/svg', '').replaceAll(/>[^<]*</g, '><');
    expect(elsewhere).not.toMatch(/https?:|\bsrc=|\bhref=|url\(|@import|<link/);
  });

  it('leaves the size of the page to the paper, and is no larger than A6 on it', () => {
    const style = /<style>(.*?)<\/style>/s.exec(HTML)![1]!;
    expect(style).toMatch(/@page \{ margin: 0; \}/);
    expect(style).not.toMatch(/size:\s*A\d/i);
    const [, width, height] = /\.card \{[^}]*?\bwidth: ([\d.]+)mm; height: ([\d.]+)mm;/.exec(style)!;
    // Two beside each other and two below each other on A4, one on A6.
    expect([2 * Number(width) < 210, 2 * Number(height) < 297]).toEqual([true, true]);
    expect([Number(width) < 105, Number(height) < 148]).toEqual([true, true]);
    expect([Number(width) > 104.5, Number(height) > 147.5]).toEqual([true, true]);
  });
});
