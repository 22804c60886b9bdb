/**
 * Does the shortlist say what was proven, promised and felt, in words, and does it fit the screen?
 */
import { describe, expect, it } from 'vitest';
import { FEEL_WORDS, feltKeyOf } from '../../src/quantity/feel-words.js';
import type { KeptFile } from '../../src/quantity/kept-file.js';
import { PROFILE_FIELDS } from '../../src/quantity/profile-fields.js';
import { createPaint } from '../../src/show/colour.js';
import { disagreements, explainKept, feltMeans, feltSentences } from '../../src/show/felt-words.js';
import { textWidth } from '../../src/show/fit-text.js';
import {
  ceilingRows,
  gainRows,
  limitSentences,
  marginSentencesOf,
  numberLabel,
} from '../../src/show/kept-sentences.js';
import { shortSlipSentences, slipSentences, worstSlips } from '../../src/show/kept-slips.js';
import { keptLines } from '../../src/show/shortlist-lines.js';
import { shortlistLines } from '../../src/show/shortlist-table.js';
import { OWN_CHARGE_WORD } from '../../src/quantity/charges-text.js';
import { keptFixture } from '../tasks/kept-fixture.js';

type Felt = KeptFile['rides'][number]['felt'];

const ridden = (...felt: Felt[]) =>
  keptFixture({ rides: felt.map((one, index) => ({ on: `2026-06-0${index + 1}`, note: '', felt: one })) });

const plain = { symbols: 'braille', paint: createPaint('none') } as const;
const ascii = { symbols: 'ascii', paint: createPaint('none') } as const;

describe('the numbers of a kept profile', () => {
  it('each has a label of its own', () => {
    const labels = PROFILE_FIELDS.map(({ key }) => numberLabel(key));
    expect(labels.filter((label) => PROFILE_FIELDS.some(({ key }) => key === label))).toEqual([]);
    expect(new Set(labels).size).toBe(PROFILE_FIELDS.length);
  });

  it('stand with unit in the order of the file, without those left out', () => {
    const rows = gainRows(keptFixture());
    expect(rows.slice(0, 2)).toMatchObject([
      { label: 'proportional gain', key: 'proportionalAPerDeg', value: '20', unit: 'A/deg' },
      { label: 'rate gain', value: '1.2', unit: 'A/(deg/s)' },
    ]);
    expect(rows.map(({ key }) => key)).not.toContain('slewLimitAPerS');
  });

  it('have the lower ceiling of profile and board', () => {
    const kept = keptFixture();
    const { profile } = kept;
    const own = (driveCeilingA: number) =>
      ceilingRows({ ...kept, profile: { ...profile, shaping: { ...profile.shaping, driveCeilingA } } })[0];
    expect(own(45)).toMatchObject({ value: '45', says: "the profile's; the board's is 80 A" });
    expect(own(90)).toMatchObject({ value: '80', says: "the board's" });
    expect(ceilingRows(kept).map(({ value }) => value)).toEqual(['80', '80', '40', '20']);
  });
});

describe('sentences', () => {
  it('tell margins with who has the least, and those without end', () => {
    const sentences = marginSentencesOf(keptFixture());
    expect(sentences[0]).toBe('All gains together may grow to x2.13 (least under kim, 12 km/h).');
    expect(sentences[1]).toBe('No fall of all gains together that loses the loop was found.');
    expect(sentences[2]).toContain('6.3 ms');
    expect(sentences[3]).toBe('Phase to spare: 31° (least under kim, 12 km/h).');
    expect(marginSentencesOf({ margins: null })).toHaveLength(1);
  });

  it('tell limits: found, above what was tried, below everything, of an unknown thing', () => {
    const kept = keptFixture();
    const [bump, speed] = limitSentences(kept);
    expect(bump).toBe(
      'Bump: holds out up to 61 mm, 0.4 m long, at 12 km/h with the pack at 80 %, under kim; at 62 mm it ends in a nose strike.',
    );
    expect(speed).toBe(
      'Steady speed: holds out even at 60 km/h, the most that was tried, with the pack at 20 % and a push of 30 N s from behind, under kim.',
    );
    const [limit] = kept.limits;
    const changed = (changes: Partial<KeptFile['limits'][number]>) =>
      limitSentences({ ...kept, limits: [{ ...limit!, ...changes }] })[0];
    // The loop of the fixture can spare 6.3 ms.
    const delayed = (survived: number) => changed({ what: 'extra delay', unit: 'ms', survived, failed: 40 });
    expect(delayed(36)).toMatch(/ With more than 6\.3 ms of it the loop rattles, .*\.$/);
    expect(delayed(6)).not.toContain('rattles');
    expect(changed({ survived: null, failed: 0 })).toContain('no limit to be found');
    expect(changed({ survived: 0, failed: 1 })).toContain('holds out against none');
    expect(changed({ what: 'gust', unit: 'm/s' })).toMatch(/^Gust: holds out up to 61 m\/s, at 12 km\/h/);
  });

  it('tell slips: the number first that makes most fall soonest, with the least slip that harms', () => {
    const kept = keptFixture();
    expect(worstSlips(kept).map(({ key }) => key)).toEqual(['proportionalAPerDeg', 'rateAPerDegPerS']);
    const [first, second] = slipSentences(kept, 5);
    expect(first).toBe(
      'Proportional gain with the other sign (-20 A/deg): 4 of 4 runs fall; the soonest ends in a nose strike at 0.31 s.',
    );
    expect(second).toContain('; more fall already a tenth too small (1.08 A/(deg/s))');
    expect(slipSentences(kept, 1)).toEqual([first]);
    const harmless = kept.slips.map((slip) => ({ ...slip, moreFailures: 0, scoreRatio: 1 }));
    expect(slipSentences({ slips: harmless }, 5)).toEqual([
      'No slip that was tried made a run fall that did not before.',
    ]);
    expect(slipSentences({ slips: [] }, 5)).toEqual(['No slips were tried.']);
  });

  it('let nobody believe that a gain too high is harmless because it fells nothing here', () => {
    const [one] = keptFixture().slips;
    const slips = (
      slip: 'ten times it' | 'a tenth of it',
      moreFailures: number,
      key = 'rateAPerDegPerS',
    ) => ({
      slips: [{ ...one!, key, slip, moreFailures, scoreRatio: 1 }],
    });
    for (const tell of [slipSentences, shortSlipSentences]) {
      expect(tell(slips('ten times it', 0), 5).at(-1)).toContain('rigid');
      expect(tell(slips('ten times it', 3), 5).join()).not.toContain('rigid');
      expect(tell(slips('a tenth of it', 0), 5).join()).not.toContain('rigid');
      // A limit or a time shakes no frame.
      expect(tell(slips('ten times it', 0, 'blendTimeS'), 5).join()).not.toContain('rigid');
    }
  });
});

describe('what was felt', () => {
  it('is the mean over the rides that rated the word, the strongest first', () => {
    const { rides } = ridden({ twitchy: 4, loose: 1 }, { twitchy: 5 }, {});
    expect(feltMeans(rides)).toEqual([
      { word: 'twitchy', mean: 4.5, count: 2 },
      { word: 'loose', mean: 1, count: 1 },
    ]);
  });

  it.each(FEEL_WORDS.filter((word) => word !== 'composed'))(
    '%s disagrees from 4 on where it was not promised',
    (word) => {
      const rated = (rating: number) => disagreements(ridden({ [feltKeyOf(word)]: rating }));
      expect([1, 2, 3, 4, 5].map((rating) => rated(rating).length)).toEqual([0, 0, 0, 1, 1]);
    },
  );

  it('disagrees up to 2 where it was promised', () => {
    expect([1, 2, 3, 4, 5].map((composed) => disagreements(ridden({ composed })).length)).toEqual([
      1, 1, 0, 0, 0,
    ]);
  });

  it('says what a disagreement means and which command looks into it', () => {
    const kept = ridden({ composed: 2, twitchy: 4 });
    const told = feltSentences(kept).join(' ');
    expect(told).toContain('Promised composed, felt twitchy 4, composed 2, of 5.');
    expect(told).toContain('delay');
    expect(told.endsWith(explainKept(kept))).toBe(true);
    expect(feltSentences(ridden({ composed: 5 }))).toEqual([
      'Promised composed, felt composed 5, of 5. That agrees.',
    ]);
    expect(feltSentences(ridden({}))).toEqual([]);
  });

  it('is looked into where it was proven', () => {
    const charges = `--charge ${OWN_CHARGE_WORD},20`;
    const many = {
      ...keptFixture().cells,
      scenarios: Array.from({ length: 15 }, (_, index) => `scenario-${index}`),
    };
    expect(explainKept(keptFixture({ cells: many }))).not.toContain('--scenarios');
    expect(explainKept(keptFixture())).toBe(
      `underfoot explain slate --board pebble --rider kim --scenarios kerb ${charges} --seeds 2`,
    );
  });
});

describe('the list', () => {
  const long = 'a very long note that says more than fits '.repeat(5).trim();
  const kept = [
    { name: 'one', value: keptFixture({ note: long, rides: ridden({ twitchy: 4, composed: 2 }).rides }) },
    { name: 'x'.repeat(40), value: keptFixture({ note: 'two\nlines' }) },
  ];

  it.each([40, 80, 109, 110, 120])('fits into %i columns', (width) => {
    for (const options of [plain, ascii]) {
      const lines = shortlistLines(kept, { width, ...options });
      expect(lines.filter((line) => textWidth(line) > width || line !== line.trimEnd())).toEqual([]);
      expect(lines.join('\n')).not.toContain('two\nlines');
    }
  });

  it('has a row each with what was proven, promised and felt', () => {
    for (const width of [80, 120]) {
      const lines = shortlistLines(kept, { width, ...plain });
      expect(lines[1]).toMatch(/^one .*2026-05-31.* 1\/4 +0\.73 +0\.55 +composed +twitchy 4.* 1( |$)/);
      expect(lines.join('\n')).toContain('a very long');
    }
    expect(shortlistLines(kept, { width: 120, ...plain })[1]).toContain('pebble');
  });

  it('says how to begin where nothing is kept', () => {
    expect(shortlistLines([], { width: 80, ...plain }).join(' ')).toContain(
      'underfoot shortlist add PROFILE',
    );
  });
});

describe('one kept profile', () => {
  const value = keptFixture({ note: 'Calm\nand quick', rides: ridden({ twitchy: 4 }, {}).rides });

  it.each([40, 80, 120])('fits into %i columns', (width) => {
    for (const options of [plain, ascii]) {
      const lines = keptLines({ name: 'one', value }, { width, ...options });
      expect(lines.filter((line) => textWidth(line) > width)).toEqual([]);
    }
  });

  it('in plain symbols is plain', () => {
    const text = keptLines({ name: 'one', value }, { width: 80, ...ascii }).join('\n');
    expect(text).toMatch(/^[\n\u0020-\u007e°]*$/);
  });

  it('is told from numbers to what was felt', () => {
    const text = keptLines({ name: 'one', value }, { width: 2000, ...plain }).join('\n');
    for (const part of [
      `one: numbers ${value.numbers}`,
      'Kept from slate on 2026-05-31 at 18:20 UTC',
      'Note: Calm\nNote: and quick',
      'Board pebble, under kim (78 kg).',
      "4 runs: scenarios kerb; pack at each scenario's own charge and 20 %; seeds 1 and 2.",
      '1 of 4 runs fell; score 0.73, less is better.',
      'Not for kim, who fell in some run.',
      'kerb with kim, pack at 80 %: it swings for 1.9 s',
      '2026-06-01: twitchy 4.',
      '2026-06-02: not rated.',
    ]) {
      expect(text).toContain(part);
    }
    expect(text).not.toMatch(/\bsafe/i);
    const untold = keptLines({ name: 'one', value: keptFixture() }, { width: 2000, ...plain }).join('\n');
    expect(untold).toContain('Promised under kim: composed. Not ridden yet.');
  });
});
