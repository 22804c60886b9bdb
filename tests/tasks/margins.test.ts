/** Which rides are looked at, what is wrong with a choice, and is the JSON whole? */
import { describe, expect, it } from 'vitest';
import { findPlaces, programFolder } from '../../src/store/places.js';
import { chooseRides } from '../../src/tasks/margin-points.js';
import {
  lookAtMargins,
  marginPlan,
  marginReport,
  marginView,
  type MarginPlan,
  type MarginSelection,
} from '../../src/tasks/margins.js';

const places = findPlaces(programFolder());

const chosen = (selection: Partial<MarginSelection>) =>
  marginPlan(places, { profile: 'linen', board: undefined, rider: undefined, ...selection });

function planOf(selection: Partial<MarginSelection>): MarginPlan {
  const planned = chosen(selection);
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value;
}

/** Speed and grade of the rides. */
function ridesOf(...texts: Parameters<typeof chooseRides>): [number, number][] {
  const rides = chooseRides(...texts);
  if (!rides.ok) throw new Error(JSON.stringify(rides.faults));
  return rides.value.rides.map(({ speedKmPerH, gradePercent }) => [speedKmPerH, gradePercent]);
}

describe('the rides', () => {
  it('are standing, 10 and 20 km/h and 10 km/h up 8 %, with the pack at 80 %, where nothing is asked', () => {
    const usual = chooseRides({});
    expect(usual.ok && usual.value.chargePercent).toBe(80);
    expect(ridesOf({})).toEqual([
      [0, 0],
      [10, 0],
      [20, 0],
      [10, 8],
    ]);
  });

  it('are those of the speeds asked for, each once, and every moving one on the grade as well', () => {
    expect(ridesOf({ speed: '15' })).toEqual([[15, 0]]);
    expect(ridesOf({ speed: '0, 15,15', grade: '-5' })).toEqual([
      [0, 0],
      [15, 0],
      [15, -5],
    ]);
    expect(ridesOf({ grade: '4' })).toEqual([
      [0, 0],
      [10, 0],
      [20, 0],
      [10, 4],
      [20, 4],
    ]);
  });
});

describe('a faulty choice', () => {
  it('is told with everything that is wrong with it', () => {
    const planned = chosen({ profile: 'linnen', board: 'oter', speed: 'fast,99', grade: '50', charge: '0' });
    const faults = planned.ok ? [] : planned.faults;
    expect(faults.map(({ key, received }) => [key, received])).toEqual([
      ['board', "'oter'"],
      ['profile', "'linnen'"],
      ['speed', "'fast'"],
      ['speed', "'99'"],
      ['grade', "'50'"],
      ['charge', "'0'"],
    ]);
  });

  it.each([
    [{ speed: '1,2,3,4,5,6,7' }, 'at most 6 speeds'],
    [{ speed: '' }, 'a number from 0 to 60 km/h'],
    [{ speed: '-1' }, 'a number from 0 to 60 km/h'],
    [{ charge: '' }, 'a number from 1 to 100 %'],
  ])('%j is told', (texts, expected) => {
    const rides = chooseRides(texts);
    expect(rides.ok ? [] : rides.faults.map((fault) => fault.expected)).toEqual([expected]);
  });
});

describe('margins', () => {
  it('are looked at on the rig and in the rides of the plan', async () => {
    const plan = planOf({ speed: '20,60', rider: 'heavy', charge: '50' });
    const result = await lookAtMargins(plan);
    expect(marginView(result)).toMatchObject({
      board: 'otter',
      rider: 'heavy',
      profile: 'linen',
      chargePercent: 50,
      loopRateHz: plan.board.value.controller.loopRateHz,
    });
    expect(result.points.map(({ report }) => report === null)).toEqual([false, true]);
  });

  it('are numbers with units in their names as JSON, and a ride that a ceiling cuts says so', async () => {
    const result = await lookAtMargins(planOf({ speed: '0,20,60' }));
    const report = marginReport(result);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
    const [standing, cruising, cut] = report.points;
    expect(cut).toEqual({ speedKmPerH: 60, gradePercent: 0, isCutByCeiling: true });
    expect(standing).toMatchObject({
      isCutByCeiling: false,
      pitchLoop: 'rolls',
      marginsIfItHolds: { gainDownFactorIfAny: null },
      triedInSimulation: { gainDownIfAny: null },
    });
    const { margins } = result.points[1]!.report!;
    expect(cruising).toMatchObject({
      pitchLoop: 'holds',
      marginsIfItHolds: {
        delaySIfAny: { value: margins.delayS.value, atHz: margins.delayS.radPerS! / (2 * Math.PI) },
        phaseRadIfAny: { value: margins.phaseRad.value },
        gainUpFactorIfAny: { value: margins.gainUp.value },
      },
      triedInSimulation: { delayIfAny: { agrees: true, outside: { isGrowing: true } } },
    });
  });

  it('are null where the loop is lost', async () => {
    const [point] = marginReport(await lookAtMargins(planOf({ profile: 'taffeta', speed: '10' }))).points;
    expect(point).toMatchObject({ pitchLoop: 'lost', marginsIfItHolds: null });
    expect(JSON.stringify(point)).toContain('"fate":"grows"');
  });
});
