/**
 * A report of a ride with round numbers, for tests of what is shown.
 */
import type { Confirmation } from '../../src/linear/confirm.js';
import { allowedByDisk } from '../../src/linear/margins.js';
import type { Mode, MOVERS } from '../../src/linear/modes.js';
import type { RideReport } from '../../src/linear/ride-report.js';
import type { MarginPoint, MarginView } from '../../src/show/margin-view.js';

const RAD = Math.PI / 180;
const HZ = 2 * Math.PI;

/** A motion: growth [1/s], frequency [Hz], shares of its energy. */
export function motion(
  growthPerS: number,
  frequencyHz: number,
  shares: Partial<Record<(typeof MOVERS)[number], number>>,
): Mode {
  const size = HZ * frequencyHz;
  return {
    growthPerS,
    swingRadPerS: Math.sqrt(size * size - growthPerS * growthPerS),
    frequencyHz,
    dampingRatio: -growthPerS / size,
    shares: { deck: 0, rider: 0, tyre: 0, travel: 0, ...shares },
  };
}

/** A trial of more or less gain, growing [1/s] inside and outside. */
export function triedGain([inside, outside]: [number, number], growths: [number, number]): Confirmation {
  return {
    inside: { change: { kind: 'gain', factor: inside }, growthPerS: growths[0] },
    outside: { change: { kind: 'gain', factor: outside }, growthPerS: growths[1] },
    agrees: growths[0] < 0 && growths[1] > 0,
  };
}

/** A trial of more delay, in ticks. */
export function triedDelay([inside, outside]: [number, number], growths: [number, number]): Confirmation {
  return {
    inside: { change: { kind: 'delay', ticks: inside }, growthPerS: growths[0] },
    outside: { change: { kind: 'delay', ticks: outside }, growthPerS: growths[1] },
    agrees: growths[0] < 0 && growths[1] > 0,
  };
}

/** A report; what is given replaces the usual. */
export function sampleReport(changes: Partial<RideReport> = {}): RideReport {
  const frequencyHz = Array.from({ length: 160 }, (_, index) => 0.05 * 8000 ** (index / 159));
  return {
    margins: {
      gainUp: { value: 5, radPerS: 60 * HZ },
      gainDown: { value: 0.2, radPerS: 0.3 * HZ },
      phaseRad: { value: 50 * RAD, radPerS: 16 * HZ },
      delayS: { value: 0.00875, radPerS: 16 * HZ },
      disk: { value: 0.9, radPerS: 20 * HZ },
      sensitivityPeak: { value: 1.5, radPerS: 25 * HZ },
    },
    allowedByDisk: allowedByDisk(0.9),
    isStable: true,
    modes: [motion(-0.7, 0.6, { rider: 0.6, travel: 0.4 }), motion(-20, 30, { deck: 1 })],
    deckStiffnessNmPerDeg: { at01Hz: 4.5, at1Hz: 11.5 },
    footPath: { gainAt1Hz: 0.4, delayAt1HzS: 0.12, bandwidthHz: 1.8 },
    gyroNoiseA: 0.25,
    tried: {
      delay: triedDelay([5, 9], [-2, 3]),
      gainUp: triedGain([3.3, 7.5], [-9, 30]),
      gainDown: triedGain([0.3, 0.13], [-0.2, 0.4]),
    },
    curve: {
      frequencyHz,
      gain: frequencyHz.map((hz) => 16 / hz),
      phaseDeg: frequencyHz.map(() => -120),
      sensitivity: frequencyHz.map((hz) => Math.min(1.5, hz / 16)),
    },
    ...changes,
  };
}

/** The margins of a profile in these rides. */
export function sampleMargins(...points: MarginPoint[]): MarginView {
  return { board: 'otter', rider: 'regular', profile: 'linen', chargePercent: 80, loopRateHz: 800, points };
}

/** A ride with a report. */
export function ridden(
  speedKmPerH: number,
  changes: Partial<RideReport> = {},
  gradePercent = 0,
): MarginPoint {
  return { speedKmPerH, gradePercent, report: sampleReport(changes) };
}
