/**
 * Does the screen count what grows as the modes have it, drop only who falls, and keep whom a ceiling or a limit holds up?
 */
import { describe, expect, it } from 'vitest';
import { controlLaw } from '../../src/control/law.js';
import { loopView } from '../../src/linear/loop-view.js';
import { modesOf, type Mode } from '../../src/linear/modes.js';
import { isStable } from '../../src/linear/modes.js';
import { rideLook } from '../../src/linear/ride-report.js';
import { steadyRide, type RidePoint } from '../../src/linear/steady-ride.js';
import { weightsWith } from '../../src/measure/scales.js';
import { profileSchema, type ProfileFile } from '../../src/quantity/profile-file.js';
import { run } from '../../src/simulate/run.js';
import { prepareTrial } from '../../src/simulate/trial.js';
import { findPlaces, programFolder } from '../../src/store/places.js';
import { DROPPING, levelOf, prepareRide } from '../../src/sweep/linear-ride.js';
import { marginsOfRide, worstMargins } from '../../src/sweep/finalist-margins.js';
import { openScreen, type LevelRides } from '../../src/sweep/linear-screen.js';
import { planFor } from '../../src/tasks/select.js';
import { chance, profileWith } from '../rigs.js';

const [otter, yak] = ['otter', 'yak'].map((board) => {
  const planned = planFor(findPlaces(programFolder()), {
    board,
    riders: null,
    profiles: ['linen'],
    scenarios: ['roll-off', 'shove', 'ramp-up'],
    charges: [null],
    seeds: [1],
    solver: 'fixed',
    weights: weightsWith(),
  });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value;
});
const { riders, scenarios } = otter!;
const boards = [otter!.board.value, yak!.board.value];
const speeds = [10, 18];
const chargePercent = 80;
const limitPerS = Math.LN2 / DROPPING.doublingS;

/** Profiles from loose to stiff, every second with an integral, every third with each of some shapings. */
function drawn(count: number): ProfileFile[] {
  const next = chance(20);
  const between = (low: number, high: number) => low * (high / low) ** next();
  return Array.from({ length: count }, (_, k) =>
    profileSchema.parse({
      summary: 'drawn',
      gains: {
        proportionalAPerDeg: between(1, 40),
        rateAPerDegPerS: between(0.01, 8),
        integralAPerDegS: k % 2 === 0 ? 0 : between(1, 200),
      },
      shaping: [
        { blendTimeS: 4 },
        { blendTimeS: 1, gyroLowPassHz: between(2, 40), progressiveStiffnessPerDeg: 0.2 },
        { blendTimeS: 0.5, loadFeedForward: { filterTimeS: 0.2, currentShare: 0.5, noseUpDegPerA: 0.05 } },
      ][k % 3],
    }),
  );
}

/** Motions that swing slowly enough to be looked at. */
function slowModes(point: RidePoint): Mode[] {
  const weights = { deckInertiaKgM2: 1, riderInertiaKgM2: 1, totalMassKg: 1 };
  const modes = modesOf(loopView(steadyRide(point)), weights);
  return modes.filter(({ swingRadPerS }) => swingRadPerS < 2 * Math.PI * DROPPING.topHz);
}

const swiftest = (modes: readonly Mode[]) => Math.max(...modes.map(({ growthPerS }) => growthPerS));

/** The margins of a profile over all rides. */
function marginsOfFinalist(profile: ProfileFile, rides: LevelRides) {
  const each = rides.riders.flatMap(({ name, value: rider }) =>
    rides.speedsKmPerH.flatMap((speedKmPerH) => {
      const where = { speedKmPerH, gradePercent: 0, chargePercent: rides.chargePercent };
      const report = rideLook({ board: rides.board, rider, profile, ...where });
      return report === null ? [] : [marginsOfRide({ rider: name, speedKmPerH }, report)];
    }),
  );
  return worstMargins(each);
}

describe('growing motions', () => {
  it('are found where the modes have them, for 200 drawn profiles on two boards under five riders', () => {
    const rides = boards.flatMap((board) =>
      riders.flatMap(({ value }) =>
        speeds.map((speedKmPerH) => ({ board, rider: value, speedKmPerH, chargePercent })),
      ),
    );
    const prepared = rides.map(prepareRide);
    let growing = 0;
    drawn(200).forEach((profile, index) => {
      const which = index % rides.length;
      const growthPerS = swiftest(slowModes({ ...rides[which]!, profile, gradePercent: 0 }));
      // The level deck moves a growth by less than this.
      if (Math.abs(growthPerS / limitPerS - 1) < 0.01) return;
      const found = levelOf(prepared[which]!, controlLaw(profile, rides[which]!.board)) >= 0;
      expect(found, JSON.stringify([which, growthPerS, profile])).toBe(growthPerS > limitPerS);
      growing += Number(found);
    });
    expect(growing).toBeGreaterThan(20);
    expect(growing).toBeLessThan(180);
  });
});

describe.each(boards.map((board, index) => [index === 0 ? 'otter' : 'yak', board] as const))(
  'on %s',
  (_name, board) => {
    const { screen } = openScreen({ board, riders, chargePercent, speedsKmPerH: speeds });

    it.each([
      [1, 0.05],
      [1.5, 0.3],
      [2, 0.1],
    ])(
      '%d A/deg, %d A/(deg/s) is dropped for its swiftest motion, and the rider falls everywhere',
      (...gains) => {
        const profile = profileWith(gains, { blendTimeS: 4 });
        const { keeps, worst } = screen(profile);
        expect(keeps).toBe(false);
        const modes = riders.flatMap(({ name, value }) =>
          speeds.flatMap((speedKmPerH) =>
            slowModes({ board, rider: value, profile, speedKmPerH, gradePercent: 0, chargePercent }).map(
              (mode) => ({ name, speedKmPerH, ...mode }),
            ),
          ),
        );
        const mode = modes.reduce((a, b) => (b.growthPerS > a.growthPerS ? b : a));
        expect([worst!.rider, worst!.speedKmPerH]).toEqual([mode.name, mode.speedKmPerH]);
        expect((worst!.doublingS * mode.growthPerS) / Math.LN2).toBeCloseTo(1, 2);
        expect(worst!.frequencyHz).toBeCloseTo(mode.swingRadPerS / (2 * Math.PI), 2);
        const rider = riders.find(({ name }) => name === worst!.rider)!.value;
        for (const { value: scenario } of scenarios) {
          const { outcome } = run(prepareTrial({ board, rider, scenario, seed: 1 }), profile, {
            solver: 'fixed',
          });
          expect(outcome.kind).not.toBe('upright');
        }
      },
    );
  },
);

describe('on otter is kept', () => {
  const [board] = boards as [(typeof boards)[number]];
  const { screen } = openScreen({ board, riders, chargePercent, speedsKmPerH: speeds });
  const regular = riders.find(({ name }) => name === 'regular')!.value;
  const where = { board, rider: regular, speedKmPerH: 10, gradePercent: 0, chargePercent };
  const staysUp = (profile: ProfileFile) =>
    scenarios.every(({ value: scenario }) => {
      const trial = prepareTrial({ board, rider: regular, scenario, seed: 1 });
      return run(trial, profile, { solver: 'fixed' }).outcome.kind === 'upright';
    });

  it('a deck that shakes quickly: the ceilings tame it to a buzz', () => {
    const profile = profileWith([80, 8], { blendTimeS: 4 });
    expect(isStable(rideLook({ ...where, profile })!.modes)).toBe(false);
    expect(screen(profile)).toEqual({ keeps: true, worst: null });
    expect(staysUp(profile)).toBe(true);
  });

  it('a slow motion that progressive gain tames', () => {
    const profile = profileWith([2.16, 0.125, 12.3], { blendTimeS: 4, progressiveStiffnessPerDeg: 0.3 });
    expect(swiftest(slowModes({ ...where, profile }))).toBeGreaterThan(limitPerS);
    expect(screen(profile).keeps).toBe(true);
    expect(staysUp(profile)).toBe(true);
  });

  it('a slow motion that an integral tames between its limits', () => {
    const profile = profileWith([2.11, 0.0213, 247], { blendTimeS: 4 });
    const heavy = riders.find(({ name }) => name === 'heavy')!.value;
    expect(swiftest(slowModes({ ...where, rider: heavy, profile }))).toBeGreaterThan(limitPerS);
    expect(screen(profile).keeps).toBe(true);
    const shove = scenarios.find(({ name }) => name === 'shove')!.value;
    const trial = prepareTrial({ board, rider: heavy, scenario: shove, seed: 1 });
    expect(run(trial, profile, { solver: 'fixed' }).outcome.kind).toBe('upright');
  });

  it('whoever is only looked at standing', () => {
    const standing = openScreen({ board, riders, chargePercent, speedsKmPerH: [0] });
    expect(standing.screen(profileWith([1, 0.05])).keeps).toBe(true);
  });

  it('the same after a candidate of another shaping', () => {
    const loose = profileWith([1, 0.05], { blendTimeS: 4 });
    const before = screen(loose);
    expect(screen(profileWith([20, 1.2], { blendTimeS: 1, gyroLowPassHz: 30 })).keeps).toBe(true);
    expect(screen(loose)).toEqual(before);
  });
});

describe('margins of a finalist', () => {
  const [board] = boards as [(typeof boards)[number]];
  const two = riders.filter(({ name }) => ['light', 'heavy'].includes(name));
  const rides = { board, riders: two, chargePercent };

  it('are each the least of all rides, and say which it is', () => {
    const profile = otter!.profiles[0]!.value;
    const margins = marginsOfFinalist(profile, { ...rides, speedsKmPerH: speeds })!;
    const each = two.flatMap(({ name, value }) =>
      speeds.map((speedKmPerH) => {
        const point = { board, rider: value, profile, speedKmPerH, gradePercent: 0, chargePercent };
        return { rider: name, speedKmPerH, margins: rideLook(point)!.margins };
      }),
    );
    for (const told of ['disk', 'gainUp', 'phaseRad', 'delayS'] as const) {
      expect(margins[told].value).toBe(Math.min(...each.map((ride) => ride.margins[told].value)));
    }
    expect(margins.gainDown.value).toBe(Math.max(...each.map((ride) => ride.margins.gainDown.value)));
    const { rider, speedKmPerH, value } = margins.disk;
    const there = each.find((ride) => ride.rider === rider && ride.speedKmPerH === speedKmPerH)!;
    expect(there.margins.disk.value).toBe(value);
  });

  it('are none where a loop is lost', () => {
    const margins = marginsOfFinalist(profileWith([1, 0.05]), { ...rides, speedsKmPerH: [10] })!;
    expect([margins.disk.value, margins.gainUp.value, margins.gainDown.value]).toEqual([0, 1, 1]);
    expect([margins.phaseRad.value, margins.delayS.value]).toEqual([0, 0]);
  });

  it('are null where a ceiling cuts every ride', () => {
    expect(marginsOfFinalist(profileWith([20, 1.2]), { ...rides, speedsKmPerH: [60] })).toBeNull();
  });
});
