/** What becomes of a profile over its runs: failures, worst run, figures of its row and standing, on runs made by hand. */
import { describe, expect, it } from 'vitest';
import {
  MARGINAL_COST,
  profileResult,
  rowFigures,
  standingOf,
  type CellResult,
  type RankedCell,
} from '../../src/measure/profile-result.js';
import { COST_NAMES, weightsWith } from '../../src/measure/scales.js';
import { FAILED_CELL_COST } from '../../src/measure/score.js';
import { CALM } from './some-metrics.js';

/** Only the rider's torque costs, and 20 Nm of it cost 1: costs can be read off. */
const WEIGHTS = weightsWith({
  ...Object.fromEntries(COST_NAMES.map((name) => [name, 0])),
  'rider-torque': 1,
});

function runOf(scenario: string, changes: Partial<CellResult> = {}): CellResult {
  return {
    scenario,
    rider: 'kim',
    chargePercent: 80,
    seed: 3,
    outcome: { kind: 'upright', atS: 8 },
    eventReached: true,
    metrics: CALM,
    ...changes,
  };
}

const FELL = { outcome: { kind: 'tail strike', atS: 2 } } as const;
const costing = (cost: number) => ({ metrics: { ...CALM, riderTorqueRmsNm: 20 * cost } });
const resultOf = (...results: CellResult[]) =>
  profileResult({ name: 'wool', summary: 'soft' }, results, WEIGHTS);

describe('a profile over its runs', () => {
  it('keeps its name, its words and its runs in their order, each with key and cost', () => {
    const { name, summary, cells } = resultOf(runOf('kerb', costing(0.5)), runOf('hill', costing(0.25)));
    expect({ name, summary }).toEqual({ name: 'wool', summary: 'soft' });
    expect(cells.map(({ key }) => key)).toEqual(['kerb/kim/80/3', 'hill/kim/80/3']);
    expect(cells.map(({ cost }) => cost)).toEqual([0.5, 0.25]);
  });

  it('counts as failed what fell and what never met its event, and prices it so', () => {
    const { failures, cells, score, worst } = resultOf(
      runOf('kerb', costing(0.5)),
      runOf('hill', FELL),
      runOf('gust', { eventReached: false }),
    );
    expect(cells.map(({ failed }) => failed)).toEqual([false, true, true]);
    expect(cells.map(({ cost }) => cost)).toEqual([0.5, FAILED_CELL_COST, FAILED_CELL_COST]);
    expect(failures).toBe(2);
    expect(score).toBeCloseTo(((0.5 + 20) / 3 + 10) / 2, 12);
    expect(worst.key).toBe('gust/kim/80/3');
  });

  it('without runs cannot be scored', () => {
    expect(() => resultOf()).toThrow('without cells');
  });
});

describe('the figures of a row', () => {
  const figures = (...results: CellResult[]) => rowFigures(resultOf(...results).cells);

  it('are means over what stayed up; not settled counts as the window and is counted', () => {
    const settled = { ...CALM, settlingTimeS: 1, reboundPercent: 30, saturationShare: 0.1 };
    const restless = { ...CALM, settlingTimeS: null, reboundPercent: 50, saturationShare: 0.4 };
    const row = figures(
      runOf('kerb', { metrics: settled }),
      runOf('hill', { metrics: restless }),
      runOf('gust', { ...FELL, metrics: { ...restless, saturationShare: 1 } }),
    );
    expect(row.overshootPercent).toBeCloseTo(40, 12);
    expect(row.settlingTimeS).toBeCloseTo((1 + 8) / 2, 12);
    expect(row.saturationShare).toBeCloseTo(0.25, 12);
    expect(row.notSettledCount).toBe(1);
  });

  it('of a ride are neither rebound nor settling, and it is not counted as restless', () => {
    const ride = { ...CALM, kind: 'ride', settlingTimeS: null, reboundPercent: null } as const;
    expect(figures(runOf('street', { metrics: ride }))).toEqual({
      overshootPercent: null,
      settlingTimeS: null,
      notSettledCount: 0,
      saturationShare: 0,
    });
    const both = figures(
      runOf('street', { metrics: ride }),
      runOf('kerb', { metrics: { ...CALM, settlingTimeS: 3, reboundPercent: 12 } }),
    );
    expect(both).toMatchObject({ overshootPercent: 12, settlingTimeS: 3, notSettledCount: 0 });
  });

  it('are unknown where everything failed', () => {
    expect(figures(runOf('kerb', FELL))).toMatchObject({ overshootPercent: null, saturationShare: null });
  });
});

describe('the standing of some runs', () => {
  const standing = (...cells: CellResult[]) => standingOf(resultOf(...cells).cells);

  it('is that of the worst of them', () => {
    expect(standing(runOf('kerb'), runOf('hill'))).toBe('composed');
    expect(standing(runOf('kerb'), runOf('hill', costing(0.6)))).toBe('marginal');
    expect(standing(runOf('kerb', costing(0.6)), runOf('hill', FELL))).toBe('failed');
  });

  it('is marginal past the cost that is named, not at it', () => {
    const [cell] = resultOf(runOf('kerb')).cells as [RankedCell];
    expect(standingOf([{ ...cell, cost: MARGINAL_COST }])).toBe('composed');
    expect(standingOf([{ ...cell, cost: MARGINAL_COST + 1e-9 }])).toBe('marginal');
  });

  it('is marginal for what did not settle, but a ride need not', () => {
    const metrics = { ...CALM, settlingTimeS: null };
    expect(standing(runOf('kerb', { metrics }))).toBe('marginal');
    expect(standing(runOf('street', { metrics: { ...metrics, kind: 'ride' } }))).toBe('composed');
  });
});
