/** Is what was tried told with what gets better and worse, new falls first, and is the verdict in words? */
import { describe, expect, it } from 'vitest';
import { COST_TERMS, type CostName } from '../../src/measure/scales.js';
import { feelSentences } from '../../src/show/why-feel.js';
import { editsText, remedySentences, verdictSentences } from '../../src/show/why-remedies.js';
import type { Verdict } from '../../src/explain/remedy-effect.js';
import { fallOf, resultOf } from '../explain/made-results.js';
import { sampleEdit, sampleEvidence, sampleFeel, sampleFinding, sampleRemedy } from './sample-why.js';

const lift = (key: string, to: number) =>
  sampleEdit({ path: ['shaping', 'headroomLift', key], unit: '', from: null, to });

describe('an edit', () => {
  it.each([
    [[sampleEdit()], 'rate gain from 0.02 to 1.2 A/(deg/s)'],
    [[sampleEdit({ to: 0.6 })], 'rate gain from 0.02 to 0.6 A/(deg/s)'],
    [
      [sampleEdit({ path: ['shaping', 'gyroLowPassHz'], unit: 'Hz', from: 3, to: null })],
      'without gyro low-pass (was 3 Hz)',
    ],
    [
      [sampleEdit({ path: ['shaping', 'gyroLowPassHz'], unit: 'Hz', from: null, to: 60 })],
      'gyro low-pass 60 Hz',
    ],
    [
      [sampleEdit({ path: ['shaping', 'loadFeedForward', 'currentShare'], unit: '', from: 0.8, to: 0.4 })],
      'load feed-forward currentShare from 0.8 to 0.4',
    ],
    [
      [sampleEdit(), lift('belowPercent', 30), lift('upToDeg', 4), lift('rateDegPerS', 10)],
      'rate gain from 0.02 to 1.2 A/(deg/s), and headroom lift below 30 % headroom, up to 4°, 10 deg/s',
    ],
  ])('is told in words: %j', (edits, text) => {
    expect(editsText(edits)).toBe(text);
  });
});

describe('a change', () => {
  it('is told with falls, score, what gets better and what gets worse', () => {
    const cured = resultOf(fallOf('hill')).cells;
    expect(remedySentences(sampleRemedy({ cured }))).toEqual([
      'Rate gain from 0.02 to 1.2 A/(deg/s): falls from 1 to 0, score from 2.51 to 0.44.',
      'Stays up now: hill with kim.',
      'Better: settling 4.09 to 0.59 s.',
      'Worse: movement of the request 50 to 71 A/s.',
    ]);
    expect(remedySentences(sampleRemedy({ failuresAfter: 1, scoreAfter: 0.9 }))[0]).toContain(
      'falls 1, score from 2.51 to 0.90',
    );
  });

  it('that makes a run fall says so first, and counts what it does not name', () => {
    const newlyFailed = resultOf(...['a', 'b', 'c', 'd', 'e'].map((name) => fallOf(name))).cells;
    const [first] = remedySentences(sampleRemedy({ newlyFailed }));
    expect(first).toMatch(
      /^Makes 5 runs fall that stood: a with kim, b with kim, c with kim and 2 more\. Rate gain /,
    );
    const [one] = remedySentences(sampleRemedy({ newlyFailed: newlyFailed.slice(0, 1) }));
    expect(one).toMatch(/^Makes a run fall that stood: a with kim\. /);
  });

  it.each(COST_TERMS.map(({ name, unit }) => [name, unit] as const))(
    'has a word and a unit for %s',
    (name, unit) => {
      const term = { name: name satisfies CostName, unit, before: 2.2, after: 0.1, costChange: -1 };
      const text = remedySentences(sampleRemedy({ better: [term], worse: [] })).at(-1)!;
      expect(text).toMatch(/^Better: [a-z0-9' ]+ \d+(\.\d+)? to \d+(\.\d+)?(°| [a-zA-Z%])[^ ]*\.$/i);
    },
  );

  it('does not tell what looks the same after rounding', () => {
    const term = { name: 'overshoot', unit: '%', before: 6.4, after: 5.6, costChange: -1 } as const;
    const settled = { name: 'settling', unit: 's', before: 2, after: 1, costChange: -1 } as const;
    expect(remedySentences(sampleRemedy({ better: [term, settled], worse: [term] })).slice(1)).toEqual([
      'Better: settling 2.00 to 1.00 s.',
    ]);
  });

  it('tells angles in degrees and shares in percent', () => {
    const better = [
      { name: 'peak-pitch' as const, unit: 'rad', before: 0.1, after: 0.05, costChange: -1 },
      { name: 'saturation' as const, unit: 'share of ticks', before: 0.2, after: 0.1, costChange: -1 },
    ];
    expect(remedySentences(sampleRemedy({ better }))[1]).toBe(
      'Better: largest tilt 5.7 to 2.9°, ticks cut 20.0 to 10.0 %.',
    );
  });
});

describe('the verdict', () => {
  const told = (verdict: Verdict, ...evidence: Parameters<typeof verdictSentences>[1]) =>
    verdictSentences(
      { remedies: [sampleRemedy()], counts: { ofOne: 9, ofTwo: 3 }, verdict, ways: [] },
      evidence,
    );

  it.each([
    ['one change helps', /the best first\.$/],
    ['only two changes help', /No single change helps; two together do\.$/],
    ['no change helps', /None helps; these came nearest\.$/],
  ] as const)('%s', (kind, text) => {
    expect(told({ kind, limits: [] })).toEqual([expect.stringMatching(text)]);
  });

  it('calls a ceiling that no numbers cure the limit of the hardware, with a way out', () => {
    const finding = sampleFinding({ cause: 'voltage ceiling', family: 'power' });
    const firstCut = { timeS: 2, speedMPerS: 9, pitchRad: 0, ceiling: 'voltage' } as const;
    const evidence = sampleEvidence({ finding, moment: { ...sampleEvidence().moment, firstCut } });
    expect(told({ kind: 'no change helps', limits: [finding] }, evidence)[1]).toBe(
      "This is the hardware's limit: the voltage ceiling cuts; no numbers in a profile that were tried cure it. " +
        'What would: more cells in series or a motor that turns faster per volt, or less speed (it first cuts at 32.4 km/h).',
    );
  });

  it('says the same of the rider, the grip and the road', () => {
    const limits = [
      sampleFinding({ cause: "the rider's delay", family: 'rider' }),
      sampleFinding({ cause: 'grip', family: 'road' }),
    ];
    expect(told({ kind: 'no change helps', limits }).slice(1)).toEqual([
      "The rider's own delay: no numbers in a profile that were tried cure it.",
      'Grip: no numbers in a profile that were tried cure it.',
    ]);
  });
});

describe('the feel', () => {
  it('is told with its numbers, which change with the report', () => {
    const { margins } = sampleFeel().rides[0]!.report!;
    const peaked = (value: number) =>
      sampleFeel({ margins: { ...margins, sensitivityPeak: { value, radPerS: 12 * Math.PI } } });
    expect(feelSentences(peaked(2.4))).toContain(
      'Feels twitchy under kim: the sensitivity peak of the pitch loop is 2.40 at 6.0 Hz, standing (twitchy above 2).',
    );
    expect(feelSentences(peaked(3.1))[0]).toContain('3.10 at 6.0 Hz');
  });

  it('composed names the nearest limit, and no ride is said', () => {
    const calm = sampleFeel({ deckStiffnessNmPerDeg: { at01Hz: 8, at1Hz: 10 } });
    expect(feelSentences(calm)[0]).toMatch(/^Feels composed under kim: no limit is passed\. Nearest: /);
    expect(feelSentences({ rider: 'kim', rides: [], words: [] })).toEqual([
      'How it feels under kim cannot be told: no ride was seen.',
    ]);
  });

  it('tells a number of the runs with the scenario in which it is most', () => {
    const reason = {
      measure: 'movement of the request',
      value: 900,
      unit: 'A/s',
      side: 'above',
      threshold: 500,
      source: 'ours',
      speedKmPerH: null,
      scenario: 'lane',
      frequencyHz: null,
      word: 'buzzy',
    } as const;
    const words = [{ word: 'buzzy' as const, strength: 1.8, reasons: [reason] }];
    expect(feelSentences({ rider: 'kim', rides: [], words })).toEqual([
      'Feels buzzy under kim: the requested current moves by 900 A/s, most in lane (buzzy above 500 A/s).',
    ]);
  });
});
