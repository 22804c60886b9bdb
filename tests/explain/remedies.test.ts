/** Is what is proposed one change, of the blamed number, towards the reference? */
import { describe, expect, it } from 'vitest';
import { combined, editsBetween, proposalsFor, type Proposal } from '../../src/explain/remedies.js';
import { profileSchema, type ProfileFile } from '../../src/quantity/profile-file.js';

const profileOf = (gains: object = {}, shaping: object = {}): ProfileFile =>
  profileSchema.parse({
    summary: 'A profile for tests',
    gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1.2, ...gains },
    shaping,
  });

const REFERENCE = profileOf({}, { blendTimeS: 4 });

const against = (cause: string, profile: ProfileFile, rival: string | null = null): Proposal[] =>
  proposalsFor(profile, REFERENCE, [{ cause, rival }]).filter(({ causes }) => causes.includes(cause));

/** The edits of proposals, as texts. */
const texts = (proposals: readonly Proposal[]) =>
  proposals.map(({ edits }) => edits.map(({ path, from, to }) => `${path.at(-1)!} ${from} ${to}`).join(', '));

describe('proposals', () => {
  it.each<[string, ProfileFile, string[]]>([
    [
      'too little rate gain',
      profileOf({ rateAPerDegPerS: 0.3 }),
      ['rateAPerDegPerS 0.3 0.6', 'rateAPerDegPerS 0.3 1.2', 'rateAPerDegPerS 0.3 1.5'],
    ],
    [
      'too much proportional gain',
      profileOf({ proportionalAPerDeg: 80 }),
      ['proportionalAPerDeg 80 40', 'proportionalAPerDeg 80 20', 'proportionalAPerDeg 80 15'],
    ],
    [
      'integral wind-up',
      profileOf({ integralAPerDegS: 100 }, { integralLimitA: 80 }),
      ['integralAPerDegS 100 50', 'integralAPerDegS 100 0', 'integralLimitA 80 20', 'integralLimitA 80 40'],
    ],
    ['filter lag', profileOf({}, { gyroLowPassHz: 3 }), ['gyroLowPassHz 3 null', 'gyroLowPassHz 3 12']],
    [
      'slew limit',
      profileOf({}, { slewLimitAPerS: 60 }),
      ['slewLimitAPerS 60 null', 'slewLimitAPerS 60 240'],
    ],
    ['accelerometer pull', profileOf(), ['blendTimeS 1 2', 'blendTimeS 1 4', 'blendTimeS 1 5']],
    [
      'load feed-forward',
      profileOf({}, { loadFeedForward: { filterTimeS: 1, currentShare: 0.8 } }),
      ['filterTimeS 1 null, currentShare 0.8 null, noseUpDegPerA 0 null', 'currentShare 0.8 0.4'],
    ],
    [
      'voltage ceiling',
      profileOf(),
      [
        'belowPercent null 30, upToDeg null 4, rateDegPerS null 10',
        'belowPercent null 45, upToDeg null 12, rateDegPerS null 2',
      ],
    ],
    ["the rider's delay", profileOf(), []],
    ['grip', profileOf(), []],
  ])('against %s', (cause, profile, edits) => {
    expect(texts(against(cause, profile))).toEqual(edits);
  });

  it('hold every number inside its range, and are true to what they say they change', () => {
    const profile = profileOf({ rateAPerDegPerS: 90 }, { slewLimitAPerS: 900_000 });
    for (const proposal of proposalsFor(profile, REFERENCE, [{ cause: 'slew limit', rival: null }])) {
      expect(profileSchema.parse(proposal.profile)).toEqual(proposal.profile);
      expect(editsBetween(profile, proposal.profile)).toEqual(proposal.edits);
    }
  });

  it('always hold steps aside, and nothing twice', () => {
    const profile = profileOf();
    const aside = proposalsFor(profile, REFERENCE, []);
    expect(texts(aside)).toEqual([
      'proportionalAPerDeg 20 26',
      'proportionalAPerDeg 20 15',
      'rateAPerDegPerS 1.2 1.7',
      'rateAPerDegPerS 1.2 0.84',
    ]);
    const causes = ['voltage ceiling', 'low pack', 'pack ceiling'].map((cause) => ({ cause, rival: null }));
    const proposals = proposalsFor(profile, REFERENCE, causes);
    expect(proposals).toHaveLength(6);
    expect(proposals[0]!.causes).toEqual(['voltage ceiling', 'low pack', 'pack ceiling']);
  });

  it('go against the rival of an unsure finding too', () => {
    const profile = profileOf({ rateAPerDegPerS: 0.3, proportionalAPerDeg: 5 });
    const proposals = proposalsFor(profile, REFERENCE, [
      { cause: 'too little rate gain', rival: 'too little proportional gain' },
    ]);
    expect(texts(proposals)).toContain('proportionalAPerDeg 5 20');
  });
});

describe('two changes together', () => {
  const profile = profileOf({ rateAPerDegPerS: 0.3 }, { gyroLowPassHz: 3 });
  const [rate] = against('too little rate gain', profile);
  const [filter, wider] = against('filter lag', profile);

  it('have the numbers of both', () => {
    const pair = combined(profile, rate!, filter!)!;
    expect(pair.profile.gains.rateAPerDegPerS).toBe(0.6);
    expect(pair.profile.shaping.gyroLowPassHz).toBeUndefined();
    expect(pair.causes).toEqual(['too little rate gain', 'filter lag']);
    expect(combined(profile, filter!, rate!)!.profile).toEqual(pair.profile);
  });

  it('are none where both are of one number', () => {
    expect(combined(profile, filter!, wider!)).toBeNull();
  });
});
