/**
 * How are ride cards printed? As a page that needs nothing from anywhere: every card an A6 picture with real text, beside one another
 * as far as the paper goes. The page leaves the size to the printer's paper, so that a card is 105 x 148 mm on A6 as on A4; marks in
 * the corners show where to cut. Below, on a screen only, stands each card as the text that `check` reads.
 */
import type { KeptFile } from '../quantity/kept-file.js';
import { cardSvg, type CardCode } from './card-svg.js';
import { cardText } from './card-text.js';
import { svgText } from './svg-text.js';

/** A card to be printed: a kept profile under its name, with a code for a camera where there is one. */
export interface HtmlCard {
  name: string;
  kept: KeptFile;
  qr?: CardCode | null;
}

/**
 * A fifth of a millimetre less than A6, so that rounding never puts the second card of a row below the first, or a last line of
 * nothing onto a page of its own.
 */
const STYLE = `
@page { margin: 0; }
html, body { margin: 0; padding: 0; background: #ffffff; color: #000000; }
.cards { font-size: 0; line-height: 0; }
.card {
  display: inline-block; vertical-align: top; overflow: hidden; box-sizing: border-box;
  width: 104.8mm; height: 147.8mm; break-inside: avoid; page-break-inside: avoid;
}
.card svg { display: block; width: 105mm; height: 148mm; }
.texts { font-family: sans-serif; font-size: 14px; line-height: 1.4; margin: 5mm; }
pre { font-family: monospace; font-size: 13px; overflow-x: auto; }
@media print { .texts { display: none; } }
@media screen { .card { border: 1px solid #bbbbbb; width: 105.5mm; height: 148.5mm; margin: 2mm; } }
`;

/** The text inside of a preformatted element: line ends stay. */
function preText(text: string): string {
  return text.split('\n').map(svgText).join('\n');
}

/** Ride cards as one HTML file, in the order given. */
export function cardHtml(cards: readonly HtmlCard[]): string {
  const title = cards.map(({ name }) => `Ride card ${name}`).join(', ');
  const pictures = cards.map(
    ({ name, kept, qr = null }) =>
      `<article class="card" aria-label="${svgText(`Ride card ${name}`)}">\n${cardSvg(name, kept, { qr, cutMarks: true })}</article>`,
  );
  const texts = cards.map(
    ({ name, kept }) =>
      `<details>\n<summary>${svgText(name)} as text, for "underfoot check"</summary>\n` +
      `<pre>${preText(cardText(name, kept))}</pre>\n</details>`,
  );
  return [
    '<!DOCTYPE html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${svgText(title)}</title>`,
    `<style>${STYLE}</style>`,
    '</head>',
    '<body>',
    // Without a space between them: a space would be one card's width too much.
    `<main class="cards">${pictures.join('')}</main>`,
    `<section class="texts">\n${texts.join('\n')}\n</section>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}
