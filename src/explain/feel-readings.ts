/**
 * Which numbers is a feel told from? Read from the linear view of steady rides and from the metrics of cells; each with the
 * place where it was found.
 */
import { doublingS, fateOf, hasMargins, loopStateOf } from '../linear/growth.js';
import type { Mode } from '../linear/modes.js';
import type { RideLook } from '../linear/ride-report.js';
import type { Metrics } from '../measure/metrics.js';
import type { RankedCell } from '../measure/profile-result.js';

/** What the linear view says of a steady ride on the level; null where a ceiling cuts it. */
export interface FeelRide {
  speedKmPerH: number;
  report: RideLook | null;
}

/** What a feel is told from; `footShiftNm` is the torque of the shift of weight that the deck is tried with. */
export interface FeelFacts {
  rides: readonly FeelRide[];
  cells: readonly RankedCell[];
  footShiftNm: number;
}

/** A number and where it was found: in a steady ride, or most of it in a scenario, and at which frequency. */
export interface Reading {
  value: number;
  speedKmPerH: number | null;
  scenario: string | null;
  frequencyHz: number | null;
}

/** A way to read a number off the facts; none where it does not apply. */
export type Reader = (facts: FeelFacts) => Reading[];

/** Frequencies from one up to, and without, another, Hz. */
export interface Band {
  fromHz: number;
  toHz: number;
}

interface SeenRide {
  speedKmPerH: number;
  report: NonNullable<FeelRide['report']>;
}

function seen({ rides }: FeelFacts): SeenRide[] {
  return rides.filter((ride): ride is SeenRide => ride.report !== null);
}

/** True where the loop holds: one that is lost has no peak of its sensitivity, and no noise that keeps to a size. */
const holds = ({ speedKmPerH, report: { modes } }: SeenRide) =>
  hasMargins(loopStateOf(modes, speedKmPerH === 0));

function inRide(
  { speedKmPerH }: SeenRide,
  { value, frequencyHz = null }: { value: number; frequencyHz?: number | null },
): Reading {
  return { value, speedKmPerH, scenario: null, frequencyHz };
}

const within = ({ fromHz, toHz }: Band, frequencyHz: number) => frequencyHz >= fromHz && frequencyHz < toHz;

/** Tilt of the deck [deg] under the shift of weight, once a second; in the slowest moving ride, or else the first. */
export const tiltDeg: Reader = (facts) => {
  const rides = seen(facts);
  const ride = rides.find(({ speedKmPerH }) => speedKmPerH > 0) ?? rides[0];
  if (ride === undefined) return [];
  const value = facts.footShiftNm / ride.report.deckStiffnessNmPerDeg.at1Hz;
  return [inRide(ride, { value, frequencyHz: 1 })];
};

/** Damping ratios of the modes that are such. */
export function dampingOf(isSuch: (mode: Mode) => boolean): Reader {
  return (facts) =>
    seen(facts).flatMap((ride) =>
      ride.report.modes
        .filter(isSuch)
        .map(({ dampingRatio, frequencyHz }) => inRide(ride, { value: dampingRatio, frequencyHz })),
    );
}

/** Modes in a band with at least this share of their energy in the deck. */
export function deckModes(band: Band, leastShare: number): (mode: Mode) => boolean {
  return ({ frequencyHz, shares }) => within(band, frequencyHz) && shares.deck >= leastShare;
}

/** Sensitivity peaks that lie in a band. */
export function sensitivityIn(band: Band): Reader {
  return (facts) =>
    seen(facts)
      .filter(holds)
      .flatMap((ride) => {
        const { value, radPerS } = ride.report.margins.sensitivityPeak;
        const frequencyHz = (radPerS ?? 0) / (2 * Math.PI);
        return radPerS !== null && within(band, frequencyHz) ? [inRide(ride, { value, frequencyHz })] : [];
      });
}

/** Root mean square of the request that the gyro's noise makes, A. */
export const gyroNoise: Reader = (facts) =>
  seen(facts)
    .filter(holds)
    .map((ride) => inRide(ride, { value: ride.report.gyroNoiseA }));

/** Times [s] in which motions below a frequency [Hz] double, of those that grow. */
export function doublingBelow(mostHz: number): Reader {
  return (facts) =>
    seen(facts).flatMap((ride) =>
      ride.report.modes
        .filter((mode) => mode.frequencyHz < mostHz && fateOf(mode, ride.speedKmPerH === 0) === 'grows')
        .map((mode) => inRide(ride, { value: doublingS(mode), frequencyHz: mode.frequencyHz })),
    );
}

/** Frequencies that the two stiffnesses are told at, rad/s. */
const SLOW_RAD_PER_S = 2 * Math.PI * 0.1;
const QUICK_RAD_PER_S = 2 * Math.PI;
/** Stands for a deck that does not come back at all, s. */
const NEVER_S = 10;

/**
 * Time constant [s] with which a standing deck comes level: that of a spring with a damper, |K (1 + i w T)| being its
 * stiffness at both frequencies.
 */
export const comingLevelS: Reader = (facts) =>
  seen(facts)
    .filter(({ speedKmPerH }) => speedKmPerH === 0)
    .flatMap((ride) => {
      const { at01Hz, at1Hz } = ride.report.deckStiffnessNmPerDeg;
      const top = at1Hz ** 2 - at01Hz ** 2;
      const bottom = (QUICK_RAD_PER_S * at01Hz) ** 2 - (SLOW_RAD_PER_S * at1Hz) ** 2;
      if (top <= 0) return [];
      return [inRide(ride, { value: bottom <= 0 ? NEVER_S : Math.min(NEVER_S, Math.sqrt(top / bottom)) })];
    });

/** The mean over the cells that stayed up, told with the scenario in which it is most; null where it does not apply. */
export function meanOfCells(read: (metrics: Metrics) => number | null): Reader {
  return ({ cells }) => {
    const values = cells
      .filter(({ failed }) => !failed)
      .flatMap(({ metrics, scenario }) => {
        const value = read(metrics);
        return value === null ? [] : [{ value, scenario }];
      })
      .sort((a, b) => b.value - a.value);
    const [most] = values;
    if (most === undefined) return [];
    const value = values.reduce((sum, one) => sum + one.value, 0) / values.length;
    return [{ value, scenario: most.scenario, speedKmPerH: null, frequencyHz: null }];
  };
}
