/**
 * Does a ride card in text say everything that a rider needs, on one page, and never more than is known?
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import { asciiText, CARD_PAGE, cardText } from '../../src/show/card-text.js';
import { rideCard } from '../../src/show/card.js';
import { CAUTIONS } from '../../src/show/cautions.js';
import { textWidth } from '../../src/show/fit-text.js';
import { drawnProfile } from './drawn-profile.js';
import { BAREST, FULL_PROFILE, keptExample, LONG_NAME, LONGEST } from './kept-example.js';

const EXAMPLE = keptExample({ note: 'calm on gravel' });

const linesOf = (text: string) => text.replace(/\n$/, '').split('\n');

/** The texts of a card by their labels, each as one line. */
function textsOf(text: string): Record<string, string> {
  const texts: Record<string, string> = {};
  let label = '';
  for (const line of linesOf(text).slice(linesOf(text).findIndex((one) => one.startsWith('hash')) + 1)) {
    label = line.slice(0, 9).trim() || label;
    texts[label] = `${texts[label] ?? ''} ${line.slice(9)}`.trim();
  }
  return texts;
}

const NARROW = { width: 50 };

describe('what stands on a ride card', () => {
  const texts = textsOf(cardText('denim-2', EXAMPLE, NARROW));

  it('is a title, the numbers with their units, and their hash', () => {
    const lines = linesOf(cardText('denim-2', EXAMPLE));
    expect(lines.slice(0, 5)).toEqual([
      'Ride card denim-2',
      'numbers',
      '  proportionalAPerDeg               22 A/deg',
      '  rateAPerDegPerS                  1.4 A/(deg/s)',
      '  integralAPerDegS                   0 A/(deg s)',
    ]);
    expect(lines).toContain(`hash of these numbers ${EXAMPLE.numbers}`);
  });

  it('is how it feels, and the cautions in full', () => {
    expect(texts.feels).toMatch(
      /^stiff and composed, simulated under light. Firm but calm: .* second swing.$/,
    );
    expect(texts.CAUTION).toBe(CAUTIONS.join(' '));
    expect(texts.note).toBe('calm on gravel');
  });

  it('is which ceilings hold, whose they are, and what lifts the nose', () => {
    expect(texts.ceilings).toBe(
      "drive 60 A (profile's; board's is 80 A), brake 70 A (board's), pack out 40 A, pack in 20 A.",
    );
    expect(texts.lift).toBe('below 25 % of headroom the nose rises by up to 4°, at 8°/s.');
    expect(textsOf(cardText('x', BAREST, NARROW)).lift).toBe(
      'none: the nose does not rise when headroom is short.',
    );
  });

  it('is for whom it was proven, and who should not ride it', () => {
    expect(texts.riders).toBe(
      'simulated under 55 to 100 kg and corrections 0.14 to 0.17 s late (light 55, first-timer 78, heavy 100 kg); under nobody else.',
    );
    expect(texts['not for']).toBe(
      '2 of 21 runs end in a fall, all under first-timer, who should not ride it.',
    );
    const bare = textsOf(cardText('x', BAREST, NARROW));
    expect(bare.riders).toBe(
      'simulated under 55 kg and corrections 0.14 s late (light 55 kg); under nobody else.',
    );
    expect(bare['not for']).toBe('none of these fell in 21 runs; others were not tried.');
  });

  it('is how far it holds out, with the rider who falls first', () => {
    expect(texts['held to']).toBe(
      'met by a push of 30 N s: speed 34 km/h (pack 80 %), speed none at all (pack 20 %); heavy falls first. ' +
        'at 12 km/h, pack 80 %: climb 14 %, descent 22 %, bump (0.4 m long) 90 mm; heavy falls first. ' +
        'beyond, the simulation falls: keep well inside.',
    );
    const limits = EXAMPLE.limits
      .filter(({ what }) => what === 'climb' || what === 'descent')
      .map((limit) => (limit.what === 'climb' ? { ...limit, rider: 'light', failed: null } : limit));
    expect(textsOf(cardText('x', keptExample({ limits }), NARROW))['held to']).toBe(
      'at 12 km/h, pack 80 %: climb 14 % and more (light falls first), descent 22 % (heavy falls first). ' +
        'beyond, the simulation falls: keep well inside.',
    );
  });

  it('is what is to spare, where it is weakest, and what is dangerous to type wrongly', () => {
    expect(texts.margins).toBe('all gains x0.31 to x2.41 together; delay 7.4 ms more.');
    expect(texts.weakest).toMatch(/^1\. hard-stop .* 2\. kerb-drop .* 3\. hill-up with heavy, .* 3\.40 s\.$/);
    expect(texts.typing).toMatch(/^Proportional gain with the other sign \(-22 A\/deg\): all 21 runs fall/);
  });

  it('says of what is not known that it is not', () => {
    const bare = textsOf(cardText('x', BAREST, NARROW));
    expect(bare.feels).toBe('no word for it, simulated under light. x');
    expect(bare.margins).toBe('none: the loop holds by itself on no steady ride.');
    expect(bare['held to']).toBe('speed, slope and bumps: no limit was searched for.');
    expect(bare.typing).toBe('No slips were tried.');
    expect(Object.keys(bare)).not.toContain('weakest');
    expect(Object.keys(bare)).not.toContain('note');
  });

  it('has the last ride as it was felt', () => {
    const rides = [
      { on: '2026-06-01', felt: { loose: 5 } },
      { on: '2026-06-02', note: 'better', felt: { twitchy: 4, stiff: 2 } },
    ];
    const ridden = 'ridden 2026-06-02: stiff 2, twitchy 4 (1 not at all, 5 very): better';
    expect(textsOf(cardText('x', keptExample({ rides }), NARROW)).note).toBe(ridden);
    // Written down in whatever order.
    const reversed = keptExample({ rides: rides.toReversed() });
    expect(textsOf(cardText('x', reversed, NARROW)).note).toBe(ridden);
  });

  it('is never called safe', () => {
    for (const kept of [EXAMPLE, BAREST, keptExample({ profile: FULL_PROFILE })]) {
      expect(cardText('x', kept, NARROW)).not.toMatch(/\bsafe/i);
    }
  });
});

describe('the page of a ride card', () => {
  const fits = (text: string) => {
    const lines = linesOf(text);
    expect(lines.length).toBeLessThanOrEqual(CARD_PAGE.rows);
    expect(Math.max(...lines.map(textWidth))).toBeLessThanOrEqual(CARD_PAGE.columns);
  };

  it('goes into a pocket: A6 with 5 mm of margin, letters of 7 pt', () => {
    const pointMm = 25.4 / 72;
    expect(CARD_PAGE.columns * 0.602 * 7 * pointMm).toBeLessThanOrEqual(105 - 2 * 4.9);
    expect(CARD_PAGE.rows * 7 * pointMm).toBeLessThanOrEqual(148 - 2 * 4.8);
  });

  it('holds what there is, however much', () => {
    for (const kept of [EXAMPLE, BAREST, LONGEST, keptExample({ profile: FULL_PROFILE })]) {
      fits(cardText(LONG_NAME, kept));
      fits(cardText(LONG_NAME, kept, { ascii: true }));
    }
  });

  it('holds any profile that there can be', () => {
    fc.assert(
      fc.property(drawnProfile, (profile: ProfileFile) => fits(cardText('x', keptExample({ profile })))),
      { numRuns: 30 },
    );
  });

  it('cuts what is long, says so, and never cuts a caution', () => {
    const texts = textsOf(cardText('x', LONGEST));
    expect(texts.CAUTION).toBe(CAUTIONS.join(' '));
    expect(texts.feels).toMatch(/…$/);
    expect(texts.note).toContain('…');
    expect(textsOf(cardText('x', LONGEST, NARROW)).feels).not.toContain('…');
    for (const label of ['ceilings', 'riders', 'held to', 'margins', 'weakest', 'typing', 'again'])
      expect(texts[label]).toBeTruthy();
  });

  it('is plain ASCII where that is asked for', () => {
    for (const kept of [keptExample({ note: 'Grüße: 4 ° – “Straße” 路' }), LONGEST]) {
      expect(cardText('x', kept, { ascii: true })).toMatch(/^[\n -~]*$/);
    }
    expect(asciiText('Grüße: 4° – “Straße” × … 路')).toBe('Grusse: 4 deg - "Strasse" x ... ?');
  });

  it('lets nothing of a note out that moves a cursor, and no line of its own', () => {
    const { parts } = rideCard('x', { ...EXAMPLE, note: 'a\u001b[31mb\nnumbers\u0007' });
    expect(parts.find(({ label }) => label === 'note')!.text).toBe('ab numbers');
  });
});
