/**
 * Does a decoder that is not ours read what is drawn, in a terminal of any colours and from the picture, and with a corner
 * of it smudged? Sizes are those of ISO/IEC 18004: a version v has 17 + 4 v modules a side, 4 of quiet zone around them.
 */
import { describe, expect, it } from 'vitest';
import { readShortText, shortText } from '../../src/quantity/short-text.js';
import { BACKGROUNDS, COLOUR_MODES, type Background } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { qrMatrix, QUIET_MODULES, withQuietZone } from '../../src/show/qr-matrix.js';
import { qrSvg } from '../../src/show/qr-svg.js';
import { qrLines } from '../../src/show/qr-terminal.js';
import { numbersHash } from '../../src/store/short-hash.js';
import { bareProfile, fineProfile, fullProfile, starterProfiles } from './exported-kept.js';
import { decoded, shadesOfSvg, shadesOfTerminal, type Shades } from './pixels.js';
import { readXml } from './well-formed.js';

const profiles = [
  ...starterProfiles(),
  { name: 'bare', profile: bareProfile },
  { name: 'full', profile: fullProfile },
  { name: 'fine', profile: fineProfile },
];
const textOf = ({ profile }: (typeof profiles)[number]) => shortText(profile, numbersHash(profile));

/** Modules at the edge outside of the alignment pattern in the corner, by which a decoder finds its way. */
const EDGE_MODULES = 4;

/** The picture with its lower right corner smudged along the right edge, and along the lower one as well. */
function smudged(shades: Shades, { bothEdges }: { bothEdges: boolean }): Shades {
  const [start, end] = [QUIET_MODULES + FINDER_MODULES, shades.length - QUIET_MODULES];
  const isInside = (at: number) => at >= start && at < end;
  return shades.map((row, y) =>
    row.map((shade, x) => {
      if (!isInside(x) || !isInside(y)) return shade;
      const isSmudged = x >= end - EDGE_MODULES || (bothEdges && y >= end - EDGE_MODULES);
      return isSmudged ? 0 : shade;
    }),
  );
}

/** Modules a side of a finder pattern with the light around it and the format bits beside it. */
const FINDER_MODULES = 9;

/** Modules a side from which two edges are less than what level M restores. */
const LARGE_MODULES = 50;

describe('the picture', () => {
  it.each(profiles)('of $name reads as the short text of its numbers', (known) => {
    const text = textOf(known);
    const read = decoded(shadesOfSvg(qrSvg(qrMatrix(text), known.name)));
    expect(read?.text).toBe(text);
    const again = readShortText(read!.text, numbersHash);
    expect(again.ok && numbersHash(again.value)).toBe(numbersHash(known.profile));
  });

  it.each(profiles)('of $name reads with a corner smudged, and a small one not with two edges', (known) => {
    const shades = shadesOfSvg(qrSvg(qrMatrix(textOf(known)), known.name));
    // Level M restores 15 % of the codewords. Of a code of 29 modules a side one edge is 80 modules or 10 codewords of 70.
    expect(decoded(smudged(shades, { bothEdges: false }))?.text).toBe(textOf(known));
    if (shades.length > LARGE_MODULES) return;
    expect(decoded(smudged(shades, { bothEdges: true }))).toBeNull();
  });

  it('is as large on paper as its modules, with a title', () => {
    const [root, title] = readXml(qrSvg(qrMatrix('UF1'), 'a < b'));
    expect(root!.attributes).toMatchObject({ width: '26.1mm', height: '26.1mm', viewBox: '0 0 29 29' });
    expect(title).toMatchObject({ name: 'title', text: 'a < b' });
  });
});

describe('the terminal', () => {
  const looks = COLOUR_MODES.flatMap((mode) =>
    BACKGROUNDS.flatMap((background) => [false, true].map((ascii) => ({ mode, background, ascii }))),
  );

  it.each(looks)('shows a code that reads: $mode on $background, ascii $ascii', async (look) => {
    for (const known of profiles.filter(({ name }) => ['linen', 'tweed', 'full'].includes(name))) {
      const lines = qrLines(qrMatrix(textOf(known)), look);
      const shades = await shadesOfTerminal(lines, look.background);
      // An ASCII module is two columns and a line: every second shade across and down is its own.
      const picture = look.ascii
        ? shades.filter((_, y) => y % 2 === 0).map((row) => row.filter((__, x) => x % 2 === 1))
        : shades;
      expect(decoded(picture)?.text).toBe(textOf(known));
      if (look.ascii) for (const line of lines) expect(line.replaceAll('\u001b', '')).toMatch(/^[ -~]*$/);
    }
  });

  it.each(COLOUR_MODES.filter((mode) => mode !== 'none'))(
    'has its own black and white with %s colours, whatever the terminal has',
    async (mode) => {
      const drawn = (asked: Background) =>
        qrLines(qrMatrix('UF1'), { mode, background: asked, ascii: false });
      expect(drawn('dark')).toEqual(drawn('light'));
      for (const background of BACKGROUNDS)
        expect(decoded(await shadesOfTerminal(drawn('dark'), background))?.text).toBe('UF1');
    },
  );

  it('would be wrong way round on another background without colours: what is asked for counts', async () => {
    const lines = qrLines(qrMatrix('UF1'), { mode: 'none', background: 'dark', ascii: false });
    expect(decoded(await shadesOfTerminal(lines, 'light'))).toBeNull();
  });

  it.each(profiles.filter(({ name }) => name !== 'fine'))(
    'has room for $name in 80 columns and 23 lines, quiet zone and all',
    (known) => {
      const matrix = qrMatrix(textOf(known));
      const lines = qrLines(matrix, { mode: 'truecolor', background: 'dark', ascii: false });
      expect(lines.length).toBeLessThanOrEqual(23);
      expect(new Set(lines.map(textWidth))).toEqual(new Set([matrix.length + 2 * QUIET_MODULES]));
      expect(lines.length).toBe(Math.ceil((matrix.length + 2 * QUIET_MODULES) / 2));
    },
  );
});

describe('the quiet zone', () => {
  it('is four light modules on every side', () => {
    const matrix = qrMatrix('UF1');
    const zone = withQuietZone(matrix);
    expect(zone.length).toBe(matrix.length + 8);
    const within = zone.slice(4, -4).map((row) => row.slice(4, -4));
    expect(within).toEqual(matrix);
    const dark = (rows: typeof zone) => rows.flat().filter(Boolean).length;
    expect(dark(zone)).toBe(dark(matrix));
  });
});
