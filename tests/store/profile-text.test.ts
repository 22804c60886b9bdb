/**
 * Does the text of a changed profile keep everything that was not changed, and hold exactly what was asked for?
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { profileSchema, type ProfileFile } from '../../src/quantity/profile-file.js';
import { folderOf, programFolder } from '../../src/store/places.js';
import {
  changedProfileText,
  freshProfileText,
  isSameProfile,
  profileOfText,
} from '../../src/store/profile-text.js';

const FOLDER = folderOf({ workingFolder: programFolder() }, 'profile');
const STARTERS = readdirSync(FOLDER).map((name) => ({
  name,
  text: readFileSync(join(FOLDER, name), 'utf8'),
}));

function profileOf(text: string): ProfileFile {
  const profile = profileOfText(text, 'a.yaml');
  if (!profile.ok) throw new Error(JSON.stringify(profile.faults));
  return profile.value;
}

function changed(text: string, profile: ProfileFile): string {
  const result = changedProfileText(text, profile, 'a.yaml');
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

type Changes = { gains?: Partial<ProfileFile['gains']>; shaping?: Partial<ProfileFile['shaping']> };

function withChanges(text: string, { gains, shaping }: Changes): ProfileFile {
  const profile = profileOf(text);
  return { ...profile, gains: { ...profile.gains, ...gains }, shaping: { ...profile.shaping, ...shaping } };
}

const SMALL = `# mine
summary: Firm # in words
gains:
    # from the first evening
    proportionalAPerDeg:   20   # felt too soft at 14
    rateAPerDegPerS: 1.2
`;

describe('a changed profile', () => {
  it.each(STARTERS)('of $name stays as it was when nothing differs', ({ text }) => {
    expect(changed(text, profileOf(text))).toBe(text);
  });

  it.each(STARTERS)('of $name differs in the one line of the changed value', ({ text }) => {
    const profile = withChanges(text, { gains: { proportionalAPerDeg: 33.5 } });
    const after = changed(text, profile).split('\n');
    const before = text.split('\n');
    expect(after).toHaveLength(before.length);
    const different = after.filter((line, index) => line !== before[index]);
    expect(different).toEqual(['  proportionalAPerDeg: 33.5']);
  });

  it('keeps layout and comments around the value', () => {
    const after = changed(SMALL, withChanges(SMALL, { gains: { proportionalAPerDeg: 25 } }));
    expect(after).toBe(SMALL.replace('  20   #', '  25   #'));
  });

  it('gets missing keys in their section, as far in as the others', () => {
    const after = changed(
      SMALL,
      withChanges(SMALL, { gains: { integralAPerDegS: 5 }, shaping: { engageRampS: 0.5 } }),
    );
    expect(after).toBe(`${SMALL}    integralAPerDegS: 5\n\nshaping:\n  engageRampS: 0.5\n`);
  });

  it('gets a missing section before the next one', () => {
    const text = `${SMALL}shaping:\n  blendTimeS: 4 # long\n# the end\n`;
    const headroomLift = { belowPercent: 40, upToDeg: 6, rateDegPerS: 3 };
    expect(changed(text, withChanges(text, { shaping: { headroomLift } }))).toBe(
      text.replace(
        '# long\n',
        '# long\n  headroomLift:\n    belowPercent: 40\n    upToDeg: 6\n    rateDegPerS: 3\n',
      ),
    );
  });

  it('gets new words in place of the old ones', () => {
    const text = STARTERS.find(({ name }) => name === 'canvas.yaml')!.text;
    const long = 'Firm: '
      .concat('it holds the nose where it is and passes on every stone. '.repeat(3))
      .trim();
    for (const summary of ['Firm', 'Firm: "quoted" # no comment', long, 'Two\nlines']) {
      const after = changed(text, { ...profileOf(text), summary });
      expect(profileOf(after)).toEqual({ ...profileOf(text), summary });
      expect(after.slice(after.indexOf('\ngains:'))).toBe(text.slice(text.indexOf('\ngains:')));
      expect(after.split('\n').every((line) => line.length <= 100 || text.includes(line))).toBe(true);
    }
  });

  it('loses a key that is to go, not its comments', () => {
    const text = `${SMALL}shaping:\n  # slow hands\n  blendTimeS: 4 # long\n  driveCeilingA: 60\n`;
    const { driveCeilingA: _gone, ...shaping } = profileOf(text).shaping;
    const wanted = { ...profileOf(text), shaping };
    const after = changed(text, wanted);
    expect(profileOf(after)).toEqual(wanted);
    expect(after).not.toContain('driveCeilingA');
    for (const comment of ['# mine', '# in words', '# felt too soft at 14', '# slow hands', '# long']) {
      expect(after).toContain(comment);
    }
  });

  it.each([
    ['braces', 'summary: Firm\ngains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1.2 } # two\n'],
    [
      'braces all over',
      '{ summary: Firm, gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1.2 } } # two\n',
    ],
    ['an alias', 'summary: Firm\ngains:\n  proportionalAPerDeg: &x 2\n  rateAPerDegPerS: *x # two\n'],
    ['a section without shaping in it', `${SMALL}shaping: {} # two\n`],
    ['no line end', 'summary: Firm\ngains: # two\n  proportionalAPerDeg: 20\n  rateAPerDegPerS: 1.2'],
    ['carriage returns', `${SMALL}# two\n`.replaceAll('\n', '\r\n')],
    ['a byte order mark', `\ufeff${SMALL}# two\n`],
  ])('holds what was asked for where the text has %s', (_, text) => {
    const wanted = withChanges(text, {
      gains: { proportionalAPerDeg: 7, integralAPerDegS: 1e-7 },
      shaping: { blendTimeS: 3, loadFeedForward: { filterTimeS: 1, currentShare: 0.5, noseUpDegPerA: 0 } },
    });
    const after = changed(text, wanted);
    expect(profileOf(after)).toEqual(wanted);
    expect(after).toContain('# two');
  });

  it('is not made from a text that holds no profile', () => {
    const profile = profileOf(SMALL);
    expect(changedProfileText('summary: [', profile, 'a.yaml')).toMatchObject({ ok: false });
    expect(changedProfileText(SMALL.replace('20', 'many'), profile, 'a.yaml')).toMatchObject({
      ok: false,
      faults: [{ file: 'a.yaml', key: 'gains.proportionalAPerDeg', received: "text 'many'" }],
    });
  });
});

const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 1 });

/** Profiles of all kinds; keys without a value are left out. */
const anyProfile = fc
  .record({
    summary: fc
      .string({ minLength: 1, maxLength: 200, unit: 'grapheme' })
      .filter((s) => !/[\p{Cc}\p{Cf}]/u.test(s)),
    gains: fc.record({
      proportionalAPerDeg: amount(0, 500),
      rateAPerDegPerS: amount(0, 100),
      integralAPerDegS: maybe(amount(0, 1000)),
    }),
    shaping: fc.record({
      slewLimitAPerS: maybe(amount(50, 1e6)),
      blendTimeS: maybe(amount(0.05, 60)),
      restTrimNoseUpDeg: maybe(amount(-10, 10)),
      loadFeedForward: maybe(fc.record({ filterTimeS: amount(0.05, 10), currentShare: amount(0, 0.95) })),
      headroomLift: maybe(
        fc.record({ belowPercent: amount(1, 90), upToDeg: amount(0.5, 15), rateDegPerS: amount(0.5, 60) }),
      ),
    }),
  })
  .map((drawn) => profileSchema.parse(JSON.parse(JSON.stringify(drawn))));

describe('any profile', () => {
  it('reads back from a text of its own, and from any other changed into it', () => {
    fc.assert(
      fc.property(
        anyProfile,
        fc.constantFrom(SMALL, ...STARTERS.map(({ text }) => text)),
        (profile, text) => {
          expect(isSameProfile(profileOf(freshProfileText(profile)), profile)).toBe(true);
          expect(isSameProfile(profileOf(changed(text, profile)), profile)).toBe(true);
        },
      ),
      { numRuns: 100, seed: 7 },
    );
  });

  it('can be changed into any other and back', () => {
    fc.assert(
      fc.property(anyProfile, anyProfile, (one, other) => {
        const back = changed(changed(freshProfileText(one), other), one);
        expect(isSameProfile(profileOf(back), one)).toBe(true);
      }),
      { numRuns: 50, seed: 7 },
    );
  });
});

describe('a fresh profile', () => {
  it('begins as the starter files do and leaves out what is as usual', () => {
    const profile = profileSchema.parse({
      summary: 'Firm',
      gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1.2 },
      shaping: { blendTimeS: 4, engageRampS: 0 },
    });
    expect(freshProfileText(profile)).toBe(
      [
        STARTERS[0]!.text.split('\n')[0],
        'summary: Firm',
        '',
        'gains:',
        '  proportionalAPerDeg: 20',
        '  rateAPerDegPerS: 1.2',
        '',
        'shaping:',
        '  blendTimeS: 4',
        '',
      ].join('\n'),
    );
  });
});
