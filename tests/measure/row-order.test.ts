/**
 * Do rows stand in the order asked for, those without a figure last, equal ones by rank?
 */
import { describe, expect, it } from 'vitest';
import { profileResult, type ProfileResult } from '../../src/measure/profile-result.js';
import { orderRows, RANK_ORDER, ROW_ORDERS } from '../../src/measure/row-order.js';
import { weightsWith } from '../../src/measure/scales.js';
import { CALM } from './some-metrics.js';

interface Figures {
  overshoot: number | null;
  settling: number;
  cut: number;
  falls?: number;
  score?: number;
}

function profile(name: string, figures: Figures): ProfileResult {
  const cell = {
    scenario: 'kerb',
    rider: 'kim',
    chargePercent: 80,
    seed: 1,
    outcome: { kind: 'upright', atS: 8 } as const,
    eventReached: figures.overshoot !== null,
    metrics: {
      ...CALM,
      kind: 'disturbance' as const,
      windowS: 6,
      measuredS: 6,
      settlingTimeS: figures.settling,
      reboundPercent: figures.overshoot,
      saturationShare: figures.cut,
    },
  };
  const result = profileResult({ name, summary: '' }, [cell], weightsWith());
  return { ...result, failures: figures.falls ?? result.failures, score: figures.score ?? result.score };
}

/** In the order of rank; the last has no figure, for its only run failed. */
const RANKED = [
  profile('wool', { overshoot: 30, settling: 2, cut: 0.1, falls: 0, score: 0.5 }),
  profile('felt', { overshoot: 10, settling: 2, cut: 0.3, falls: 0, score: 0.6 }),
  profile('silk', { overshoot: 20, settling: 1, cut: 0.2, falls: 1, score: 0.4 }),
  profile('tulle', { overshoot: null, settling: 9, cut: 0.9, falls: 2, score: 0.7 }),
];

const names = (by: (typeof ROW_ORDERS)[number], reversed: boolean) =>
  orderRows(RANKED, { by, reversed }).map(({ name }) => name);

describe('the order of rows', () => {
  it.each([
    ['rank', ['wool', 'felt', 'silk', 'tulle'], ['tulle', 'silk', 'felt', 'wool']],
    ['profile', ['felt', 'silk', 'tulle', 'wool'], ['wool', 'tulle', 'silk', 'felt']],
    ['falls', ['wool', 'felt', 'silk', 'tulle'], ['tulle', 'silk', 'wool', 'felt']],
    ['score', ['silk', 'wool', 'felt', 'tulle'], ['tulle', 'felt', 'wool', 'silk']],
    ['overshoot', ['felt', 'silk', 'wool', 'tulle'], ['wool', 'silk', 'felt', 'tulle']],
    ['settling', ['silk', 'wool', 'felt', 'tulle'], ['wool', 'felt', 'silk', 'tulle']],
    ['cut', ['wool', 'silk', 'felt', 'tulle'], ['felt', 'silk', 'wool', 'tulle']],
  ] as const)('by %s', (by, expected, reversed) => {
    expect(names(by, false)).toEqual(expected);
    expect(names(by, true)).toEqual(reversed);
  });

  it('leaves what was given as it was', () => {
    const given = [...RANKED];
    orderRows(given, { by: 'overshoot', reversed: true });
    expect(given).toEqual(RANKED);
    expect(orderRows(given, RANK_ORDER)).toEqual(RANKED);
  });
});
