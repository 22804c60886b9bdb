/**
 * Turned about, the world is the same: a rig that is mirrored fore and aft does the mirror image, as long as the rider
 * brakes as hard as he drives. A symmetry of the equations, no outside source.
 */
import { describe, expect, it } from 'vitest';
import type { TapeColumn } from '../../src/simulate/tape.js';
import { run } from '../../src/simulate/run.js';
import { boardWith, columnOf, largest, profileWith, riderWith, scenarioWith, trialWith } from '../rigs.js';

const ODD: readonly TapeColumn[] = [
  'pitchRad',
  'pitchRateRadPerS',
  'leanRad',
  'leanRateRadPerS',
  'positionM',
  'speedMPerS',
  'wheelRateRadPerS',
  'estimatedPitchRad',
  'setPointRad',
  'requestedCurrentA',
  'currentA',
  'riderTorqueNm',
  'treadForceN',
];
const EVEN: readonly TapeColumn[] = [
  'axleHeightM',
  'legLengthM',
  'headroomShare',
  'packV',
  'packCurrentA',
  'chargeShare',
  'wheelLoadN',
  'feetAccelerationMPerS2',
  'riderTorqueLimitNm',
];

const RIDER = riderWith({ pace: { driveMPerS2: 1, brakeMPerS2: 1 } });

/** Runs a lively two seconds, the world turned about when `sense` is -1. */
function tapeOf(sense: 1 | -1) {
  const trial = trialWith({
    rider: RIDER,
    board: boardWith({ deck: { centreForwardM: sense * 0.03 } }),
    scenario: scenarioWith({
      durationS: 4,
      start: { noseUpDeg: sense * 5 },
      speeds: [
        { atS: 0, speedKmPerH: 0 },
        { atS: 3, speedKmPerH: sense * 10 },
      ],
      shoves: [{ atS: 0.5, forS: 0.2, forwardN: sense * 60 }],
      shifts: [{ atS: 1.5, forS: 1, noseDownNm: sense * 8, frequencyHz: 2 }],
    }),
  });
  const shaping = {
    restTrimNoseUpDeg: sense * 1,
    progressiveStiffnessPerDeg: 0.05,
    slewLimitAPerS: 4000,
    gyroLowPassHz: 60,
    loadFeedForward: { filterTimeS: 0.5, currentShare: 0.2, noseUpDegPerA: 0.02 },
  };
  const { outcome, tape } = run(trial, profileWith([20, 1.2, 8], shaping), { solver: 'fixed' });
  expect(outcome.kind).toBe('upright');
  return tape;
}

describe('a rig turned about', () => {
  const [ahead, astern] = [tapeOf(1), tapeOf(-1)];

  it.each(ODD)('has %s of opposite sign', (column) => {
    const there = columnOf(ahead, column);
    const back = columnOf(astern, column);
    expect(largest(there)).toBeGreaterThan(1e-4);
    expect(largest(there.map((value, tick) => value + back[tick]!))).toBeLessThan(1e-9 * largest(there));
  });

  it.each(EVEN)('has the same %s', (column) => {
    const there = columnOf(ahead, column);
    const back = columnOf(astern, column);
    expect(new Set(there).size).toBeGreaterThan(100);
    expect(largest(there.map((value, tick) => value - back[tick]!))).toBeLessThan(1e-9 * largest(there));
  });

  it('has its ceilings swapped', () => {
    const [upper, lower] = [columnOf(ahead, 'upperCeilingA'), columnOf(astern, 'lowerCeilingA')];
    // At rest the board has no direction; there both call forward driving.
    const moving = upper.map((value, tick) => (tick > 10 ? value + lower[tick]! : 0));
    expect(largest(moving)).toBeLessThan(1e-6);
  });
});
