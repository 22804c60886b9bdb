/**
 * Do all profiles of a trial stand on one scale of pitch, and do rows fill cell by cell?
 */
import { describe, expect, it } from 'vitest';
import { RAD_PER_DEG } from '../../../src/quantity/units.js';
import { onSharedScale, pitchInTrial } from '../../../src/tui/draw/shared-scale.js';
import { tracePanels } from '../../../src/show/trace-view.js';
import { tableRows } from '../../../src/tui/draw/table.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { drawnState } from './drawn-state.js';

const SIZE = { columns: 120, rows: 40 };

/** The state with other peaks of pitch [deg] for each row, the same in all of its cells. */
function withPeaks(state: BenchState, peaksDeg: readonly { down: number; up: number }[]): BenchState {
  const rows = state.rows.map((row, index) => {
    const { down, up } = peaksDeg[index] ?? { down: 0, up: 0 };
    const cells = row.result!.cells.map((cell) => {
      const peaks = { peakNoseDownRad: down * RAD_PER_DEG, peakNoseUpRad: up * RAD_PER_DEG };
      return { ...cell, metrics: { ...cell.metrics, ...peaks } };
    });
    return { ...row, result: { ...row.result!, cells } };
  });
  return { ...state, rows };
}

describe('the scale of pitch in a trial', () => {
  const state = withPeaks(drawnState({ size: SIZE }), [
    { down: 1, up: 0.5 },
    { down: 3, up: 5 },
    { down: 2, up: 1 },
  ]);
  const look = state.looks[0]!;

  it('holds what every profile reaches that stays up, nose down above', () => {
    const { lowest, highest } = pitchInTrial(state, look);
    expect(highest).toBeCloseTo(3, 12);
    expect(lowest).toBeCloseTo(-5, 12);
  });

  it('leaves out who falls there', () => {
    const fallen = withPeaks(drawnState({ size: SIZE, allFall: true }), [{ down: 60, up: 60 }]);
    expect(pitchInTrial(fallen, fallen.looks[0]!)).toEqual({ lowest: 0, highest: 0 });
  });

  it('is the scale of the run then, whatever the run itself reaches', () => {
    const scaleOf = (reachDeg: number) => {
      const view = onSharedScale(look, { lowest: -reachDeg, highest: reachDeg });
      return tracePanels(view, 'km/h')[0]!.scale;
    };
    expect(scaleOf(50).high).toBeGreaterThanOrEqual(50);
    expect(scaleOf(50)).toEqual(scaleOf(49));
  });
});

it('fills a row of the table scenario by scenario, before its figures are there', () => {
  const state = drawnState({ size: SIZE, computed: 0 });
  const done = drawnState({ size: SIZE }).rows[0]!.result!.cells.slice(0, 2);
  const rows = state.rows.map((row, index) => (index === 0 ? { ...row, some: done } : row));
  const [, first, second] = tableRows({ ...state, rows }, { width: 120, height: 10 });
  expect(first).toMatch(/plain-one {2}[●◐✗]{2}··$/);
  expect(second).toMatch(/ {2}····$/);
});
