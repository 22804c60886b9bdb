/**
 * The whole sampled loop with the fixed step against odex: what order is left, and what a step costs in the metrics. A
 * Runge-Kutta method has its full order only where the right-hand side is smooth: Hairer, Norsett, Wanner, Solving
 * Ordinary Differential Equations I (1993), section II.6.
 */
import { describe, expect, it } from 'vitest';
import { COST_TERMS } from '../../src/measure/scales.js';
import type { ScenarioFile } from '../../src/quantity/scenario-file.js';
import { run } from '../../src/simulate/run.js';
import type { Tape } from '../../src/simulate/tape.js';
import type { Trial } from '../../src/simulate/trial.js';
import { measureProfile } from '../../src/tasks/evaluate.js';
import { columnOf, COMPOSED, largest, profileWith, scenarioWith, trialWith } from '../rigs.js';

const PROFILE = profileWith(COMPOSED);
const AT_10 = { start: { speedKmPerH: 10 }, speeds: [{ atS: 0, speedKmPerH: 10 }] };

function pitchErrors(trial: Trial, steps: readonly number[]): number[] {
  const pitch = (tape: Tape) => columnOf(tape, 'pitchRad');
  const exact = pitch(run(trial, PROFILE, { solver: 'reference' }).tape);
  return steps.map((stepsPerTick) => {
    const quick = pitch(run(trial, PROFILE, { solver: 'fixed', stepsPerTick }).tape);
    return largest(quick.map((value, tick) => value - exact[tick]!));
  });
}

describe('order of the fixed step in the whole loop', () => {
  it.each([
    ['levelling from 6 deg nose up', { durationS: 2, start: { noseUpDeg: 6 } }],
    ['a shove at 10 km/h', { ...AT_10, durationS: 2, shoves: [{ atS: 0.2, forS: 0.2, forwardN: 60 }] }],
  ])('is 4 on a smooth scenario: %s', (_what, changes) => {
    const trial = trialWith({ scenario: scenarioWith(changes) });
    const [one, two, four] = pitchErrors(trial, [1, 2, 4]);
    expect(one).toBeLessThan(1e-6);
    expect(Math.abs(Math.log2(one! / two!) - 4)).toBeLessThan(0.5);
    expect(Math.abs(Math.log2(two! / four!) - 4)).toBeLessThan(0.15);
  });

  /**
   * Off a kerb the wheel leaves the road: its load ends with a kink and begins again with a jump c_t v, and the road
   * itself is only C1, with a knot every 5 mm. A step across a kink or jump has order 1 to 2, wherever in the step it
   * falls, so the order shows only in a mean over places of the kerb.
   */
  it('falls to between 1 and 2.5 off a kerb, where the wheel leaves the road', () => {
    const errors = Array.from({ length: 8 }, (_, place) => {
      const road = [{ lengthM: 1.5 + 0.0137 * place }, { lengthM: 40, stepUpM: -0.06 }];
      const trial = trialWith({ scenario: scenarioWith({ ...AT_10, durationS: 2, road }) });
      const { tape } = run(trial, PROFILE, { solver: 'reference' });
      expect(Math.min(...columnOf(tape, 'wheelLoadN'))).toBe(0);
      return pitchErrors(trial, [1, 16]);
    });
    const mean = (column: 0 | 1) =>
      Math.exp(errors.reduce((sum, pair) => sum + Math.log(pair[column]!), 0) / errors.length);
    const order = Math.log2(mean(0) / mean(1)) / 4;
    expect(order).toBeGreaterThan(1);
    expect(order).toBeLessThan(2.5);
    expect(mean(0)).toBeLessThan(1e-3);
  });
});

const SCENARIOS: Record<string, { scenario: ScenarioFile; most: number }> = {
  'levelling from 6 deg nose up': {
    scenario: scenarioWith({ durationS: 5, start: { noseUpDeg: 6 }, measure: { as: 'step' } }),
    most: 1e-3,
  },
  'up an eased slope': {
    scenario: scenarioWith({
      ...AT_10,
      durationS: 8,
      road: [{ lengthM: 3 }, { lengthM: 40, gradePercent: 8.33, easeM: 2 }],
    }),
    most: 1e-3,
  },
  'a rough lane': {
    scenario: scenarioWith({ ...AT_10, durationS: 8, road: [{ lengthM: 60, roughness: 'C' }] }),
    most: 1e-2,
  },
  'off a kerb of 60 mm': {
    scenario: scenarioWith({
      ...AT_10,
      durationS: 8,
      road: [{ lengthM: 6 }, { name: 'kerb', lengthM: 30, stepUpM: -0.06 }],
      measure: { from: 'kerb', as: 'disturbance', bandDeg: 1 },
    }),
    most: 5e-2,
  },
};

describe('metrics with one step a tick', () => {
  for (const [what, { scenario, most }] of Object.entries(SCENARIOS)) {
    it(`differ from odex and from half the step by less than ${most} of their scale: ${what}`, () => {
      for (const seed of [1, 2]) {
        const trial = trialWith({ scenario, seed, noiseRatio: 1 });
        const quick = measureProfile(trial, PROFILE, { solver: 'fixed', stepsPerTick: 1 });
        for (const other of [
          measureProfile(trial, PROFILE, { solver: 'reference' }),
          measureProfile(trial, PROFILE, { solver: 'fixed', stepsPerTick: 2 }),
        ]) {
          expect(other.outcome).toEqual(quick.outcome);
          for (const { read, scale } of COST_TERMS) {
            const [a, b] = [read(quick.metrics), read(other.metrics)];
            expect(a === null).toBe(b === null);
            expect(Math.abs((a ?? 0) - (b ?? 0)) / scale).toBeLessThan(most);
          }
        }
      }
    });
  }
});
