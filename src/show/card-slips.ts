/**
 * Which number is dangerous to get wrong? A box for each number and each way in which it can be wrong, filled by the share of runs
 * that fall then; in tenths of a millimetre, black on white.
 */
import { SLIPS, type KeptFile, type Slip } from '../quantity/kept-file.js';
import { svgNumber, svgText } from './svg-text.js';

/** Side of a box, from one to the next, and the least that is seen of a fall, 0.1 mm. */
const BOX = { side: 22, pitch: 33, least: 4 } as const;

/** Width of all boxes of a number, 0.1 mm. */
export const SLIP_WIDTH = BOX.pitch * SLIPS.length;

/** Size of the letters above the boxes, 0.1 mm: 4.5 pt. */
const HEAD_SIZE = 16;

const HEADS: Readonly<Record<Slip, string>> = {
  'a tenth less': '-10',
  'a tenth more': '+10',
  'first digit one less': '-1.',
  'first digit one more': '+1.',
  'a tenth of it': '/10',
  'ten times it': 'x10',
  'the other sign': '+/-',
};

/** What the boxes mean, in lines that go below them. */
export const SLIP_LEGEND: readonly string[] = [
  'Boxes: share of runs that fall with the number off: by 10 %, in its first digit, place, sign.',
  'An empty box is no leave: a real frame bends and can shake at too high a gain, this one is rigid.',
];

/** The letters above the boxes, from `x` on, on the line `y`. */
export function slipHeads(x: number, y: number): string {
  return SLIPS.map((slip, index) => {
    const middle = svgNumber(x + index * BOX.pitch + BOX.side / 2);
    return `<text x="${middle}" y="${svgNumber(y)}" font-size="${HEAD_SIZE}" text-anchor="middle">${svgText(HEADS[slip])}</text>`;
  }).join('');
}

/** The boxes of one number, from `x` on, standing on the line `y`; nothing where no slip of it was tried. */
export function slipBoxes(
  { slips }: Pick<KeptFile, 'slips'>,
  key: string,
  { x, y }: { x: number; y: number },
): string {
  return SLIPS.map((slip, index) => {
    const tried = slips.find((other) => other.key === key && other.slip === slip);
    if (tried === undefined) return '';
    const left = svgNumber(x + index * BOX.pitch);
    const share = Math.min(1, tried.failures / tried.runs);
    const filled = share === 0 ? 0 : Math.max(BOX.least, BOX.side * share);
    const frame =
      `<rect x="${left}" y="${svgNumber(y - BOX.side)}" width="${BOX.side}" height="${BOX.side}" ` +
      'fill="none" stroke="#000000" stroke-width="2"/>';
    if (filled === 0) return frame;
    return (
      frame +
      `<rect x="${left}" y="${svgNumber(y - filled)}" width="${BOX.side}" height="${svgNumber(filled)}" fill="#000000"/>`
    );
  }).join('');
}
