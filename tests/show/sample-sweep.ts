/** A sweep with round numbers, for tests of what is shown. */
import { weightsWith } from '../../src/measure/scales.js';
import type { FinalistView, SweepView } from '../../src/show/sweep-view.js';
import { cellOf, fallOf, resultOf } from '../explain/made-results.js';

const CHECK = { cellsChecked: 2, agreementRatio: 0.02, agrees: true, largestDifference: null };

/** A finalist that stands; what is given replaces the usual. */
export function sampleFinalist(name: string, changes: Partial<FinalistView> = {}): FinalistView {
  return {
    values: [20, 1.2],
    result: { ...resultOf(cellOf('kerb', { reboundPercent: 20 }), cellOf('hill', {}, 'lee')), name },
    groups: { comfort: 0.3, reserve: 0.2, agility: 0.1 },
    isOnFront: true,
    interval: { name, low: 1, high: 3 },
    leastDisk: { margin: 0.62, rider: 'lee', speedKmPerH: 12 },
    halfStep: CHECK,
    reference: CHECK,
    slips: [],
    feel: { rider: 'kim', words: ['composed'] },
    notFor: [],
    ...changes,
  };
}

/** A finalist that falls on the hill under lee. */
export function fallingFinalist(name: string): FinalistView {
  const result = { ...resultOf(cellOf('kerb'), fallOf('hill', 2, 'lee')), name };
  return sampleFinalist(name, { result, notFor: ['lee'], isOnFront: false });
}

/** A sweep of a hundred candidates, two of whom are left. */
export function sampleSweep(changes: Partial<SweepView> = {}): SweepView {
  return {
    board: 'otter',
    riders: ['kim', 'lee'],
    scenarios: ['kerb', 'hill'],
    cellCount: 4,
    runs: 700,
    weights: weightsWith(),
    ranges: [
      { path: ['gains', 'proportionalAPerDeg'], unit: 'A/deg', min: 3, max: 70 },
      { path: ['gains', 'rateAPerDegPerS'], unit: 'A/(deg/s)', min: 0.1, max: 6 },
    ],
    isExhaustive: false,
    isGrid: false,
    base: { ...resultOf(cellOf('kerb', { reboundPercent: 30 }), fallOf('hill', 2, 'lee')), name: 'plain' },
    counts: { tried: 100, spread: 60, hopeless: 7, dropped: 77, inEveryCell: 16 },
    finalists: [sampleFinalist('c00012'), fallingFinalist('c00040')],
    left: { draws: 99, chanceOfBetter: 0.01, gainIfBetter: 0.02, gainPerDraw: 0.0002, gainOfSearch: null },
    ...changes,
  };
}
