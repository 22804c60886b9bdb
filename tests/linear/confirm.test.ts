/**
 * Do margins, motions and simulation agree on where the loop is lost? Three ways that share no formula: the frequency
 * response, the roots of the loop with the change built in, and a ride with the change.
 */
import { describe, expect, it } from 'vitest';
import { confirmDelay, confirmGain, type Trial } from '../../src/linear/confirm.js';
import { loopGain, loopView } from '../../src/linear/loop-view.js';
import { marginsOf, type Margins } from '../../src/linear/margins.js';
import { isStable, modesOf } from '../../src/linear/modes.js';
import { steadyRide, type RidePoint } from '../../src/linear/steady-ride.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import { boardWith, COMPOSED, profileWith, riderWith } from '../rigs.js';
import { starterPlan } from '../starter-plan.js';

const WEIGHTS = { deckInertiaKgM2: 0.4, riderInertiaKgM2: 80, totalMassKg: 92 };

const starter = (name: string) => starterPlan().profiles.find((profile) => profile.name === name)!.value;

const usual = { rider: riderWith(), gradePercent: 0, chargePercent: 80 };
const POINTS: readonly [string, RidePoint][] = [
  [
    'the usual rig at 10 km/h',
    { ...usual, board: boardWith(), profile: profileWith(COMPOSED), speedKmPerH: 10 },
  ],
  [
    'the usual rig at 20 km/h',
    { ...usual, board: boardWith(), profile: profileWith(COMPOSED), speedKmPerH: 20 },
  ],
  ['soft gains', { ...usual, board: boardWith(), profile: profileWith([8, 0.4]), speedKmPerH: 10 }],
  ['much rate gain', { ...usual, board: boardWith(), profile: profileWith([10, 2]), speedKmPerH: 20 }],
  ['an integral', { ...usual, board: boardWith(), profile: profileWith([20, 1.2, 10]), speedKmPerH: 10 }],
  ['linen', { ...usual, board: starterPlan().board.value, profile: starter('linen'), speedKmPerH: 20 }],
  ['wool', { ...usual, board: starterPlan().board.value, profile: starter('wool'), speedKmPerH: 10 }],
];

/** Shaping by which the steady pull counts: a factor on the gains would move the pitch at which the loop is looked at. */
const SHAPED: RidePoint = {
  ...usual,
  board: boardWith(),
  profile: profileWith([10, 1.1], {
    progressiveStiffnessPerDeg: 0.25,
    loadFeedForward: { filterTimeS: 0.5, currentShare: 0.3 },
  }),
  speedKmPerH: 10,
};

function marginsAt(point: RidePoint): Margins {
  const view = loopView(steadyRide(point));
  const range = { fromRadPerS: 0.3, toRadPerS: 0.98 * view.nyquistRadPerS };
  return marginsOf((radPerS) => loopGain(view, radPerS, { rider: true }), range);
}

const modesAt = (point: RidePoint) => modesOf(loopView(steadyRide(point)), WEIGHTS);

function scaled(profile: ProfileFile, factor: number): ProfileFile {
  const { proportionalAPerDeg, rateAPerDegPerS, integralAPerDegS, ...rest } = profile.gains;
  const gains = {
    ...rest,
    proportionalAPerDeg: factor * proportionalAPerDeg,
    rateAPerDegPerS: factor * rateAPerDegPerS,
    integralAPerDegS: factor * integralAPerDegS,
  };
  return { ...profile, gains };
}

function later(point: RidePoint, ticks: number): RidePoint {
  const { controller } = point.board;
  const delayed = { ...controller, delayTicks: controller.delayTicks + ticks };
  return { ...point, board: { ...point.board, controller: delayed } };
}

describe('margins', () => {
  it.each(POINTS)(
    'of %s are where the roots cross: 1 % inside every motion dies out, 1 % outside one grows',
    (_name, point) => {
      const { gainUp, gainDown } = marginsAt(point);
      expect(isStable(modesAt(point))).toBe(true);
      for (const { value, radPerS } of [gainUp, gainDown].filter((margin) => margin.radPerS !== null)) {
        const at = (share: number) => modesAt({ ...point, profile: scaled(point.profile, value ** share) });
        expect(isStable(at(0.99))).toBe(true);
        expect(isStable(at(1.01))).toBe(false);
        const [grown] = at(1.01).filter(({ growthPerS }) => growthPerS > 0);
        expect(Math.abs(grown!.swingRadPerS / radPerS! - 1)).toBeLessThan(0.05);
      }
    },
  );

  it.each(POINTS)(
    'of %s: with the whole ticks of the delay to spare it holds, with one more it does not',
    (_name, point) => {
      const spare = Math.floor(marginsAt(point).delayS.value * point.board.controller.loopRateHz);
      expect(isStable(modesAt(later(point, spare)))).toBe(true);
      expect(isStable(modesAt(later(point, spare + 1)))).toBe(false);
    },
  );

  it.each([...POINTS, ['progressive stiffness and load feed-forward', SHAPED] as const])(
    'of %s are those of the simulation',
    (_name, point) => {
      const { delayS, gainUp, gainDown } = marginsAt(point);
      const tried = [confirmDelay(point, delayS), confirmGain(point, gainUp), confirmGain(point, gainDown)];
      expect(tried.filter((one) => one !== null).length).toBeGreaterThan(1);
      for (const one of tried) expect(one?.agrees ?? true).toBe(true);
    },
  );
});

describe('a loop that comes back beyond its delay margin', () => {
  it('is tried near to the margin', () => {
    const { delayS } = marginsAt(SHAPED);
    const ticks = delayS.value * SHAPED.board.controller.loopRateHz;
    const isHeld = (count: number) => isStable(modesAt(later(SHAPED, count)));
    expect([Math.floor(ticks), Math.ceil(ticks), Math.ceil(1.25 * ticks)].map(isHeld)).toEqual([
      true,
      false,
      true,
    ]);
    const { inside, outside } = confirmDelay(SHAPED, delayS)!;
    expect([inside.change, outside.change]).toEqual([
      { kind: 'delay', ticks: Math.floor(0.9 * ticks) },
      { kind: 'delay', ticks: Math.ceil(1.1 * ticks) },
    ]);
  });
});

describe('the growth in the simulation', () => {
  it.each(POINTS)('with %s is that of the motion that grows, within a tenth', (_name, point) => {
    const { gainUp, delayS } = marginsAt(point);
    const grown = (outside: Trial) => {
      const { change } = outside;
      const changed =
        change.kind === 'delay'
          ? later(point, change.ticks)
          : { ...point, profile: scaled(point.profile, change.factor) };
      return outside.growthPerS / Math.max(...modesAt(changed).map(({ growthPerS }) => growthPerS));
    };
    const ups = [confirmGain(point, gainUp), confirmDelay(point, delayS)].map((one) => grown(one!.outside));
    for (const ratio of ups) expect(Math.abs(ratio - 1)).toBeLessThan(0.1);
  });

  it('is not looked for where there is no margin', () => {
    const point = POINTS[0]![1];
    expect(confirmGain(point, { value: Infinity, radPerS: null })).toBeNull();
    expect(confirmGain(point, { value: 0, radPerS: null })).toBeNull();
    expect(confirmDelay(point, { value: Infinity, radPerS: null })).toBeNull();
  });
});
