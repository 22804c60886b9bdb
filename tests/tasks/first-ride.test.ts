/**
 * Are the ceilings of every stage those with which the simulation gets through it, and the next lower ones not? Held against runs of
 * the test's own.
 */
import { describe, expect, it } from 'vitest';
import {
  fullCeilings,
  riddenStages,
  STAGE_HEADROOM_SHARE,
  underCeilings,
  type Ceilings,
} from '../../src/explain/first-ride.js';
import { hasFailed } from '../../src/measure/profile-result.js';
import { createPaint } from '../../src/show/colour.js';
import { firstRideLines } from '../../src/show/first-ride-lines.js';
import { createEvaluator } from '../../src/tasks/evaluate.js';
import { firstRidePlan, underRiders } from '../../src/tasks/first-ride.js';
import { keptExample } from '../show/kept-example.js';

const whole = keptExample();
/** One rider, for the sake of time. */
const kept = {
  ...whole,
  rig: { ...whole.rig, riders: whole.rig.riders.filter(({ name }) => name === 'heavy') },
};
const plan = await firstRidePlan({ name: 'example', value: kept }, { threads: 1 });
const { cell } = createEvaluator();

/** The least headroom in all rides of a stage with ceilings; null where one of them falls. */
function leastHeadroom(stage: (typeof plan.stages)[number]['stage'], ceilings: Ceilings): number | null {
  const shares = stage.rides.flatMap(({ value: scenario }) =>
    kept.rig.riders.map(({ name, rider }) => {
      const key = { scenario: 'it', rider: name, chargePercent: scenario.chargePercent, seed: 1 };
      const circumstances = { board: kept.rig.board, rider, scenario, seed: 1 };
      const result = cell(underCeilings(kept.profile, ceilings), { key, circumstances }, { solver: 'fixed' });
      return hasFailed(result) ? null : result.metrics.leastHeadroomShare;
    }),
  );
  return shares.reduce((least, share) => (least === null || share === null ? null : Math.min(least, share)));
}

describe('the ceilings of the stages', () => {
  it.each(plan.stages)('get through it, and lower ones do not: $stage.name', (stage) => {
    const headroom = leastHeadroom(stage.stage, stage.ceilings);
    const isEnough = headroom !== null && headroom >= STAGE_HEADROOM_SHARE;
    expect(isEnough).toBe(stage.holds);
    if (stage.below === null) return;
    const lower = leastHeadroom(stage.stage, stage.below.ceilings);
    expect(lower === null || lower < STAGE_HEADROOM_SHARE).toBe(true);
  });

  it('rise from stage to stage, up to the full ones', () => {
    const full = fullCeilings(kept.profile, kept.rig.board);
    expect(full).toEqual({ driveA: 60, brakeA: 70 });
    const drive = [plan.free, ...plan.stages.map(({ ceilings }) => ceilings), full].map(
      ({ driveA }) => driveA,
    );
    expect(drive).toEqual(drive.toSorted((a, b) => a - b));
    expect(plan.stages.some(({ below }) => below !== null)).toBe(true);
  });

  it('are told with every ride under every rider', () => {
    expect(plan.stages.map(({ rides }) => rides.map(({ ride }) => ride))).toEqual(
      riddenStages().map(({ rides }) => rides.map(({ name }) => name)),
    );
  });
});

it('is the same whoever computes it', async () => {
  const again = await firstRidePlan({ name: 'example', value: kept }, { threads: 3 });
  expect(JSON.stringify(again)).toBe(JSON.stringify(plan));
});

it('proposes only changes with which no more runs fall', () => {
  const found = plan.changes.flatMap((change) => (change.found === null ? [] : [change.found]));
  expect(found.length).toBeGreaterThan(0);
  for (const { after, change } of found) {
    const before = plan.changes.find((one) => one.found?.change === change)?.before;
    expect(after.strength).toBeLessThan(before!.strength);
  }
});

describe('riders', () => {
  it('are those that it was proven under, all unless some are named', () => {
    expect(underRiders(whole, undefined)).toEqual({ ok: true, value: whole });
    const light = underRiders(whole, ['light']);
    expect(light.ok && light.value.rig.riders.map(({ name }) => name)).toEqual(['light']);
  });

  it('that are others are told, each with what was meant', () => {
    const found = underRiders(whole, ['hevy', 'nobody']);
    expect(!found.ok && found.faults.map(({ received, suggestion }) => [received, suggestion])).toEqual([
      ["'hevy'", 'heavy'],
      ["'nobody'", undefined],
    ]);
  });
});

describe('the plan on a page', () => {
  const lines = (width: number, symbols: 'braille' | 'ascii') =>
    firstRideLines(plan, { width, symbols, paint: createPaint('none') });

  it('keeps to the width, in the characters asked for', () => {
    for (const width of [40, 60, 80, 120]) {
      expect(Math.max(...lines(width, 'braille').map((line) => line.length))).toBeLessThanOrEqual(width);
    }
    expect(lines(80, 'ascii').filter((line) => !/^[\x20-\x7e]*$/.test(line))).toEqual([]);
  });

  it('goes from the stand to full ceilings, cautions first, with the sign and what to stop at', () => {
    const text = lines(100, 'braille').join('\n');
    const places = [
      'Before anything',
      'wheel off the ground',
      'held by hand',
      'First metres: up to',
      'Full ceilings',
      'If it does not',
    ];
    const found = places.map((place) => text.indexOf(place));
    expect(found).toEqual(found.toSorted((a, b) => a - b));
    expect(found[0]).toBeGreaterThan(0);
    expect(text).toMatch(
      /push the nose down by hand\. The wheel has to turn as if to roll the board\s+forward/,
    );
    expect(text).toMatch(/gain with the other\s+sign falls in 21 of 21 runs/);
    expect(text.match(/STOP if/g)!.length).toBeGreaterThanOrEqual(5);
    expect(text).toContain('Local law');
    expect(text).not.toMatch(/\bsafe/i);
  });
});
