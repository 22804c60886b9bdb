/** Does each word come from its number, at its threshold, and from the place where it was found? */
import { describe, expect, it } from 'vitest';
import type { FeelFacts } from '../../src/explain/feel-readings.js';
import { feelOf, footShiftNm } from '../../src/explain/feel.js';
import type { Mode } from '../../src/linear/modes.js';
import type { RideReport } from '../../src/linear/ride-report.js';
import type { Metrics } from '../../src/measure/metrics.js';
import { motion, sampleReport } from '../show/sample-margins.js';
import { cellOf, fallOf, resultOf } from './made-results.js';

const HZ = 2 * Math.PI;
const CALM_MODES = [motion(-20, 30, { deck: 1 }), motion(-5, 1.5, { rider: 0.5, travel: 0.5 })];

interface Changes {
  report?: Partial<RideReport>;
  modes?: Mode[];
  metrics?: Partial<Metrics>;
}

/** A composed board with what is given in place of the usual. */
function factsOf({ report = {}, modes = [], metrics = {} }: Changes): FeelFacts {
  const usual = {
    modes: [...CALM_MODES, ...modes],
    deckStiffnessNmPerDeg: { at01Hz: 8, at1Hz: 10 },
    ...report,
  };
  const rides = [0, 10, 20].map((speedKmPerH) => ({ speedKmPerH, report: sampleReport(usual) }));
  return { rides, cells: resultOf(cellOf('kerb', metrics)).cells, footShiftNm: 19 };
}

const stiffness = (at1Hz: number): Changes => ({
  report: { deckStiffnessNmPerDeg: { at01Hz: 0.8 * at1Hz, at1Hz } },
});
const peak = (value: number, hz: number): Changes => ({
  report: { margins: { ...sampleReport().margins, sensitivityPeak: { value, radPerS: hz * HZ } } },
});
/** A motion with this damping ratio. */
const damped = (ratio: number, hz: number, shares: Parameters<typeof motion>[2]): Changes => ({
  modes: [motion(-ratio * hz * HZ, hz, shares)],
});
const DECK = { deck: 0.5, travel: 0.5 };
const RIDER = { rider: 0.4, travel: 0.6 };

const TABLE: [string, Changes, string, Changes][] = [
  ['tilt above 3.5 deg', stiffness(19 / 3.6), 'loose', stiffness(19 / 3.4)],
  ['tilt below 1.15 deg', stiffness(19 / 1.1), 'stiff', stiffness(19 / 1.2)],
  [
    'mean tilt above 6 deg',
    { metrics: { peakNoseUpRad: 0.106 } },
    'loose',
    { metrics: { peakNoseUpRad: 0.103 } },
  ],
  ['step above 1 s', { metrics: { riseTimeS: 1.1 } }, 'sluggish', { metrics: { riseTimeS: 0.9 } }],
  ['deck motion below 0.25', damped(0.24, 6, DECK), 'twitchy', damped(0.26, 6, DECK)],
  [
    'the same, little of it the deck',
    damped(0.2, 6, DECK),
    'twitchy',
    damped(0.2, 6, { deck: 0.3, tyre: 0.7 }),
  ],
  ['peak above 2 at 6 Hz', peak(2.1, 6), 'twitchy', peak(1.9, 6)],
  ['peak above 2 at 12 Hz', peak(2.1, 12), 'twitchy', peak(1.9, 12)],
  ['peak above 2 at 13 Hz', peak(2.1, 13), 'buzzy', peak(1.9, 13)],
  ['deck motion above 12.5 Hz below 0.05', damped(0.04, 60, DECK), 'buzzy', damped(0.06, 60, DECK)],
  [
    'request above 500 A/s',
    { metrics: { commandActivityAPerS: 510 } },
    'buzzy',
    { metrics: { commandActivityAPerS: 490 } },
  ],
  ['noise above 1 A', { report: { gyroNoiseA: 1.1 } }, 'buzzy', { report: { gyroNoiseA: 0.9 } }],
  ['rider motion below 0.1', damped(0.09, 1.4, RIDER), 'rider-coupled wobble', damped(0.11, 1.4, RIDER)],
  [
    'the same as slow as a choice of speed',
    damped(0.05, 0.5, RIDER),
    'rider-coupled wobble',
    damped(0.05, 0.3, RIDER),
  ],
  [
    'a slow motion that doubles in under 5 s',
    { modes: [motion(0.2, 0.1, RIDER)] },
    'loose',
    { modes: [motion(0.1, 0.1, RIDER)] },
  ],
];

describe('a word', () => {
  it.each(TABLE)('for %s is said on one side of the threshold only', (_, beyond, word, within) => {
    expect(feelOf(factsOf(beyond)).map((feel) => feel.word)).toEqual([word]);
    expect(feelOf(factsOf(within)).map((feel) => feel.word)).toEqual(['composed']);
  });

  it('sluggish is the time constant of a spring with a damper, whatever its stiffness', () => {
    const at = (hz: number, timeS: number) => Math.hypot(1, hz * HZ * timeS);
    const feel = (timeS: number) =>
      feelOf(
        factsOf({
          report: { deckStiffnessNmPerDeg: { at01Hz: 4 * at(0.1, timeS), at1Hz: 4 * at(1, timeS) } },
        }),
      );
    const [slow] = feel(0.37);
    expect(slow).toMatchObject({ word: 'sluggish', reasons: [{ speedKmPerH: 0, threshold: 0.3 }] });
    expect(slow!.reasons[0]!.value).toBeCloseTo(0.37, 9);
    expect(feel(0.2)[0]!.word).toBe('composed');
  });

  it('comes with its number, place and frequency; the strongest first', () => {
    const words = feelOf(factsOf({ ...damped(-0.01, 80, DECK), metrics: { commandActivityAPerS: 20_000 } }));
    expect(words).toHaveLength(1);
    expect(words[0]!.strength).toBe(40);
    expect(words[0]!.reasons).toMatchObject([
      { measure: 'movement of the request', value: 20_000, unit: 'A/s', scenario: 'kerb', speedKmPerH: null },
      { measure: 'damping ratio', frequencyHz: 80, scenario: null },
    ]);
  });

  it('composed names what came nearest to a threshold', () => {
    const [feel] = feelOf(factsOf(peak(1.9, 6)));
    expect(feel).toMatchObject({ word: 'composed', strength: 0.95 });
    expect(feel!.reasons).toHaveLength(2);
    expect(feel!.reasons[0]).toMatchObject({ measure: 'sensitivity peak', value: 1.9, threshold: 2 });
  });

  it('leaves out rides that a ceiling cuts and runs that fell, and says nothing without any number', () => {
    const { cells } = resultOf(fallOf('kerb'));
    const rides = [{ speedKmPerH: 10, report: null }];
    expect(feelOf({ rides, cells, footShiftNm: 19 })).toEqual([]);
  });
});

it('the deck is tried with a twentieth of the weight, from foot to foot', () => {
  expect(footShiftNm({ massKg: 80, stanceWidthM: 0.5 })).toBeCloseTo(80 * 9.80665 * 0.025, 12);
});
