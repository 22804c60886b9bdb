/** Every metric of a tape over a window: known signals in, known numbers out, and never NaN. */
import { describe, expect, it } from 'vitest';
import { measureRun, overshootOrReboundPercent } from '../../src/measure/metrics.js';
import type { Metrics } from '../../src/measure/metrics.js';
import type { MeasureWindow } from '../../src/measure/window.js';
import { createTape } from '../../src/simulate/tape.js';
import type { Tape, TapeColumn } from '../../src/simulate/tape.js';
import { exactSettlingTimeS, secondOrderError } from './exact-response.js';

const RATE_HZ = 800;
const UPRIGHT = { kind: 'upright', atS: 10 } as const;

type Signals = Partial<Record<TapeColumn, (timeS: number) => number>>;

/** A tape with room to spare, the rest of which is poisoned: a metric that reads past the rows shows. */
function tapeOf(durationS: number, signals: Signals): Tape {
  const length = Math.round(durationS * RATE_HZ);
  const tape = createTape(length + 50, 1 / RATE_HZ);
  tape.length = length;
  for (const [name, column] of Object.entries(tape.columns) as [TapeColumn, Float64Array][]) {
    const signal = signals[name] ?? (() => 0);
    for (let row = 0; row < length; row += 1) column[row] = signal(row / RATE_HZ);
    column.fill(NaN, length);
  }
  return tape;
}

function windowOf(fromS: number, toS: number, change: Partial<MeasureWindow> = {}): MeasureWindow {
  return {
    kind: 'ride',
    firstRow: Math.round(fromS * RATE_HZ),
    endRow: Math.round(toS * RATE_HZ),
    bandRad: 0.01,
    ...change,
  };
}

function numbersIn(metrics: Metrics): unknown[] {
  return [...Object.values(metrics), ...Object.values(metrics.saturationByCeiling)].filter(
    (value) => typeof value === 'number',
  );
}

describe('a step of the pitch', () => {
  // Levelling from 0.1 rad nose up to 0.02 rad nose down two seconds into the run; exact second-order response.
  const error = secondOrderError(0.4, 8);
  const tape = tapeOf(10, { pitchRad: (t) => (t < 2 ? -0.1 : 0.02 - 0.12 * error(t - 2)) });
  const measured = () => measureRun(tape, windowOf(2, 10, { kind: 'step', bandRad: 0.0024 }), UPRIGHT);

  it('has the textbook overshoot, rise and settling time', () => {
    const metrics = measured();
    expect(metrics.overshootPercent).toBeCloseTo(25.383, 2);
    expect((metrics.riseTimeS ?? NaN) * 8).toBeCloseTo(1.4635, 3);
    expect(metrics.settlingTimeS).toBeCloseTo(exactSettlingTimeS(0.4, 8, 0.02), 4);
    expect(metrics.calm).toBe(true);
    expect(metrics.finalPitchRad).toBeCloseTo(0.02, 8);
  });

  it('has no rebound; the overshoot stands in the shared column', () => {
    const metrics = measured();
    expect(metrics.reboundPercent).toBeNull();
    expect(overshootOrReboundPercent(metrics)).toBe(metrics.overshootPercent);
  });

  it('has its peaks counted from level', () => {
    const metrics = measured();
    expect(metrics.peakNoseUpRad).toBeCloseTo(0.1, 10);
    expect(metrics.peakNoseDownRad).toBeCloseTo(0.02 + 0.12 * 0.25383, 5);
  });

  it('smaller than the band is none', () => {
    const still = measureRun(tapeOf(4, { pitchRad: () => 0.05 }), windowOf(0, 4, { kind: 'step' }), UPRIGHT);
    expect(still).toMatchObject({ overshootPercent: 0, riseTimeS: null, settlingTimeS: 0, calm: true });
    const small = tapeOf(4, { pitchRad: (t) => 0.05 + 0.009 * error(t) });
    const window = windowOf(0, 4, { kind: 'step' });
    expect(measureRun(small, window, UPRIGHT)).toMatchObject({ overshootPercent: 0, riseTimeS: null });
    expect(still).toMatchObject({ peakNoseUpRad: 0, peakNoseDownRad: 0.05 });
  });
});

describe('a disturbance of the pitch', () => {
  const swing = (t: number): number =>
    t < 1 ? 0.03 : 0.03 + 0.2 * Math.exp(-2 * (t - 1)) * Math.sin(6 * (t - 1));
  const window = windowOf(1, 9, { kind: 'disturbance' });

  it('has the rebound of its damping, no overshoot and no rise', () => {
    const metrics = measureRun(tapeOf(9, { pitchRad: swing }), window, UPRIGHT);
    expect(metrics.reboundPercent).toBeCloseTo(100 * Math.exp((-2 * Math.PI) / 6), 2);
    expect(metrics).toMatchObject({ overshootPercent: null, riseTimeS: null, calm: true });
    expect(overshootOrReboundPercent(metrics)).toBe(metrics.reboundPercent);
  });

  it('that does not calm says so, and still has a rebound', () => {
    const ringing = tapeOf(9, { pitchRad: (t) => 0.05 * Math.sin(10 * t) });
    const metrics = measureRun(ringing, window, UPRIGHT);
    expect(metrics).toMatchObject({ calm: false, settlingTimeS: null });
    expect(metrics.reboundPercent).toBeGreaterThan(90);
  });

  it('that leaves the band in the tail is not settled, though its last row is inside', () => {
    const late = tapeOf(9, { pitchRad: (t) => (t > 8.2 && t < 8.4 ? 0.05 : 0) });
    expect(measureRun(late, window, UPRIGHT)).toMatchObject({ calm: false, settlingTimeS: null });
  });
});

describe('a run that ended early', () => {
  const tape = tapeOf(3, { pitchRad: (t) => 0.1 * t, packV: () => 50, headroomShare: () => 0.4 });
  const fall = { kind: 'nose strike', atS: 3 } as const;

  it.each(['step', 'disturbance'] as const)(
    'in a %s window measures what there is and settles nothing',
    (kind) => {
      const metrics = measureRun(tape, windowOf(1, 9, { kind }), fall);
      expect(metrics).toMatchObject({
        calm: false,
        settlingTimeS: null,
        finalPitchRad: null,
        riseTimeS: null,
      });
      expect(overshootOrReboundPercent(metrics)).toBeNull();
      expect(metrics.peakNoseDownRad).toBeCloseTo(0.3, 3);
      expect(metrics.windowS).toBe(8);
      expect(metrics.measuredS).toBe(2);
    },
  );

  it('on the very last tick of the window is not calm either', () => {
    const still = tapeOf(3, {});
    const window = windowOf(0, 3, { kind: 'disturbance' });
    expect(measureRun(still, window, { kind: 'rider off', atS: 3 - 1 / RATE_HZ }).calm).toBe(false);
    expect(measureRun(still, window, { kind: 'rider off', atS: 3 }).calm).toBe(true);
  });

  it('is not one that stayed up to the last tick, but a tape that stops short is', () => {
    const still = tapeOf(3, {});
    const upright = { kind: 'upright', atS: 3 - 1 / RATE_HZ } as const;
    const calm = { calm: true, finalPitchRad: 0, settlingTimeS: 0 };
    expect(measureRun(still, windowOf(0, 3, { kind: 'disturbance' }), upright)).toMatchObject(calm);
    const unknown = { calm: false, finalPitchRad: null, settlingTimeS: null };
    expect(measureRun(still, windowOf(0, 9, { kind: 'disturbance' }), UPRIGHT)).toMatchObject(unknown);
  });

  it('knows nothing of a window without rows, though the whole tape is there', () => {
    const metrics = measureRun(tapeOf(3, {}), windowOf(3, 3, { kind: 'step' }), { kind: 'upright', atS: 3 });
    expect(metrics).toMatchObject({ calm: false, finalPitchRad: null, windowS: 0, measuredS: 0 });
  });

  it.each([
    ['before the window began', tape, windowOf(5, 9)],
    ['before the first row', tapeOf(0, {}), windowOf(0, 9)],
    ['after one row', tapeOf(1 / RATE_HZ, { packV: () => 50 }), windowOf(0, 9)],
  ])('%s gives no NaN', (_, short, window) => {
    const metrics = measureRun(short, { ...window, kind: 'disturbance' }, fall);
    expect(numbersIn(metrics).length).toBeGreaterThan(15);
    expect(numbersIn(metrics).filter((value) => !Number.isFinite(value))).toEqual([]);
    expect(metrics.settlingTimeS).toBeNull();
  });

  it('leaves minima of nothing unknown', () => {
    const metrics = measureRun(tape, windowOf(5, 9), fall);
    expect(metrics).toMatchObject({ measuredS: 0, leastHeadroomShare: null, leastPackV: null });
  });
});

describe('a ride', () => {
  const between = (from: number, to: number, code: number) => (t: number) => (t >= from && t < to ? code : 0);
  const drive = between(1, 1.25, 1);
  const voltage = between(1.25, 1.5, 3);
  const packIn = between(3, 3.25, 5);
  const tape = tapeOf(5, {
    pitchRad: (t) => 0.3 * Math.sin(t),
    bindingCeiling: (t) => drive(t) + voltage(t) + packIn(t),
    headroomShare: (t) => 0.2 + (t - 2) ** 2,
    requestedCurrentA: (t) => (Math.round(t * RATE_HZ) % 2 === 0 ? 3 : -2),
    currentA: (t) => (t < 2 ? -40 : 30),
    riderTorqueNm: (t) => (t < 1 ? -100 : 50),
    riderTorqueLimitNm: (t) => (t < 2 ? 100 : 51),
    packV: (t) => 60 - t,
    packCurrentA: () => 10,
  });
  const measured = () => measureRun(tape, windowOf(0, 4), UPRIGHT);

  it('has neither overshoot nor rebound nor settling', () => {
    const metrics = measured();
    expect(metrics).toMatchObject({ overshootPercent: null, reboundPercent: null, settlingTimeS: null });
    expect(overshootOrReboundPercent(metrics)).toBeNull();
  });

  it('counts saturation: share, longest stretch over two ceilings in a row, by ceiling', () => {
    const metrics = measured();
    expect(metrics.saturationShare).toBe(0.75 / 4);
    expect(metrics.longestSaturationS).toBe(0.5);
    expect(metrics.saturationByCeiling).toEqual({
      drive: 0.0625,
      brake: 0,
      voltage: 0.0625,
      'pack out': 0,
      'pack in': 0.0625,
    });
    expect(metrics.leastHeadroomShare).toBe(0.2);
  });

  it('adds up the moves of the request a second', () => {
    expect(measured().commandActivityAPerS).toBeCloseTo(5 * RATE_HZ, 6);
  });

  it("weighs the rider's work", () => {
    const metrics = measured();
    expect(metrics.riderTorqueRmsNm).toBeCloseTo(Math.sqrt((100 ** 2 + 3 * 50 ** 2) / 4), 10);
    expect(metrics.oneFootLightS).toBe(1);
  });

  it('reads current, energy and voltage', () => {
    const metrics = measured();
    expect(metrics.peakCurrentA).toBe(40);
    expect(metrics.rmsCurrentA).toBeCloseTo(Math.sqrt((40 ** 2 + 30 ** 2) / 2), 10);
    // 10 A at 60 V - t over the 4 s less one tick between first and last row.
    const lastS = 4 - 1 / RATE_HZ;
    expect(metrics.packEnergyJ).toBeCloseTo(10 * (60 * lastS - lastS ** 2 / 2), 8);
    expect(metrics.leastPackV).toBeCloseTo(60 - lastS, 10);
  });

  it('measures shaking by its filters alone', () => {
    const shaking = tapeOf(20, {
      pitchRateRadPerS: (t) => 0.5 * Math.sin(2 * Math.PI * 30 * t),
      feetAccelerationMPerS2: (t) => 2 * Math.sin(2 * Math.PI * 5 * t),
    });
    const shaken = measureRun(shaking, windowOf(10, 20), UPRIGHT);
    expect(shaken.pitchRateActivityRadPerS).toBeCloseTo(0.5 / Math.SQRT2, 3);
    expect(shaken.weightedFeetAccelerationMPerS2).toBeCloseTo((2 * 1.039) / Math.SQRT2, 2);
  });
});
